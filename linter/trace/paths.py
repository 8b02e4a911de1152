"""The way from one place of a wiring to another, as a proof and in words."""

from __future__ import annotations

from collections import deque
from typing import TYPE_CHECKING

from linter.trace.distance import ties_of
from linter.trace.solid import OF_SWITCHES, Source
from linter.wiring.model import Joint, PanelLanding, Role, Spot, Terminal, Wiring

if TYPE_CHECKING:
    from collections.abc import Callable, Collection, Iterable, Iterator, Mapping

    from linter.wiring.model import Link

Way = tuple[str, ...]
NO_WAY: Way = ()
Closed = frozenset[tuple[str, str]]  # the pairs of terminals of contacts that are closed


class Paths:
    """Shortest ways along conductors, joints and terminals; contacts of switches as told."""

    def __init__(self, wiring: Wiring) -> None:
        self._wiring = wiring
        contacts = {link.ends for link in wiring.links if link.kind in OF_SWITCHES}
        self._contacts = contacts | {(other, one) for one, other in contacts}
        self._beside: dict[str, list[str]] = {}
        for one, other, _ in ties_of(wiring):
            self._beside.setdefault(one, []).append(other)
            self._beside.setdefault(other, []).append(one)
        for each in self._beside.values():
            each.sort()  # of ways as short as each other always the same, whatever the file's order

    def way(
        self,
        starts: Iterable[str],
        is_goal: Callable[[str], bool],
        closed: Collection[tuple[str, str]] = (),
        without: Collection[tuple[str, str]] = (),
    ) -> Way:
        """A shortest way from one of the starts to a goal; none, if there is none.

        Contacts of switches are open but for those in `closed`; ties in `without` are left out.
        """
        before: dict[str, str] = dict.fromkeys(sorted(starts), "")
        waiting = deque(before)
        while waiting:
            name = waiting.popleft()
            if is_goal(name):
                return _back(before, name)
            for other in self._beside.get(name, ()):
                tie = (name, other)
                is_open = tie in self._contacts and tie not in closed
                if other not in before and not is_open and tie not in without:
                    before[other] = name
                    waiting.append(other)
        return NO_WAY


def _back(before: Mapping[str, str], name: str) -> Way:
    way = [name]
    while before[way[-1]]:
        way.append(before[way[-1]])
    return tuple(reversed(way))


def both_ways(links: Iterable[Link]) -> frozenset[tuple[str, str]]:
    """The ends of links, in either order."""
    return frozenset(pair for link in links for pair in (link.ends, link.ends[::-1]))


def in_words(wiring: Wiring, way: Way) -> str:
    """A way as a person follows it: "breaker 10, black of k1, joint 1 in attic, ..."."""
    return ", ".join(_steps(wiring, way))


def _steps(wiring: Wiring, way: Way) -> Iterator[str]:
    last = ""
    for name in way:
        for step in _step(wiring, name, is_first=name == way[0]):
            if step != last:
                yield step
            last = step


def _step(wiring: Wiring, name: str, *, is_first: bool) -> Iterator[str]:
    end = wiring.wire_ends.get(name)
    if end is not None:
        wire = f"{end.colour} of {end.cable}"
        landing = wiring.panel_landings.get(name)
        spot = () if landing is None else (spot_in_words(landing),)
        yield from (*spot, wire) if is_first else (wire, *spot)
    elif name in wiring.joints:
        yield joint_in_words(wiring.joints[name])
    elif name in wiring.terminals:
        yield terminal_in_words(wiring.terminals[name])


def spot_in_words(landing: PanelLanding) -> str:
    """Where a conductor ends in a panel: "breaker 10", "the neutral bar"."""
    where = "" if landing.panel == "panel" else f" of {landing.panel}"
    if landing.spot is Spot.BREAKER:
        pole = f"pole {landing.pole + 1} of " if landing.pole else ""
        return f"{pole}breaker {landing.space}{where}"
    if landing.spot is Spot.BREAKER_NEUTRAL:
        return f"the neutral terminal of breaker {landing.space}{where}"
    return f"the {landing.spot.value}{where}"


def source_in_words(source: Source) -> str:
    """What feeds a conductor from the panel: "breaker 10", "the neutral of lights", "the bond"."""
    if source.role is Role.HOT:
        return spot_in_words(PanelLanding(source.panel, Spot.BREAKER, source.space, source.pole))
    if source.role is Role.BOND:
        return "the bond"
    return f"the neutral of {source.circuit}" if source.circuit else "the neutral bar"


def joint_in_words(joint: Joint) -> str:
    """A joint, which the conductors before and after it tell from others in its box.

    >>> from linter.wiring.model import BOND
    >>> joint_in_words(Joint("attic/1", "attic", (), (), BOND, None))
    'a joint in attic'
    """
    return f"a joint in {joint.box}"


def terminal_in_words(terminal: Terminal) -> str:
    """A terminal by its name and its device."""
    return f"{terminal.name} terminal of {terminal.device or f'box {terminal.box}'}"
