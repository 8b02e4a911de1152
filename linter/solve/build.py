"""From a job and its wiring to a network: what is one node, what lies between nodes.

Each conductor of a cable is a resistor between its two ends. Joints, landings, pigtails, unbroken
tabs, closed switches and devices between line and load have no resistance: what they tie is one
node. A fault leaves a contact out, or puts a resistor in its stead.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.job.stated import BoxId, CableId
from linter.solve.bars import SPLIT, bar_of, bars_of, leg_is_told, legs_of_faults
from linter.solve.contacts import Contacts, contacts_of
from linter.solve.loads import hung_of, outlets_in, unplaced, unstated
from linter.solve.metals import METALS, resistance
from linter.solve.network import Fed, Load, Missing, Network, NotThere, Wire
from linter.solve.nodes import add_box, kept
from linter.solve.scenario import EVERYTHING_ON, Scenario, Touching
from linter.wiring.model import Role, Spot
from linter.wiring.unions import Unions

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from linter.job.cables import Cable
    from linter.job.jobs import Job
    from linter.solve.bars import Bars
    from linter.solve.loads import Outlet
    from linter.wiring.model import BoxWiring, CablePart, Wiring

# Ohms: what a resistor is taken for at the least, so that a cable of no length is still one.
LEAST = 1e-6


def network_of(job: Job, wiring: Wiring, scenario: Scenario = EVERYTHING_ON) -> Network:
    """The network of a wiring in one state.

    What is not known of a conductor or a load stands in the network as missing, with its facts.
    Raises `KeyError` for a supply that the job does not have and `NotThere` for a fault or a load
    at a place that the wiring does not have.
    """
    return _Building(job, wiring, scenario).network()


class _Building:
    """The parts of a network, put together in order: nodes, wires, loads."""

    def __init__(self, job: Job, wiring: Wiring, scenario: Scenario) -> None:
        self._job, self._wiring, self._scenario = job, wiring, scenario
        supply = job.usual_supply if scenario.supply is None else job.supplies[scenario.supply]
        self._supply, self._has_two_legs = supply.name, supply.kind == SPLIT
        landings = wiring.panel_landings.values()
        fed = frozenset(each.panel for each in landings if each.spot is Spot.FEED)
        self._bars: Bars = bars_of(job, supply, fed, scenario.faults)
        self._contacts: Contacts = (
            contacts_of(wiring, scenario.faults) if scenario.faults else Contacts()
        )
        self._doubts: list[tuple[str, Missing]] = []
        self._at_bars: dict[str, str] = dict(self._landed())
        self._nodes = Unions(self._bars.ids)
        self._in_box: dict[str, list[tuple[str, Outlet]]] = {}
        self._positions = dict(scenario.switches)

    def network(self) -> Network:
        """The whole of it."""
        self._add_bars()
        # The conductors first: they go through the boxes, and number what is in each.
        wires = [*self._conductors(), *self._loose(), *self._touches()]
        outlets = dict(each for box in self._wiring.boxes for each in self._in_box[box])
        self._add_doubts()
        nodes = self._nodes
        return Network(
            nodes,
            nodes.size,
            {nodes[each]: volts for each, volts in self._bars.held.items()},
            tuple(wires),
            tuple(self._loads(outlets)),
            tuple((nodes[each], missing) for each, missing in self._doubts),
            self._bars.missing,
            {name: each.pairs for name, each in outlets.items()},
            self._breakers(),
            unstated(self._job, outlets, self._scenario),
            unplaced(self._job, self._scenario),
            tuple(self._fed()),
        )

    def _add_bars(self) -> None:
        for one, other in self._bars.tied:
            self._nodes.tie(one, other)
        for wire, bar in self._at_bars.items():
            if wire not in self._contacts.apart:
                self._nodes.put(wire, bar)
        for joint in self._wiring.spliced_in_panels:
            self._nodes.add(joint.id, *kept(joint.wire_ends, self._contacts.apart))

    def _landed(self) -> Iterator[tuple[str, str]]:
        """Each wire end in a panel with its bar."""
        legs = legs_of_faults(self._scenario.faults)
        for wire, landing in self._wiring.panel_landings.items():
            found = bar_of(self._job, landing, legs)
            if isinstance(found, Missing):
                self._doubts.append((wire, found))
            else:
                yield wire, found

    def _conductors(self) -> Iterator[Wire]:
        """Each conductor, as soon as the boxes that its cable lies between are numbered.

        So what is looked up together was put there together, which a large job is quicker for.
        """
        waiting = dict(self._wiring.boxes)
        for name in self._wiring.parts:
            for box in self._job.cables[CableId(name)].ends:
                self._add_box(waiting.pop(box, None))
            yield from self._wires_of(name)
        for made in waiting.values():
            self._add_box(made)

    def _add_box(self, made: BoxWiring | None) -> None:
        if made is not None:
            add_box(self._nodes, made, self._contacts, self._positions)
            self._in_box[made.box] = [*outlets_in(self._job.boxes[BoxId(made.box)], made)]

    def _wires_of(self, name: str) -> Iterator[Wire]:
        place = self._nodes.place
        cable = self._job.cables[CableId(name)]
        by_area = _ohms_by_area(cable, self._scenario.temperature)
        for part in self._wiring.parts[name]:
            one, other = part.ends
            missing: tuple[Missing, ...] = ()
            ohms = None
            if by_area is not None and part.size is not None:
                ohms = max(by_area / part.size.value, LEAST)
            else:
                missing = _missing(cable, part)
            yield Wire(f"{name}.{part.colour}", place(one), place(other), ohms, missing)

    def _loose(self) -> Iterator[Wire]:
        nodes, wiring = self._nodes, self._wiring
        joint_of = {each: wiring.pigtails[each].joint for each in wiring.pigtails}
        for each, ohms in self._contacts.loose.items():
            if each not in self._contacts.off:
                place = joint_of.get(each) or wiring.ended_in.get(each) or self._at_bars.get(each)
                if place is not None:
                    yield Wire(f"loose {each}", nodes[each], nodes[place], max(ohms, LEAST))

    def _touches(self) -> Iterator[Wire]:
        nodes = self._nodes
        # A fault stated twice is one; two faults of one place are told apart by their resistance.
        for fault in dict.fromkeys(self._scenario.faults):
            if isinstance(fault, Touching):
                one, other = (self._node(each) for each in (fault.one, fault.other))
                name = f"{fault.one} touching {fault.other} through {fault.ohms!r} ohm"
                yield Wire(name, one, other, max(fault.ohms, LEAST))
        for bond, earth in self._bars.earths:
            missing = (Missing("supply", self._supply, "earth resistance"),)
            yield Wire(f"{bond} to earth", nodes[bond], nodes[earth], None, missing)

    def _node(self, name: str) -> int:
        if name not in self._nodes:
            raise NotThere(name)
        return self._nodes[name]

    def _add_doubts(self) -> None:
        """What is not known of the wiring itself: sheaths of cables, uses of conductors."""
        at_box: dict[str, list[Missing]] = {}
        for name in self._wiring.unknown_cables:
            cable = self._job.cables[CableId(name)]
            sheath = Missing("cable", name, "insulated_conductors")
            for end in cable.ends:
                at_box.setdefault(end, []).append(sheath)
        for parts in self._wiring.parts.values():
            for part in parts:
                if part.use.role is Role.UNKNOWN:
                    use = Missing("conductor", f"{part.cable}.{part.colour}", "role")
                    for each in part.ends:
                        at_box.setdefault(self._wiring.wire_ends[each].box, []).append(use)
        for box in at_box.keys() & self._wiring.boxes.keys():
            ids = [end.id for end in self._wiring.boxes[box].wire_ends]
            self._doubts += [(each, doubt) for each in ids for doubt in at_box[box]]

    def _loads(self, outlets: Mapping[str, Outlet]) -> Iterator[Load]:
        for draw, between, missing in hung_of(self._job, outlets, self._scenario):
            one, other = (self._node(each) for each in between)
            watts = None if missing else draw.watts
            yield Load(
                draw.name, draw.outlet, one, other, watts, draw.volts, draw.constant, missing
            )

    def _fed(self) -> Iterator[Fed]:
        """The far ends of the conductors on breakers, where there are two legs to tell apart."""
        if not self._has_two_legs:
            return
        legs = legs_of_faults(self._scenario.faults)
        for wire, landing in self._wiring.panel_landings.items():
            if landing.spot is Spot.BREAKER:
                end = self._wiring.wire_ends[wire]
                part = next(p for p in self._wiring.parts[end.cable] if wire in p.ends)
                far = part.ends[1 if end.at_from else 0]
                breaker = landing.panel, landing.space or 0
                yield Fed(self._nodes[far], breaker, leg_is_told(self._job, landing, legs))

    def _breakers(self) -> dict[tuple[str, int, int], tuple[tuple[str, int], ...]]:
        found: dict[tuple[str, int, int], list[tuple[str, int]]] = {}
        for wire, landing in self._wiring.panel_landings.items():
            if landing.spot is Spot.BREAKER:
                end = self._wiring.wire_ends[wire]
                pole = (landing.panel, landing.space or 0, landing.pole or 0)
                found.setdefault(pole, []).append((end.name, 1 if end.at_from else -1))
        return {pole: tuple(each) for pole, each in found.items()}


def _ohms_by_area(cable: Cable, temperature: float) -> float | None:
    """The resistance that a conductor of one square metre would have; None where unknown."""
    if cable.length is None or cable.material is None:
        return None
    return resistance(METALS[cable.material], 1.0, cable.length.value, temperature)


def _missing(cable: Cable, part: CablePart) -> tuple[Missing, ...]:
    """What is to be known for the resistance of a conductor."""
    missing = []
    if part.size is None:
        missing.append(Missing("conductor", f"{part.cable}.{part.colour}", "size"))
    if cable.length is None:
        missing.append(Missing("cable", cable.name, "length"))
    if cable.material is None:
        missing.append(Missing("cable", cable.name, "material"))
    return tuple(missing)
