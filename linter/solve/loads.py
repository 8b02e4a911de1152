"""Where the loads of a job hang: between which terminals, and how much they draw."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.job.devices import ApplianceOutlet, Receptacle, Switch
from linter.solve.bars import Rated, rated
from linter.solve.network import Missing
from linter.solve.scenario import Draw
from linter.wiring.model import LinkKind

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from linter.job.devices import Device
    from linter.job.dwelling import Appliance
    from linter.job.jobs import Job
    from linter.solve.scenario import Scenario
    from linter.wiring.model import Wiring

_TIED = frozenset({LinkKind.TAB, LinkKind.ALWAYS})
Pair = tuple[str, str]


class Hung(NamedTuple):
    """A draw with its two terminals; watts None are unknown because of `missing`."""

    draw: Draw
    between: Pair
    missing: tuple[Missing, ...] = ()


class Outlet(NamedTuple):
    """The pairs of terminals of an outlet that have a voltage between them."""

    to_neutral: tuple[Pair, ...]
    between_hots: Pair | None

    @property
    def pairs(self) -> tuple[Pair, ...]:
        """All of them, those to the neutral first."""
        return (
            self.to_neutral if self.between_hots is None else (*self.to_neutral, self.between_hots)
        )


def devices_of(job: Job) -> dict[str, Device]:
    """The devices of all boxes by name, in the order of the job file."""
    return {str(device.name): device for box in job.boxes.values() for device in box.holds}


def outlets_of(job: Job, wiring: Wiring) -> dict[str, Outlet]:
    """The outlets of a job; a switch is none."""
    tied = {link.ends for link in wiring.links if link.kind in _TIED}
    found = {}
    for name, device in devices_of(job).items():
        if not isinstance(device, Switch):
            terminals = {each.name: each.id for each in wiring.by_device.get(name, ())}
            found[name] = _outlet(terminals, tied)
    return found


def _outlet(terminals: Mapping[str, str], tied: set[Pair]) -> Outlet:
    hot = terminals.get("hot") or terminals.get("line hot")
    second = terminals.get("hot 2") or terminals.get("line hot 2")
    neutral = terminals.get("neutral") or terminals.get("line neutral")
    other = terminals.get("neutral 2", neutral)
    pairs = [(hot, neutral)] if hot and neutral else []
    if not (hot and second) or (hot, second) in tied:
        return Outlet(tuple(pairs), None)
    pairs += [(second, other)] if other else []
    return Outlet(tuple(pairs), (hot, second))


def unstated(job: Job, outlets: Mapping[str, Outlet], scenario: Scenario) -> tuple[str, ...]:
    """Outlets of lamps and of what is wired in, of which no load is stated."""
    stated = {str(each) for one in job.appliances.values() for each in one.outlets or ()}
    stated |= {each.outlet for each in scenario.also}
    plugs = {name for name, device in devices_of(job).items() if isinstance(device, Receptacle)}
    return tuple(name for name in outlets if name not in stated and name not in plugs)


class _Site(NamedTuple):
    """What the loads of appliances follow from, besides the appliances."""

    outlets: Mapping[str, Outlet]
    wired_in: frozenset[str]
    usual: Rated | Missing
    scenario: Scenario


def hung_of(job: Job, outlets: Mapping[str, Outlet], scenario: Scenario) -> Iterator[Hung]:
    """The loads of a scenario. An appliance with several outlets draws an equal share at each.

    An appliance whose outlets are not stated draws nothing, since nothing says where.
    """
    devices = devices_of(job)
    wired_in = frozenset(n for n, each in devices.items() if isinstance(each, ApplianceOutlet))
    site = _Site(outlets, wired_in, rated(job.usual_supply), scenario)
    for name, appliance in job.appliances.items():
        if scenario.on is None or name in scenario.on:
            for outlet in appliance.outlets or ():
                if outlet in outlets and outlets[outlet].pairs:
                    yield _hung(appliance, str(outlet), site)
    for draw in scenario.also:
        pairs = outlets[draw.outlet].pairs if draw.outlet in outlets else ()
        between = draw.between or (pairs[0] if pairs else None)
        if between is not None:
            yield Hung(draw, between)


def _hung(appliance: Appliance, outlet: str, site: _Site) -> Hung:
    between, nominal = _between(appliance, outlet, site)
    volts = appliance.voltage.value if appliance.voltage is not None else nominal
    watts = _watts(appliance, volts)
    missing: tuple[Missing, ...] = ()
    if watts is None or volts is None:
        lacking = "load" if watts is None else "voltage"
        missing = (Missing("appliance", appliance.name, lacking),)
    known = 0.0 if watts is None or volts is None else watts / len(appliance.outlets or (outlet,))
    draw = Draw(str(appliance.name), outlet, known, volts or 1.0, site.scenario.constant)
    return Hung(draw, between, missing)


def _between(appliance: Appliance, outlet: str, site: _Site) -> tuple[Pair, float | None]:
    """The terminals that an appliance draws from, and the voltage meant to be between them.

    Both hots where the outlet has no neutral, or where the stated voltage is nearer to that between
    the legs; where none is stated, if the outlet is wired in for an appliance.
    """
    found, usual = site.outlets[outlet], site.usual
    hots = found.between_hots
    if isinstance(usual, Missing):
        return (hots if hots and not found.to_neutral else found.pairs[0]), None
    if hots and found.to_neutral:
        takes_both = outlet in site.wired_in
        if appliance.voltage is not None:
            volts = appliance.voltage.value
            takes_both = abs(volts - usual.between_legs) < abs(volts - usual.to_neutral)
        hots = hots if takes_both else None
    return (found.to_neutral[0], usual.to_neutral) if hots is None else (hots, usual.between_legs)


def _watts(appliance: Appliance, volts: float | None) -> float | None:
    """The power of an appliance at its rated voltage, reckoned from its current if need be."""
    if appliance.load is not None:
        return appliance.load.value
    if appliance.current is None or volts is None:
        return None
    return appliance.current.value * volts
