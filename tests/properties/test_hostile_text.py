"""Whatever stands in the fields of a job comes out inert: in text, JSON and SARIF.

Markup and script are told as the text they are, in forms that hold no markup; control characters
and those that turn text round are shown as their numbers; links and placeholders of SARIF do not
act; and the longest names fit.
"""

import json
import re
from collections.abc import Iterator
from functools import cache
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from linter.audit.audit import examined
from linter.audit.open_checks import open_checks
from linter.cli.shelf import Shelf
from linter.job.changes import changes
from linter.jobfile import read_job
from linter.jobfile.schema import job_schema
from linter.reports.as_json import as_json
from linter.reports.as_sarif import as_sarif
from linter.reports.layout import plain
from linter.reports.outcomes import Audited
from linter.reports.progress import progress
from linter.reports.progress_lines import progress_page
from linter.reports.sign_offs import said, told
from linter.reports.terminal import report
from linter.resources import schemas_dir
from linter.signoff.choosing import candidates
from linter.signoff.reading import read_sign_offs
from linter.signoff.said import Saying
from linter.signoff.sayings import NOT_A_DEFECT
from linter.signoff.standing import signed_off
from linter.signoff.writing import with_act
from linter.text import Refused
from linter.text.yaml_places import read_places
from tests.outside.test_sarif import validator
from tests.unit.cli.running import BOATHOUSE, PACKS, ROOT

SCRIPT = "<script>alert(1)</script>"
HOSTILE = (
    SCRIPT,
    '"><img src=x onerror=alert(1)>',
    "\u202ehctib\u2066\u200f",
    "\x1b[2J\x1b]8;;http://a.example\x07link",
    "[here](1) {0} {{x}}",
    "::error file=a.yaml::owned\n::set-output name=a::b",
    "\u2028\u2029\x85\x0b\x0c\ufffe\ud7ff\U000e0041",
    "%s %n ${HOME} $(reboot) `reboot` =1+1",
    "x" * 200,
    "\u0300\u0301" * 60,
)
TEXTS = st.one_of(st.sampled_from(HOSTILE), st.text(min_size=1, max_size=60))
# Names of things may hold no blanks or marks of YAML; of what is left the worst.
NAMES = (
    "be\u202enc\u2066h",
    "\uff42ench\u200b\u200f",
    "b" * 64,
    "bénch-<script",
    "bench\u0300" * 10,
)


@cache
def shelf() -> Shelf:
    return Shelf([PACKS])


def job_with(text: str) -> Any:
    """The boathouse as JSON, the text in every field that takes free text."""
    job: Any = read_places(BOATHOUSE, "boathouse.yaml").plain()
    job["job"] |= {"name": text, "notes": text}
    job["panel"]["breakers"]["1"]["serves"] = text
    for kind in ("rooms", "boxes", "cables", "circuits"):
        for each in job[kind].values():
            each["note"] = text
    job["supplies"]["shore"]["note"] = text
    job["looked_at"] = [
        {"item": "joints-hold-when-pulled", "at": "winch", "by": text, "on": "2026-03-01",
         "outcome": "to be put right", "found": text}
    ]  # fmt: skip
    job["readings"] = [{"test": "polarity", "outlet": "top", "result": "no hot", "by": text}]
    return job


def outputs(text: str, file: str, words: str) -> Iterator[str]:
    """The reports of a job, signed with the words; text, text in full, JSON and SARIF."""
    job = read_job(text, file)
    pack = shelf().pack_of(job)
    found = examined(job, pack)
    checks = open_checks(found)
    saying = Saying(NOT_A_DEFECT, words, "2026-03-14", words, "made up")
    items = [each.item for each in candidates(found, checks, None)]
    signed = read_sign_offs(with_act("", job.name, saying, items), f"{file}.off", job.name)
    standing = signed_off(f"{file}.off", signed, found, checks, job.stage)
    audited = Audited(file, found.audit, standing, checks, pack)
    yield plain(report([audited]))
    yield plain(report([audited._replace(signed=audited.signed._replace(standings={}))], full=True))
    yield as_json([audited])
    yield as_sarif([audited], lambda name: name)
    assert told(saying) in said(next(iter(standing.standings.values())))


def all_texts(value: object) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        yield from all_texts(list(value.values()))
    elif isinstance(value, list):
        for each in value:
            yield from all_texts(each)


def shows(text: str) -> None:
    """All its characters show, and none turns text round."""
    assert all(line.isprintable() for line in text.split("\n"))


