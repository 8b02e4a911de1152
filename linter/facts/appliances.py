"""Appliances and fixed loads."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.given import Given, unknown
from linter.facts.knowing import negated
from linter.facts.made import Grouped, complete, things
from linter.facts.panels import BOTH_LEGS
from linter.facts.rooms import DWELLING, SPLIT_PHASE
from linter.units import CURRENT, POWER, Quantity, Unknown
from linter.vocabulary.model import value_of

if TYPE_CHECKING:
    from linter.facts.knowing import YesNo
    from linter.facts.made import Made, Site
    from linter.job.dwelling import Appliance, Supply
    from linter.vocabulary.model import Thing

_MOTORS = frozenset(
    {"disposer", "compactor", "refrigerator", "freezer", "heat pump", "fan", "pump"}
)
_MOTORS |= {"air conditioner"}
# They have parts for the voltage from leg to neutral although they are fed from both legs.
_OF_BOTH_VOLTAGES = frozenset({"range", "oven", "cooktop", "dryer"})
_FIELDS = {
    "load": "load",
    "voltage": "voltage",
    "current": "current",
    "is_continuous": "continuous",
    "is_fixed": "fixed",
    "is_cord_and_plug": "cord_and_plug",
    "needs_own_circuit": "own_circuit",
    "cord_length": "cord_length",
    "distance_to_outlet": "distance_to_outlet",
    "distance_to_service_receptacle": "service_receptacle",
    "type": "type",
    "is_existing": "existing",
    "control_count": "controls",
    "is_interlocked": "interlocked",
    "smallest_ampacity": "smallest_ampacity",
}


def appliance_of(appliance: Appliance) -> Thing:
    """The facts of an appliance that the job states; load or current reckoned from the others."""
    given = Given("appliance", appliance.name, appliance, _FIELDS)
    has_limit = appliance.says("largest_breaker") and appliance.largest_breaker is not False
    given.put("largest_breaker", appliance.largest_breaker or None, "largest_breaker")
    given.put("has_largest_breaker", has_limit, "largest_breaker")
    given.put("has_smallest_ampacity", appliance.says("smallest_ampacity"), "smallest_ampacity")
    given.put("is_motor", _is_motor(appliance), "motor" if appliance.says("motor") else "type")
    load, volts, amperes = appliance.load, appliance.voltage, appliance.current
    if load is None and volts is not None and amperes is not None:
        given.put("load", Quantity(volts.value * amperes.value, POWER), "current")
    if amperes is None and volts is not None and load is not None:
        given.put("current", Quantity(load.value / volts.value, CURRENT), "load")
    return given.thing(appliance.name)


def _is_motor(appliance: Appliance) -> YesNo | None:
    """Whether its load is a motor's: as stated, else by its type."""
    if appliance.says("motor"):
        return appliance.motor
    if appliance.type is None:
        return unknown("appliance", appliance.name, "type")
    return appliance.type in _MOTORS


def _loads_neutral(appliance: Appliance, supply: Supply) -> YesNo:
    """Whether current of it comes back in the neutral: as stated, else by its voltage and type.

    At the voltage from leg to neutral it does; at that between legs only what has lamps, motors or
    controls for the lower voltage in it does.
    """
    if appliance.says("neutral"):
        own = unknown("appliance", appliance.name, "loads_neutral")
        return own if appliance.neutral is None else appliance.neutral
    between = _is_between_legs(appliance, supply)
    if between is not True:
        return negated(between)
    if appliance.type is None:
        return unknown("appliance", appliance.name, "type")
    return appliance.type in _OF_BOTH_VOLTAGES


def _is_between_legs(appliance: Appliance, supply: Supply) -> YesNo:
    """Whether it is made for the voltage between two legs."""
    if supply.kind is None or supply.voltage is None:
        return _on_supply(supply)
    if supply.kind != SPLIT_PHASE:
        return False
    if appliance.voltage is None:
        return unknown("appliance", appliance.name, "voltage")
    half = supply.voltage.value / 2
    # Nameplates say 115, 120, 230 or 240 V: whichever of the two voltages is nearer is meant.
    return abs(appliance.voltage.value - 2 * half) <= abs(appliance.voltage.value - half)


def _on_supply(supply: Supply) -> Unknown:
    """The unknown of what hangs on a supply whose kind or voltage is not known."""
    fact = "is_split_phase" if supply.kind is None else "supply_voltage"
    return unknown(DWELLING, DWELLING, fact)


def _leg(appliance: Appliance, supply: Supply, circuits: tuple[Thing, ...]) -> str | Unknown:
    """The leg it draws from: that of the breaker, or both at the voltage between legs."""
    between = _is_between_legs(appliance, supply)
    if between is not False:
        return BOTH_LEGS if between is True else between
    breakers = {each for circuit in circuits for each in things(circuit, "breakers")}
    legs = [value_of(each, "leg") for each in breakers]
    # One that is not known is no key of a set.
    leg = legs[0] if legs and all(isinstance(each, str) for each in legs) else None
    if isinstance(leg, str) and leg != BOTH_LEGS and legs.count(leg) == len(legs):
        return leg
    return unknown("appliance", appliance.name, "leg")


def link_receptacle_appliances(site: Site, made: Made) -> None:
    """The appliances at each receptacle."""
    plugged = Grouped(
        (outlet, made.thing("appliance", name))
        for name, appliance in site.job.appliances.items()
        for outlet in appliance.outlets or ()
    )
    for receptacle in made.all("receptacle"):
        complete(receptacle, {"appliances": plugged.under(receptacle.ref)})


def link_appliances(site: Site, made: Made) -> None:
    """The outlets that feed each appliance, their circuits, and the legs it loads."""
    supply = site.job.usual_supply
    for name, appliance in site.job.appliances.items():
        outlets = made.of("outlet", appliance.outlets or ())
        circuits = made.in_order(each for outlet in outlets for each in things(outlet, "circuits"))
        links = {
            "outlets": outlets,
            "circuits": circuits,
            "outlet_count": float(len(outlets)),
            "loads_neutral": _loads_neutral(appliance, supply),
            "leg": _leg(appliance, supply, circuits),
        }
        thing = made.thing("appliance", name)
        complete(thing, links)
        if appliance.says("neutral"):
            place = appliance.place_of("neutral")
            thing.stated_at = {**thing.stated_at, "loads_neutral": place}
    fed = Grouped(
        (outlet.ref, each) for each in made.all("appliance") for outlet in things(each, "outlets")
    )
    for outlet in made.all("outlet"):
        complete(outlet, {"appliances": fed.under(outlet.ref)})
