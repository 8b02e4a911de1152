import os
from pathlib import Path

import pytest

from tests.unit.cli.running import BOATHOUSE, PACKS, Runner

BY = ("--by", "M. Ferrow", "--on", "2026-03-14", "--packs", PACKS)
SIGNED = Path("boathouse.sign-off.yaml")


def signoff(precover: Runner, *words: str) -> str:
    ran = precover("signoff", "boathouse.yaml", *words, *BY)
    assert (ran.status, ran.err) == (0, "")
    return ran.said


def test_without_a_saying_the_findings_are_listed_with_their_marks(precover: Runner) -> None:
    ran = precover("signoff", "boathouse.yaml", "--packs", PACKS)
    assert ran.status == 0
    assert "VIOLATION Black of k2 in bench leaves 4 in; 6 in is needed." in ran.said
    assert "wire-end-long-enough, at boathouse.yaml:30:32" in ran.said
    assert not SIGNED.exists()


def test_a_mark_that_is_listed_says_which_finding_is_meant(precover: Runner) -> None:
    mark = precover("signoff", "boathouse.yaml", "--packs", PACKS).out.split()[0]
    said = signoff(precover, "agreed", "--mark", mark)
    assert "agreed, says M. Ferrow on 2026-03-14, of 1 finding:" in said
    ran = precover("audit", "boathouse.yaml", "--packs", PACKS)
    assert ran.status == 1
    assert "Signed: agreed, says M. Ferrow on 2026-03-14." in ran.said
    assert "Signed off, and not counted: 1 agreed." in ran.said


@pytest.mark.parametrize(
    "which",
    [
        ("--rule", "wire-end-long-enough"),
        ("--at", "bench"),
        ("--at", "slip"),
        ("--at", "30"),
        ("--at", "line 30"),
    ],
)
def test_many_are_signed_at_once_and_the_status_no_longer_counts_them(
    precover: Runner, which: tuple[str, ...]
) -> None:
    signoff(precover, "not-a-defect", "--because", "A sleeve lengthens them.", *which)
    ran = precover("audit", "boathouse.yaml", "--packs", PACKS)
    assert ran.status == 3
    assert "JUDGED NOT A DEFECT" in ran.said
    assert "because: A sleeve lengthens them." in ran.said
    assert "Also: white and bare of k2 in bench." in ran.said


def test_nothing_is_outstanding_once_all_is_signed(precover: Runner) -> None:
    why = ("--because", "The inspector has seen them.")
    signoff(precover, "not-a-defect", "--rule", "wire-end-long-enough", *why)
    for rule in ("wire-end-long-enough", "box-has-room"):
        signoff(precover, "not-a-defect", "--what", "open", "--rule", rule, *why)
    ran = precover("audit", "boathouse.yaml", "--packs", PACKS)
    assert ran.status == 0
    assert "CANNOT BE TOLD, AND SIGNED" in ran.said
    assert "wire-end-long-enough: 3 checks" in ran.said


def test_what_was_said_goes_stale_with_the_facts(precover: Runner) -> None:
    signoff(precover, "not-a-defect", "--at", "bench", "--because", "Long enough.")
    Path("boathouse.yaml").write_text(BOATHOUSE.replace("length: 4 in", "length: 3 in"), "utf-8")
    ran = precover("audit", "boathouse.yaml", "--packs", PACKS)
    assert ran.status == 1
    assert "that no longer holds: the facts it rests on have changed since." in ran.said
    assert "Then: Black of k2 in bench leaves 4 in; 6 in is needed." in ran.said


def test_what_was_agreed_and_is_gone_can_be_put_right(precover: Runner) -> None:
    signoff(precover, "agreed", "--at", "bench")
    Path("boathouse.yaml").write_text(BOATHOUSE.replace("length: 4 in", "length: 7 in"), "utf-8")
    ran = precover("audit", "boathouse.yaml", "--packs", PACKS)
    assert "SAID OF WHAT IS NOT FOUND NOW" in ran.said
    assert "nothing is found there any more; boathouse.sign-off.yaml:" in ran.said
    signoff(precover, "put-right", "--at", "bench")
    ran = precover("audit", "boathouse.yaml", "--packs", PACKS)
    assert "SAID OF WHAT IS NOT FOUND NOW" not in ran.said
    assert "PUT RIGHT, AND NOT FOUND ANY MORE" in ran.said


