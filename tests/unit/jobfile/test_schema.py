"""The published schema: complete, true to its examples, of one mind with vocabulary and models."""

import json
from collections.abc import Iterator
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from linter.job import boxes, cables, devices, dwelling, panel, products, records
from linter.job.jobs import Job
from linter.job.stated import Stated
from linter.jobfile.schema import Schema, job_schema, job_validator
from linter.resources import schemas_dir
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.kinds.circuits import CIRCUIT_USES
from linter.vocabulary.kinds.devices import DEVICE_TYPES, RECEPTACLE_SERVES, SWITCH_TYPES
from linter.vocabulary.kinds.dwelling import ROOM_USES, STAGES

PUBLISHED = json.loads((schemas_dir() / "job.schema.json").read_text(encoding="utf-8"))
DEFS = PUBLISHED["$defs"]


def parts(schema: Any, path: tuple[str, ...] = ()) -> Iterator[tuple[tuple[str, ...], Schema]]:
    """Every property and every alternative of the schema, resolved."""
    if isinstance(schema, dict):
        for name, part in schema.get("properties", {}).items():
            yield (*path, name), part
            yield from parts(part, (*path, name))
        for key in ("items", "additionalProperties"):
            yield from parts(schema.get(key), (*path, key))
        for at, part in enumerate(schema.get("anyOf", ())):
            yield from parts(part, (*path, str(at)))


PARTS = [pytest.param(part, id=".".join(path)) for path, part in parts(job_schema())]


def test_it_is_a_schema_of_2020_12() -> None:
    Draft202012Validator.check_schema(PUBLISHED)


@pytest.mark.parametrize("part", PARTS)
def test_each_property_is_described_with_examples_that_fit(part: Schema) -> None:
    assert part["description"].endswith(".")
    assert part["examples"]
    judge = job_validator().evolve(schema=part)
    for example in part["examples"]:
        assert list(judge.iter_errors(example)) == []


@pytest.mark.parametrize("name", DEFS)
def test_each_definition_has_examples_that_fit(name: str) -> None:
    schema = {"$defs": DEFS, "$ref": f"#/$defs/{name}"}
    judge = Draft202012Validator(schema, format_checker=job_validator().format_checker)
    assert DEFS[name]["examples"]
    for example in DEFS[name]["examples"]:
        assert list(judge.iter_errors(example)) == []


def words(*path: str) -> tuple[str, ...]:
    found: Any = DEFS
    for step in path:
        found = found[step]
    return tuple(each for each in found["enum"] if each != "unknown")


def words_of_fact(kind: str, fact: str) -> tuple[str, ...]:
    declared = KINDS[kind].fact(fact)
    assert declared is not None
    return declared.type.words


def test_its_words_are_those_of_the_vocabulary() -> None:
    assert words("room", "properties", "use") == ROOM_USES
    assert words("circuit", "properties", "use") == CIRCUIT_USES
    assert words("switch", "properties", "type") == SWITCH_TYPES
    assert words("receptacle", "properties", "serves") == RECEPTACLE_SERVES
    assert words("box", "properties", "form") == words_of_fact("box", "form")
    assert words("cable", "properties", "material") == words_of_fact("conductor", "material")
    assert tuple(DEFS["device"]["anyOf"][1]["properties"]) == DEVICE_TYPES
    stages = PUBLISHED["properties"]["job"]["properties"]["stage"]["enum"]
    assert tuple(stages[:-1]) == STAGES


MODEL_OF = {
    "supply": dwelling.Supply,
    "room": dwelling.Room,
    "appliance": dwelling.Appliance,
    "run": dwelling.Run,
    "panel": panel.Panel,
    "breaker": panel.Breaker,
    "circuit": panel.Circuit,
    "box": boxes.Box,
    "receptacle": devices.Receptacle,
    "switch": devices.Switch,
    "fixture": devices.Fixture,
    "appliance_outlet": devices.ApplianceOutlet,
    "other_device": devices.OtherDevice,
    "cable": cables.Cable,
    "cable_end": cables.CableEnd,
    "hole": cables.Hole,
    "along_framing": cables.AlongFraming,
    "bundled": cables.Bundled,
    "passage": cables.Passage,
    "connector": products.Connector,
    "staple": products.Staple,
    "looked_at": records.LookedAt,
}
RENAMED = {"from": "from_", "for": "for_", "usual": "is_usual"}
ELSEWHERE = {  # keys that come to be fields of another model, or another field
    "cable": set(cables.CableEnd.model_fields),
    "circuit": {"panel"},
}


@pytest.mark.parametrize("name", MODEL_OF)
def test_each_key_has_a_field_of_its_name(name: str) -> None:
    keys = {RENAMED.get(key, key) for key in DEFS[name]["properties"]}
    assert keys - ELSEWHERE.get(name, set()) <= set(MODEL_OF[name].model_fields)


@pytest.mark.parametrize("name", MODEL_OF)
def test_each_field_can_be_stated(name: str) -> None:
    keys = {RENAMED.get(key, key) for key in DEFS[name]["properties"]}
    given = {*Stated.model_fields, "name", "box", "kind", "panel", "space"}
    shared = set(devices.Device.model_fields)  # not every device has them all
    assert set(MODEL_OF[name].model_fields) - keys <= given | shared


def test_every_group_of_the_file_is_a_field_of_the_job() -> None:
    groups = set(PUBLISHED["properties"]) - {"precover", "job", "usual", "panel"}
    assert groups <= set(Job.model_fields)
    assert set(PUBLISHED["properties"]["job"]["properties"]) <= set(Job.model_fields)


SAID_OF = {  # keywords by which the schema refuses; all others only describe
    *("type", "enum", "const", "pattern", "format", "minimum", "maximum", "minLength", "maxLength"),
    *("minItems", "maxItems", "uniqueItems", "minProperties", "maxProperties", "required", "not"),
    *("properties", "additionalProperties", "propertyNames", "items", "anyOf"),
}


def test_it_uses_no_keyword_that_nothing_is_said_of() -> None:
    used = {key for _, part in parts(job_schema()) for key in part} | set(job_schema())
    assert used - {"description", "examples", "title", "$schema", "$id"} <= SAID_OF
