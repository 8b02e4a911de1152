"""What reaches every wire end and terminal, from the breakers and bars of the panel outward."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING, NamedTuple

from linter.trace.paths import Way, both_ways, in_words, source_in_words, terminal_in_words
from linter.trace.section import Section
from linter.trace.solid import NO_SOURCE, OF_SWITCHES, Panels, Source, Sources, by_role
from linter.trace.uncertain import uncertain_boxes
from linter.wiring.model import Role, Wiring
from linter.wiring.sections import sections_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from linter.job.devices import Device
    from linter.job.jobs import Job
    from linter.trace.meetings import Meeting
    from linter.trace.outlets import OutletTrace
    from linter.trace.rings import Ring
    from linter.trace.ways import Protector, Ways

_HOT_TERMINALS = frozenset({"hot", "hot 2", "line hot", "line hot 2"})
_LOAD_TERMINALS = frozenset({"load hot", "load hot 2"})
_GROUND_FAULT = "ground-fault"
Piece = tuple[int, int]  # a piece of metal: its section, and its number there


class BreakerPole(NamedTuple):
    """One pole of a breaker, counted from 0."""

    panel: str
    space: int
    pole: int


class Trace:
    """What reaches what. Ids are those of wire ends, joints, pigtails and terminals of the wiring.

    A hot "reaches" where some position of all switches lets it.
    """

    def __init__(self, job: Job, wiring: Wiring) -> None:
        self._job, self._wiring = job, wiring
        panels = Panels(job, wiring)
        self._sections = tuple(
            Section(panels, each, number) for number, each in enumerate(sections_of(wiring))
        )
        self._at = _by_name(self._sections)
        self._by_box = {box: each for each in self._sections for box in each.wiring.boxes}
        self._devices: Mapping[str, Device] = {
            device.name: device for box in job.boxes.values() for device in box.holds
        }
        self.not_followed: frozenset[str] = frozenset(
            name
            for section in self._sections
            for group in section.positions.groups
            if not group.is_followed
            for name in group.switches
        )
        at_them = {self._devices[name].box for name in self.not_followed}
        self.uncertain_boxes = uncertain_boxes(job, wiring, at_them)

    @cached_property
    def meetings(self) -> tuple[Meeting, ...]:
        """Where sources meet that are to be kept apart, each with the way that proves it."""
        return tuple(each for section in self._sections for each in section.meetings)

    @cached_property
    def rings(self) -> tuple[Ring, ...]:
        """Hots and neutrals in parallel: a way round for each."""
        return tuple(each for section in self._sections for each in section.rings)

    def outlet(self, device: str) -> OutletTrace:
        """What stands between the terminals of an outlet, in every position of the switches."""
        return self._section_of(device).outlets.at(device)

    def sources_at(self, name: str) -> Sources:
        """All that reaches a wire end, joint, pigtail or terminal in some position."""
        return self._at[name].sources_at(name)

    def sources_in_words(self, name: str) -> tuple[str, ...]:
        """What reaches it in some position of the switches, as a person calls it."""
        found = sorted(self.sources_at(name), key=by_role)
        return tuple(dict.fromkeys(source_in_words(each) for each in found))

    def is_switched(self, name: str) -> bool:
        """Whether it hangs on a position of switches what reaches it."""
        here = self._at[name]
        return here.positions.group_of(here.solid.of(name)) is not None

    def has_only_neutral(self, name: str) -> bool:
        """Whether the neutral of a panel comes to it, however switches stand, and no hot."""
        here = self._at[name].solid
        own = here.sources.get(here.of(name), NO_SOURCE)
        return bool(own) and all(each.role is Role.NEUTRAL for each in own)

    def piece_of(self, name: str) -> Piece:
        """The piece of metal that it is part of; switches part pieces."""
        here = self._at[name]
        return here.number, here.solid.of(name)

    def way_from(self, source: Source, name: str) -> Way:
        """A shortest way from a source to it, switches in any position; none where it is none."""
        here = self._at[name]
        starts = [wire for wire, each in here.solid.source_of.items() if each == source]
        contacts = [link for link in here.wiring.links if link.kind in OF_SWITCHES]
        return here.paths.way(starts, name.__eq__, both_ways(contacts))

    def tested(self, device: str) -> str:
        """What reaches the terminals of an outlet and by which way, in words."""
        names = (name for place in self.outlet(device).places for name in place.terminals)
        return "; ".join(self._reached_by(name) for name in dict.fromkeys(names))

    def _reached_by(self, name: str) -> str:
        sources = sorted(self.sources_at(name), key=by_role)
        if not sources:
            return f"nothing reaches the {terminal_in_words(self._wiring.terminals[name])}"
        return self.in_words(self.way_from(sources[0], name))

    def neutral_leaves_protection(self, device: str) -> bool:
        """Whether a ground-fault device stands in the way of an outlet's hot or neutral alone."""
        here = self._section_of(device)
        return any(
            self._guarding(here.hot_ways, here.nets.of[place.terminals[0]])
            != self._guarding(here.neutral_ways, here.nets.of[place.terminals[1]])
            for place in self.outlet(device).places
            if not place.is_between_hots
            and here.hot_ways.reaches(here.nets.of[place.terminals[0]])
            and here.neutral_ways.reaches(here.nets.of[place.terminals[1]])
        )

    def _guarding(self, ways: Ways, net: int) -> set[str]:
        """The devices of the ground-fault kind that all ways to a net go through."""
        found = (each.device for each in ways.protectors_before(net) if each.device)
        return {each for each in found if _GROUND_FAULT in (self._devices[each].protection or ())}

    def _section_of(self, device: str) -> Section:
        return self._by_box[self._devices[device].box]

    def in_words(self, way: Way) -> str:
        """A way as a person follows it, joint by joint."""
        return in_words(self._wiring, way)

    def hots_at(self, name: str) -> tuple[BreakerPole, ...]:
        """The breaker poles that reach a wire end or terminal in some setting of the switches."""
        found = {each.breaker_pole for each in self.sources_at(name) if each.role is Role.HOT}
        return tuple(BreakerPole(*each) for each in sorted(found))

    def neutral_at(self, name: str) -> bool:
        """Whether a neutral of a panel reaches it."""
        return any(each.role is Role.NEUTRAL for each in self.sources_at(name))

    def bond_at(self, name: str) -> bool:
        """Whether the bond of a panel reaches it."""
        here = self._at[name]
        return here.bond_ways.reaches(here.nets.of[name])

    def protectors_before(self, name: str) -> tuple[Protector, ...]:
        """What every hot (or, where none comes, every neutral) goes through to get there.

        Devices with line and load sides, and breakers, of any kind; nearest the panel first.
        """
        here = self._at[name]
        net = here.nets.of[name]
        ways = here.hot_ways if here.hot_ways.reaches(net) else here.neutral_ways
        return ways.protectors_before(net)

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

    def is_fed_at_load_side(self, device: str) -> bool:
        """Whether a hot comes to a load terminal of a device by a way that passes it by."""
        loads = (
            each.id
            for each in self._wiring.by_device.get(device, ())
            if each.name in _LOAD_TERMINALS and self.hots_at(each.id)
        )
        return any(
            all(before.device != device for before in self.protectors_before(each))
            for each in loads
        )

    def neutral_lost_without(self, device: str) -> tuple[str, ...]:
        """Wire ends at a device that lose their neutral when it is taken out."""
        return self._section_of(device).neutral_ways.lost_without(device)

    def bond_lost_without(self, device: str) -> tuple[str, ...]:
        """Wire ends at a device that lose their bond when it is taken out."""
        return self._section_of(device).bond_ways.lost_without(device)

    def multiwire_neutral_depends_on(self, device: str) -> bool:
        """Whether a neutral that several hots in the device's box share goes on only through it."""
        lost = {self._wiring.wire_ends[each].use for each in self.neutral_lost_without(device)}
        circuits = {use.circuit for use in lost if use.role is Role.NEUTRAL}
        if not circuits:
            return False
        box = self._wiring.boxes[self._devices[device].box]
        hots = {end.use for end in box.wire_ends if end.use.role is Role.HOT}
        return any(sum(use.circuit == each for use in hots) > 1 for each in circuits)

    @cached_property
    def joined_neutrals(self) -> tuple[tuple[str, ...], ...]:
        """The sets of circuits whose neutrals are joined somewhere outside the panel."""
        found = {
            _circuits(each.positions.reach(piece))
            for each in self._sections
            for piece in {*each.solid.sources, *each.positions.groups_at}
        }
        return tuple(sorted(each for each in found if len(each) > 1))

    def distance(self, name: str) -> int | None:
        """How many cables lie between the panel and it; None where it is not reached."""
        return self._at[name].distances.of.get(name)

    def path_to(self, name: str) -> tuple[str, ...]:
        """The ids from the panel to it, along a shortest way."""
        return self._at[name].distances.path_to(name)


def trace(job: Job, wiring: Wiring) -> Trace:
    """What reaches what in a wiring; cost grows with the size of the job."""
    return Trace(job, wiring)


def _by_name(sections: Iterable[Section]) -> dict[str, Section]:
    """The section of every wire end, joint, pigtail and terminal."""
    found: dict[str, Section] = {}
    for section in sections:
        here = section.wiring
        for names in (here.wire_ends, here.joints, here.pigtails, here.terminals):
            found.update(dict.fromkeys(names, section))
    return found


def _circuits(sources: Sources) -> tuple[str, ...]:
    return tuple(sorted({each.circuit for each in sources if each.role is Role.NEUTRAL}))
