"""What is solved of small jobs: supplies, loads, what is not known, what finds no steady state."""

from __future__ import annotations

from typing import Any

import pytest

from linter.solve import (
    EVERYTHING_ON,
    Apart,
    Constant,
    Draw,
    Flows,
    Missing,
    Network,
    NotThere,
    OnLeg,
    Open,
    Scenario,
    SupplyNeutralLost,
    TakenOut,
    Touching,
    Unsteady,
    drops_of,
    network_of,
    solve,
    with_fault,
    worst_for,
)
from linter.solve.network import Load, Wire
from linter.units import Unknown
from linter.wiring import derive
from linter.wiring.model import Role
from tests.cases.small_jobs import small_job
from tests.outside.solve_supply import supplied

BREAKERS = {1: {"rating": "20 A"}, 3: {"rating": "20 A"}, 5: {"rating": "40 A", "poles": 2}}
COMMON: dict[str, Any] = {
    "supplies": {
        "service": {"kind": "split phase", "voltage": "240 V"},
        "cord": {"kind": "two-wire 120 V"},
        "islet": {"kind": "single phase 230 V", "earthing": "TT"},
        "bare": {"kind": "split phase"},
        "odd": {"kind": "unknown"},
    },
    "usual": {"cable": {"sheath": "12/2 NM-B", "material": "copper"}},
    "panel": {"legs": "alternate by rows", "breakers": BREAKERS},
    "circuits": {"a": {"breakers": [1]}, "b": {"breakers": [3]}, "kiln": {"breakers": [5]}},
}
ROW = {
    "boxes": {"near": {"holds": "receptacle"}, "far": {"holds": "receptacle"}},
    "cables": {
        "k1": {"from": "panel", "to": "near", "circuit": "a", "length": "30 ft"},
        "k2": {"from": "near", "to": "far", "length": "20 ft"},
    },
}
KILN = {
    "boxes": {"kiln-box": {"holds": {"appliance outlet": {"serves": "kiln"}}}},
    "cables": {
        "k1": {
            "sheath": "8/2 NM-B", "from": "panel", "to": "kiln-box", "circuit": "kiln",
            "length": "40 ft",
        },
    },
}  # fmt: skip


PAIR = {
    "circuits": {"pair": {"breakers": [1, 3]}},
    "boxes": {
        "pot": {
            "holds": [{"receptacle": {"name": "left"}}, {"receptacle": {"name": "right"}}],
            "make_up": {"joints": [
                {"of": ["k1.black", "left.hot"]}, {"of": ["k1.red", "right.hot"]},
                {"of": ["k1.white", "left.neutral", "right.neutral"]},
            ]},
        },
    },
    "cables": {"k1": {"sheath": "12/3 NM-B", "from": "panel", "to": "pot", "circuit": "pair",
                      "length": "1 ft"}},
}  # fmt: skip
LAMP = {"lamp": {"outlets": ["far"], "load": "60 W"}}


def network(
    case: dict[str, Any],
    scenario: Scenario = EVERYTHING_ON,
    **changed: Any,
) -> Network:
    job = small_job({**COMMON, **changed}, case)
    return network_of(job, derive(job), scenario)


def flows(case: dict[str, Any], scenario: Scenario = EVERYTHING_ON, **changed: Any) -> Flows:
    return solve(network(case, scenario, **changed))


def volts(found: Flows, outlet: str) -> list[Any]:
    return [each.volts for each in found.outlet(outlet)]


def because(value: object) -> frozenset[object]:
    assert isinstance(value, Unknown)
    return value.because


@pytest.mark.parametrize(
    ("supply", "expected"), [(None, 120), ("service", 120), ("cord", 120), ("islet", 230)]
)
def test_a_supply_gives_its_voltage(supply: str | None, expected: float) -> None:
    assert volts(flows(ROW, Scenario(supply)), "far") == [expected]


@pytest.mark.parametrize(("supply", "fact"), [("bare", "voltage"), ("odd", "kind")])
def test_a_supply_that_is_not_known_makes_all_unknown(supply: str, fact: str) -> None:
    found = flows(ROW, Scenario(supply))
    assert because(found.potential("far.hot")) == {Missing("supply", supply, fact)}
    assert because(found.current("k1.black")) == {Missing("supply", supply, fact)}


def test_a_voltage_said_to_be_unknown_is_not_taken_from_the_kind() -> None:
    supplies = {"cord": {"kind": "two-wire 120 V", "voltage": "unknown"}}
    found = flows(ROW, supplies=supplies)
    assert because(found.potential("far.hot")) == {Missing("supply", "cord", "voltage")}


