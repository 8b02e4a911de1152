"""The same job judged by two editions: tests/cases/editions/*.yaml, one row for each change.

A row makes its edits of the sound job of the file, judges the job by both editions, and says what
comes of the edits under each; and it says under which clause each edition has what changed, or
that it has not got it.
"""

import json
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from linter.audit.audit import audit
from linter.audit.findings import Audit
from linter.cli.shelf import Shelf
from linter.jobfile import read_job
from linter.packs.model import Pack
from tests.seeded.edits import edited, findings_of, load

HERE = Path(__file__).with_name("editions")
ROOT = HERE.parents[2]


def _rows() -> Iterator[Any]:
    for path in sorted(HERE.glob("*.yaml")):
        table = load(path)
        for row in table["rows"]:
            yield pytest.param(table["base"], row, id=row["change"])


@cache
def _shelf() -> Shelf:
    return Shelf()


@cache
def _pack(name: str) -> Pack:
    return _shelf().pack_named(name)


@cache
def _base(name: str) -> Any:
    return load(ROOT / name)


def _audit(base: str, row: Any, pack: str) -> Audit:
    edits = [*row.get("with", []), *row["edits"]]
    job = read_job(edited(_base(base), {"edits": edits}), "job.yaml")
    return audit(job, _pack(pack))


@cache
def _before(base: str, pack: str, common: str) -> Audit:
    return _audit(base, {"with": json.loads(common), "edits": []}, pack)


@pytest.mark.parametrize(("base", "row"), list(_rows()))
def test_two_editions_judge_the_same_job_differently(base: str, row: Any) -> None:
    found, common = {}, json.dumps(row.get("with", []))
    for edition, said in row["under"].items():
        after = _audit(base, row, edition)
        found[edition] = findings_of(after) - findings_of(_before(base, edition, common))
        assert found[edition] == {(each["rule"], each["at"]) for each in said["expect"]}, edition
        assert _clause(_pack(edition), said["of"]) == said["clause"], edition
    assert len({frozenset(each) for each in found.values()}) == len(found) or row.get("same")


def _numbers() -> Iterator[Any]:
    for path in sorted(HERE.glob("*.yaml")):
        for row in load(path)["numbers"]:
            yield pytest.param(row, id=row["of"])


@pytest.mark.parametrize("row", list(_numbers()))
def test_each_edition_numbers_it_as_its_readers_know_it(row: Any) -> None:
    expected = {edition: number for edition, number in row.items() if edition != "of"}
    assert {name: _clause(_pack(name), row["of"]) for name in expected} == expected


def _clause(pack: Pack, of: str) -> str:
    """The clause under which a pack has a rule, limit, table or measure; none where it has not."""
    what, _, name = of.partition(" ")
    kind, _, measure = name.partition(".")
    there = {
        "rule": {each.name: each for each in pack.rules}.get(name),
        "limit": pack.limits.get(name),
        "table": pack.tables.get(name),
        "measure": pack.measures.get((kind, measure)),
    }[what]
    return "none" if there is None else there.history.cited[0].id
