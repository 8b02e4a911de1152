"""The words that a job file may use are those that facts can be."""

import json
from typing import Any

import pytest

from linter.resources import schemas_dir
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.kinds.dwelling import STAGES

SCHEMA = json.loads((schemas_dir() / "job.schema.json").read_text(encoding="utf-8"))


def words_at(*path: str) -> list[str]:
    value: Any = SCHEMA
    for key in path:
        value = value[key]
    return [word for word in value["enum"] if word != "unknown"]


@pytest.mark.parametrize(
    ("kind", "fact", "definition", "key"),
    [
        ("room", "use", "room", "use"),
        ("circuit", "use", "circuit", "use"),
        ("box", "form", "box", "form"),
        ("outlet", "serves", "receptacle", "serves"),
        ("outlet", "serves", "fixture", "serves"),
        ("outlet", "serves", "appliance_outlet", "serves"),
        ("receptacle", "serves", "receptacle", "serves"),
        ("switch", "type", "switch", "type"),
        ("cable", "material", "cable", "material"),
        ("conductor", "material", "cable", "material"),
    ],
)
def test_a_fact_has_the_words_of_the_job_file(
    kind: str, fact: str, definition: str, key: str
) -> None:
    declared = KINDS[kind].fact(fact)
    assert declared is not None
    assert list(declared.type.words) == words_at("$defs", definition, "properties", key)


def test_the_stages_are_those_of_the_job_file() -> None:
    assert list(STAGES) == words_at("properties", "job", "properties", "stage")


def test_devices_are_of_the_types_that_the_job_file_knows() -> None:
    declared = KINDS["device"].fact("type")
    assert declared is not None
    first: Any = SCHEMA["$defs"]["device"]["anyOf"][0]["enum"]
    assert list(declared.type.words) == first
