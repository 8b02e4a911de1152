"""A wiring put together from its boxes and cables, and taken apart where only panels join it.

A section is a wiring too: boxes that cables join, with those cables. What is traced in one depends
on no other, so a large job costs as many times a small one as it has more sections, and what is
looked up together lies together.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.wiring.model import Wiring
from linter.wiring.unions import Unions

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from linter.wiring.model import BoxWiring, CablePart, PanelLanding, Terminal, WireEnd


class Cables(NamedTuple):
    """The conductors of cables with their ends, where those in panels are landed, and unknowns."""

    parts: Mapping[str, tuple[CablePart, ...]]
    wire_ends: Mapping[str, WireEnd]
    panel_landings: Mapping[str, PanelLanding]
    unknown: frozenset[str]


def gathered(
    boxes: Mapping[str, BoxWiring],
    cables: Cables,
    circuit_of_device: Mapping[str, tuple[str, ...]],
) -> Wiring:
    """A wiring, with all that its boxes hold under its name."""
    by_device: dict[str, list[Terminal]] = {}
    for box in boxes.values():
        for terminal in box.terminals:
            if terminal.device:
                by_device.setdefault(terminal.device, []).append(terminal)
    landings = {each.terminal: each for box in boxes.values() for each in box.landings}
    joints = {each.id: each for box in boxes.values() for each in box.joints}
    ended_in = {wire: each.id for each in joints.values() for wire in each.wire_ends}
    ended_in |= {wire: each.terminal for each in landings.values() for wire in each.wire_ends}
    ended_in |= {each.pigtail: each.terminal for each in landings.values() if each.pigtail}
    return Wiring(
        boxes=boxes,
        wire_ends=cables.wire_ends,
        terminals={each.id: each for box in boxes.values() for each in box.terminals},
        joints=joints,
        pigtails={each.id: each for box in boxes.values() for each in box.pigtails},
        landings=landings,
        parts=cables.parts,
        by_device={name: tuple(found) for name, found in by_device.items()},
        panel_landings=cables.panel_landings,
        circuit_of_device=circuit_of_device,
        unknown_cables=cables.unknown,
        ended_in=ended_in,
        links=tuple(link for box in boxes.values() for link in box.links),
        capped=tuple(each for box in boxes.values() for each in box.capped),
        passing=tuple(each for box in boxes.values() for each in box.passing),
    )


def sections_of(wiring: Wiring) -> Iterator[Wiring]:
    """The sections of a wiring, in the order of their first cables; boxes without cables last."""
    together = Unions(wiring.boxes)
    cables = {name: _ends(wiring, parts) for name, parts in wiring.parts.items()}
    for one, other in cables.values():
        if one in together and other in together:
            together.tie(one, other)
    members: dict[int | str, tuple[list[str], list[str]]] = {}
    for name, ends in cables.items():
        box = next((each for each in ends if each in together), None)
        key = name if box is None else together[box]
        members.setdefault(key, ([], []))[1].append(name)
    for name in wiring.boxes:
        members.setdefault(together[name], ([], []))[0].append(name)
    return (_section(wiring, *each) for each in members.values())


def _ends(wiring: Wiring, parts: tuple[CablePart, ...]) -> tuple[str, str]:
    """The boxes or panels at the ends of a cable; of no known conductors, none."""
    if not parts:
        return "", ""
    one, other = parts[0].ends
    return wiring.wire_ends[one].box, wiring.wire_ends[other].box


def _section(wiring: Wiring, boxes: Iterable[str], cables: Iterable[str]) -> Wiring:
    parts = {name: wiring.parts[name] for name in cables}
    ends = {
        part.ends[side]: wiring.wire_ends[part.ends[side]]
        for each in parts.values()
        for side in (0, 1)
        for part in each
    }
    landed = wiring.panel_landings
    return gathered(
        {name: wiring.boxes[name] for name in boxes},
        Cables(
            parts,
            ends,
            {wire: landed[wire] for wire in ends if wire in landed},
            wiring.unknown_cables,
        ),
        wiring.circuit_of_device,
    )
