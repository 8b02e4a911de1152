"""Broken job files: each is refused once, at its place, in words that help to mend it."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from linter.jobfile import read_job
from linter.text import Refused

TABLES = Path(__file__).with_name("jobs")
SOUND = (Path(__file__).parents[1] / "jobs" / "boathouse.yaml").read_text(encoding="utf-8")
NOT_SAID = (
    "NoneType",
    "anyOf",
    "property",
    "properties",
    "schema is",
    "mapping",
    "scalar",
    "regex",
)


def cases() -> list[Any]:
    return [
        pytest.param(case, id=f"{path.stem}: {case['case']}")
        for path in sorted(TABLES.glob("*.yaml"))
        for case in yaml.safe_load(path.read_text(encoding="utf-8"))
    ]


def broken(case: dict[str, Any]) -> str:
    if "text" in case:
        return str(case["text"])
    assert SOUND.count(case["instead of"]) == 1, "the case must change one place"
    return SOUND.replace(case["instead of"], case["write"])


@pytest.mark.parametrize("case", cases())
def test_a_broken_job_file_is_refused_with_one_refusal(case: dict[str, Any]) -> None:
    text = broken(case)
    with pytest.raises(Refused) as caught:
        read_job(text, "boathouse.yaml")
    (refusal,) = caught.value.refusals
    said = refusal.render()
    assert f"{refusal.place.line}:{refusal.place.column}" == case["at"], said
    line = [*text.split("\n"), ""][refusal.place.line - 1]
    assert line[refusal.place.column - 1 :].startswith(case.get("there", "")), said
    for words in case["says"]:
        assert words in said
    assert case.get("near") is None or case["near"] in refusal.nearest, said
    assert refusal.mend
    for words in NOT_SAID:
        assert words not in said


def test_the_table_is_long_enough_to_be_worth_its_name() -> None:
    assert len(cases()) >= 45


def test_the_sound_job_is_read() -> None:
    assert read_job(SOUND, "boathouse.yaml").name == "Boathouse"
