"""Every single miswiring of a box: two conductors exchanged, one left out, one joined elsewhere."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations
from typing import Any

from linter.wiring.model import BoxWiring, Wiring

Members = tuple[str, ...]


@dataclass(frozen=True)
class Arrangement:
    """The make-up of a box: what is under each connector, and what lies on each terminal."""

    joints: tuple[Members, ...]
    terminals: dict[str, Members]
    capped: Members
    open: Members

    @property
    def stated_joints(self) -> tuple[Members, ...]:
        """The joints; a terminal that nothing is on has a pigtail under a connector of its own."""
        bare = [each for joint in self.joints if len(joint) == 1 for each in joint]
        bare += [name for name, on in self.terminals.items() if not on]
        several = tuple(each for each in self.joints if len(each) > 1)
        return (*several, *((each,) for each in bare if _is_terminal(each)))

    @property
    def stated_landings(self) -> tuple[tuple[str, Members], ...]:
        """The terminals with the conductors straight on them."""
        return tuple((name, on) for name, on in self.terminals.items() if on)

    @property
    def stated_open(self) -> Members:
        """The conductors that are joined to nothing."""
        alone = [each for joint in self.joints if len(joint) == 1 for each in joint]
        return (*self.open, *(each for each in alone if not _is_terminal(each)))


def _is_terminal(name: str) -> bool:
    """Terminals have the name of a device before the stop, conductors that of a cable: k1, k2."""
    cable = name.rpartition(".")[0]
    return not (cable[:1] == "k" and cable[1:].isdigit())


def arrangement(wiring: Wiring, box: str) -> Arrangement:
    """The make-up of a box as it is derived."""
    here = wiring.boxes[box]
    names = {end.id: end.name for end in here.wire_ends}
    terminals = {each.id: _terminal(each.id) for each in here.terminals}
    joints = tuple(
        (
            *(names[each] for each in joint.wire_ends),
            *(terminals[wiring.pigtails[each].terminal] for each in joint.pigtails),
        )
        for joint in here.joints
    )
    straight = {
        terminals[each.terminal]: tuple(names[wire] for wire in each.wire_ends)
        for each in here.landings
        if each.pigtail is None
    }
    capped = tuple(names[each.wire_end] for each in here.capped)
    used = {each for joint in joints for each in joint} | straight.keys()
    return Arrangement(joints, straight | _empty(here, terminals, used), capped, ())


def _terminal(name: str) -> str:
    return name.partition("/")[2] or name


def _empty(here: BoxWiring, names: dict[str, str], used: set[str]) -> dict[str, Members]:
    """The terminals that nothing is on."""
    return {names[each.id]: () for each in here.terminals if names[each.id] not in used}


def miswirings(right: Arrangement) -> Iterator[tuple[str, Arrangement]]:
    """Every single miswiring of the arrangement, each with a sentence."""
    places = _places(right)
    for (one, here), (other, there) in combinations(places, 2):
        if here != there and not (_is_terminal(one) and _fixed(there)):
            if _is_terminal(other) and _fixed(here):
                continue
            yield f"{one} and {other} exchanged", _exchanged(right, one, other)
    for name, place in places:
        if place != ("capped",):
            yield f"{name} left out", _moved(right, name, None)
        for target in _targets(right):
            if target != place and not (_is_terminal(name) and _fixed(target)):
                yield f"{name} joined with {_said(right, target)}", _moved(right, name, target)


Where = tuple[Any, ...]


def _places(right: Arrangement) -> list[tuple[str, Where]]:
    found: list[tuple[str, Where]] = []
    for number, joint in enumerate(right.joints):
        found += [(each, ("joint", number)) for each in joint]
    for terminal, wires in right.terminals.items():
        found += [(each, ("terminal", terminal)) for each in wires]
    found += [(each, ("capped",)) for each in right.capped]
    return found


def _fixed(place: Where) -> bool:
    """Where only conductors can be: on a screw, or under a cap."""
    return bool(place[0] != "joint")


def _targets(right: Arrangement) -> list[Where]:
    joints: list[Where] = [("joint", number) for number in range(len(right.joints))]
    return joints + [("terminal", each) for each in right.terminals]


def _said(right: Arrangement, place: Where) -> str:
    return right.joints[place[1]][0] if place[0] == "joint" else f"what is on {place[1]}"


def _exchanged(right: Arrangement, one: str, other: str) -> Arrangement:
    swap = {one: other, other: one}

    def changed(members: Members) -> Members:
        return tuple(swap.get(each, each) for each in members)

    return Arrangement(
        tuple(map(changed, right.joints)),
        {name: changed(wires) for name, wires in right.terminals.items()},
        changed(right.capped),
        right.open,
    )


def _moved(right: Arrangement, name: str, target: Where | None) -> Arrangement:
    def without(members: Members) -> Members:
        return tuple(each for each in members if each != name)

    joints = [*map(without, right.joints)]
    terminals = {each: without(wires) for each, wires in right.terminals.items()}
    left: Members = ()
    if target is None and _is_terminal(name):
        terminals[name] = ()
    elif target is None:
        left = (name,)
    elif target[0] == "joint":
        joints[target[1]] = (*joints[target[1]], name)
    else:
        terminals[target[1]] = (*terminals[target[1]], name)
    return Arrangement(tuple(joints), terminals, without(right.capped), left)