def test_a_supply_that_the_job_does_not_have_is_an_error() -> None:
    with pytest.raises(KeyError):
        network(ROW, Scenario("windmill"))


def test_the_leg_of_a_breaker_that_is_not_known_makes_its_circuit_unknown() -> None:
    breakers = {**BREAKERS, 1: {"rating": "20 A", "leg": "unknown"}}
    found = flows(ROW, panel={"breakers": breakers})
    assert because(found.between("far.hot", "far.neutral")) == {
        Missing("breaker", "panel 1", "leg")
    }


def test_a_stated_leg_holds_for_the_breaker() -> None:
    breakers = {**BREAKERS, 1: {"rating": "20 A", "leg": "B"}}
    assert volts(flows(ROW, panel={"breakers": breakers}), "far") == [-120]


def test_an_appliance_on_both_hots_draws_from_leg_to_leg() -> None:
    found = flows(KILN, appliances={"kiln": {"outlets": ["kiln-box"], "load": "7.2 kW"}})
    assert volts(found, "kiln-box")[0] == pytest.approx(238.2, abs=0.1)
    assert found.breaker_current("panel", 5, 0) == pytest.approx(29.8, abs=0.1)
    assert found.breaker_current("panel", 5, 1) == pytest.approx(-29.8, abs=0.1)


def test_a_breaker_of_two_poles_on_the_other_leg_has_both_poles_there() -> None:
    found = flows(KILN, Scenario(faults=(OnLeg("panel", 5, "B"),)))
    assert [found.potential(f"kiln-box.{hot}") for hot in ("hot", "hot 2")] == [-120, 120]


@pytest.mark.parametrize(
    ("held", "stated", "expected"),
    [
        ("appliance outlet", {}, ("hot", "hot 2", 240)),
        ("appliance outlet", {"voltage": "120 V"}, ("hot", "neutral", 120)),
        ("appliance outlet", {"voltage": "230 V"}, ("hot", "hot 2", 230)),
        ("receptacle", {}, ("hot", "neutral", 120)),
        ("receptacle", {"voltage": "240 V"}, ("hot", "hot 2", 240)),
    ],
)
def test_where_both_hots_and_the_neutral_are_the_voltage_tells_what_a_load_is_on(
    held: str, stated: dict[str, str], expected: tuple[str, str, float]
) -> None:
    made_up = {"receptacle": {"split": "two circuits"}} if held == "receptacle" else {held: {}}
    case = {
        "boxes": {"range": {"holds": made_up}},
        "cables": {"k1": {"sheath": "6/3 NM-B", "from": "panel", "to": "range", "circuit": "kiln"}},
    }
    appliances = {"range": {"outlets": ["range"], "load": "6 kW", **stated}}
    found = network(case, appliances=appliances)
    [load] = found.loads
    one, other, rated = expected
    assert (load.one, load.other) == (found.nodes[f"range.{one}"], found.nodes[f"range.{other}"])
    assert load.volts == rated


def test_the_usual_voltage_of_a_load_is_unknown_with_that_of_the_supply() -> None:
    supplies = {"bare": {"kind": "split phase"}}
    [load] = network(ROW, supplies=supplies, appliances=LAMP).loads
    assert (load.watts, load.missing) == (None, (Missing("appliance", "lamp", "voltage"),))


def test_a_load_follows_from_current_and_voltage() -> None:
    kiln = {"outlets": ["kiln-box"], "current": "30 A", "voltage": "240 V"}
    assert network(KILN, appliances={"kiln": kiln}).loads[0].watts == pytest.approx(7200)


def test_a_load_at_several_outlets_is_shared_equally() -> None:
    heater = {"outlets": ["near", "far"], "load": "1 kW"}
    loads = network(ROW, appliances={"heater": heater}).loads
    assert [(load.outlet, load.watts, load.volts) for load in loads] == [
        ("near", 500, 120), ("far", 500, 120),
    ]  # fmt: skip


def test_a_load_not_known_makes_its_circuit_unknown_and_no_other() -> None:
    case = {
        "boxes": {**ROW["boxes"], "shed": {"holds": "receptacle"}},
        "cables": {
            **ROW["cables"],
            "k3": {"from": "panel", "to": "shed", "circuit": "b", "length": "9 ft"},
        },
    }
    found = flows(case, appliances={"saw": {"outlets": ["far"]}})
    assert because(found.current("k1.black")) == {Missing("appliance", "saw", "load")}
    assert volts(found, "shed") == [-120]


