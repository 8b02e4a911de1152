"""Which ids of a wiring are one node: what joints, landings and closed links tie in a box."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.wiring.model import LinkKind

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.solve.contacts import Contacts
    from linter.wiring.model import BoxWiring, Link
    from linter.wiring.unions import Unions

_SETTINGS = {
    LinkKind.CLOSED_WHEN_ON: ("on", "on"),
    LinkKind.THROW_1: ("throw 1", "throw 1"),
    LinkKind.THROW_2: ("throw 2", "throw 1"),
}


def add_box(
    nodes: Unions, box: BoxWiring, contacts: Contacts, positions: Mapping[str, str]
) -> None:
    """Adds what is one node in a box, faults left out; switches are in `positions`, by device."""
    apart, taken_out = contacts.apart, contacts.taken_out
    for joint in box.joints:
        nodes.add(joint.id, *kept(joint.wire_ends, apart), *kept(joint.pigtails, apart))
    if apart:
        for each in apart & {pigtail.id for pigtail in box.pigtails}:
            nodes.add(each)
    landings = {landing.terminal: landing for landing in box.landings}
    for terminal in box.terminals:
        landing = landings.get(terminal.id)
        if landing is None or (taken_out and terminal.device in taken_out):
            nodes.add(terminal.id)
        elif landing.pigtail is None:
            nodes.add(terminal.id, *kept(landing.wire_ends, apart))
        else:
            nodes.put(terminal.id, landing.pigtail)
            for each in kept(landing.wire_ends, apart):
                nodes.put(each, terminal.id)
    _close(nodes, box, positions)


def _close(nodes: Unions, box: BoxWiring, positions: Mapping[str, str]) -> None:
    """Ties the terminals that links make one; of a device that is out, too: nothing is on them."""
    for link in box.links:
        if _is_closed(link, positions):
            nodes.tie(*link.ends)


def kept(ids: tuple[str, ...], apart: frozenset[str]) -> tuple[str, ...]:
    """The ids that no fault takes off."""
    return tuple(each for each in ids if each not in apart) if apart else ids


def _is_closed(link: Link, positions: Mapping[str, str]) -> bool:
    if link.kind not in _SETTINGS:
        return True
    closes, at_rest = _SETTINGS[link.kind]
    return positions.get(link.device, at_rest) == closes
