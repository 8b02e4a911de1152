"""Laws of the solve, on generated networks and generated jobs."""

from __future__ import annotations

import itertools
import math

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from linter.solve import Constant, Flows, Network, Scenario, drops_of, network_of, solve, worst_for
from linter.solve.scenario import Open
from linter.units import Unknown
from linter.wiring import derive
from tests.outside.solve_networks import Scene, meshes, networks_of_jobs, scenes
from tests.outside.solve_supply import supplied

SLOW = [HealthCheck.too_slow, HealthCheck.filter_too_much, HealthCheck.data_too_large]
laws = settings(max_examples=70, deadline=None, suppress_health_check=SLOW)
networks = st.one_of(meshes(), networks_of_jobs())
# Rounding of potentials across the least resistance of the drawn networks, in amperes.
ROUNDING = 1e-8


def _of_impedance(network: Network) -> Network:
    loads = tuple(load._replace(constant=Constant.IMPEDANCE) for load in network.loads)
    return network._replace(loads=loads)


def _known(flows: Flows) -> Flows:
    assume(not flows.parts.unknown)
    return flows


def _number(value: float | Unknown) -> float:
    assert not isinstance(value, Unknown)
    return value


@laws
@given(networks)
def test_currents_sum_to_zero_at_every_node_that_no_supply_holds(network: Network) -> None:
    flows = _known(solve(network))
    sums, sizes = [0.0] * network.size, [0.0] * network.size
    wires = [(wire, _number(flows.current(wire.name))) for wire in network.wires]
    loads = [(load, _number(flows.draw(n))) for n, load in enumerate(network.loads)]
    for each, amperes in [*wires, *loads]:
        for node, sign in ((each.one, -1), (each.other, 1)):
            sums[node] += sign * amperes
            sizes[node] = max(sizes[node], abs(amperes))
    for node in set(range(network.size)) - network.held.keys():
        assert abs(sums[node]) <= ROUNDING + 1e-9 * sizes[node], node


@laws
@given(networks)
def test_what_the_supply_gives_is_drawn_or_lost(network: Network) -> None:
    flows = _known(solve(network))
    used = _number(flows.drawn) + _number(flows.losses)
    assert math.isclose(supplied(flows), used, rel_tol=1e-7, abs_tol=1e-5)


@laws
@given(networks)
def test_the_effects_of_each_source_add_up(network: Network) -> None:
    linear = _of_impedance(network)
    together = _known(solve(linear))
    alone = [
        solve(linear._replace(held={n: v * (n == node) for n, v in linear.held.items()}))
        for node in linear.held
    ]
    for node, volts in enumerate(together.volts):
        assert math.isclose(sum(each.volts[node] for each in alone), volts, abs_tol=1e-8)


@laws
@given(networks, st.randoms(use_true_random=False))
def test_numbers_of_nodes_and_the_order_of_wires_change_nothing(
    network: Network, chance: st.DataObject
) -> None:
    numbers = list(range(network.size))
    chance.shuffle(numbers)  # type: ignore[attr-defined]  # a random.Random, which strategies hide
    wires = [w._replace(one=numbers[w.one], other=numbers[w.other]) for w in network.wires]
    chance.shuffle(wires)  # type: ignore[attr-defined]  # as above
    other = network._replace(
        held={numbers[node]: volts for node, volts in network.held.items()},
        wires=tuple(wires),
        loads=tuple(
            load._replace(one=numbers[load.one], other=numbers[load.other])
            for load in network.loads
        ),
        doubts=tuple((numbers[node], doubt) for node, doubt in network.doubts),
    )
    one_way, other_way = _known(solve(network)), solve(other)
    for node, volts in enumerate(one_way.volts):
        assert math.isclose(other_way.volts[numbers[node]], volts, rel_tol=1e-9, abs_tol=1e-9)


@laws
@given(scenes())
def test_the_order_of_the_job_file_changes_nothing(scene: Scene) -> None:
    job, wiring, scenario, _ = scene
    turned = job.model_copy(
        update={
            "boxes": dict(reversed(job.boxes.items())),
            "cables": dict(reversed(job.cables.items())),
            "appliances": dict(reversed(job.appliances.items())),
        }
    )
    plain = Scenario(scenario.supply)
    one = _known(solve(network_of(job, wiring, plain)))
    other = solve(network_of(turned, derive(turned), plain))
    for wire in one.network.wires:
        there, here = _number(other.current(wire.name)), _number(one.current(wire.name))
        assert math.isclose(here, there, rel_tol=1e-7, abs_tol=ROUNDING)


@laws
@given(networks)
def test_no_node_lies_beyond_the_potentials_of_the_supply(network: Network) -> None:
    flows = solve(_of_impedance(network))
    least, most = min(0.0, *network.held.values()), max(0.0, *network.held.values())
    assert all(least - 1e-9 <= volts <= most + 1e-9 for volts in flows.volts)


@laws
@given(scenes())
def test_a_length_not_known_makes_unknown_only_what_hangs_on_it(
    scene: Scene,
) -> None:
    job, wiring, scenario, _ = scene
    assume(wiring.parts)
    whole = _known(solve(network_of(job, wiring, scenario)))
    name = next(iter(job.cables))
    cables = {**job.cables, name: job.cables[name].model_copy(update={"length": None})}
    less = solve(network_of(job.model_copy(update={"cables": cables}), wiring, scenario))
    for wire in whole.network.wires:
        known, left = whole.current(wire.name), less.current(wire.name)
        if isinstance(left, Unknown):
            assert {str(each[1]) for each in left.because if len(each) > 1} <= {name}  # type: ignore[arg-type,index]  # reasons are tuples
        else:
            assert math.isclose(_number(known), left, rel_tol=1e-7, abs_tol=1e-9)


@laws
@given(scenes())
def test_an_open_conductor_carries_nothing(scene: Scene) -> None:
    job, wiring, scenario, _ = scene
    assume(wiring.wire_ends)
    end = next(iter(wiring.wire_ends.values()))
    opened = Scenario(scenario.supply, faults=(Open(end.id),))
    flows = _known(solve(network_of(job, wiring, opened)))
    assert abs(_number(flows.current(end.name))) <= ROUNDING


@settings(max_examples=40, deadline=None, suppress_health_check=SLOW)
@given(scenes())
def test_no_set_of_loads_brings_more_into_a_conductor_than_the_worst(
    scene: Scene,
) -> None:
    """Against every set of the loads, within what loads change each other's current."""
    network = _of_impedance(scene.network())
    conductors = [wire.name for wire in network.wires if wire.name.endswith(("black", "white"))]
    assume(conductors and 0 < len(network.loads) <= 6)
    _known(solve(network))
    name = conductors[0]
    worst = worst_for(network, name)
    sets = (
        chosen
        for count in range(len(network.loads) + 1)
        for chosen in itertools.combinations(network.loads, count)
    )
    tried = [solve(network._replace(loads=chosen)).current(name) for chosen in sets]
    most = max(abs(_number(amperes)) for amperes in tried)
    assert abs(_number(worst.current)) >= 0.98 * most - ROUNDING


@laws
@given(scenes())
def test_loads_of_one_leg_only_lower_the_voltages_of_a_single_hot(
    scene: Scene,
) -> None:
    job, wiring, _, _ = scene
    flows = _known(solve(network_of(job, wiring, Scenario("cord"))))
    for drop in drops_of(flows):
        if "neutral" not in drop.other:
            continue  # two hots of one supply: nothing to be lost
        assert _number(drop.drop) >= -1e-9
        assert 0 <= _number(drop.share) <= 1 + 1e-9