def test_a_length_not_known_matters_only_where_something_flows() -> None:
    case = {**ROW, "cables": {**ROW["cables"], "k2": {"from": "near", "to": "far"}}}
    assert volts(flows(case), "far") == [120]
    on = Scenario(also=(Draw("lamp", "near", 60, 120),))
    assert because(volts(flows(case, on), "far")[0]) == {Missing("cable", "k2", "length")}
    assert flows(case, on).current("k1.bare") == 0


def test_a_material_or_a_size_not_known_is_named() -> None:
    usual = {"cable": {"material": "unknown"}}
    cables = {**ROW["cables"], "k2": {**ROW["cables"]["k2"], "conductors": ["black", "white"]}}
    on = Scenario(also=(Draw("lamp", "far", 60, 120),))
    case = {**ROW, "cables": {**cables, "k1": {**ROW["cables"]["k1"], "sheath": "12/2 NM-B"}}}
    found = flows(case, on, usual=usual)
    assert because(found.current("k1.black")) >= {
        Missing("cable", "k1", "material"), Missing("conductor", "k2.black", "size"),
    }  # fmt: skip


def test_a_sheath_not_known_leaves_both_its_boxes_in_doubt() -> None:
    cables = {**ROW["cables"], "k2": {"from": "near", "to": "far", "sheath": "unknown"}}
    found = flows({**ROW, "cables": cables})
    expected = {Missing("cable", "k2", "insulated_conductors")}
    assert because(volts(found, "near")[0]) == expected


def test_the_earth_of_a_tt_supply_matters_only_where_current_goes_to_it() -> None:
    assert flows(ROW, Scenario("islet")).potential("far.bond") == 0
    touching = Scenario("islet", faults=(Touching("far.hot", "far.bond", 1.0),))
    expected = {Missing("supply", "islet", "earth resistance")}
    assert because(flows(ROW, touching).potential("far.bond")) == expected


def test_a_lost_supply_neutral_of_a_tt_supply_leaves_the_earth() -> None:
    lost = Scenario("islet", faults=(SupplyNeutralLost(),))
    found = flows(ROW, lost)
    assert found.is_driven("far.bond")
    assert not found.is_driven("far.neutral")
    assert volts(found, "far") == [0]


def test_a_panel_that_a_feeder_ends_in_is_fed_by_it() -> None:
    case = {
        "panel": None,
        "panels": {"main": {"breakers": {1: {"rating": "60 A", "poles": 2}}},
                   "shed": {"breakers": {2: {"rating": "20 A"}}}},
        "circuits": {"feeder": {"breakers": [1], "panel": "main"},
                     "saws": {"breakers": [2], "panel": "shed"}},
        "boxes": {"saw": {"holds": "receptacle"}},
        "cables": {
            "k1": {"sheath": "6/3 NM-B", "from": "main", "to": "shed", "circuit": "feeder",
                   "length": "100 ft", "bond": "10 AWG"},
            "k2": {"from": "shed", "to": "saw", "circuit": "saws", "length": "20 ft"},
        },
    }  # fmt: skip
    found = flows(case, Scenario(also=(Draw("saw", "saw", 1800, 120),)))
    [drop] = drops_of(found)
    # 100 ft of 6 AWG and 20 ft of 12 AWG copper at 75 C, out and back.
    amperes = 120 / (8 + 2 * (0.048046 + 0.038632))
    assert found.breaker_current("main", 1, 0) == pytest.approx(amperes, rel=1e-4)
    assert found.breaker_current("shed", 2) == pytest.approx(amperes, rel=1e-4)
    assert drop.drop == pytest.approx(120 - 8 * amperes, rel=1e-3)
    assert found.current("k1.bare") == 0


def test_a_load_of_constant_power_draws_more_at_a_lower_voltage() -> None:
    on = (Draw("motor", "far", 1800, 120, Constant.POWER),)
    found = flows(ROW, Scenario(also=on))
    [at_the_outlet] = volts(found, "far")
    assert found.draw(0) == pytest.approx(1800 / at_the_outlet)
    assert found.draw(0) > 15 > 1800 / 120 * at_the_outlet / 120


def test_a_load_that_the_wires_cannot_bring_finds_no_steady_state() -> None:
    held = {0: 120.0, 1: 0.0}
    wires = (Wire("w1", 0, 2, 4.0),)
    load = Load("motor", "motor", 2, 1, 1800.0, 120.0, Constant.POWER)
    found = solve(Network({"a": 0, "b": 1, "c": 2}, 3, held, wires, (load,)))
    assert because(found.current("w1")) == {Unsteady("motor")}
    assert because(found.drawn) == {Unsteady("motor")}


