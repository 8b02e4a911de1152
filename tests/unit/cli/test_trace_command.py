import json
import re
from pathlib import Path

import pytest

from tests.golden.fresh import ROOT
from tests.unit.cli.running import Runner

STUDIO = str(ROOT / "examples/pottery-studio/put-right.yaml")
SHARED = ("counter", "--load", "1500 W at sink-left", "--load", "100 W at sink-right")
ISLET = """
precover: 1
job: {name: Bait shed}
supplies: {cable: {kind: single phase 230 V, voltage: 230 V}}
panel: {breakers: {1: {rating: 10 A}}}
circuits: {shed: {breakers: [1]}}
rooms: {shed: {use: workshop}}
boxes: {bench: {room: shed, holds: receptacle}}
cables: {home: {sheath: 3G1.5, from: panel, to: bench, circuit: shed}}
"""


def test_a_circuit_is_followed_from_the_panel_outward(precover: Runner) -> None:
    ran = precover("trace", STUDIO, "loft")
    assert (ran.status, ran.err) == (0, "")
    for words in (
        "CAUTION An aid for a person to confirm",
        "breaker 15, 15 A, leg B, arc-fault: black of k80",
        "stair-bottom, stairs, 1 cable from the panel",
        "joint 1: black of k80, black of k83 and a pigtail to stair-bottom.common breaker 15",
        "stair-bottom.traveller 2: red of k81 breaker 15, in some positions of its switches",
        "luminaire loft-light: behind breaker 15 turned by stair-bottom and stair-top",
        "stair-bottom throw 1, stair-top throw 1: on",
        "stair-bottom throw 2, stair-top throw 1: off",
        "loft-bed.hot 2 and loft-bed.neutral 2: loft-bed-switch off: off",
        "a licensed electrician",
    ):
        assert words in ran.said
    boxes = re.findall(r"(\S+), \S+, (\d) cables? from the panel", ran.said)
    assert [int(far) for _, far in boxes] == sorted(int(far) for _, far in boxes)
    assert len(boxes) == 8


def test_where_the_supply_has_no_legs_none_is_spoken_of(precover: Runner, tmp_path: Path) -> None:
    job = tmp_path / "islet.yaml"
    job.write_text(ISLET, encoding="utf-8")
    assert "breaker 1, 10 A: brown of home" in precover("trace", str(job)).said
    job.write_text(ISLET.replace("single phase 230 V", "unknown"), encoding="utf-8")
    assert "breaker 1, 10 A, leg not told: brown of home" in precover("trace", str(job)).said


def test_a_wire_on_nothing_is_told_so(precover: Runner, tmp_path: Path) -> None:
    job = tmp_path / "islet.yaml"
    bench = "{bench: {room: shed, holds: receptacle, make_up: {capped: [home.blue]}}}"
    text = ISLET.replace("{bench: {room: shed, holds: receptacle}}", bench)
    job.write_text(text, encoding="utf-8")
    ran = precover("trace", str(job))
    assert "blue of home: joined with nothing" in ran.said


def test_without_a_name_every_circuit_is_followed(precover: Runner) -> None:
    ran = precover("trace", STUDIO)
    assert len(re.findall(r"circuit \S+ (?:pole 1 of )?breaker", ran.said)) == 12


def test_of_an_outlet_the_way_there_is_shown(precover: Runner) -> None:
    ran = precover("trace", STUDIO, "loft-light")
    assert re.findall(r"(\S+), \S+, \d cables? from", ran.said) == [
        "stair-bottom", "stair-top", "loft-light",
    ]  # fmt: skip


def test_with_loads_currents_and_voltages_are_told(precover: Runner) -> None:
    ran = precover("trace", STUDIO, *SHARED)
    assert "On: 1500 W at sink-left and 100 W at sink-right." in ran.said
    assert "line neutral: 118.9 V, 0.9 percent lost" in ran.said
    assert "k1.black 12.38 A; k1.red 0.84 A; k1.white 11.55 A" in ran.said
    assert "sink-right.line neutral: 120.5 V, 0.4 percent gained" in ran.said


