"""The published schema of packs: described in full, and its own examples are right."""

import json
from collections.abc import Iterator
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from linter.resources import schemas_dir

SCHEMA = json.loads((schemas_dir() / "pack.schema.json").read_text(encoding="utf-8"))


def parts(schema: Any, path: str = "") -> Iterator[tuple[str, Any]]:
    """Every schema of a value within the schema, with the way to it."""
    if not isinstance(schema, dict):
        return
    yield path, schema
    for name in ("properties", "$defs"):
        for key, below in schema.get(name, {}).items():
            yield from parts(below, f"{path}/{name}/{key}")
    for name in ("items", "additionalProperties"):
        yield from parts(schema.get(name), f"{path}/{name}")


PARTS = [pytest.param(part, id=path or "/") for path, part in parts(SCHEMA)]


def test_the_schema_is_a_schema() -> None:
    Draft202012Validator.check_schema(SCHEMA)


@pytest.mark.parametrize("part", PARTS)
def test_every_part_is_described_with_an_example(part: dict[str, Any]) -> None:
    named = SCHEMA["$defs"][part["$ref"].rpartition("/")[2]] if "$ref" in part else {}
    assert part.get("description") or named.get("description")
    assert part.get("examples") or named.get("examples")


@pytest.mark.parametrize("part", PARTS)
def test_examples_are_right(part: dict[str, Any]) -> None:
    validator = Draft202012Validator({**part, "$defs": SCHEMA["$defs"]})
    for example in part.get("examples", []):
        assert not [error.message for error in validator.iter_errors(example)]
