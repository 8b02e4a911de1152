"""Currents that the job lets flow: in shared neutrals, through breakers; and the voltage lost."""

from __future__ import annotations

from math import inf
from typing import TYPE_CHECKING

from linter.facts.devices import poles_at
from linter.facts.given import unknown
from linter.facts.knowing import hanging_on, known, largest, total
from linter.facts.made import answer, complete, number, things
from linter.facts.panels import breakers_of, legs_are_known
from linter.facts.rooms import SPLIT_PHASE
from linter.solve.metals import METALS, resistance
from linter.units import Unknown
from linter.vocabulary.model import value_of
from linter.wiring.legs import LEGS, leg_of_pole
from linter.wiring.model import Spot

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from linter.facts.knowing import Number
    from linter.facts.made import Made, Site
    from linter.job.dwelling import Supply
    from linter.solve.drops import Drop
    from linter.vocabulary.model import Thing

_NONE = 0.0
SMALL = 0.01  # a share of the voltage below which the reckoning from above is told
WARM = 348.15  # kelvin, as the solve takes it
Shares = dict[str, dict[int, list["Number"]]]  # by breaker, by pole


def link_neutral_currents(site: Site, made: Made) -> None:
    """The most that breakers let flow in the neutral of each circuit, on any declared supply."""
    for name, circuit in made.by_ref("circuit").items():
        currents = {
            supply.name: _in_neutral(site, circuit, supply)
            for supply in site.job.supplies.values()
            if answer(circuit, "has_neutral") is True
        }
        unsure = [each for each in currents.values() if isinstance(each, Unknown)]
        told = {of: each for of, each in currents.items() if not isinstance(each, Unknown)}
        worst = max(told, key=told.__getitem__, default="")
        amperes: Number = told.get(worst, _NONE)
        facts = {"largest_neutral_current": amperes, "worst_supply": worst}
        not_known = dict.fromkeys(facts, hanging_on(unsure))
        complete(made.thing("circuit", name), not_known if unsure else facts)


def _in_neutral(site: Site, circuit: Thing, supply: Supply) -> Number:
    """What is on one leg adds up in the neutral; a supply of one leg feeds both from it."""
    if supply.kind is None:
        return unknown("circuit", circuit.ref, "largest_neutral_current")
    stated = site.job.circuits[circuit.ref].breakers  # type: ignore[index]  # named by plain text
    breakers = breakers_of(site.job, stated)
    if supply.kind == SPLIT_PHASE and not legs_are_known(site.job, breakers):
        return unknown("circuit", circuit.ref, "hots_are_on_different_legs")
    by_leg: dict[str, list[Number]] = {}
    ratings = {each.ref: each for each in things(circuit, "breakers")}
    for breaker in breakers:
        rating = number(ratings[f"{breaker.panel} {breaker.space}"], "rating")
        for pole in range(breaker.poles):
            leg = leg_of_pole(breaker, pole) if supply.kind == SPLIT_PHASE else LEGS[0]
            by_leg.setdefault(leg, []).append(rating)
    return largest((total(each) for each in by_leg.values()), _NONE)


def link_breaker_loads(site: Site, made: Made) -> None:
    """The currents of appliances through each breaker, on the pole that has most."""
    load, continuous = _shares(site, made)
    for breaker in made.all("breaker"):
        complete(
            breaker,
            {
                "load_current": _most(load.get(breaker.ref, {})),
                "continuous_current": _most(continuous.get(breaker.ref, {})),
            },
        )


def _shares(site: Site, made: Made) -> tuple[Shares, Shares]:
    """For each pole of each breaker the currents of appliances, and of those that run for hours."""
    load: Shares = {}
    continuous: Shares = {}
    for appliance in made.all("appliance"):
        outlets = things(appliance, "outlets")
        share = _divided(number(appliance, "current"), len(outlets))
        runs = answer(appliance, "is_continuous")
        for outlet in outlets:
            for panel, space, pole in poles_at(site, site.wiring.by_device.get(outlet.ref, ())):
                ref = f"{panel} {space}"
                load.setdefault(ref, {}).setdefault(pole, []).append(share)
                if runs is not False:
                    part = share if runs is True else hanging_on((runs, share))
                    continuous.setdefault(ref, {}).setdefault(pole, []).append(part)
    return load, continuous


