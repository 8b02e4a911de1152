"""Broken packs: each case of tests/cases/refusals/packs has one mistake, in its place."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from linter.packs.assemble import assemble
from linter.text import Refused
from tests.cases.small_packs import BASE, COUNTY, edited, texts_of

TABLES = Path(__file__).parent / "refusals" / "packs"


def cases() -> list[Any]:
    return [
        pytest.param(case, id=case["case"])
        for table in sorted(TABLES.glob("*.yaml"))
        for case in yaml.safe_load(table.read_text(encoding="utf-8"))
    ]


@pytest.mark.parametrize("case", cases())
def test_a_broken_pack_is_refused_in_its_place(case: dict[str, Any]) -> None:
    layers = case.get("layers", [COUNTY] if "county" in case else [])
    with pytest.raises(Refused) as refused:
        assemble(texts_of(edited(case)), case.get("ask", BASE), layers)
    found = refused.value.refusals
    assert [str(each.place) for each in found] == [each["at"] for each in case["refused"]]
    for each, expected in zip(found, case["refused"], strict=True):
        for words in expected["says"]:
            assert words in each.render()


def test_the_examples_themselves_are_sound() -> None:
    assert assemble(texts_of(edited({})), BASE, [COUNTY]).rules
