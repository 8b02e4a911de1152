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


# What says how the job hangs together: without it there is another wiring, not an answer fewer.
WIRED = {
    "breakers", "capped", "carries", "circuit", "controls", "for", "from", "holds", "joints", "leg",
    "leg_of", "left_open", "load", "make_up", "neutral_through", "of", "outlets", "split",
    "terminal", "through", "to", "type", "wires",
}  # fmt: skip
# Values of several parts, left out whole; all of them, for they are few.
WHOLE = [
    pytest.param((part, name, key), id=f"{part}.{name}.{key}")
    for part in ("rooms", "boxes", "cables", "appliances")
    for name, thing in job()[part].items()
    for key, value in thing.items()
    if isinstance(value, dict | list) and key not in WIRED
]
USUAL_OF = {"rooms": "room", "boxes": "box", "cables": "cable", "breakers": "breaker"}


def has_usual(path: tuple[Step, ...]) -> bool:
    """Whether the job itself says, by usual values, what holds once the value is left out."""
    kinds = {USUAL_OF[step] for step in path if step in USUAL_OF} | set(path)
    usual = {key for kind, keys in job()["usual"].items() if kind in kinds for key in keys}
    value = job()
    for step in path:
        value = value[step]
    return path[0] != "usual" and usual >= (set(value) if isinstance(value, dict) else {path[-1]})


def last_key(path: tuple[Step, ...]) -> Step:
    return next(step for step in reversed(path) if isinstance(step, str))


def assumed(told: Audit) -> set[tuple[str, str, str]]:
    return {(each.kind, each.fact, ref) for each in told.assumed for ref in each.things}


@pytest.mark.parametrize("path", [*SOME, *WHOLE])
def test_no_finding_vanishes_unsaid_with_a_value(path: tuple[Step, ...]) -> None:
    try:
        told = audited(changed(path, None))
    except Refused:
        return  # what everything else needs
    asked = {
        (answer.rule, ref) for each in told.open for answer in each.answers for ref in answer.things
    }
    vanished = {(rule, ref) for rule, _, ref in before() - findings(told)} - asked
    is_told = assumed(told) > assumed(audited(job())) or has_usual(path)
    assert not vanished or is_told or last_key(path) in WIRED