def test_the_most_that_wires_bring_is_half_the_voltage() -> None:
    """900 W is what 120 V brings through 4 ohm; 890 W has a steady state a little above 60 V."""
    load = Load("motor", "motor", 2, 1, 890.0, 120.0, Constant.POWER)
    found = solve(
        Network({"a": 0, "b": 1, "c": 2}, 3, {0: 120.0, 1: 0.0}, (Wire("w1", 0, 2, 4.0),), (load,))
    )
    # V * V - 120 V + 890 * 4 = 0
    assert found.potential("c") == pytest.approx(60 + (3600 - 3560) ** 0.5, abs=1e-6)


def test_a_shared_neutral_cannot_be_told_while_the_legs_of_its_breakers_are_not() -> None:
    on = Scenario(also=(Draw("oven", "left", 1800, 120), Draw("kettle", "right", 1200, 120)))
    legs_unsaid = {"panel": {"breakers": BREAKERS}}
    unsure = {Missing("breaker", f"panel {space}", "leg") for space in (1, 3)}
    assert because(flows(PAIR, on, **legs_unsaid).current("k1.white")) == unsure
    known = Scenario(also=on.also, faults=(OnLeg("panel", 1, "A"), OnLeg("panel", 3, "B")))
    assert flows(PAIR, known, **legs_unsaid).current("k1.white") == pytest.approx(-5, rel=1e-3)


def test_a_breaker_alone_brings_the_same_on_either_leg() -> None:
    assert volts(flows(ROW, panel={"breakers": BREAKERS}), "far") == [120]


def test_the_worst_for_a_shared_neutral_is_one_leg_alone() -> None:
    on = (Draw("oven", "left", 1800, 120), Draw("kettle", "right", 1200, 120))
    worst = worst_for(network(PAIR, Scenario(also=on)), "k1.white")
    assert [load.name for load in worst.loads] == ["oven"]
    assert worst.current == pytest.approx(-15, rel=1e-3)
    same_leg = Scenario(also=on, faults=(OnLeg("panel", 3, "A"),))
    worst = worst_for(network(PAIR, same_leg), "k1.white")
    assert [load.name for load in worst.loads] == ["oven", "kettle"]
    assert worst.current == pytest.approx(-25, rel=1e-3)


def test_the_worst_can_go_either_way_and_may_be_all_loads_together() -> None:
    on = (Draw("oven", "left", 1200, 120), Draw("kettle", "right", 1800, 120))
    worst = worst_for(network(PAIR, Scenario(also=on)), "k1.white")
    assert [load.name for load in worst.loads] == ["kettle"]
    assert worst.current == pytest.approx(15, rel=1e-3)
    lost = Scenario(also=on, faults=(Open("k1.white@panel"),))
    worst = worst_for(network(PAIR, lost), "k1.black")
    assert [load.name for load in worst.loads] == ["oven", "kettle"]
    assert worst.current == pytest.approx(240 / (12 + 8), rel=1e-3)


def test_only_what_is_named_is_on() -> None:
    appliances = {
        "lamp": {"outlets": ["far"], "load": "60 W"}, "fan": {"outlets": ["near"], "load": "30 W"},
    }  # fmt: skip
    loads = network(ROW, Scenario(on=frozenset({"fan"})), appliances=appliances).loads
    assert [load.name for load in loads] == ["fan"]


def test_what_draws_nothing_for_want_of_a_word_is_named() -> None:
    case = {**ROW, "boxes": {**ROW["boxes"], "far": {"holds": "luminaire"}}}
    found = network(case, appliances={"fan": {"load": "30 W"}})
    assert found.unstated == ("far",)
    assert found.unplaced == ("fan",)


@pytest.mark.parametrize(
    "scenario",
    [
        Scenario(on=frozenset({"nowhere"})),
        Scenario(also=(Draw("lamp", "nowhere", 60, 120),)),
        Scenario(also=(Draw("lamp", "far", 60, 120, between=("far.hot", "nowhere")),)),
        Scenario(faults=(Open("nowhere"),)),
        Scenario(faults=(Apart("nowhere"),)),
        Scenario(faults=(TakenOut("nowhere"),)),
        Scenario(faults=(Touching("far.hot", "nowhere", 1.0),)),
    ],
)
def test_a_place_that_the_wiring_does_not_have_is_an_error(scenario: Scenario) -> None:
    with pytest.raises(NotThere, match="nowhere"):
        network(ROW, scenario)


def test_what_feeds_a_box_is_off_and_the_rest_stays_joined() -> None:
    on = Scenario(also=(Draw("lamp", "far", 60, 120),))
    lost = flows(ROW, with_fault(on, Open("near", Role.NEUTRAL)))
    assert lost.current("k1.white") == 0
    assert lost.between("near.neutral", "far.neutral") == pytest.approx(0)
    assert lost.potential("near.neutral") == pytest.approx(120)


