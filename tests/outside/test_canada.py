"""Canadian worked examples and tables, through the whole path: tests/outside/canada.yaml."""

import math
from functools import cache
from typing import Any

import pytest
import yaml

from linter.audit.audit import audit
from linter.cli.shelf import Shelf
from linter.jobfile import read_job
from linter.language.evaluate import measure_of
from linter.packs.model import Pack
from linter.units import AREA, CURRENT, POWER, TEMPERATURE, VOLUME
from linter.vocabulary.model import Thing
from tests.outside.jobs import box_job, cable_job
from tests.outside.path import base, table, thing_of

TABLE = table("canada.yaml")
_DIMENSIONS = {
    "living_area": AREA,
    "service_current": CURRENT,
}
_NEAR = 5e-4  # of a load: the print is rounded to a tenth of an ampere


@cache
def pack() -> Pack:
    return Shelf().pack_named(TABLE["pack"])


def measured(name: str, thing: Thing) -> float:
    value = measure_of(thing.kind, name, thing, pack().library)
    assert isinstance(value, float), value
    return value


def findings(text: str, rule: str) -> int:
    found = audit(read_job(text, "outside.yaml"), pack()).findings
    return sum(each.rule == rule for each in found)


def named(row: dict[str, Any]) -> str:
    return str(row["case"])


boxes = pytest.mark.parametrize("row", TABLE["box_fill"], ids=named)


@boxes
def test_a_box_needs_what_the_example_says(row: dict[str, Any]) -> None:
    box = thing_of(box_job(row), "box", "here")
    for measure in ("fill", "usable_volume"):
        if measure in row["answer"]:
            expected = base(row["answer"][measure], VOLUME)
            tolerance = base(TABLE["tolerance"], VOLUME)
            assert math.isclose(measured(measure, box), expected, abs_tol=tolerance), measure


@boxes
def test_a_finding_stands_where_the_room_is_too_small(row: dict[str, Any]) -> None:
    found = audit(read_job(box_job(row), "outside.yaml"), pack()).findings
    at_box = any(each.rule == "box-has-room" and each.ref == "here" for each in found)
    assert at_box == (row["answer"]["room"] == "too small")


@pytest.mark.parametrize(
    ("size", "counts"), TABLE["table_23"]["rows"].items(), ids=TABLE["table_23"]["rows"]
)
def test_volumes_come_to_the_counts_of_the_table(size: str, counts: list[int]) -> None:
    library = pack().library
    room = float(library.column("trade_size_volume", "volume")((size,))) * (1 + 1e-9)
    for wire, count in zip(TABLE["table_23"]["sizes"], counts, strict=True):
        one = float(library.column("conductor_volume", "volume")((base(wire, AREA),)))
        assert count * one <= room < (count + 1) * one, wire


def test_the_table_of_sizes_is_held_whole() -> None:
    listed = {row[0] for row in pack().library.tables["trade_size_volume"].rows}
    assert listed == set(TABLE["table_23"]["rows"])


def test_every_ambient_correction_is_that_of_the_formula() -> None:
    printed = TABLE["ambient_correction"]
    normal = base(printed["table_ambient"], TEMPERATURE)
    rows: list[Any] = list(pack().library.tables["ambient_correction"].rows)
    assert len(rows) == printed["rows"]
    for rating, ambient, factor in rows:
        expected = math.sqrt((rating - ambient) / (rating - normal))
        assert math.isclose(factor, expected, abs_tol=printed["tolerance"] + 1e-9), (
            rating,
            ambient,
        )


@pytest.mark.parametrize("row", TABLE["dwelling_loads"], ids=named)
def test_a_dwelling_has_the_load_that_the_example_says(row: dict[str, Any]) -> None:
    appliances = {
        name: {"type": type_, "load": load, "voltage": "240 V"}
        for name, (type_, load) in row.get("appliances", {}).items()
    }
    job = {
        "precover": 1,
        "job": {"name": "Boathouse", "pack": TABLE["pack"]},
        "supplies": {"service": {"kind": "split phase", "voltage": "240 V"}},
        "dwelling": row["dwelling"],
        "appliances": appliances,
    }
    thing = thing_of(yaml.safe_dump(job), "dwelling", "dwelling")
    for measure, answer in row["answer"].items():
        expected = base(answer, _DIMENSIONS.get(measure, POWER))
        assert math.isclose(measured(measure, thing), expected, rel_tol=_NEAR), measure


@pytest.mark.parametrize("row", TABLE["voltage_drop"], ids=named)
def test_a_long_circuit_loses_what_the_arithmetic_says(row: dict[str, Any]) -> None:
    cable = {"sheath": "14/2 NMD90", "length": row["length"]}
    job = yaml.safe_load(cable_job({"feeds": "receptacles", "breaker": "15 A", "cable": cable}))
    load = {"outlets": ["there"], "load": row["load"], "voltage": "120 V"}
    text = yaml.safe_dump({**job, "appliances": {"lamp": load}})
    circuit = thing_of(text, "circuit", "c1")
    assert math.isclose(measured("percent_lost", circuit), row["percent"], abs_tol=0.06)
    assert findings(text, "voltage-holds-to-the-farthest-outlet") == row["finding"]


@pytest.mark.parametrize("group", ["box_fill", "dwelling_loads", "voltage_drop"])
def test_each_example_names_its_source_and_says_how_print_differs(group: str) -> None:
    for row in TABLE[group]:
        assert row["source"]["title"]
        assert row["source"]["known"] in ("read", "memory", "worked-out")
        assert ("published" in row) == ("differs" in row)