def _divided(amperes: Number, outlets: int) -> Number:
    return amperes if isinstance(amperes, Unknown) else amperes / max(outlets, 1)


def _most(by_pole: Mapping[int, list[Number]]) -> Number:
    return largest((total(each) for each in by_pole.values()), _NONE)


def link_drops(site: Site, made: Made) -> None:
    """The share of its voltage that the worst outlet of each circuit loses with all loads on.

    Solved only where the lengths of a circuit's cables are stated and an appliance is on it, and
    where a reckoning from above does not show it to be small: an audit seldom loads the solve.
    """
    measured = {}
    has_feeder = any(each.spot is Spot.FEED for each in site.wiring.panel_landings.values())
    for circuit in made.all("circuit"):
        lengths = [number(cable, "length") for cable in things(circuit, "cables")]
        currents = [number(each, "current") for each in things(circuit, "appliances")]
        is_measured = known(lengths)
        own = _NONE if known((*lengths, *currents)) else hanging_on((*lengths, *currents))
        facts = {"lengths_are_stated": is_measured, "voltage_drop_at": ""}
        complete(circuit, {**facts, "voltage_drop": own if currents else _NONE})
        if is_measured and currents and known(currents):
            most = inf if has_feeder else _most_lost(circuit)
            if most < SMALL:
                complete(circuit, {"voltage_drop": most})
            else:
                measured[circuit.ref] = circuit
    if measured:
        _solve(site, measured)


def _most_lost(circuit: Thing) -> float:
    """No less than the share that is lost: all current through all cables, out and back.

    Infinite where that cannot be said, as a size or metal is not known. No feeder lies before.
    """
    ohms = 0.0
    for cable in things(circuit, "cables"):
        length, size = number(cable, "length"), number(cable, "size")
        metal = METALS.get(str(value_of(cable, "material")))
        if metal is None or isinstance(length, Unknown) or isinstance(size, Unknown):
            return inf
        ohms += 2 * resistance(metal, size, length, WARM)
    amperes = total(number(each, "current") for each in things(circuit, "appliances"))
    volts = [number(outlet, "voltage") for outlet in things(circuit, "outlets")]
    told = [each for each in volts if not isinstance(each, Unknown) and each > 0]
    if isinstance(amperes, Unknown) or not told or len(told) < len(volts):
        return inf
    # An outlet on two hots and a neutral has half its voltage to the neutral.
    shared = answer(circuit, "has_neutral") is not False
    return amperes * ohms / (min(told) / 2 if shared else min(told))


def _solve(site: Site, measured: Mapping[str, Thing]) -> None:
    from linter.solve import drops_of, network_of, solve  # noqa: PLC0415  seldom needed, and large

    drops: dict[str, list[Drop]] = {}
    for drop in drops_of(solve(network_of(site.job, site.wiring))):
        drops.setdefault(drop.outlet, []).append(drop)
    for circuit in measured.values():
        of_outlets = [
            each for outlet in things(circuit, "outlets") for each in drops.get(outlet.ref, ())
        ]
        complete(circuit, _worst(circuit, of_outlets))


def _worst(circuit: Thing, drops: Iterable[Drop]) -> dict[str, object]:
    shares = [(each.share, each.outlet) for each in drops]
    if any(isinstance(share, Unknown) for share, _ in shares):
        return {"voltage_drop": unknown("circuit", circuit.ref, "voltage_drop")}
    told = [(share, outlet) for share, outlet in shares if not isinstance(share, Unknown)]
    share, outlet = max(told, default=(_NONE, ""))
    return {"voltage_drop": max(share, _NONE), "voltage_drop_at": outlet if share > 0 else ""}
