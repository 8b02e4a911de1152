"""The joints, pigtails and landings of one box: what is stated, then like to like."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.wiring.model import (
    UNKNOWN,
    Capped,
    Joint,
    Landing,
    Pigtail,
    Role,
    Terminal,
    Use,
    WireEnd,
)
from linter.wiring.sheaths import sort_colours

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from linter.job.boxes import Box
    from linter.units import Quantity
    from linter.wiring.stated import StatedMakeUp
    from linter.wiring.wants import Key


class MadeUp(NamedTuple):
    """How one box is made up."""

    joints: tuple[Joint, ...]
    pigtails: tuple[Pigtail, ...]
    landings: tuple[Landing, ...]
    capped: tuple[Capped, ...]
    open_ends: tuple[str, ...]


class Maker:
    """Makes up one box, joint by joint; `made` gives the result."""

    def __init__(
        self, box: Box, ends: Sequence[WireEnd], terminals: Mapping[str, Terminal]
    ) -> None:
        self._box = box.name
        self._connector = box.connector
        self._ends = {end.id: end for end in ends}
        self._terminals = terminals
        self._joints: list[Joint] = []
        self._pigtails: list[Pigtail] = []
        self._landings: list[Landing] = []
        self._capped: list[Capped] = []
        self._open: list[str] = []

    def state(self, stated: StatedMakeUp) -> None:
        """Puts in what the job states."""
        for parts in stated.joints:
            uses = {self._ends[each].use for each in parts.wire_ends}
            use = uses.pop() if len(uses) == 1 else UNKNOWN
            connector = parts.connector or self._connector
            self.join(parts.wire_ends, parts.terminals, use, connector, stated=True)
        self._landings += [Landing(terminal, wires, None) for terminal, wires in stated.landings]
        self._capped += [Capped(each, stated=True) for each in stated.capped]
        self._open += stated.left_open

    def like_to_like(self, key: Key, wires: Sequence[str], terminals: Sequence[str]) -> None:
        """Joins wires and terminals of one key: straight where only two meet, else by a joint."""
        leads = any(self._terminals[each].is_lead for each in terminals)
        if key.use.role is Role.UNKNOWN:
            self._open += wires
        elif key.use.role is Role.SPARE or (len(wires) == 1 and not terminals):
            self._capped += [Capped(each, stated=False) for each in wires]
        elif len(wires) == 1 and len(terminals) == 1 and not leads:
            self.land(terminals[0], wires)
        elif len(wires) + len(terminals) > 1:
            self.join(wires, terminals, key.use, self._connector)

    def land(self, terminal: str, wires: Sequence[str]) -> None:
        """Puts wires straight on a terminal."""
        self._landings.append(Landing(terminal, tuple(wires), None))

    def join(
        self,
        wires: Sequence[str],
        terminals: Sequence[str],
        use: Use,
        connector: str | None,
        *,
        stated: bool = False,
    ) -> None:
        """Joins wires, with a pigtail to each terminal."""
        name = f"{self._box}/{len(self._joints) + 1}"
        colour, size = self._pigtail_wire(wires, use)
        pigtails = [self._pigtail(name, each, colour, size) for each in terminals]
        self._pigtails += pigtails
        self._landings += [Landing(each.terminal, (), each.id) for each in pigtails]
        ids = tuple(each.id for each in pigtails)
        self._joints.append(Joint(name, self._box, tuple(wires), ids, use, connector, stated))

    def made(self) -> MadeUp:
        """The box as far as it is made up."""
        return MadeUp(
            tuple(self._joints),
            tuple(self._pigtails),
            tuple(self._landings),
            tuple(self._capped),
            tuple(self._open),
        )

    def _pigtail(self, joint: str, terminal: str, colour: str, size: Quantity | None) -> Pigtail:
        is_lead = self._terminals[terminal].is_lead
        own_size = None if is_lead else size
        return Pigtail(
            f"{joint} to {terminal}", self._box, joint, terminal, colour, own_size, is_lead
        )

    def _pigtail_wire(self, wires: Sequence[str], use: Use) -> tuple[str, Quantity | None]:
        """Colour and size of a pigtail: as the wires it is joined to, the largest of them."""
        ends = sorted((self._ends[each] for each in wires), key=lambda end: end.id)
        return _pigtail_colour(ends, use), _largest(ends)


def _pigtail_colour(ends: Sequence[WireEnd], use: Use) -> str:
    colours = sort_colours(tuple(end.colour for end in ends))
    if use.role is Role.BOND:
        return colours.bonds[0] if colours.bonds else "bare"
    if use.role is Role.NEUTRAL:
        return colours.neutrals[0] if colours.neutrals else "white"
    if use.role is Role.UNKNOWN and not colours.hots:
        return "".join((*colours.neutrals, *colours.bonds)[:1]) or "black"
    return colours.hots[0] if colours.hots else "black"


def _largest(ends: Sequence[WireEnd]) -> Quantity | None:
    sizes = [end.size for end in ends]
    known = [each for each in sizes if each is not None]
    return max(known, key=lambda each: each.value) if known and len(known) == len(sizes) else None
