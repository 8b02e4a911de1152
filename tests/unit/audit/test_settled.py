"""What comes to nothing whatever the answer is: not asked for, where every answer was tried."""

from pathlib import Path

import pytest

from linter.audit.audit import audit
from linter.jobfile import read_job
from linter.packs.assemble import assemble
from tests.cases.small_packs import BASE, edited, texts_of

ROOT = Path(__file__).resolve().parents[3]
BOATHOUSE = (ROOT / "tests/golden/boathouse.yaml").read_text(encoding="utf-8")
LIMITS = "limits:\n  - {limit: no_length, value: 0 in, clause: {id: 1, known: memory}}\n"
BANDS = (
    "tables:\n  - table: bands\n    clause: {id: 1, known: memory}\n"
    "    keys: [{name: length, of: length, by: band}]\n    gives: [{name: share, of: number}]\n"
    "    rows: [[0 in, 1], [6 in, LAST]]\n"
)
NEED = "need: wire_end.free_length at least least_free_length\n"


def asked(need: str, last: str = "1") -> set[str]:
    """The facts that an audit asks for where free lengths may be unknown and this is needed."""
    edits = {"from": NEED, "to": f"need: {need}\n"}
    case = {"edit": {"wire-ends.yaml": edits}, "more": {}}
    files = edited(case)
    tables = BANDS.replace("LAST", last)
    files[BASE]["more.yaml"] = LIMITS + tables
    job = read_job(BOATHOUSE, "boathouse.yaml")
    return {question.fact for question in audit(job, assemble(texts_of(files), BASE)).open}


def test_what_may_break_is_asked_for() -> None:
    assert "free_length" in asked(NEED.removeprefix("need: ").strip())


@pytest.mark.parametrize(
    "need",
    [
        "wire_end.free_length at least no_length or wire_end.free_length less than no_length",
        "(look up bands at wire_end.free_length) at most 1",
        "not wire_end.free_length less than no_length",
    ],
)
def test_what_holds_with_any_length_is_not_asked_for(need: str) -> None:
    assert "free_length" not in asked(need)


def test_one_band_that_breaks_is_enough_to_ask() -> None:
    assert "free_length" in asked("(look up bands at wire_end.free_length) at most 1", last="3")


def test_what_is_reckoned_with_is_asked_for_all_the_same() -> None:
    needed = "wire_end.free_length + no_length at least no_length"
    assert "free_length" in asked(needed)