def test_what_is_put_right_too_early_is_said_to_count(precover: Runner) -> None:
    assert "It counts until the job file shows it" in signoff(
        precover, "put-right", "--at", "bench"
    )
    assert precover("audit", "boathouse.yaml", "--packs", PACKS).status == 1


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("not-a-defect", "--at", "bench", "--by", "O."), "Why it is not a defect is missing."),
        (("agreed", "--at", "bench"), "Who says so is missing."),
        (("agreed", "--by", "O."), "What is meant is missing."),
        (("agreed", "--at", "bensch", "--by", "O."), "Nearest: bench."),
        (("agreed", "--rule", "wire-end-log-enough", "--by", "O."), "Nearest: wire-end-long"),
        (("agreed", "--mark", "zzz", "--by", "O."), "No finding here has a mark that begins"),
        (("agreed", "--mark", "", "--by", "O."), "--mark has no value."),
        (("agreed", "--at", "bench", "--by", "O.", "--on", "14 March"), '"14 March" is not a day.'),
        (("agreed", "--at", "bench", "--by", "O.", "--on", "20260314"), "is not a day."),
        (("agree", "--at", "bench", "--by", "O."), "Nearest: agreed."),
        (("put-right", "--what", "open", "--at", "top", "--by", "O."), "cannot be put right"),
        (("agreed", "now"), '"now" is one word too many.'),
    ],
)
def test_what_is_not_understood_is_refused_and_nothing_is_written(
    precover: Runner, words: tuple[str, ...], said: str
) -> None:
    ran = precover("signoff", "boathouse.yaml", *words, "--packs", PACKS)
    assert ran.status == 64
    assert said in ran.said
    assert not SIGNED.exists()


def test_where_nothing_is_found_at_all_it_is_said(precover: Runner) -> None:
    Path("boathouse.yaml").write_text(BOATHOUSE.replace("length: 4 in", "length: 7 in"), "utf-8")
    ran = precover("signoff", "boathouse.yaml", "agreed", "--at", "bench", *BY)
    assert ran.status == 64
    assert 'Nothing is found here by the place "bench".' in ran.said
    assert "Nothing is found." in precover("signoff", "boathouse.yaml", "--packs", PACKS).said


def test_a_broken_sign_off_is_refused_and_the_job_is_not_audited(precover: Runner) -> None:
    SIGNED.write_text('precover_sign_off: 1\njob: "Another"\nsigned: []\n', encoding="utf-8")
    ran = precover("audit", "boathouse.yaml", "--packs", PACKS)
    assert ran.status == 65
    assert 'boathouse.sign-off.yaml:2:6 This sign-off is of the job "Another"' in ran.said


def test_in_a_folder_a_sign_off_belongs_to_its_job_and_one_without_is_said(
    precover: Runner,
) -> None:
    signoff(precover, "agreed", "--at", "bench")
    assert precover("audit", ".", "--packs", PACKS).err == ""
    Path("loft.sign-off.yaml").write_text(SIGNED.read_text("utf-8"), "utf-8")
    ran = precover("audit", ".", "--packs", PACKS)
    assert "loft.sign-off.yaml is a sign-off, and there is no job file beside it." in ran.err


@pytest.mark.skipif(os.getuid() == 0, reason="root may write anywhere")
def test_a_folder_that_cannot_be_written_to_is_refused(precover: Runner) -> None:
    Path().chmod(0o500)
    ran = precover("signoff", "boathouse.yaml", "agreed", "--at", "bench", *BY)
    Path().chmod(0o700)
    assert ran.status == 65


def test_without_a_day_it_is_today(precover: Runner) -> None:
    words = ("agreed", "--at", "bench", "--by", "O. Tarn", "--packs", PACKS)
    assert precover("signoff", "boathouse.yaml", *words).status == 0
    assert 'on: "20' in SIGNED.read_text("utf-8")
