"""One neutral job under the codes of several countries: tests/cases/countries."""

import json
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from linter.audit.audit import audit
from linter.audit.findings import Finding
from linter.cli.shelf import Shelf
from linter.jobfile import read_job
from linter.packs.model import Pack
from tests.seeded.edits import edited, load

HERE = Path(__file__).parent / "countries"
TABLE = load(HERE / "points.yaml")
PACKS: dict[str, str] = TABLE["cable"]
POINTS: list[Any] = TABLE["points"]
LEAST_POINTS = 40


@cache
def shelf() -> Shelf:
    return Shelf()


def pack(name: str) -> Pack:
    return shelf().pack_named(name)


def found(name: str, row: Any) -> tuple[Finding, ...]:
    """What the pack finds in the neutral job, edited, with the cable of its country."""
    job = load(HERE / "neutral.yaml")
    job["job"]["pack"] = name
    text = edited(job, row).replace("SHEATH", PACKS[name])
    return audit(read_job(text, "neutral.yaml"), pack(name)).findings


def rules_broken(name: str, row: Any) -> dict[str, str]:
    """The weight of each rule that the edit breaks."""
    return {each.rule: each.weight for each in found(name, row)}


def packs_of(row: Any) -> list[str]:
    return [name for name in PACKS if name in row]


@pytest.mark.parametrize("name", PACKS)
def test_the_neutral_job_is_sound_in_every_country(name: str) -> None:
    assert found(name, {"edits": []}) == ()


@pytest.mark.parametrize("row", POINTS, ids=lambda row: row["point"])
def test_the_countries_differ_as_stated(row: Any) -> None:
    names = packs_of(row)
    broken = {name: rules_broken(name, row) for name in names}
    for name in names:
        finds, holds = row[name]["finds"], row[name].get("holds", {})
        assert set(broken[name]) == set(finds)
        assert set(finds).isdisjoint(holds)
        clauses = {rule: pack(name).rule(rule).clause.id for rule in (*finds, *holds)}
        assert clauses == {**finds, **holds}
        assert finds or holds or row[name]["silent"], "each side names a clause"
    assert len({json.dumps(broken[name], sort_keys=True) for name in names}) > 1


def test_there_are_points_enough_for_each_pair() -> None:
    for name in PACKS:
        assert sum(name in row for row in POINTS) >= LEAST_POINTS, name
    assert len({row["point"] for row in POINTS}) == len(POINTS)
