"""A wiring put together from its boxes and cables, and taken apart where only panels join it.

A section is a wiring too: boxes that cables join, with those cables. What is traced in one depends
on no other, so a large job costs as many times a small one as it has more sections, and what is
looked up together lies together.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from linter.wiring.model import Wiring
from linter.wiring.unions import Unions

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from linter.wiring.model import BoxWiring, CablePart, Joint, PanelLanding, Terminal, WireEnd


class Cables(NamedTuple):
    """The conductors of cables with their ends, where those in panels end, and unknowns."""

    parts: Mapping[str, tuple[CablePart, ...]]
    wire_ends: Mapping[str, WireEnd]
    panel_landings: Mapping[str, PanelLanding]
    spliced_in_panels: tuple[Joint, ...]
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
    joints |= {each.id: each for each in cables.spliced_in_panels}
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
        spliced_in_panels=cables.spliced_in_panels,
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
    at_end = {name: _ends(wiring, parts) for name, parts in wiring.parts.items()}
    for name, ends in at_end.items():
        together.add(_cable(name))
        for box in ends:
            if box in wiring.boxes:
                together.tie(box, _cable(name))
    for joint in wiring.spliced_in_panels:
        for one, other in pairwise(wiring.wire_ends[each].cable for each in joint.wire_ends):
            together.tie(_cable(one), _cable(other))
    members: dict[int, tuple[list[str], list[str]]] = {}
    for name in at_end:
        members.setdefault(together[_cable(name)], ([], []))[1].append(name)
    for name in wiring.boxes:
        members.setdefault(together[name], ([], []))[0].append(name)
    return (_section(wiring, *each) for each in members.values())


def _cable(name: str) -> str:
    """What a cable is called among boxes; no name of a box has a stroke.

    >>> _cable("k1")
    '/k1'
    """
    return f"/{name}"


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
            tuple(each for each in wiring.spliced_in_panels if each.wire_ends[0] in ends),
            wiring.unknown_cables,
        ),
        wiring.circuit_of_device,
    )
