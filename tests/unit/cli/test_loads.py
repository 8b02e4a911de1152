import json
from pathlib import Path

import pytest

from tests.golden.fresh import ROOT
from tests.unit.cli.running import Runner

STUDIO = str(ROOT / "examples/pottery-studio/put-right.yaml")
HOUSE = """\
precover: 1
job: {name: Tide house, pack: us-nec-2023}
supplies: {service: {kind: split phase, voltage: 240 V, rating: 100 A}}
dwelling: {type: one-family, outside_area: 1500 ft2}
appliances:
  range: {type: range, load: 12 kW, voltage: 240 V, fixed: no}
  dryer: {type: dryer, load: 5.5 kW, voltage: 240 V, fixed: no}
"""


@pytest.fixture
def house(tmp_path: Path) -> Path:
    path = tmp_path / "house.yaml"
    path.write_text(HOUSE, encoding="utf-8")
    return path


def test_each_line_has_its_arithmetic_its_clause_and_the_running_total(
    precover: Runner, house: Path
) -> None:
    ran = precover("loads", str(house))
    assert (ran.status, ran.err) == (0, "")
    for words in (
        "CAUTION An aid for a person to confirm",
        "Tide house, by us-nec-2023",
        "1. Load of the service, standard calculation",
        "1 General lighting and receptacles 4500 VA 3 VA/ft2 \N{MULTIPLICATION SIGN} 1500 ft2",
        "These three, as far as they count 5100 VA 5100 VA",
        "3000 VA + 0.35 \N{MULTIPLICATION SIGN} 6000 VA",
        "Cooking appliances 8000 VA 13100 VA",
        "Load 18600 VA 5100 VA + 8000 VA + 5500 VA",
        "Least standard rating of the service 100 A 100 A",
        "a licensed electrician",
    ):
        assert words in ran.said
    assert all(len(line) <= 80 for line in ran.out.splitlines())


def test_results_of_all_ways_stand_side_by_side(precover: Runner, house: Path) -> None:
    lines = precover("loads", str(house)).out.splitlines()
    rows = {line[3:40].strip(): line[40:].split() for line in lines[lines.index("Results") + 1 :]}
    assert rows["Current at 240 V"] == ["78", "A", "69", "A", "-"]
    assert rows["Least standard rating of the service"] == ["100", "A", "100", "A", "-"]


def test_what_is_missing_is_named_with_how_to_learn_it(precover: Runner, house: Path) -> None:
    text = HOUSE.replace("outside_area: 1500 ft2", "outside_area: unknown").replace(
        "load: 12 kW, ", ""
    )
    house.write_text(text, encoding="utf-8")
    ran = precover("loads", str(house))
    assert ran.status == 3
    assert "Missing: outside area of Tide house." in ran.said
    assert "load of range: Read the nameplate." in ran.said
    assert "Clothes dryer 5500 VA not known" in ran.said
    assert "Measure the outside of the building" in ran.said


def test_figures_without_any_appliance_are_told_for_what_they_are(
    precover: Runner, house: Path
) -> None:
    bare = HOUSE.partition("appliances:")[0]
    house.write_text(bare, encoding="utf-8")
    ran = precover("loads", str(house))
    assert ran.status == 3
    assert "The job states no appliance: what cooks, dries, washes" in ran.said
    house.write_text(HOUSE, encoding="utf-8")
    assert "states no appliance" not in precover("loads", str(house)).said


def test_json_has_values_in_base_units_and_what_is_missing(precover: Runner, house: Path) -> None:
    house.write_text(HOUSE.replace("load: 12 kW", "load: unknown"), encoding="utf-8")
    ran = precover("loads", str(house), "--form", "json")
    document = json.loads(ran.out)
    first = document["worksheets"][0]
    lines = {line["line"]: line for line in first["lines"]}
    assert first["worksheet"] == "standard-calculation"
    assert lines["Clothes dryer"]["value"] == 5500.0
    cooking = lines["Cooking appliances"]
    assert cooking["value"] is None
    assert cooking["missing"][0]["things"] == ["range"]
    assert cooking["missing"][0]["fact"] == "load"


def test_of_an_edition_that_is_not_confirmed_the_lines_say_so(
    precover: Runner, house: Path
) -> None:
    house.write_text(HOUSE.replace("us-nec-2023", "us-nec-2026"), encoding="utf-8")
    assert "210.11(A), read, to be confirmed" in precover("loads", str(house)).said


def test_a_pack_without_worksheets_says_so(precover: Runner, house: Path) -> None:
    house.write_text(HOUSE.replace("us-nec-2023", "us-osha-temporary"), encoding="utf-8")
    ran = precover("loads", str(house))
    assert "has no calculation for this job" in ran.said


def test_the_studio_has_all_that_its_calculations_ask(precover: Runner) -> None:
    assert precover("loads", STUDIO).status == 0


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ((), "A job file is missing."),
        (("a.yaml", "b.yaml"), '"b.yaml" is one word too many.'),
        (("a.yaml", "--form", "xml"), "form"),
    ],
)
def test_wrong_use_is_told(precover: Runner, words: tuple[str, ...], said: str) -> None:
    ran = precover("loads", *words)
    assert ran.status == 64
    assert said in ran.err
