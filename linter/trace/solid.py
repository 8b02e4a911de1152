"""What is one piece of metal whatever the switches do, and the sources that it hangs on."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.job.stated import PanelId
from linter.wiring.legs import LEGS, has_one_leg, leg_is_known, leg_of_pole
from linter.wiring.model import LinkKind, PanelLanding, Role, Spot, Use, Wiring

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from linter.job.jobs import Job
    from linter.job.panel import Panel
    from linter.trace.nets import Nets

OF_SWITCHES = frozenset({LinkKind.CLOSED_WHEN_ON, LinkKind.THROW_1, LinkKind.THROW_2})
NEUTRAL_SPOTS = frozenset({Spot.NEUTRAL_BAR, Spot.BREAKER_NEUTRAL})
_SUB_PANEL = "sub-panel"


class Source(NamedTuple):
    """What a panel feeds a conductor from: a pole of a breaker, the neutral, the bond.

    `circuit` is that of the conductor; the leg and the pole are those of hots, the leg empty where
    the job does not tell it.
    """

    role: Role
    circuit: str = ""
    leg: str = ""
    panel: str = ""
    space: int = 0
    pole: int = 0

    @property
    def breaker_pole(self) -> tuple[str, int, int]:
        """The panel, the space and the pole of a hot."""
        return self.panel, self.space, self.pole


def legs_differ(one: Source, other: Source) -> bool | None:
    """Whether two hots are on two legs; None where that is not known.

    Poles of one breaker lie beside each other, on alternate legs, wherever it stands.
    """
    if (one.panel, one.space) == (other.panel, other.space) and not (one.leg and other.leg):
        return (one.pole - other.pole) % 2 == 1
    return one.leg != other.leg if one.leg and other.leg else None


Sources = frozenset[Source]
_RANK = {Role.HOT: 0, Role.NEUTRAL: 1, Role.BOND: 2}
NO_SOURCE: Sources = frozenset()
BOND_SOURCE = Source(Role.BOND)


def by_role(source: Source) -> tuple[int, str, str, str, int, int]:
    """The order of sources: hots, neutrals, the bond, each by its names."""
    return (_RANK[source.role], *source[1:])


class Contact(NamedTuple):
    """A contact of a switch between two pieces of metal."""

    device: str
    kind: LinkKind
    one: int
    other: int


class Solid:
    """The pieces of metal of a wiring, numbered as one of the nets each holds.

    Joints, terminals, tabs and devices between line and load are metal; contacts of switches are
    not. `sources` has the pieces that a panel feeds, and `landed` the ends there, by piece.
    """

    def __init__(self, panels: Panels, wiring: Wiring, nets: Nets) -> None:
        self._nets = nets
        self.of_net = _tops(nets)
        self.source_of: dict[str, Source] = {}
        gathered: dict[int, set[Source]] = {}
        for wire, landing in wiring.panel_landings.items():
            source = panels.source(landing, wiring.wire_ends[wire].use)
            if source is not None:
                self.source_of[wire] = source
                gathered.setdefault(self.of(wire), set()).add(source)
        self.sources: Mapping[int, Sources] = {
            piece: frozenset(each) for piece, each in gathered.items()
        }
        self.contacts = tuple(_contacts(nets, self.of_net))

    def of(self, name: str) -> int:
        """The piece that a wire end, joint, pigtail or terminal is part of."""
        return self.of_net[self._nets.of[name]]

    def of_each(self) -> Iterator[int]:
        """The piece of every wire end, joint, pigtail and terminal, each as often as it has one."""
        return (self.of_net[net] for net in self._nets.of.values())


class Panels:
    """What panels feed conductors from: the leg of each pole, and bars that are joined.

    A supply that is not split has but one leg. Neutral and bond are joined in a panel as stated,
    else in one that no other panel feeds.
    """

    def __init__(self, job: Job, wiring: Wiring) -> None:
        self._job = job
        self._is_one = has_one_leg(job)
        landings = wiring.panel_landings.values()
        fed = {each.panel for each in landings if each.spot is Spot.FEED}
        self._joined = {
            name
            for name, panel in job.panels.items()
            if _has_joined_bars(panel, is_fed=name in fed)
        }

    def source(self, landing: PanelLanding, use: Use) -> Source | None:
        """What feeds a conductor of that use, landed so; none at the terminals of a feed."""
        circuit = use.circuit or ""
        if landing.spot is Spot.FEED:
            return None
        if landing.spot is Spot.BREAKER:
            place = landing.panel, landing.space or 0, landing.pole or 0
            return Source(Role.HOT, circuit, self._leg(landing), *place)
        is_bond = landing.spot is Spot.BOND_BAR
        if landing.panel in self._joined:
            # On one bar with the other, each is what it is used as.
            is_bond = use.role is Role.BOND or (is_bond and use.role is not Role.NEUTRAL)
        return BOND_SOURCE if is_bond else Source(Role.NEUTRAL, circuit)

    def _leg(self, landing: PanelLanding) -> str:
        if self._is_one or landing.space is None:
            return LEGS[0]
        panel = self._job.panels[PanelId(landing.panel)]
        breaker = panel.breakers[landing.space]
        return leg_of_pole(breaker, landing.pole or 0) if leg_is_known(breaker, panel) else ""


def _has_joined_bars(panel: Panel, *, is_fed: bool) -> bool:
    if panel.neutral_bonded is not None:
        return panel.neutral_bonded
    return not is_fed if panel.role is None else panel.role != _SUB_PANEL


def _tops(nets: Nets) -> list[int]:
    """For every net the piece of metal it is part of."""
    above = list(range(len(nets.ways)))

    def top(net: int) -> int:
        while above[net] != net:
            above[net] = above[above[net]]
            net = above[net]
        return net

    for net, ways in enumerate(nets.ways):
        for way in ways:
            if way.link is None or way.link.kind not in OF_SWITCHES:
                above[top(net)] = top(way.to)
    return [top(net) for net in range(len(above))]


def _contacts(nets: Nets, of_net: list[int]) -> Iterable[Contact]:
    for net, ways in enumerate(nets.ways):
        for way in ways:
            link = way.link
            if link is not None and way.forward and link.kind in OF_SWITCHES:
                yield Contact(link.device, link.kind, of_net[net], of_net[way.to])
