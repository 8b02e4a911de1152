"""Proofs that fail say which case, what was expected, what came out, and the arithmetic."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from linter.packs.assemble import assemble
from linter.packs.prove import Failing, prove
from tests.cases.small_packs import BASE, COUNTY, edited, texts_of

TABLE = Path(__file__).with_name("proofs.yaml")


def cases() -> list[Any]:
    table = yaml.safe_load(TABLE.read_text(encoding="utf-8"))
    return [pytest.param(case, id=case["case"]) for case in table]


@pytest.mark.parametrize("case", cases())
def test_a_failing_proof_says_why(case: dict[str, Any]) -> None:
    layers = [COUNTY] if "county" in case else []
    report = prove(assemble(texts_of(edited(case)), BASE, layers))
    assert [shown(each) for each in report.failing] == [
        {key: value for key, value in each.items() if key != "work"} for each in case["fails"]
    ]
    for failing, expected in zip(report.failing, case["fails"], strict=True):
        for words in expected.get("work", []):
            assert words in failing.render()


@pytest.mark.parametrize("layers", [[], [COUNTY]])
def test_the_examples_prove(layers: list[str]) -> None:
    report = prove(assemble(texts_of(edited({})), BASE, layers))
    assert not report.failing
    assert (report.rules, report.measures) == (3, 1)


def shown(failing: Failing) -> dict[str, Any]:
    file = failing.place.file.rpartition("/")[2]
    return {
        "name": failing.name,
        "number": failing.number,
        "at": f"{file}:{failing.place.line}",
        "expected": failing.expected,
        "actual": failing.actual,
    }
