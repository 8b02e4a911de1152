"""The bars of panels and the potentials at which a supply holds them.

A panel that a feeder of another panel ends in is fed by that; every other panel is on the supply.
There neutral and bond are joined, as at a service, unless the supply's earthing is TT or IT: then
an earth of unknown resistance lies between. The supply itself has no resistance, so potentials
count from its neutral.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.job.stated import PanelId
from linter.solve.network import Missing
from linter.solve.scenario import OnLeg, SupplyNeutralLost
from linter.wiring.legs import LEGS, leg_is_known, leg_of_pole
from linter.wiring.model import PanelLanding, Spot

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from linter.job.dwelling import Supply
    from linter.job.jobs import Job
    from linter.job.panel import Breaker
    from linter.solve.scenario import Fault

SPLIT = "split phase"
# What the kind of a supply says of its voltage, where none is stated.
_NAMED = {"two-wire 120 V": 120.0, "single phase 230 V": 230.0}
_NOT_JOINED = frozenset({"TT", "IT"})
NEUTRAL_BAR, BOND_BAR, EARTH = "neutral bar", "bond bar", "earth"


class Rated(NamedTuple):
    """The voltages of a supply: from a leg to the neutral, and between the legs."""

    to_neutral: float
    between_legs: float


class Bars(NamedTuple):
    """The bars of all panels by id, the potentials of those held, and bars tied as one.

    `earths` gives the bond bar and the earth of panels between which lies what is not known.
    """

    ids: tuple[str, ...]
    held: Mapping[str, float]
    tied: tuple[tuple[str, str], ...] = ()
    earths: tuple[tuple[str, str], ...] = ()
    missing: frozenset[Missing] = frozenset()


def rated(supply: Supply) -> Rated | Missing:
    """The voltages of a supply, or what is to be stated of it."""
    if supply.kind is None:
        return Missing("supply", supply.name, "kind")
    volts = supply.voltage.value if supply.voltage is not None else _NAMED.get(supply.kind)
    if volts is None or (supply.voltage is None and supply.says("voltage")):
        return Missing("supply", supply.name, "voltage")
    return Rated(volts / 2, volts) if supply.kind == SPLIT else Rated(volts, volts)


def bar(panel: str, name: str) -> str:
    """The id of a bar: "panel/leg A", "panel/neutral bar".

    >>> bar("panel", NEUTRAL_BAR)
    'panel/neutral bar'
    """
    return f"{panel}/{name}"


def leg_bar(panel: str, leg: str) -> str:
    """The id of the bar of a leg."""
    return bar(panel, f"leg {leg}")


def bars_of(job: Job, supply: Supply, fed: frozenset[str], faults: Iterable[Fault]) -> Bars:
    """The bars of the job's panels on a supply; `fed` names the panels that a feeder ends in."""
    kinds = (*(f"leg {leg}" for leg in LEGS), NEUTRAL_BAR, BOND_BAR, EARTH)
    ids = tuple(bar(panel, kind) for panel in job.panels for kind in kinds)
    volts = rated(supply)
    if isinstance(volts, Missing):
        return Bars(ids, {}, missing=frozenset((volts,)))
    panels = [str(panel) for panel in job.panels if panel not in fed]
    at = _potentials(supply, volts)
    held = {bar(panel, kind): each for panel in panels for kind, each in at.items()}
    earths: tuple[tuple[str, str], ...] = ()
    if EARTH in at:
        earths = tuple((bar(panel, BOND_BAR), bar(panel, EARTH)) for panel in panels)
    if any(isinstance(each, SupplyNeutralLost) for each in faults):
        # The bars that hung on the neutral hang together, and on nothing else.
        lost = [each for each in held if each.endswith((NEUTRAL_BAR, BOND_BAR))]
        kept = {each: volts for each, volts in held.items() if each not in lost}
        return Bars(ids, kept, tuple((lost[0], each) for each in lost[1:]), earths)
    return Bars(ids, held, (), earths)


def _potentials(supply: Supply, volts: Rated) -> dict[str, float]:
    second = -volts.to_neutral if supply.kind == SPLIT else volts.to_neutral
    held = {"leg A": volts.to_neutral, "leg B": second, NEUTRAL_BAR: 0.0}
    return held | {EARTH if supply.earthing in _NOT_JOINED else BOND_BAR: 0.0}


def bar_of(job: Job, landing: PanelLanding, legs: Mapping[tuple[str, int], str]) -> str | Missing:
    """The bar that a conductor is on, landed so in a panel; `legs` are those of faults."""
    panel = landing.panel
    match landing.spot:
        case Spot.BREAKER:
            breaker = job.panels[PanelId(panel)].breakers[landing.space or 0]
            return _of_breaker(breaker, landing.pole or 0, legs)
        case Spot.FEED:
            return leg_bar(panel, LEGS[(landing.pole or 0) % 2])
        case Spot.BOND_BAR:
            return bar(panel, BOND_BAR)
        case Spot.NEUTRAL_BAR | Spot.BREAKER_NEUTRAL:
            return bar(panel, NEUTRAL_BAR)


def leg_is_told(job: Job, landing: PanelLanding, legs: Mapping[tuple[str, int], str]) -> bool:
    """Whether the leg of the breaker that a conductor is on is known, or put so by a fault."""
    panel, space = landing.panel, landing.space or 0
    found = job.panels[PanelId(panel)]
    return (panel, space) in legs or leg_is_known(found.breakers[space], found)


def legs_of_faults(faults: Iterable[Fault]) -> dict[tuple[str, int], str]:
    """The legs that faults put breakers on, by panel and space."""
    return {(each.panel, each.space): each.leg for each in faults if isinstance(each, OnLeg)}


def _of_breaker(breaker: Breaker, pole: int, legs: Mapping[tuple[str, int], str]) -> str | Missing:
    moved = legs.get((breaker.panel, breaker.space))
    if moved is not None:
        return leg_bar(breaker.panel, LEGS[(LEGS.index(moved) + pole) % 2])
    if breaker.leg is None and breaker.says("leg"):
        return Missing("breaker", f"{breaker.panel} {breaker.space}", "leg")
    return leg_bar(breaker.panel, leg_of_pole(breaker, pole))
