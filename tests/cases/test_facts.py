"""Facts of small jobs: one case of tests/cases/facts for each thing an electrician would say."""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml

from linter.facts import Facts, facts_of
from linter.jobfile import read_job
from linter.trace import trace
from linter.units import Unknown, is_known, read_quantity, same_value
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import FactRef, Shape, value_of
from linter.wiring import derive
from tests.cases.filled import faults

TABLES = sorted(Path(__file__).with_name("facts").glob("*.yaml"))


def cases() -> Iterator[Any]:
    for table in TABLES:
        data = yaml.safe_load(table.read_text(encoding="utf-8"))
        for case in data["cases"]:
            yield pytest.param(data["common"], case, id=f"{table.stem}: {case['case']}")


def facts_of_case(common: dict[str, Any], case: dict[str, Any]) -> Facts:
    """The facts of the job of a case: laid over what the table's jobs share, key by key."""
    job = {"precover": 1, "job": {"name": "Boathouse"}, **common}
    for key, value in case.get("job", {}).items():
        laid_over = {"boxes", "cables", "rooms", "circuits"}
        job[key] = {**job.get(key, {}), **value} if key in laid_over else value
    read = read_job(json.dumps(job), "boathouse.yaml")
    wiring = derive(read)
    return facts_of(read, wiring, trace(read, wiring))


@pytest.mark.parametrize(("common", "case"), list(cases()))
def test_a_case_has_its_facts(common: dict[str, Any], case: dict[str, Any]) -> None:
    facts = facts_of_case(common, case)
    for name, expected in case["facts"].items():
        assert_fact(facts, fact_ref(name), expected)
    assert faults(facts) == []


def fact_ref(name: str) -> FactRef:
    """`wire_end.k1.black@bench.size` parted at the first and the last full stop."""
    kind, _, rest = name.partition(".")
    ref, _, fact = rest.rpartition(".")
    return FactRef(kind, ref, fact)


def assert_fact(facts: Facts, at: FactRef, expected: Any) -> None:
    value = value_of(facts.thing(at.kind, at.ref), at.fact)
    if expected == "unknown":
        expected = {"unknown": [".".join(at)]}
    if isinstance(expected, dict):
        assert isinstance(value, Unknown), f"{at} is {value!r}"
        assert value.because == {fact_ref(each) for each in expected["unknown"]}, at
        return
    assert is_known(value), f"{at} is {value!r}"
    fact = KINDS[at.kind].fact(at.fact)
    assert fact is not None
    match fact.type.shape:
        case Shape.QUANTITY:
            wanted = read_quantity(str(expected), fact.type.dimension).value
            assert isinstance(value, float)
            assert same_value(value, wanted), f"{at} is {value!r}"
        case Shape.YES_NO:
            assert value is expected, at
        case Shape.WORD | Shape.TEXT:
            assert value == expected, at
        case Shape.THING:
            assert getattr(value, "ref", None) == expected, at
        case Shape.THINGS:
            assert isinstance(value, tuple)
            assert [each.ref for each in value] == expected, at
