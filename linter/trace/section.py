"""One section of a wiring, traced: its pieces of metal, switch positions and ways from the panel.

Sections are joined by the bars of panels alone, so each is traced for itself.
"""

from __future__ import annotations

from functools import cached_property

from linter.trace.distance import Distances
from linter.trace.meetings import Meeting, meetings
from linter.trace.nets import nets_of
from linter.trace.outlets import Outlets
from linter.trace.paths import Paths
from linter.trace.positions import Positions
from linter.trace.rings import Ring, rings
from linter.trace.solid import Panels, Solid, Sources
from linter.trace.ways import Ways
from linter.wiring.model import Role, Wiring


class Section:
    """What reaches what in one section; `number` tells it from the others."""

    def __init__(self, panels: Panels, wiring: Wiring, number: int) -> None:
        self.wiring, self.number = wiring, number
        self.nets = nets_of(wiring)
        self.solid = Solid(panels, wiring, self.nets)
        self.positions = Positions(self.solid.sources, self.solid.contacts)
        self._reach: dict[int, Sources] = {}
        self.hot_ways, self.neutral_ways, self.bond_ways = map(
            self._ways, (Role.HOT, Role.NEUTRAL, Role.BOND)
        )

    def _ways(self, role: Role) -> Ways:
        """All ways from the landings in panels that are sources of that role."""
        of_role = [wire for wire, each in self.solid.source_of.items() if each.role is role]
        landings = self.wiring.panel_landings
        return Ways(self.wiring, self.nets, {wire: landings[wire] for wire in of_role})

    def sources_at(self, name: str) -> Sources:
        """All that reaches an id in some position of the switches."""
        piece = self.solid.of(name)
        if piece not in self._reach:
            self._reach[piece] = self.positions.reach(piece)
        return self._reach[piece]

    @cached_property
    def outlets(self) -> Outlets:
        """What stands between the terminals of its outlets."""
        return Outlets(self.solid, self.positions, self.wiring.by_device, self.wiring.links)

    @cached_property
    def distances(self) -> Distances:
        """How far everything in it is from the panel."""
        return Distances(self.wiring)

    @cached_property
    def paths(self) -> Paths:
        """The ways along its conductors."""
        return Paths(self.wiring)

    @property
    def meetings(self) -> tuple[Meeting, ...]:
        """Where sources meet in it that are to be kept apart."""
        return meetings(self.wiring, self.solid, self.positions, lambda: self.paths)

    @property
    def rings(self) -> tuple[Ring, ...]:
        """The ways round in it."""
        return rings(self.wiring, self.solid, lambda: self.paths)
