"""Appliances and fixed loads."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.given import Given
from linter.facts.made import complete, things
from linter.units import CURRENT, POWER, Quantity

if TYPE_CHECKING:
    from linter.facts.made import Made, Site
    from linter.job.dwelling import Appliance
    from linter.vocabulary.model import Thing

_FIELDS = {
    "load": "load",
    "voltage": "voltage",
    "current": "current",
    "is_continuous": "continuous",
    "is_fixed": "fixed",
    "is_cord_and_plug": "cord_and_plug",
    "needs_own_circuit": "own_circuit",
    "cord_length": "cord_length",
}


def appliance_of(appliance: Appliance) -> Thing:
    """The facts of an appliance that the job states; load or current reckoned from the others."""
    given = Given("appliance", appliance.name, appliance, _FIELDS)
    has_limit = appliance.says("largest_breaker") and appliance.largest_breaker is not False
    given.put("largest_breaker", appliance.largest_breaker or None, "largest_breaker")
    given.put("has_largest_breaker", has_limit, "largest_breaker")
    load, volts, amperes = appliance.load, appliance.voltage, appliance.current
    if load is None and volts is not None and amperes is not None:
        given.put("load", Quantity(volts.value * amperes.value, POWER), "current")
    if amperes is None and volts is not None and load is not None:
        given.put("current", Quantity(load.value / volts.value, CURRENT), "load")
    return given.thing(appliance.name)


def link_appliances(site: Site, made: Made) -> None:
    """The outlets that feed each appliance, and their circuits."""
    for name, appliance in site.job.appliances.items():
        outlets = made.of("outlet", appliance.outlets or ())
        circuits = made.in_order(each for outlet in outlets for each in things(outlet, "circuits"))
        links = {
            "outlets": outlets,
            "circuits": circuits,
            "outlet_count": float(len(outlets)),
        }
        complete(made.thing("appliance", name), links)