def test_apart_leaves_every_conductor_of_a_joint_alone() -> None:
    job = small_job(COMMON, ROW)
    wiring = derive(job)
    joint = next(each for each in wiring.joints.values() if each.use.role is Role.NEUTRAL)
    found = solve(network_of(job, wiring, Scenario(faults=(Apart(joint.id),))))
    assert not any(found.is_driven(name) for name in ("near.neutral", "far.neutral"))


def test_a_split_receptacle_has_three_voltages() -> None:
    case = {
        "circuits": {"pair": {"breakers": [1, 3]}},
        "boxes": {"pot": {"holds": {"receptacle": {"split": "two circuits"}}}},
        "cables": {"k1": {"sheath": "12/3 NM-B", "from": "panel", "to": "pot", "circuit": "pair",
                          "length": "9 ft"}},
    }  # fmt: skip
    assert volts(flows(case), "pot") == [120, -120, 240]
    assert volts(flows(case, Scenario(faults=(OnLeg("panel", 3, "A"),))), "pot") == [120, 120, 0]


def test_the_halves_of_a_receptacle_on_two_circuits_have_their_own_neutrals() -> None:
    case = {
        "boxes": {"pot": {"holds": {"receptacle": {"split": "two circuits"}}}},
        "cables": {
            "k1": {"from": "panel", "to": "pot", "circuit": "a", "length": "9 ft"},
            "k2": {"from": "panel", "to": "pot", "circuit": "b", "length": "9 ft"},
        },
    }
    pairs = [(each.one, each.other) for each in flows(case).outlet("pot")]
    assert pairs == [
        ("pot.hot", "pot.neutral"), ("pot.hot 2", "pot.neutral 2"), ("pot.hot", "pot.hot 2"),
    ]  # fmt: skip


def test_an_open_hot_may_be_a_switched_one() -> None:
    case = {
        "boxes": {"door": {"holds": {"switch": {"controls": "lamp"}}},
                  "lamp": {"holds": "luminaire"}},
        "cables": {
            "k1": {"from": "panel", "to": "door", "circuit": "a", "length": "9 ft"},
            "k2": {"from": "door", "to": "lamp", "carries": "switched", "for": "lamp",
                   "length": "9 ft"},
        },
    }  # fmt: skip
    assert volts(flows(case), "lamp") == [120]
    assert volts(flows(case, Scenario(switches=(("door", "off"),))), "lamp") == [0]
    assert volts(flows(case, Scenario(faults=(Open("lamp", Role.HOT),))), "lamp") == [0]


def test_a_cable_stated_towards_the_panel_counts_the_same_at_its_breaker() -> None:
    cables = {"k1": {"from": "near", "to": "panel", "circuit": "a", "length": "30 ft"}}
    case = {"boxes": {"near": {"holds": "receptacle"}}, "cables": cables}
    found = flows(case, Scenario(also=(Draw("lamp", "near", 120, 120),)))
    assert found.breaker_current("panel", 1) == pytest.approx(1, rel=1e-2)
    assert found.current("k1.black") == pytest.approx(-1, rel=1e-2)


@pytest.mark.parametrize("end", [{"from": "panel", "to": "near"}, {"from": "near", "to": "panel"}])
def test_a_metal_not_known_leaves_the_current_of_its_breaker_unknown(end: dict[str, str]) -> None:
    k1 = {**end, "circuit": "a", "length": "30 ft", "material": "unknown"}
    case = {"boxes": {"near": {"holds": "receptacle"}}, "cables": {"k1": k1}}
    found = flows(case, Scenario(also=(Draw("lamp", "near", 120, 120),)))
    assert because(found.breaker_current("panel", 1)) == {Missing("cable", "k1", "material")}


def test_a_use_that_is_not_told_leaves_its_boxes_in_doubt() -> None:
    cables = {**ROW["cables"], "k2": {**ROW["cables"]["k2"], "carries": "unknown"}}
    found = flows({**ROW, "cables": cables})
    assert Missing("conductor", "k2.black", "role") in because(volts(found, "near")[0])


def test_a_touch_stated_twice_is_one_and_two_of_one_place_both_count() -> None:
    one, other = (Touching("far.hot", "far.neutral", ohms) for ohms in (1.0, 2.0))
    once = flows(ROW, Scenario(faults=(one,)))
    assert flows(ROW, Scenario(faults=(one, one))).losses == once.losses
    both = flows(ROW, Scenario(faults=(one, other)))
    assert supplied(both) == pytest.approx(both.losses)
    assert supplied(once) == pytest.approx(once.losses)
