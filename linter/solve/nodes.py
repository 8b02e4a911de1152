"""Which ids of a wiring are one node: bars, and what joints, landings and closed links tie."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.wiring.model import LinkKind
from linter.wiring.unions import Unions

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from linter.solve.contacts import Contacts
    from linter.wiring.model import BoxWiring, Link, Wiring

_SETTINGS = {
    LinkKind.CLOSED_WHEN_ON: ("on", "on"),
    LinkKind.THROW_1: ("throw 1", "throw 1"),
    LinkKind.THROW_2: ("throw 2", "throw 1"),
}


def nodes_of(
    wiring: Wiring,
    contacts: Contacts,
    bars: Iterable[str],
    at_bars: Mapping[str, str],
    positions: Mapping[str, str],
) -> Unions:
    """The nodes of bars, joints, terminals, pigtails and of the wire ends that end on those.

    `at_bars` gives the bar of each wire end in a panel, `positions` those of switches by device.
    """
    nodes = Unions(bars)
    # Box by box, so that a large job is gone through once and near things are looked at together.
    for box in wiring.boxes.values():
        _add_box(nodes, box, contacts, positions)
    apart = contacts.apart
    for wire in wiring.panel_landings:
        if wire in at_bars and wire not in apart:
            nodes.put(wire, nodes.of[at_bars[wire]])
    return nodes


def _add_box(
    nodes: Unions, box: BoxWiring, contacts: Contacts, positions: Mapping[str, str]
) -> None:
    apart, taken_out = contacts.apart, contacts.taken_out
    for joint in box.joints:
        nodes.add(joint.id, *_kept(joint.wire_ends, apart), *_kept(joint.pigtails, apart))
    for each in apart & {pigtail.id for pigtail in box.pigtails}:
        nodes.add(each)
    landings = {landing.terminal: landing for landing in box.landings}
    for terminal in box.terminals:
        landing = landings.get(terminal.id) if terminal.device not in taken_out else None
        nodes.add(terminal.id, *(_kept(landing.wire_ends, apart) if landing else ()))
        if landing and landing.pigtail:
            nodes.tie(landing.pigtail, terminal.id)
    for link in box.links:
        if link.device not in taken_out and _is_closed(link, positions):
            nodes.tie(*link.ends)


def _kept(ids: tuple[str, ...], apart: frozenset[str]) -> tuple[str, ...]:
    return tuple(each for each in ids if each not in apart) if apart else ids


def _is_closed(link: Link, positions: Mapping[str, str]) -> bool:
    if link.kind not in _SETTINGS:
        return True
    closes, at_rest = _SETTINGS[link.kind]
    return positions.get(link.device, at_rest) == closes
