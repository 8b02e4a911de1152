"""What stands on every way from the panel: protecting devices and breakers, and terminals."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.trace.dominators import Dominators
from linter.wiring.model import LinkKind, PanelLanding, Spot, Wiring

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.trace.nets import Nets, Way

_AT_BREAKER = frozenset({Spot.BREAKER, Spot.BREAKER_NEUTRAL})


class Protector(NamedTuple):
    """What a way goes through from line to load: a device, or a breaker by panel and space."""

    device: str | None
    breaker: tuple[str, int] | None


class _Graph:
    """The nets, and a vertex more for each thing that a way goes through from line to load."""

    def __init__(self, nets: Nets, landings: Mapping[str, PanelLanding]) -> None:
        self.after: list[list[int]] = [[] for _ in nets.ways]
        self.protectors: dict[int, Protector] = {}
        self.of_device: dict[str, list[int]] = {}
        for net, ways in enumerate(nets.ways):
            self.after[net] += [self._step(way) for way in ways]
        self.root = self._vertex()
        self._breakers: dict[tuple[str, int], int] = {}
        for wire, landing in landings.items():
            self.after[self._source(landing)].append(nets.of[wire])

    def _vertex(self) -> int:
        self.after.append([])
        return len(self.after) - 1

    def _step(self, way: Way) -> int:
        link = way.link
        if link is None or link.kind is not LinkKind.LINE_TO_LOAD or not way.forward:
            return way.to
        passage = self._vertex()
        self.after[passage].append(way.to)
        self.protectors[passage] = Protector(link.device, None)
        self.of_device.setdefault(link.device, []).append(passage)
        return passage

    def _source(self, landing: PanelLanding) -> int:
        if landing.spot not in _AT_BREAKER or landing.space is None:
            return self.root
        place = (landing.panel, landing.space)
        if place not in self._breakers:
            self._breakers[place] = self._vertex()
            self.protectors[self._breakers[place]] = Protector(None, place)
            self.after[self.root].append(self._breakers[place])
        return self._breakers[place]


class Ways:
    """All ways from certain landings in panels: those of hots, of neutrals, or of bonds."""

    def __init__(self, wiring: Wiring, nets: Nets, landings: Mapping[str, PanelLanding]) -> None:
        self._wiring = wiring
        self._nets = nets
        self._graph = _Graph(nets, landings)
        self._tree = Dominators(self._graph.after, self._graph.root)

    def reaches(self, net: int) -> bool:
        """Whether any way leads to the net."""
        return self._tree.reaches(net)

    def protectors_before(self, net: int) -> tuple[Protector, ...]:
        """What every way to the net goes through from line to load, nearest the panel first."""
        known = self._graph.protectors
        found = [known[vertex] for vertex in self._tree.before(net) if vertex in known]
        return tuple(reversed(found))

    def lost_without(self, device: str) -> tuple[str, ...]:
        """The wire ends at a device that only its terminals join with the panel.

        What lies on its load side is not meant: that is there to hang on it.
        """
        lost: list[str] = []
        for terminal in self._wiring.by_device.get(device, ()):
            group = self._nets.of[terminal.id]
            if not self._is_load_side(device, group):
                wires = self._wires_on(terminal.id)
                lost += [each for each in wires if self._tree.dominates(group, self._nets.of[each])]
        return tuple(dict.fromkeys(lost))

    def _wires_on(self, terminal: str) -> tuple[str, ...]:
        landing = self._wiring.landings.get(terminal)
        if landing is None:
            return ()
        if landing.pigtail is None:
            return landing.wire_ends
        return self._wiring.joints[self._wiring.pigtails[landing.pigtail].joint].wire_ends

    def _is_load_side(self, device: str, group: int) -> bool:
        passages = self._graph.of_device.get(device, ())
        return any(self._tree.dominates(passage, group) for passage in passages)
