"""The make-up of a box as far as the job states it, read against what is in the box."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.text import Place, Refusal, nearest
from linter.wiring.devices import TERMINAL_NAMES, named_terminal
from linter.wiring.model import Terminal, WireEnd

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from linter.job.boxes import Box

_EXTRA = frozenset({"hot 2", "neutral", "neutral 2"})


class StatedParts(NamedTuple):
    """One joint that is stated: ids of wire ends and of terminals, and the connector."""

    wire_ends: tuple[str, ...]
    terminals: tuple[str, ...]
    connector: str | None


class StatedMakeUp(NamedTuple):
    """What the job states of a box: joints, straight landings, capped and open ends, by id."""

    joints: tuple[StatedParts, ...]
    landings: tuple[tuple[str, tuple[str, ...]], ...]
    capped: tuple[str, ...]
    left_open: tuple[str, ...]

    @property
    def claimed(self) -> frozenset[str]:
        """All wire ends and terminals that it speaks of; nothing is derived for them."""
        ids = [each for joint in self.joints for each in (*joint.wire_ends, *joint.terminals)]
        for terminal, wires in self.landings:
            ids += [terminal, *wires]
        return frozenset((*ids, *self.capped, *self.left_open))


NOTHING_STATED = StatedMakeUp((), (), (), ())


class _Reader:
    """Reads names of one box's make-up, and keeps what is wrong with them."""

    def __init__(self, box: Box, ends: Sequence[WireEnd], terminals: Sequence[Terminal]) -> None:
        self._wires: Mapping[str, str] = {end.name: end.id for end in ends}
        self._terminals = tuple(terminals)
        self._box = box
        self._seen: dict[str, Place] = {}
        self.refusals: list[Refusal] = []

    def wires(self, names: Sequence[str], place: Place) -> tuple[str, ...]:
        return tuple(each for name in names if (each := self._wire(name, place)))

    def _wire(self, name: str, place: Place) -> str | None:
        if name not in self._wires:
            self._unknown(name, place)
            return None
        return self._once(name, self._wires[name], place)

    def joined(self, names: Sequence[str], place: Place) -> tuple[tuple[str, ...], tuple[str, ...]]:
        wires, terminals = [], []
        for name in names:
            if name in self._wires:
                wires.append(self._once(name, self._wires[name], place))
            else:
                terminals.append(self.terminal(name, place))
        return tuple(filter(None, wires)), tuple(filter(None, terminals))

    def terminal(self, name: str, place: Place) -> str | None:
        found = named_terminal(name, self._terminals)
        if found is None:
            self._unknown(name, place)
            return None
        return self._once(name, found.id, place)

    def _once(self, name: str, found: str, place: Place) -> str | None:
        if found in self._seen:
            self.refusals.append(
                Refusal(
                    place,
                    f'"{name}" stands twice in the make-up of box {self._box.name}',
                    "each conductor and each terminal once",
                    "take it out of one of the two",
                    also=(self._seen[found], "first stated"),
                )
            )
            return None
        self._seen[found] = place
        return found

    def _unknown(self, name: str, place: Place) -> None:
        terminals = [f"{each.device}.{each.name}" for each in self._terminals if each.device]
        allowed = [*self._wires, *terminals]
        self.refusals.append(
            Refusal(
                place,
                f'"{name}" is no conductor and no terminal in box {self._box.name}',
                "a cable and a colour, such as k1.black, or a device and a terminal, such as "
                "bench.hot; box.bond is the bond screw of a metal box",
                "name a conductor that ends in this box, or a terminal of what it holds",
                nearest(name, allowed),
            )
        )


def read_make_up(
    box: Box, ends: Sequence[WireEnd], terminals: Sequence[Terminal]
) -> tuple[StatedMakeUp, list[Refusal]]:
    """What the job states of the box's make-up, and a refusal for each name that cannot be read."""
    make_up = box.make_up
    if make_up is None:
        return NOTHING_STATED, []
    reader = _Reader(box, ends, terminals)
    joints = []
    for joint in make_up.joints:
        wires, ends_on = reader.joined(joint.of, joint.place)
        joints.append(StatedParts(wires, ends_on, joint.connector))
    landings = []
    for landing in make_up.landings:
        terminal = reader.terminal(landing.terminal, landing.place)
        wires = reader.wires(landing.wires, landing.place)
        if terminal is not None:
            landings.append((terminal, wires))
    capped = reader.wires(make_up.capped, make_up.place_of("capped"))
    left_open = reader.wires(make_up.left_open, make_up.place_of("left_open"))
    return StatedMakeUp(tuple(joints), tuple(landings), capped, left_open), reader.refusals


def extra_terminals(box: Box, terminals: Sequence[Terminal]) -> tuple[Terminal, ...]:
    """Terminals that the make-up names and a device of the box may have beyond the usual ones."""
    if box.make_up is None:
        return ()
    names = [each for joint in box.make_up.joints for each in joint.of]
    names += [each.terminal for each in box.make_up.landings]
    devices = {device.name for device in box.holds}
    extra: dict[str, Terminal] = {}
    for name in names:
        device, _, terminal = name.rpartition(".")
        known = device in devices and terminal in _EXTRA and terminal in TERMINAL_NAMES
        if known and named_terminal(name, tuple(terminals)) is None:
            extra[name] = Terminal(name, device, box.name, terminal)
    return tuple(extra.values())