def test_with_the_shared_neutral_open_the_lighter_load_sees_nearly_all(precover: Runner) -> None:
    # 9.6 and 144 ohms in series over 240 V: 15 V and 225 V, less what the wires take.
    ran = precover(
        "trace", STUDIO, *SHARED, "--fault", "open neutral at sink-left", "--form", "json"
    )
    document = json.loads(ran.out)
    assert document["faults"] == ["open neutral at sink-left"]
    left, right = document["circuits"][0]["stops"]
    found = [stop["outlets"][0]["voltages"][0]["volts_with_fault"] for stop in (left, right)]
    assert [abs(volts) for volts in found] == pytest.approx([15.0, 225.0], rel=0.01)


@pytest.mark.parametrize(
    ("fault", "outlet", "volts"),
    [
        ("open hot at pugmill", "pugmill", 0.0),
        ("breaker 13 on leg B", "pugmill", 120.0),
        ("kiln-box taken out", "kiln-box", 0.0),
        ("apart at heater-joint/1", "loft-heater", 0.0),
        ("loose neutral at pugmill, 9.6 ohm", "pugmill", 60.0),
    ],
)
def test_each_fault_has_its_words(precover: Runner, fault: str, outlet: str, volts: float) -> None:
    load = ("--load", "1500 W at pugmill")
    ran = precover("trace", STUDIO, outlet, *load, "--fault", fault, "--form", "json")
    (circuit,) = json.loads(ran.out)["circuits"]
    (found,) = [each for stop in circuit["stops"] for each in stop["outlets"]]
    assert abs(found["voltages"][0]["volts_with_fault"]) == pytest.approx(volts, abs=1.5)


@pytest.mark.parametrize(
    "fault", ["supply neutral lost", "k1.black@sink-left touching k1.white@panel"]
)
def test_a_fault_of_the_supply_or_a_touch_is_understood(precover: Runner, fault: str) -> None:
    assert (
        precover("trace", STUDIO, "counter", "--load", "everything", "--fault", fault).status == 0
    )


def test_data_holds_what_the_report_says(precover: Runner) -> None:
    ran = precover("trace", STUDIO, "loft-bed", "--form", "json")
    document = json.loads(ran.out)
    assert document["precover_trace"] == 1
    (outlet,) = document["circuits"][0]["stops"][-1]["outlets"]
    assert outlet["protected_by"] == ["breaker 15"]
    assert outlet["places"][1]["positions"] == [
        {"switches": {"loft-bed-switch": "off"}, "seen": "off"},
        {"switches": {"loft-bed-switch": "on"}, "seen": "on"},
    ]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ((), "A job file is missing."),
        ((STUDIO, "loft", "attic"), '"attic" is one word too many.'),
        ((STUDIO, "sink-lft"), "Nearest: sink-left."),
        ((STUDIO, "kiln", "--load", "klin"), '"klin" is no load of this job.'),
        ((STUDIO, "kiln", "--load", "1500 ft at kiln-box"), '"1500 ft" is no quantity'),
        ((STUDIO, "kiln", "--fault", "kiln explodes"), '"kiln explodes" is not a fault.'),
        ((STUDIO, "kiln", "--fault", "open neutral at nowhere"), '"nowhere" is no joint, box'),
        ((STUDIO, "kiln", "--fault", "breaker 23 on leg A"), "No breaker of this job stands at 23"),
        ((STUDIO, "kiln", "--supply", "servise"), "Nearest: service."),
        ((STUDIO, "kiln", "--form", "table"), "table"),
    ],
)
def test_words_that_name_nothing_are_wrong_use(
    precover: Runner, words: tuple[str, ...], said: str
) -> None:
    ran = precover("trace", *words)
    assert ran.status == 64
    assert said in ran.err
