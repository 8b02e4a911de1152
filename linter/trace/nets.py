"""Conductors that are one: nets by union-find, and the ways between nets through devices.

A net holds conductors of cables, joints and pigtails. The terminals of a device stand apart from
it, those that a tab ties as one, so that it shows what hangs on a device.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.wiring.model import BoxWiring, Link, LinkKind, Wiring
from linter.wiring.unions import Unions

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

_TIED = frozenset({LinkKind.TAB, LinkKind.ALWAYS})


class Way(NamedTuple):
    """A way out of a net: to which net, and through which link, if not straight."""

    to: int
    link: Link | None = None
    forward: bool = True


class Nets(NamedTuple):
    """The nets of a wiring, numbered from 0; `of` gives the net of every id."""

    of: Mapping[str, int]
    ways: list[list[Way]]


def nets_of(wiring: Wiring) -> Nets:
    """The nets of a wiring and the ways between them."""
    unions = Unions()
    for box in wiring.boxes.values():
        _add_box(unions, box)
    for joint in wiring.spliced_in_panels:
        unions.add(joint.id, *joint.wire_ends)
    for each in (*wiring.wire_ends, *wiring.pigtails):
        if each not in unions:
            unions.add(each)
    for parts in wiring.parts.values():
        for part in parts:
            unions.tie(*part.ends)
    of, size = unions.numbered()
    ways: list[list[Way]] = [[] for _ in range(size)]
    _add_landings(wiring, of, ways)
    _add_links(wiring.links, of, ways)
    return Nets(of, ways)


def _add_box(unions: Unions, box: BoxWiring) -> None:
    """Adds the joints and the terminals of a box, those that a tab ties as one."""
    for joint in box.joints:
        unions.add(joint.id, *joint.wire_ends, *joint.pigtails)
    for terminal in box.terminals:
        unions.add(terminal.id)
    for link in box.links:
        if link.kind in _TIED:
            unions.tie(*link.ends)


def _add_landings(wiring: Wiring, of: Mapping[str, int], ways: list[list[Way]]) -> None:
    for landing in wiring.landings.values():
        terminal = of[landing.terminal]
        for each in landing.all_on_it:
            ways[terminal].append(Way(of[each]))
            ways[of[each]].append(Way(terminal))


def _add_links(links: Iterable[Link], of: Mapping[str, int], ways: list[list[Way]]) -> None:
    for link in links:
        if link.kind not in _TIED:
            one, other = (of[each] for each in link.ends)
            ways[one].append(Way(other, link))
            ways[other].append(Way(one, link, forward=False))
