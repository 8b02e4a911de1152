"""Circuits: the breakers they begin at, and what the trace finds them to feed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.given import Given, unknown
from linter.facts.knowing import all_hold, hanging_on, largest, total
from linter.facts.made import Grouped, answer, complete, number, one, things
from linter.facts.panels import breakers_of, go_off_together, legs_are_known
from linter.facts.readings import put_insulation, put_trips
from linter.facts.rooms import DWELLING, is_split_phase
from linter.units import Unknown
from linter.wiring.legs import leg_of_pole
from linter.wiring.model import Role

if TYPE_CHECKING:
    from collections.abc import Iterable

    from linter.facts.knowing import Number, YesNo
    from linter.facts.made import Made, Site, Values
    from linter.job.panel import Circuit
    from linter.vocabulary.model import Thing


_FIELDS = {
    "use": "use",
    "is_existing": "existing",
    "added_length": "added_length",
    "adds_outlets": "adds_outlets",
}


def circuit_of(site: Site, made: Made, circuit: Circuit) -> Thing:
    """The facts of a circuit that follow from its breakers."""
    given = Given("circuit", circuit.name, circuit, _FIELDS)
    breakers = breakers_of(site.job, circuit.breakers)
    its = made.of("breaker", map(str, circuit.breakers))
    given.put("breakers", its)
    given.put("rating", largest((number(each, "rating") for each in its), 0.0))
    if len(its) == 1:
        given.written |= {fact: text for fact, text in its[0].written.items() if fact == "rating"}
        given.usual |= its[0].usual & {"rating"}
    given.put("hot_count", sum(each.poles for each in breakers))
    own = given.own_unknown("hots_are_on_different_legs")
    given.put("hots_are_on_different_legs", _different_legs(site, circuit, own))
    own = given.own_unknown("hots_go_off_together")
    given.put("hots_go_off_together", go_off_together(breakers, own))
    for fact, kind in (
        ("is_ground_fault_at_panel", "is_ground_fault"),
        ("is_arc_fault_at_panel", "is_arc_fault"),
    ):
        given.put(fact, all_hold(answer(each, kind) for each in its))
    put_trips(site.job, given, circuit=circuit.name)
    put_insulation(site.job, given)
    return given.thing(f"circuit {circuit.name}")


def _different_legs(site: Site, circuit: Circuit, own: Unknown) -> YesNo:
    """Whether no two hots are on one leg; a supply that is not split has but one."""
    breakers = breakers_of(site.job, circuit.breakers)
    legs = [leg_of_pole(breaker, pole) for breaker in breakers for pole in range(breaker.poles)]
    if len(legs) <= 1:
        return True
    split = is_split_phase(site.job.usual_supply)
    if not legs_are_known(site.job, breakers):
        return False if split is False else own
    return all_hold((len(set(legs)) == len(legs), split))


def link_circuits(site: Site, made: Made) -> None:
    """The outlets of circuits, and what follows from them; outlets know their circuits by now."""
    outlets, receptacles, switches = (
        Grouped((circuit.ref, each) for each in made.all(kind) for circuit in _circuits(each))
        for kind in ("outlet", "receptacle", "switch")
    )
    shared = _circuits_sharing_neutrals(site)
    neutrals = {
        part.use.circuit
        for parts in site.wiring.parts.values()
        for part in parts
        if part.use.role is Role.NEUTRAL
    }
    for circuit in made.all("circuit"):
        own = outlets.under(circuit.ref)
        sockets = receptacles.under(circuit.ref)
        ways = switches.under(circuit.ref)
        has_neutral = circuit.ref in neutrals
        links: Values = {
            "outlets": own,
            "receptacles": sockets,
            "switches": ways,
            "has_neutral": has_neutral,
            "is_multiwire": has_neutral and answer_is_several(number(circuit, "hot_count")),
            "voltage": _voltage(site, circuit, own, has_neutral=has_neutral),
            "rooms": made.in_order(one(each, "room") for each in (*own, *ways)),
            "outlet_rooms": made.in_order(one(each, "room") for each in own),
            "outlet_count": float(len(own)),
            "receptacle_count": total(number(each, "places") for each in sockets),
            "neutral_is_its_own": circuit.ref not in shared,
        }
        complete(circuit, links)


def _circuits(thing: Thing) -> tuple[Thing, ...]:
    """The circuits of an outlet or switch are those of its device, which are linked first."""
    return things(one(thing, "device"), "circuits")


def answer_is_several(count: Number) -> bool:
    """Whether a count that is always known is more than one."""
    return not isinstance(count, Unknown) and count > 1


def _voltage(site: Site, circuit: Thing, outlets: Iterable[Thing], *, has_neutral: bool) -> Number:
    found = [number(each, "voltage") for each in outlets]
    if found:
        return largest(found, 0.0)
    supply = site.job.usual_supply
    split = is_split_phase(supply)
    stated = supply.voltage
    full = unknown(DWELLING, DWELLING, "supply_voltage") if stated is None else stated.value
    if isinstance(split, Unknown) or isinstance(full, Unknown):
        return hanging_on((split, full))
    several = answer_is_several(number(circuit, "hot_count"))
    if several and not has_neutral and answer(circuit, "hots_are_on_different_legs") is True:
        return full
    if not has_neutral and several:
        return 0.0
    return full / 2 if split else full


def _circuits_sharing_neutrals(site: Site) -> frozenset[str]:
    return frozenset(name for joined in site.trace.joined_neutrals for name in joined)


def link_circuit_wires(made: Made) -> None:
    """The conductors of circuits with their cables and boxes, and their appliances and loads."""
    conductors, cables, boxes, appliances = (
        Grouped(
            (circuit.ref, each) for each in made.all(kind) for circuit in things(each, "circuits")
        )
        for kind in ("conductor", "cable", "box", "appliance")
    )
    for circuit in made.all("circuit"):
        fed = appliances.under(circuit.ref)
        links: Values = {
            "conductors": conductors.under(circuit.ref),
            "cables": cables.under(circuit.ref),
            "boxes": boxes.under(circuit.ref),
            "appliances": fed,
            "fixed_load": _load(fed, "is_fixed"),
            "continuous_load": _load(fed, "is_continuous"),
        }
        complete(circuit, links)


def _load(appliances: Iterable[Thing], which: str) -> Number:
    """The load of those appliances of which `which` holds, summed."""
    return total(_share(answer(each, which), number(each, "load")) for each in appliances)


def _share(counts: YesNo, load: Number) -> Number:
    if counts is False:
        return 0.0
    return load if counts is True else hanging_on((counts, load))
