"""Wirings solved in textbooks and by hand, from job file to volts; see solve_cases.yaml."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

import pytest

from linter.solve import (
    WARM,
    Apart,
    Draw,
    Flows,
    Loose,
    OnLeg,
    Open,
    Scenario,
    SupplyNeutralLost,
    TakenOut,
    Touching,
    draw_of_ohms,
    drops_of,
    network_of,
    solve,
)
from linter.units import Unknown
from linter.wiring import derive
from linter.wiring.model import Role
from tests.cases.small_jobs import small_job
from tests.outside.path import table

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

Row = dict[str, Any]
TABLE = table("solve_cases.yaml")
# What stands for nothing: rounding of 240 V, and of the currents that a millionth of an ohm draws.
NOUGHT = 2e-6

FAULTS: dict[str, Callable[[Row], Any]] = {
    "open": lambda row: Open(row["open"], _role(row)),
    "apart": lambda row: Apart(row["apart"]),
    "loose": lambda row: Loose(row["loose"], row["ohms"], _role(row)),
    "taken out": lambda row: TakenOut(row["taken out"]),
    "on leg": lambda row: OnLeg(row["panel"], row["space"], row["on leg"]),
    "touching": lambda row: Touching(*row["touching"], row["ohms"]),
}


def _role(row: Row) -> Role | None:
    return Role(row["role"]) if "role" in row else None


def _fault(row: Row | str) -> Any:
    if row == "supply neutral lost":
        return SupplyNeutralLost()
    assert isinstance(row, dict)
    return next(make(row) for kind, make in FAULTS.items() if kind in row)


def _draws(row: Row) -> Iterator[Draw]:
    for outlet, load in row.get("loads", {}).items():
        if isinstance(load, dict):
            yield Draw(outlet, outlet, load["watts"], load["volts"])
        else:
            yield draw_of_ohms(outlet, outlet, load)


def solved(row: Row) -> Flows:
    """The case, from its job file to its flows."""
    wiring = TABLE["wirings"][row["wiring"]]
    changed = row.get("cables", {})
    cables = {name: {**cable, **changed.get(name, {})} for name, cable in wiring["cables"].items()}
    job = small_job(TABLE["common"], {**wiring, "cables": cables})
    scenario = Scenario(
        supply=row.get("supply"),
        also=tuple(_draws(row)),
        switches=tuple(row.get("switches", {}).items()),
        faults=tuple(map(_fault, row.get("faults", []))),
        temperature=row.get("temperature", WARM),
    )
    return solve(network_of(job, derive(job), scenario))


@pytest.mark.parametrize("row", TABLE["cases"], ids=lambda row: row["case"])
def test_the_wiring_has_the_currents_and_voltages_of_the_source(row: Row) -> None:
    flows = solved(row)
    results = [*_results(flows, row)]
    assert results, "a case expects something"
    tolerance = row.get("tolerance", 1e-4)
    for what, found, expected in results:
        assert math.isclose(found, expected, rel_tol=tolerance, abs_tol=NOUGHT), (what, found)


def _results(flows: Flows, row: Row) -> Iterator[tuple[str, Any, float]]:
    for name, amperes in row.get("current", {}).items():
        yield name, flows.current(name), amperes
    for space, amperes in row.get("breaker", {}).items():
        yield space, flows.breaker_current("panel", int(space)), amperes
    for outlet, volts in row.get("volts", {}).items():
        found = flows.outlet(outlet)
        assert len(found) == len(volts)
        yield from ((outlet, each.volts, one) for each, one in zip(found, volts, strict=True))
    for pair, volts in row.get("between", {}).items():
        yield pair, flows.between(*pair.split(", ")), volts
    for name, watts in row.get("loss", {}).items():
        yield name, flows.loss(name), watts
    for pair, ratio in row.get("ratio", {}).items():
        one, other = map(flows.current, pair.split(", "))
        assert not isinstance(one, Unknown)
        yield pair, one / other, ratio
    yield from _drops(flows, row)


def _drops(flows: Flows, row: Row) -> Iterator[tuple[str, Any, float]]:
    drops = {each.outlet: each.drop for each in drops_of(flows)}
    drawn = {load.outlet: flows.draw(n) for n, load in enumerate(flows.network.loads)}
    for outlet, volts in row.get("drop", {}).items():
        yield outlet, drops[outlet], volts
    for outlet, ohms in row.get("drop per ampere", {}).items():
        drop = drops[outlet]
        assert not isinstance(drop, Unknown)
        yield outlet, drop / drawn[outlet], ohms
