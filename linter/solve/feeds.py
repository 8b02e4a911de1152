"""Which conductor of a joint leads to the panel."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING

from linter.wiring.unions import Unions

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from linter.wiring.model import Wiring


class Feeds:
    """The way to the panel from every joint and terminal, as the wiring is without faults.

    Devices count as closed, switches too.
    """

    def __init__(self, wiring: Wiring) -> None:
        self._wiring = wiring

    def of(self, place: str, all_there: Iterable[str]) -> tuple[str, ...]:
        """Those of the conductors at a place that bring it nearer to the panel.

        A wire end is nearer if its cable's other end is; a pigtail brings what its joint has, seen
        from its terminal.
        """
        here = self._distance.get(place)
        if here is None:
            return ()
        return tuple(each for each in all_there if self._is_feed(each, place, here))

    def _is_feed(self, each: str, place: str, here: int) -> bool:
        if each in self._wiring.pigtails:
            return place in self._wiring.terminals
        far = self._distance.get(self._other_end[each])
        return far is not None and far < here

    @cached_property
    def _other_end(self) -> Mapping[str, str]:
        pairs = [part.ends for parts in self._wiring.parts.values() for part in parts]
        return dict(pairs) | {other: one for one, other in pairs}

    @cached_property
    def _distance(self) -> Mapping[str, int]:
        """How many cables lie between the panel and each id that anything of it reaches."""
        wiring = self._wiring
        unions = Unions([*wiring.wire_ends, *wiring.joints, *wiring.pigtails, *wiring.terminals])
        for joint in wiring.joints.values():
            for each in (*joint.wire_ends, *joint.pigtails):
                unions.tie(each, joint.id)
        for landing in wiring.landings.values():
            for each in landing.all_on_it:
                unions.tie(each, landing.terminal)
        for link in wiring.links:
            unions.tie(*link.ends)
        nodes = unions.numbered().of
        beside: dict[int, set[int]] = {}
        for one, other in self._other_end.items():
            beside.setdefault(nodes[one], set()).add(nodes[other])
        rounds = _rounds(beside, {nodes[each] for each in wiring.panel_landings})
        return {each: rounds[node] for each, node in nodes.items() if node in rounds}


def _rounds(beside: Mapping[int, set[int]], first: set[int]) -> dict[int, int]:
    found: dict[int, int] = {}
    fresh, number = first, 0
    while fresh:
        found |= dict.fromkeys(fresh, number)
        around = {other for node in fresh for other in beside.get(node, ())}
        fresh, number = around - found.keys(), number + 1
    return found
