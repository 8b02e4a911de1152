"""Networks solved by us and by ngspice, an independent solver (Debian package ngspice)."""

from __future__ import annotations

import math
import os
import shutil
from typing import TYPE_CHECKING

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from linter.solve import Constant, Flows, Network, solve
from linter.units import Unknown
from tests.outside.solve_networks import meshes, networks_of_jobs
from tests.outside.solve_spice import HOW_TO_INSTALL, Answer, answers

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

# Relative, as is agreed for the solver; and what rounding leaves of a difference of potentials of
# 240 V across the smallest resistance drawn.
RELATIVE, AMPERES, VOLTS = 1e-6, 1e-9, 1e-10
AT_LEAST = 200
_gather = settings(
    max_examples=300, deadline=None, derandomize=True, database=None,
    suppress_health_check=list(HealthCheck),
)  # fmt: skip


def _gathered(strategy: st.SearchStrategy[Network]) -> list[Network]:
    """The networks that hypothesis draws, each once, the same at every run."""
    found: dict[str, Network] = {}

    @_gather
    @given(strategy)
    def collect(network: Network) -> None:
        if network.loads or network.wires:
            found.setdefault(repr((network.held, network.wires, network.loads)), network)

    collect()
    return list(found.values())


@pytest.fixture(scope="module")
def solved(tmp_path_factory: pytest.TempPathFactory) -> list[tuple[Flows, Answer]]:
    """Every network with our solution and that of ngspice.

    Left out are those with a load of constant power that finds no steady state or is starved: such
    a network has several solutions, or none. Where ngspice is not installed the comparison is left
    out, and said to be; in CI that is a failure.
    """
    if shutil.which("ngspice") is None and not os.environ.get("CI"):
        pytest.skip(HOW_TO_INSTALL)
    networks = [*_gathered(meshes()), *_gathered(networks_of_jobs())]
    flows = [each for each in map(solve, networks) if _is_settled(each)]
    folder = tmp_path_factory.mktemp("ngspice")
    return list(zip(flows, answers([each.network for each in flows], folder), strict=True))


def _is_settled(flows: Flows) -> bool:
    if flows.parts.unknown:
        return False
    return all(
        load.constant is not Constant.POWER
        or not 0 < abs(flows.volts[load.one] - flows.volts[load.other]) < load.volts / 2
        for load in flows.network.loads
    )


def _meshed(flows: Flows) -> bool:
    network = flows.network
    nodes = {node for wire in network.wires for node in (wire.one, wire.other)}
    return len(network.wires) >= len(nodes) > len(network.held)


def _two_legs(flows: Flows) -> bool:
    return {120.0, -120.0} <= set(flows.network.held.values())


def _faulty(flows: Flows) -> bool:
    return any(
        wire.name.startswith("loose") or "touching" in wire.name for wire in flows.network.wires
    )


@pytest.mark.parametrize(
    ("kind", "least"),
    [(lambda _: True, AT_LEAST), (_meshed, 50), (_two_legs, 50), (_faulty, 20)],
    ids=["in all", "with meshes", "with two legs", "with a loose joint or a touch"],
)
def test_enough_networks_are_held_against_ngspice(
    solved: list[tuple[Flows, Answer]], kind: Callable[[Flows], bool], least: int
) -> None:
    assert sum(kind(flows) for flows, _ in solved) >= least


def test_ngspice_finds_the_same_currents(solved: list[tuple[Flows, Answer]]) -> None:
    apart = [pair for flows, answer in solved for pair in _currents(flows, answer) if _off(*pair)]
    assert not apart


def test_ngspice_finds_the_same_voltages(solved: list[tuple[Flows, Answer]]) -> None:
    apart = [
        (ours, theirs)
        for flows, answer in solved
        for ours, theirs in zip(flows.volts, answer.volts, strict=True)
        if not math.isclose(ours, theirs, rel_tol=RELATIVE, abs_tol=VOLTS)
    ]
    assert not apart


def _currents(flows: Flows, answer: Answer) -> Iterator[tuple[float, float]]:
    """Our currents beside those of ngspice, of every wire and every load."""
    ours = [flows.current(wire.name) for wire in flows.network.wires]
    ours += [flows.draw(place) for place in range(len(flows.network.loads))]
    for mine, theirs in zip(ours, (*answer.wires, *answer.loads), strict=True):
        assert not isinstance(mine, Unknown)
        yield mine, theirs


def _off(ours: float, theirs: float) -> bool:
    return not math.isclose(ours, theirs, rel_tol=RELATIVE, abs_tol=AMPERES)
