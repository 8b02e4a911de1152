"""Everything found in a whole flat is judged not a defect; then one value of the job is changed.

What is hidden after that must rest on the very facts it rested on, and read as it was signed. The
values are numbers made larger, answers turned round, and values made unknown, all over the file.
"""

import json
import re
from functools import cache
from typing import Any

import pytest

from linter.audit.audit import Examined, examined
from linter.audit.findings import Finding
from linter.audit.open_checks import OpenCheck, open_checks
from linter.jobfile import read_job
from linter.signoff.choosing import candidates
from linter.signoff.reading import read_sign_offs
from linter.signoff.said import Saying
from linter.signoff.sayings import NOT_A_DEFECT
from linter.signoff.standing import key_of, signed_off
from linter.signoff.writing import with_act
from linter.text import Refused
from tests.properties.test_whole_audits import changed, job, shelf, values

EVERY = 19  # values of the job, so that a run stays short; which ones moves with each edit of it
STAGE = "made up"
Path = tuple[str | int, ...]


def other(value: Any) -> str:
    """Another value of the same kind, or unknown."""
    text = str(value)
    if text in ("yes", "no"):
        return "no" if text == "yes" else "yes"
    return (
        re.sub(r"^\d+", lambda found: str(int(found[0]) + 3), text)
        if text[:1].isdigit()
        else "unknown"
    )


def at(path: Path) -> Any:
    value = job()
    for step in path:
        value = value[step]
    return value


def looked_at(data: Any) -> tuple[Examined, tuple[OpenCheck, ...]]:
    read = read_job(json.dumps(data), "studio.json")
    found = examined(read, shelf().pack_of(read))
    return found, open_checks(found)


@cache
def signed() -> tuple[str, dict[object, tuple[object, ...]]]:
    """The sign-off of all that is found, and what each of it relied on."""
    found, checks = looked_at(job())
    items = [each.item for each in candidates(found, checks, None)]
    saying = Saying(NOT_A_DEFECT, "M. Ferrow", "2026-03-14", "Looked at.", STAGE)
    text = with_act("", found.audit.job, saying, items)
    return text, {key_of(each): relied(each) for each in (*found.audit.findings, *checks)}


def relied(found: Finding | OpenCheck) -> tuple[object, ...]:
    if isinstance(found, Finding):
        facts = tuple((each.kind, each.ref, each.fact, each.value) for each in found.relies_on)
        return *facts, found.sentence, found.weight
    return *found.to_learn, found.weight


SOME = list(values(job()))[::EVERY]


@pytest.mark.parametrize("path", SOME, ids=lambda path: ".".join(map(str, path)))
def test_after_an_edit_nothing_is_hidden_but_what_was_signed(path: Path) -> None:
    try:
        found, checks = looked_at(changed(path, other(at(path))))
    except Refused:
        return  # a name, or a value that can be no other
    text, then = signed()
    said = read_sign_offs(text, "studio.sign-off.yaml", found.audit.job)
    now = signed_off("studio.sign-off.yaml", said, found, checks, STAGE)
    for each in (*found.audit.findings, *checks):
        standing = now.of(each)
        if standing is not None and not standing.counts:
            assert relied(each) == then[key_of(each)]
    assert len(now.standings) + len(now.idle) == len(said.latest())


def test_without_an_edit_all_of_it_is_hidden_and_nothing_counts() -> None:
    found, checks = looked_at(job())
    text, _ = signed()
    said = read_sign_offs(text, "studio.sign-off.yaml", found.audit.job)
    now = signed_off("studio.sign-off.yaml", said, found, checks, STAGE)
    assert now.settled == found.audit.counts
    assert now.settled_untold == found.audit.cannot_tell
    assert not now.idle
