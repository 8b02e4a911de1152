"""Published examples of box fill, through the whole path: tests/outside/box_fill.yaml."""

import math
from typing import Any

import pytest

from linter.units import VOLUME
from tests.outside.jobs import box_job
from tests.outside.path import base, findings_at, measured, table, thing_of

TABLE = table("box_fill.yaml")
TOLERANCE = base(TABLE["tolerance"], VOLUME)
cases = pytest.mark.parametrize("row", TABLE["cases"], ids=lambda row: row["case"])


@cases
def test_the_box_needs_what_the_example_says(row: dict[str, Any]) -> None:
    box = thing_of(box_job(row), "box", "here")
    answer = row["answer"]
    for measure in ("fill", "usable_volume"):
        if measure in answer:
            expected = base(answer[measure], VOLUME)
            assert math.isclose(measured(measure, box), expected, abs_tol=TOLERANCE), measure


@cases
def test_a_finding_stands_where_the_room_is_too_small(row: dict[str, Any]) -> None:
    found = findings_at(box_job(row), "box-has-room", "here")
    assert found == (row["answer"]["room"] == "too small")


@cases
def test_what_differs_from_print_says_how(row: dict[str, Any]) -> None:
    assert row["source"]["title"]
    assert row["source"]["known"] in ("read", "memory", "worked-out")
    assert ("published" in row) == ("differs" in row) != ("arithmetic" in row)
