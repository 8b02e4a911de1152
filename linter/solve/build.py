"""From a job and its wiring to a network: what is one node, what lies between nodes.

Each conductor of a cable is a resistor between its two ends. Joints, landings, pigtails, unbroken
tabs, closed switches and devices between line and load have no resistance: what they tie is one
node. A fault leaves a contact out, or puts a resistor in its stead.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.solve.bars import Bars, bar_of, bars_of, legs_of_faults
from linter.solve.contacts import Contacts, NotThere, contacts_of
from linter.solve.loads import Hung, Outlet, hung_of, outlets_of, unstated
from linter.solve.metals import METALS, resistance
from linter.solve.network import Load, Missing, Network, Wire
from linter.solve.scenario import EVERYTHING_ON, Scenario, Touching
from linter.wiring.model import LinkKind, Role, Spot
from linter.wiring.unions import Unions

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from linter.job.cables import Cable
    from linter.job.jobs import Job
    from linter.wiring.model import CablePart, Link, Wiring

# Ohms: what a resistor is taken for at the least, so that a cable of no length is still one.
LEAST = 1e-6
_SETTINGS = {
    LinkKind.CLOSED_WHEN_ON: "on",
    LinkKind.THROW_1: "throw 1",
    LinkKind.THROW_2: "throw 2",
}
_AT_REST = {LinkKind.CLOSED_WHEN_ON: "on", LinkKind.THROW_1: "throw 1", LinkKind.THROW_2: "throw 1"}


def network_of(job: Job, wiring: Wiring, scenario: Scenario = EVERYTHING_ON) -> Network:
    """The network of a wiring in one state.

    What is not known of a conductor or a load stands in the network as missing, with its facts.
    Raises `KeyError` for a supply that the job does not have and `NotThere` for a fault or a load
    at a place that the wiring does not have.
    """
    return _Building(job, wiring, scenario).network()


class _Between(NamedTuple):
    """A resistor between two ids."""

    name: str
    one: str
    other: str
    ohms: float | None
    missing: tuple[Missing, ...] = ()


class _Building:
    """The parts of a network, put together in order: nodes, wires, loads."""

    def __init__(self, job: Job, wiring: Wiring, scenario: Scenario) -> None:
        self._job, self._wiring, self._scenario = job, wiring, scenario
        supply = job.usual_supply if scenario.supply is None else job.supplies[scenario.supply]
        self._supply = supply
        landings = wiring.panel_landings.values()
        fed = frozenset(each.panel for each in landings if each.spot is Spot.FEED)
        self._bars: Bars = bars_of(job, supply, fed, scenario.faults)
        self._contacts: Contacts = (
            contacts_of(wiring, scenario.faults) if scenario.faults else Contacts()
        )
        self._doubts: list[tuple[str, Missing]] = []
        self._between: list[_Between] = []

    def network(self) -> Network:
        nodes = self._nodes()
        outlets = outlets_of(self._job, self._wiring)
        self._add_conductors()
        self._add_touches(nodes)
        self._add_doubts()
        loads = self._loads(nodes, outlets)
        wires = [
            Wire(name, nodes[one], nodes[other], ohms, missing)
            for name, one, other, ohms, missing in self._between
        ]
        return Network(
            nodes,
            max(nodes.values(), default=-1) + 1,
            {nodes[each]: volts for each, volts in self._bars.held.items()},
            tuple(wires),
            loads,
            tuple((nodes[each], missing) for each, missing in self._doubts),
            self._bars.missing,
            {name: each.pairs for name, each in outlets.items()},
            self._breakers(),
            unstated(self._job, outlets, self._scenario),
        )

    def _nodes(self) -> dict[str, int]:
        wiring = self._wiring
        unions = Unions(
            [
                *self._bars.ids,
                *wiring.wire_ends,
                *wiring.joints,
                *wiring.pigtails,
                *wiring.terminals,
            ]
        )
        for one, other in self._bars.tied:
            unions.tie(one, other)
        for each, place in self._touching():
            if each in self._contacts.loose:
                ohms = max(self._contacts.loose[each], LEAST)
                self._between.append(_Between(f"loose {each}", each, place, ohms))
            elif each not in self._contacts.off:
                unions.tie(each, place)
        for pigtail, terminal in self._tips():
            unions.tie(pigtail, terminal)
        positions = dict(self._scenario.switches)
        for link in wiring.links:
            if link.device not in self._contacts.taken_out and _is_closed(link, positions):
                unions.tie(*link.ends)
        return unions.numbered()

    def _touching(self) -> Iterator[tuple[str, str]]:
        """Each wire end and pigtail with the joint, terminal or bar that it is at."""
        wiring, legs = self._wiring, legs_of_faults(self._scenario.faults)
        for joint in wiring.joints.values():
            for each in (*joint.wire_ends, *joint.pigtails):
                yield each, joint.id
        for wire, landing in wiring.panel_landings.items():
            found = bar_of(self._job, landing, legs)
            if isinstance(found, Missing):
                self._doubts.append((wire, found))
            else:
                yield wire, found
        yield from self._on_terminals()

    def _on_terminals(self) -> Iterator[tuple[str, str]]:
        wiring, taken_out = self._wiring, self._contacts.taken_out
        for on in wiring.landings.values():
            if wiring.terminals[on.terminal].device not in taken_out:
                for each in on.wire_ends:
                    yield each, on.terminal

    def _tips(self) -> Iterator[tuple[str, str]]:
        """Each pigtail with its terminal; the contact that faults open is the one in the joint."""
        wiring, taken_out = self._wiring, self._contacts.taken_out
        for on in wiring.landings.values():
            if on.pigtail is not None and wiring.terminals[on.terminal].device not in taken_out:
                yield on.pigtail, on.terminal

    def _add_conductors(self) -> None:
        temperature = self._scenario.temperature
        for name, parts in self._wiring.parts.items():
            cable = self._job.cables[name]  # type: ignore[index]  # the wiring has plain names
            for part in parts:
                found = _ohms(cable, part, temperature)
                missing, ohms = (found, None) if isinstance(found, tuple) else ((), found)
                name_ = f"{part.cable}.{part.colour}"
                self._between.append(_Between(name_, *part.ends, ohms, missing))

    def _add_touches(self, nodes: Mapping[str, int]) -> None:
        for fault in self._scenario.faults:
            if isinstance(fault, Touching):
                for each in (fault.one, fault.other):
                    if each not in nodes:
                        raise NotThere(each)
                name = f"{fault.one} touching {fault.other}"
                ohms = max(fault.ohms, LEAST)
                self._between.append(_Between(name, fault.one, fault.other, ohms))
        for bond, earth in self._bars.earths:
            missing = (Missing("supply", self._supply.name, "earth resistance"),)
            self._between.append(_Between(f"{earth} of {bond}", bond, earth, None, missing))

    def _add_doubts(self) -> None:
        """What is not known of the wiring itself: sheaths of cables, uses of conductors."""
        at_box: dict[str, list[Missing]] = {}
        for name in self._wiring.unknown_cables:
            cable = self._job.cables[name]  # type: ignore[index]  # the wiring has plain names
            for box in (cable.from_, cable.to):
                sheath = Missing("cable", name, "insulated_conductors")
                at_box.setdefault(str(box), []).append(sheath)
        for end in self._wiring.wire_ends.values():
            if end.use.role is Role.UNKNOWN:
                use = Missing("conductor", end.name, "role")
                self._doubts.append((end.id, use))
                at_box.setdefault(end.box, []).append(use)
        if not at_box:
            return
        for end in self._wiring.wire_ends.values():
            if end.box in self._wiring.boxes:
                self._doubts += [(end.id, each) for each in at_box.get(end.box, ())]

    def _loads(self, nodes: Mapping[str, int], outlets: Mapping[str, Outlet]) -> tuple[Load, ...]:
        loads = []
        for hung in hung_of(self._job, outlets, self._scenario):
            for each in hung.between:
                if each not in nodes:
                    raise NotThere(each)
            if hung.draw.outlet not in self._contacts.taken_out:
                loads.append(_load(hung, nodes))
        return tuple(loads)

    def _breakers(self) -> dict[tuple[str, int, int], tuple[tuple[str, int], ...]]:
        found: dict[tuple[str, int, int], list[tuple[str, int]]] = {}
        for wire, landing in self._wiring.panel_landings.items():
            if landing.spot is Spot.BREAKER:
                end = self._wiring.wire_ends[wire]
                pole = (landing.panel, landing.space or 0, landing.pole or 0)
                found.setdefault(pole, []).append((end.name, 1 if end.at_from else -1))
        return {pole: tuple(each) for pole, each in found.items()}


def _load(hung: Hung, nodes: Mapping[str, int]) -> Load:
    one, other = (nodes[each] for each in hung.between)
    draw = hung.draw
    watts = None if hung.missing else draw.watts
    return Load(draw.name, draw.outlet, one, other, watts, draw.volts, draw.constant, hung.missing)


def _ohms(cable: Cable, part: CablePart, temperature: float) -> float | tuple[Missing, ...]:
    """The resistance of a conductor, or what is to be known for it."""
    if part.size is not None and cable.length is not None and cable.material is not None:
        metal = METALS[cable.material]
        ohms = resistance(metal, part.size.value, cable.length.value, temperature)
        return max(ohms, LEAST)
    missing = []
    if part.size is None:
        missing.append(Missing("conductor", f"{part.cable}.{part.colour}", "size"))
    if cable.length is None:
        missing.append(Missing("cable", cable.name, "length"))
    if cable.material is None:
        missing.append(Missing("cable", cable.name, "material"))
    return tuple(missing)


def _is_closed(link: Link, positions: Mapping[str, str]) -> bool:
    if link.kind not in _SETTINGS:
        return True
    return positions.get(link.device, _AT_REST[link.kind]) == _SETTINGS[link.kind]
