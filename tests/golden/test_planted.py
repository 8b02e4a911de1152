"""The pottery studio: what was planted is found, and nothing else; the sound job is clean."""

from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from linter.audit.audit import audit
from linter.audit.findings import Audit
from linter.cli.shelf import Shelf
from linter.jobfile import read_job

STUDIO = Path(__file__).parents[2] / "examples" / "pottery-studio"
MISTAKES = yaml.safe_load(Path(__file__).with_name("planted.yaml").read_text(encoding="utf-8"))[
    "mistakes"
]


@cache
def audited(name: str) -> Audit:
    job = read_job((STUDIO / name).read_text(encoding="utf-8"), name)
    return audit(job, Shelf().pack_of(job))


@pytest.mark.parametrize("mistake", MISTAKES, ids=lambda mistake: mistake["what"])
def test_a_planted_mistake_is_found_by_its_rule(mistake: dict[str, Any]) -> None:
    found = [
        f"{each.kind} {each.ref}"
        for each in audited("with-mistakes.yaml").findings
        if each.rule == mistake["rule"]
    ]
    assert sorted(found) == sorted(mistake["at"])


def test_nothing_is_found_but_what_was_planted() -> None:
    audit_ = audited("with-mistakes.yaml")
    assert {each.rule for each in audit_.findings} == {each["rule"] for each in MISTAKES}
    assert not audit_.open


def test_the_sound_job_gives_no_finding_and_leaves_nothing_open() -> None:
    assert audited("put-right.yaml").findings == ()
    assert audited("put-right.yaml").open == ()


def test_the_job_just_pulled_gives_questions_and_no_finding() -> None:
    assert audited("as-pulled.yaml").findings == ()
    assert audited("as-pulled.yaml").open


def test_the_readme_beside_the_files_lists_the_planted_mistakes() -> None:
    rows = [
        tuple(cell.strip(" `") for cell in line.strip("|").split("|"))
        for line in (STUDIO / "README.md").read_text(encoding="utf-8").splitlines()
        if line.startswith("|")
    ]
    planted = [(each["where"], each["what"], each["rule"]) for each in MISTAKES]
    assert [row for row in rows if row in planted] == planted
    assert len([row for row in rows if row[-1] in {rule for *_, rule in planted}]) == len(planted)


def test_the_file_just_pulled_is_short() -> None:
    assert len((STUDIO / "as-pulled.yaml").read_text(encoding="utf-8").splitlines()) <= 180
