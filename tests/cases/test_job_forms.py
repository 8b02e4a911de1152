"""Forms of the job file and what they come to: one case of tests/cases/jobs/forms.yaml each."""

import json
from pathlib import Path
from typing import Any

import pytest
import yaml

from linter.jobfile import read_job
from linter.units import Quantity

TABLE = Path(__file__).with_name("jobs") / "forms.yaml"
SMALL: dict[str, Any] = {
    "precover": 1,
    "job": {"name": "Boathouse"},
    "supplies": {"shore": {"kind": "split phase"}},
    "panel": {
        "breakers": {
            "1": {"rating": "20 A"},
            "3": {"rating": "20 A"},
            "5": {"rating": "30 A", "poles": 2, "protection": "none"},
        }
    },
    "circuits": {"lights": {"breakers": [1]}},
    "rooms": {"slip": {"use": "boathouse"}},
    "boxes": {"bench": {"room": "slip"}, "post": {"room": "slip"}},
    "cables": {"k1": {"from": "panel", "to": "bench", "circuit": "lights"}},
}


def rows() -> list[Any]:
    table = yaml.load(TABLE.read_text(encoding="utf-8"), Loader=yaml.SafeLoader)
    return [pytest.param(row, id=row["case"]) for row in table]


def with_small_job(added: dict[str, Any]) -> str:
    job = {**SMALL, **added}
    for group in ("boxes", "cables", "circuits"):
        job[group] = {**SMALL[group], **added.get(group, {})}
    return json.dumps(job)


def value_at(thing: Any, path: str) -> Any:
    for step in path.split("."):
        if isinstance(thing, dict):
            thing = thing[int(step) if step.isdigit() else step]
        else:
            thing = thing[int(step)] if step.isdigit() else getattr(thing, step)
    return thing


def as_written(value: Any) -> Any:
    if isinstance(value, dict) or value is None or isinstance(value, (bool, int)):
        return value
    if isinstance(value, Quantity):
        return str(value)
    if isinstance(value, tuple) and not hasattr(value, "written"):
        return [as_written(each) for each in value]
    return str(value)


@pytest.mark.parametrize("row", rows())
def test_a_form_comes_to_its_values(row: dict[str, Any]) -> None:
    job = read_job(with_small_job(row["write"]), "boathouse.json")
    for path, expected in row["gives"].items():
        assert as_written(value_at(job, path)) == expected, path


def test_panels_by_name_and_the_panel_of_a_circuit() -> None:
    added = {
        "panels": {"shed": {"breakers": {"1": {}}}, "main": {"breakers": {"1": {}, "3": {}}}},
        "circuits": {"lights": {"panel": "main", "breakers": [3]}},
        "cables": {"k1": {"from": "main", "to": "bench", "circuit": "lights"}},
    }
    text = json.loads(with_small_job(added))
    del text["panel"]
    job = read_job(json.dumps(text), "boathouse.json")
    assert [str(each) for each in value_at(job, "circuits.lights.breakers")] == ["main 3"]
    assert list(job.panels) == ["shed", "main"]


def test_the_only_panel_may_be_called_panel_by_cables() -> None:
    text = json.loads(with_small_job({"panels": {"main": SMALL["panel"]}}))
    del text["panel"]
    job = read_job(json.dumps(text), "boathouse.json")
    assert value_at(job, "cables.k1.from_") == "main"
