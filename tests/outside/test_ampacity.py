"""Published examples of ampacity and breakers, the whole path: tests/outside/ampacity.yaml."""

import math
from typing import Any

import pytest

from linter.units import AREA, CURRENT
from tests.outside.jobs import cable_job
from tests.outside.path import base, findings_at, measured, step_of, table, thing_of

TABLE = table("ampacity.yaml")
TOLERANCE = base(TABLE["tolerance"], CURRENT)
cases = pytest.mark.parametrize("row", TABLE["cases"], ids=lambda row: row["case"])


@cases
def test_the_cable_may_carry_what_the_example_says(row: dict[str, Any]) -> None:
    cable = thing_of(cable_job(row), "cable", "k")
    for measure in ("allowed_ampacity", "largest_breaker"):
        if measure in row["answer"]:
            expected = base(row["answer"][measure], CURRENT)
            assert math.isclose(measured(measure, cable), expected, abs_tol=TOLERANCE), measure


@cases
def test_the_steps_are_those_of_the_example(row: dict[str, Any]) -> None:
    cable = thing_of(cable_job(row), "cable", "k")
    for step, text in row.get("steps", {}).items():
        found = step_of("allowed_ampacity", step, cable)
        assert math.isclose(found, base(text, CURRENT), abs_tol=TOLERANCE), step


@cases
def test_a_finding_stands_where_the_breaker_is_too_large(row: dict[str, Any]) -> None:
    job = cable_job(row)
    rules = ("breaker-protects-the-wire", "breaker-protects-wire-where-it-lies")
    found = sum(findings_at(job, rule, "k") for rule in rules)
    assert found == (row["answer"]["breaker"] == "too large")


@cases
def test_what_differs_from_print_says_how(row: dict[str, Any]) -> None:
    assert row["source"]["title"]
    assert row["source"]["known"] in ("read", "memory")
    assert ("published" in row) == ("differs" in row) != ("arithmetic" in row)


@pytest.mark.parametrize("row", TABLE["bonds"], ids=lambda row: row["case"])
def test_the_bond_is_as_large_as_the_example_says(row: dict[str, Any]) -> None:
    cable = thing_of(cable_job(row), "cable", "k")
    expected = base(row["answer"]["least_bond_size"], AREA)
    assert math.isclose(measured("least_bond_size", cable), expected, rel_tol=1e-9)