def are_inert(reports: Iterator[str]) -> None:
    brief, full, findings, sarif = reports
    for text in (brief, full):
        shows(text)
        assert not [line for line in text.split("\n") if line.lstrip().startswith(("::", "##"))]
    assert findings.isascii()
    assert sarif.isascii()
    schema = json.loads((schemas_dir() / "findings.schema.json").read_text("utf-8"))
    assert not list(Draft202012Validator(schema).iter_errors(json.loads(findings)))
    log = json.loads(sarif)
    assert not list(validator().iter_errors(log))
    for text in all_texts(log):
        shows(text)
    messages = [each["message"]["text"] for each in log["runs"][0]["results"]]
    for message in messages:
        assert not re.search(r"(?<!\\)\[[^\]]*\]\(", message)
        assert not re.search(r"(?<!\{)\{\d+\}(?!\})", message)


@settings(max_examples=15, deadline=None)
@given(TEXTS)
@example(HOSTILE[0])
@example(HOSTILE[2])
@example(HOSTILE[3])
@example(HOSTILE[4])
@example(HOSTILE[5])
@example(HOSTILE[6])
@example(HOSTILE[9])
def test_any_text_in_a_job_and_its_sign_off_comes_out_inert(text: str) -> None:
    try:
        reports = list(outputs(json.dumps(job_with(text)), "boathouse.json", text))
    except Refused as refused:
        reports = []  # what cannot be read is refused, with the same care
        shows(str(refused))
    if not reports:
        return
    are_inert(iter(reports))


def test_names_that_turn_round_or_do_not_show_come_out_inert() -> None:
    read = 0
    for name in NAMES:
        try:
            reports = list(outputs(BOATHOUSE.replace("bench", name), f"{name}.yaml", "O. Tarn"))
        except Refused as refused:
            shows(str(refused))
            continue
        read += 1
        are_inert(iter(reports))
    assert read >= 3


def test_a_report_of_the_hostile_job_tells_its_findings() -> None:
    """The texts do not push out what is to be told."""
    for text in (SCRIPT, HOSTILE[2], HOSTILE[8]):
        job = read_job(json.dumps(job_with(text)), "boathouse.json")
        found = examined(job, shelf().pack_of(job))
        shown = " ".join(plain(report([Audited("boathouse.json", found.audit)])).split())
        assert shown.count("free length 4 in; least free length 6 in: short by 2 in") == 1


FOUNDRY = ROOT / "tests/cases/jobs/bell-foundry.yaml"
NOT_UNKNOWN = "^(?!unknown$)"


def is_free(schema: Any) -> bool:
    """Whether any text may stand there."""
    kinds = {"enum", "const", "format"} & schema.keys()
    return schema.get("type") == "string" and not kinds and schema.get("pattern") in (
        None, NOT_UNKNOWN,
    )  # fmt: skip


def parts_of(schema: Any) -> dict[str, Any]:
    """The properties that a map may have, of all its forms."""
    found = dict(schema.get("properties", {}))
    for each in schema.get("anyOf", ()):
        found |= parts_of(each)
    return found


def with_text_everywhere(value: Any, text: str, schema: Any) -> Any:
    """The data with the text in every field that takes any, notes added where one may stand."""
    if isinstance(value, list):
        return [with_text_everywhere(each, text, schema.get("items", {})) for each in value]
    if not isinstance(value, dict):
        return text if is_free(schema) else value
    parts, other = parts_of(schema), schema.get("additionalProperties") or {}
    told = {
        key: with_text_everywhere(each, text, parts.get(key, other)) for key, each in value.items()
    }
    return {**told, "note": text} if "note" in parts else told


@pytest.mark.parametrize("text", HOSTILE[:6])
def test_a_job_in_which_everything_occurs_comes_out_inert_in_every_report(text: str) -> None:
    job: Any = read_places(FOUNDRY.read_text("utf-8"), "foundry.yaml").plain()
    hostile = json.dumps(with_text_everywhere(job, text, job_schema()))
    assert hostile.count(json.dumps(text)) > 20
    before, after = (read_places(each, "foundry.json") for each in (json.dumps(job), hostile))
    read = read_job(hostile, "foundry.json")
    pack = Shelf().pack("us-nec-2023", ())  # the job is told to name one that there is not
    found = examined(read, pack)
    checks = open_checks(found)
    audited = Audited("foundry.json", found.audit, checks=checks, pack=pack)
    are_inert(
        iter(
            (
                plain(report([audited])),
                plain(
                    progress_page(
                        progress(audited, audited, found, read.stage), changes(before, after)
                    )
                ),
                as_json([audited]),
                as_sarif([audited], lambda name: name),
            )
        )
    )
