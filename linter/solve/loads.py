"""Where the loads of a job hang: between which terminals, and how much they draw."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.job.devices import ApplianceOutlet, Receptacle, Switch
from linter.solve.bars import Rated, rated
from linter.solve.network import Missing, NotThere
from linter.solve.scenario import Draw
from linter.wiring.model import LinkKind

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping
    from collections.abc import Set as AbstractSet

    from linter.job.boxes import Box
    from linter.job.dwelling import Appliance
    from linter.job.jobs import Job
    from linter.job.stated import ApplianceId
    from linter.solve.scenario import Constant, Scenario
    from linter.wiring.model import BoxWiring

_TIED = frozenset({LinkKind.TAB, LinkKind.ALWAYS})
Pair = tuple[str, str]


class Hung(NamedTuple):
    """A draw with its two terminals; watts None are unknown because of `missing`."""

    draw: Draw
    between: Pair
    missing: tuple[Missing, ...] = ()


class Outlet(NamedTuple):
    """The pairs of terminals of an outlet that have a voltage between them, and what it is for.

    `is_plug`: nothing draws until something is plugged in; `is_wired_in`: for one appliance.
    """

    to_neutral: tuple[Pair, ...]
    between_hots: Pair | None
    is_plug: bool = False
    is_wired_in: bool = False

    @property
    def pairs(self) -> tuple[Pair, ...]:
        """All of them, those to the neutral first."""
        hots = self.between_hots
        return self.to_neutral if hots is None else (*self.to_neutral, hots)


def outlets_in(box: Box, made: BoxWiring) -> Iterator[tuple[str, Outlet]]:
    """The outlets of a box by name, in the order of the file; a switch is none."""
    outlets = [device for device in box.holds if not isinstance(device, Switch)]
    if not outlets:
        return
    tied = {link.ends for link in made.links if link.kind in _TIED}
    for device in outlets:
        terminals = {each.name: each.id for each in made.terminals if each.device == device.name}
        pairs = _pairs(terminals, tied)
        is_wired_in = isinstance(device, ApplianceOutlet)
        yield str(device.name), Outlet(*pairs, isinstance(device, Receptacle), is_wired_in)


def _pairs(
    terminals: Mapping[str, str], tied: AbstractSet[Pair]
) -> tuple[tuple[Pair, ...], Pair | None]:
    hot = terminals.get("hot") or terminals.get("line hot")
    second = terminals.get("hot 2") or terminals.get("line hot 2")
    neutral = terminals.get("neutral") or terminals.get("line neutral")
    other = terminals.get("neutral 2", neutral)
    to_neutral = ((hot, neutral),) if hot and neutral else ()
    if not (hot and second) or (hot, second) in tied:
        return to_neutral, None
    return (*to_neutral, (second, other)) if other else to_neutral, (hot, second)


def unstated(job: Job, outlets: Mapping[str, Outlet], scenario: Scenario) -> tuple[str, ...]:
    """Outlets of lamps and of what is wired in, of which no load is stated."""
    stated = {str(each) for one in job.appliances.values() for each in one.outlets or ()}
    stated |= {each.outlet for each in scenario.also}
    return tuple(name for name, each in outlets.items() if not (name in stated or each.is_plug))


def unplaced(job: Job, scenario: Scenario) -> tuple[str, ...]:
    """Appliances that are on, of which it is not known which outlets feed them."""
    on = [job.appliances[name] for name in _on(job, scenario)]
    return tuple(str(each.name) for each in on if each.outlets is None)


class _Site(NamedTuple):
    """What the loads of appliances follow from, besides the appliances."""

    outlets: Mapping[str, Outlet]
    usual: Rated | Missing
    constant: Constant


def hung_of(job: Job, outlets: Mapping[str, Outlet], scenario: Scenario) -> Iterator[Hung]:
    """The loads of a scenario. An appliance with several outlets draws an equal share at each.

    An appliance whose outlets are not known draws nothing, since nothing says where. Raises
    `NotThere` for an appliance or an outlet that the job does not have.
    """
    site = _Site(outlets, rated(job.usual_supply), scenario.constant)
    for name in _on(job, scenario):
        appliance = job.appliances[name]
        for outlet in appliance.outlets or ():
            if outlet in outlets and outlets[outlet].pairs:
                yield _hung(appliance, str(outlet), site)
    for draw in scenario.also:
        pairs = outlets[draw.outlet].pairs if draw.outlet in outlets else ()
        between = draw.between or next(iter(pairs), None)
        if between is None:
            raise NotThere(draw.outlet)
        yield Hung(draw, between)


def _on(job: Job, scenario: Scenario) -> Iterator[ApplianceId]:
    """The appliances that are on, in the order of the job file."""
    for name in scenario.on or ():
        if name not in job.appliances:
            raise NotThere(name)
    yield from (name for name in job.appliances if scenario.on is None or name in scenario.on)


def _hung(appliance: Appliance, outlet: str, site: _Site) -> Hung:
    between, nominal = _between(appliance, outlet, site)
    volts = appliance.voltage.value if appliance.voltage is not None else nominal
    watts = _watts(appliance, volts)
    missing: tuple[Missing, ...] = ()
    if watts is None or volts is None:
        lacking = "load" if watts is None else "voltage"
        missing = (Missing("appliance", appliance.name, lacking),)
    known = 0.0 if watts is None or volts is None else watts / len(appliance.outlets or (outlet,))
    draw = Draw(str(appliance.name), outlet, known, volts or 1.0, site.constant)
    return Hung(draw, between, missing)


def _between(appliance: Appliance, outlet: str, site: _Site) -> tuple[Pair, float | None]:
    """The terminals that an appliance draws from, and the voltage meant to be between them.

    Both hots where the outlet has no neutral, or where the stated voltage is nearer to that between
    the legs; where none is stated, if the outlet is wired in for an appliance.
    """
    found, usual = site.outlets[outlet], site.usual
    hots = found.between_hots
    if isinstance(usual, Missing):
        return found.pairs[0], None
    if hots and found.to_neutral:
        takes_both = found.is_wired_in
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
