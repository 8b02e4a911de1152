"""Published load calculations for the United States, reproduced line by line through job files."""

import json
from collections.abc import Iterator
from functools import cache
from typing import Any

import pytest

from linter.audit.worksheets import Sheet, worksheets_of
from linter.cli.shelf import Shelf
from linter.facts import facts_of
from linter.jobfile import read_job
from linter.trace import trace
from linter.units import read_quantity, same_value
from linter.wiring import derive
from tests.outside.path import table

TABLE = table("us_loads.yaml")


@cache
def shelf() -> Shelf:
    return Shelf()


def cases() -> Iterator[Any]:
    for case in TABLE["cases"]:
        for pack in case["packs"]:
            yield pytest.param(case, pack, id=f"{case['case']}: {pack}")


def sheets_of(case: Any, pack: str) -> dict[str, Sheet]:
    told = {**TABLE["common"], **case["job"]}
    return worked(json.dumps({"precover": 1, "job": {"name": "Example", "pack": pack}, **told}))


@cache
def worked(text: str) -> dict[str, Sheet]:
    job = read_job(text, "example.yaml")
    wiring = derive(job)
    facts = facts_of(job, wiring, trace(job, wiring))
    return {each.name: each for each in worksheets_of(facts, shelf().pack_of(job))}


@pytest.mark.parametrize(("case", "pack"), list(cases()))
def test_a_published_calculation_comes_out_line_by_line(case: Any, pack: str) -> None:
    sheets = sheets_of(case, pack)
    for name, expected in case["lines"].items():
        values = {line.said: line.value for line in sheets[name].lines}
        for said, amount in expected.items():
            value = values[said]
            assert isinstance(value, float), said
            assert same_value(value, read_quantity(str(amount)).value), (said, value)


@pytest.mark.parametrize(("case", "pack"), list(cases()))
def test_the_running_total_ends_at_the_load(case: Any, pack: str) -> None:
    for sheet in sheets_of(case, pack).values():
        added = [line.running for line in sheet.lines if line.adds]
        load = [line.written for line in sheet.lines if line.said == "Load"]
        assert not added or added[-1] == load[0], sheet.name


def test_every_case_names_its_source() -> None:
    assert all(case["source"] for case in TABLE["cases"])
