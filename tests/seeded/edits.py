"""A job's data with one thing changed: what a row of tests/seeded/*.yaml states."""

import copy
import json
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from linter.text.yaml_places import read_places


def load(path: Path) -> Any:
    """The plain data of a YAML file, read as precover reads a job: yes and 12 A stay text."""
    return read_places(path.read_text(encoding="utf-8"), path.name).plain()


def edited(job: Any, row: Mapping[str, Any]) -> str:
    """The text of the job with the row's edits made; JSON, which is YAML too."""
    changed = copy.deepcopy(job)
    for edit in row.get("edits", [row]):
        path = _path(edit["at"])
        if edit.get("drop") == "yes":
            _drop(changed, path)
        else:
            _put(changed, path, edit["to"])
    return json.dumps(changed)


def _path(at: str | list[Any]) -> list[str]:
    return [str(each) for each in (at.split(".") if isinstance(at, str) else at)]


def _step(value: Any, step: str) -> Any:
    return value[int(step)] if isinstance(value, list) else value[step]


def _parent(job: Any, path: list[str], *, make: bool) -> Any:
    value = job
    for step in path[:-1]:
        if make and isinstance(value, dict) and step not in value:
            value[step] = {}
        value = _step(value, step)
    return value


def _put(job: Any, path: list[str], to: Any) -> None:
    parent = _parent(job, path, make=True)
    if isinstance(parent, list):
        number = int(path[-1])
        parent[number : number + 1] = [to]
    else:
        parent[path[-1]] = to


def _drop(job: Any, path: list[str]) -> None:
    parent = _parent(job, path, make=False)
    if isinstance(parent, list):
        del parent[int(path[-1])]
    else:
        del parent[path[-1]]


def findings_of(audit: Any) -> set[tuple[str, str]]:
    """Every finding as (rule, kind and name of its subject)."""
    return {(each.rule, f"{each.kind} {each.ref}") for each in audit.findings}


def untold_of(audit: Any) -> set[tuple[str, str]]:
    """Every check that cannot be told as (rule, name of its subject)."""
    return set(_untold(audit))


def _untold(audit: Any) -> Iterator[tuple[str, str]]:
    for question in audit.open:
        for answer in question.answers:
            for ref in answer.things:
                yield answer.rule, ref
