"""Laws of whole audits, from file to findings: one value made unknown, or left out."""

import copy
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
from linter.text import Refused
from linter.text.yaml_places import read_places

STUDIO = Path(__file__).resolve().parents[2] / "examples/pottery-studio/with-mistakes.yaml"
EVERY = 7  # values of the job, so that a run stays short; which ones moves with each edit of it
Step = str | int


@cache
def job() -> Any:
    return read_places(STUDIO.read_text(encoding="utf-8"), STUDIO.name).plain()


@cache
def shelf() -> Shelf:
    return Shelf()


def audited(data: Any) -> Audit:
    read = read_job(json.dumps(data), "studio.json")
    return audit(read, shelf().pack_of(read))


def findings(told: Audit) -> set[tuple[str, str, str]]:
    return {(each.rule, each.kind, each.ref) for each in told.findings}


@cache
def before() -> set[tuple[str, str, str]]:
    return findings(audited(job()))


def values(value: Any, path: tuple[Step, ...] = ()) -> Iterator[tuple[Step, ...]]:
    """The paths of all values that are neither lists nor maps."""
    if isinstance(value, dict | list):
        for step, each in value.items() if isinstance(value, dict) else enumerate(value):
            yield from values(each, (*path, step))
    else:
        yield path


def changed(path: tuple[Step, ...], to: str | None) -> Any:
    """The job with the value at the path replaced, or left out."""
    data = copy.deepcopy(job())
    parent = data
    for step in path[:-1]:
        parent = parent[step]
    if to is None:
        del parent[path[-1]]
    else:
        parent[path[-1]] = to
    return data


SOME = [pytest.param(path, id=".".join(map(str, path))) for path in list(values(job()))[::EVERY]]


@pytest.mark.parametrize("path", SOME)
def test_a_value_made_unknown_brings_no_new_finding(path: tuple[Step, ...]) -> None:
    try:
        told = audited(changed(path, "unknown"))
    except Refused:
        return  # what names a thing cannot be unknown
    assert findings(told) <= before()


@pytest.mark.parametrize("path", SOME)
def test_a_value_left_out_is_audited_or_refused(path: tuple[Step, ...]) -> None:
    try:
        told = audited(changed(path, None))
    except Refused:
        return
    assert told.checks
