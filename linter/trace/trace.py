"""What reaches every wire end and terminal, from the breakers and bars of the panel outward."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING, NamedTuple, TypeVar

from linter.job.devices import Device, Switch
from linter.job.stated import PanelId
from linter.trace.distance import Distances
from linter.trace.nets import Nets, nets_of
from linter.trace.reach import reached_from
from linter.trace.uncertain import uncertain_boxes
from linter.trace.ways import Protector, Ways
from linter.wiring.model import PanelLanding, Role, Spot, Wiring

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.job.jobs import Job

T = TypeVar("T", str, "BreakerPole")
_NEUTRAL_SPOTS = frozenset({Spot.NEUTRAL_BAR, Spot.BREAKER_NEUTRAL})
_HOT_TERMINALS = frozenset({"hot", "hot 2", "line hot", "line hot 2"})
_NEUTRAL_TERMINALS = frozenset({"neutral", "neutral 2", "line neutral"})
_GROUND_FAULT, _ARC_FAULT = "ground-fault", "arc-fault"


class BreakerPole(NamedTuple):
    """One pole of a breaker, counted from 0."""

    panel: str
    space: int
    pole: int


class Trace:
    """What reaches what. Ids are those of wire ends, joints, pigtails and terminals of the wiring.

    Switches count as being in any setting: a hot "reaches" where some setting lets it.
    """

    def __init__(self, job: Job, wiring: Wiring) -> None:
        self._job, self._wiring = job, wiring
        self._nets: Nets = nets_of(wiring)
        landings = wiring.panel_landings
        hots = {wire: each for wire, each in landings.items() if each.spot is Spot.BREAKER}
        neutrals = {wire: each for wire, each in landings.items() if each.spot in _NEUTRAL_SPOTS}
        bonds = {wire: each for wire, each in landings.items() if each.spot is Spot.BOND_BAR}
        self._hots = _by_net(self._nets, {w: _pole(each) for w, each in hots.items()})
        circuit_of = {wire: wiring.wire_ends[wire].use.circuit or "" for wire in neutrals}
        self._neutrals = _by_net(self._nets, circuit_of)
        self._hot_ways = Ways(wiring, self._nets, hots)
        self._neutral_ways = Ways(wiring, self._nets, neutrals)
        self._bond_ways = Ways(wiring, self._nets, bonds)
        self._devices: Mapping[str, Device] = {
            device.name: device for box in job.boxes.values() for device in box.holds
        }
        self.uncertain_boxes = uncertain_boxes(job, wiring)

    @cached_property
    def _distances(self) -> Distances:
        return Distances(self._wiring)

    @property
    def order(self) -> Mapping[str, int]:
        """The number of cables from the panel to all that anything of the panel reaches."""
        return self._distances.of

    def hots_at(self, name: str) -> tuple[BreakerPole, ...]:
        """The breaker poles that reach a wire end or terminal in some setting of the switches."""
        return self._hots.get(self._nets.of[name], ())

    def neutral_at(self, name: str) -> bool:
        """Whether a neutral of a panel reaches it."""
        return self._nets.of[name] in self._neutrals

    def neutral_circuits_at(self, name: str) -> tuple[str, ...]:
        """The circuits whose neutral, from the panel, reaches it; "" is one without a name."""
        return self._neutrals.get(self._nets.of[name], ())

    def bond_at(self, name: str) -> bool:
        """Whether the bond of a panel reaches it."""
        return self._bond_ways.reaches(self._nets.of[name])

    def protectors_before(self, name: str) -> tuple[Protector, ...]:
        """What every hot (or, where none comes, every neutral) goes through to get there.

        Devices with line and load sides, and breakers, of any kind; nearest the panel first.
        """
        net = self._nets.of[name]
        ways = self._hot_ways if self._hot_ways.reaches(net) else self._neutral_ways
        return ways.protectors_before(net)

    def ground_fault_before(self, name: str) -> tuple[Protector, ...]:
        """Those of them that are of the ground-fault kind."""
        return self._of_kind(name, _GROUND_FAULT)

    def arc_fault_before(self, name: str) -> tuple[Protector, ...]:
        """Those of them that are of the arc-fault kind."""
        return self._of_kind(name, _ARC_FAULT)

    def protectors_of(self, device: str) -> tuple[Protector, ...]:
        """What protects an outlet: all before its hots, and itself if it has a load side."""
        terminals = {each.name: each.id for each in self._wiring.by_device.get(device, ())}
        if "load hot" in terminals:
            return self.protectors_before(terminals["load hot"])
        hots = [terminals[name] for name in sorted(_HOT_TERMINALS & terminals.keys())]
        each_way = [self.protectors_before(name) for name in hots if self.hots_at(name)]
        if not each_way:
            return ()
        return tuple(one for one in each_way[0] if all(one in other for other in each_way))

    def neutral_lost_without(self, device: str) -> tuple[str, ...]:
        """Wire ends at a device that lose their neutral when it is taken out."""
        return self._neutral_ways.lost_without(device)

    def bond_lost_without(self, device: str) -> tuple[str, ...]:
        """Wire ends at a device that lose their bond when it is taken out."""
        return self._bond_ways.lost_without(device)

    def hot_lost_without(self, device: str) -> tuple[str, ...]:
        """Wire ends at a device that lose their hot when it is taken out."""
        return self._hot_ways.lost_without(device)

    def multiwire_neutral_depends_on(self, device: str) -> bool:
        """Whether a neutral that several hots in the device's box share goes on only through it."""
        lost = {self._wiring.wire_ends[each].use for each in self.neutral_lost_without(device)}
        circuits = {use.circuit for use in lost if use.role is Role.NEUTRAL}
        if not circuits:
            return False
        box = self._wiring.boxes[self._devices[device].box]
        hots = {end.use for end in box.wire_ends if end.use.role is Role.HOT}
        return any(sum(use.circuit == each for use in hots) > 1 for each in circuits)

    @property
    def joined_neutrals(self) -> tuple[tuple[str, ...], ...]:
        """The sets of circuits whose neutrals are joined somewhere outside the panel."""
        return tuple(sorted({each for each in self._neutrals.values() if len(each) > 1}))

    def is_dead(self, device: str) -> bool:
        """Whether an outlet lacks a hot or, where it takes one, the neutral; never a switch."""
        if isinstance(self._devices[device], Switch):
            return False
        for terminal in self._wiring.by_device.get(device, ()):
            if terminal.name in _HOT_TERMINALS and not self.hots_at(terminal.id):
                return True
            if terminal.name in _NEUTRAL_TERMINALS and not self.neutral_at(terminal.id):
                return True
        return False

    @property
    def dead_outlets(self) -> tuple[str, ...]:
        """The outlets that are dead, in the order of the job file."""
        return tuple(name for name in self._devices if self.is_dead(name))

    def distance(self, name: str) -> int | None:
        """How many cables lie between the panel and it; None where it is not reached."""
        return self.order.get(name)

    def path_to(self, name: str) -> tuple[str, ...]:
        """The ids from the panel to it, along a shortest way."""
        return self._distances.path_to(name)

    def _of_kind(self, name: str, kind: str) -> tuple[Protector, ...]:
        found = self.protectors_before(name)
        return tuple(each for each in found if kind in (self._protection(each) or ()))

    def _protection(self, protector: Protector) -> tuple[str, ...] | None:
        if protector.device is not None:
            return self._devices[protector.device].protection
        if protector.breaker is None:
            return None
        panel, space = protector.breaker
        return self._job.panels[PanelId(panel)].breakers[space].protection


def trace(job: Job, wiring: Wiring) -> Trace:
    """What reaches what in a wiring; cost grows with the size of the job."""
    return Trace(job, wiring)


def _pole(landing: PanelLanding) -> BreakerPole:
    return BreakerPole(landing.panel, landing.space or 0, landing.pole or 0)


def _by_net(nets: Nets, sources: Mapping[str, T]) -> dict[int, tuple[T, ...]]:
    """For each net, the sources that reach it, in order; sources by the wire they begin at."""
    starts: dict[T, list[int]] = {}
    for wire, source in sources.items():
        starts.setdefault(source, []).append(nets.of[wire])
    found: dict[int, list[T]] = {}
    for source in sorted(starts):
        for net in reached_from(nets, starts[source]):
            found.setdefault(net, []).append(source)
    return {net: tuple(each) for net, each in found.items()}
