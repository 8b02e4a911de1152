from pathlib import Path

import pytest

from tests.unit.cli.running import BOATHOUSE, PACKS, Ran, Runner

LONG = BOATHOUSE.replace("at_from: {free_length: 4 in}", "at_from: {free_length: 7 in}")
SHORTER = BOATHOUSE.replace("at_from: {free_length: 4 in}", "at_from: {free_length: 3 in}")
SHORT_TOP = BOATHOUSE.replace("at_to: {free_length: unknown}", "at_to: {free_length: 5 in}")
LONG_TOP = BOATHOUSE.replace("at_to: {free_length: unknown}", "at_to: {free_length: 7 in}")
UNKNOWN = BOATHOUSE.replace("at_from: {free_length: 4 in}", "at_from: {free_length: unknown}")


def since(precover: Runner, before: str, after: str) -> Ran:
    Path("old.yaml").write_text(before, "utf-8")
    Path("new.yaml").write_text(after, "utf-8")
    return precover("progress", "old.yaml", "new.yaml", "--packs", PACKS)


def test_what_was_put_right_is_told_with_the_change_that_did_it(precover: Runner) -> None:
    ran = since(precover, BOATHOUSE, LONG)
    assert (ran.status, ran.err) == (0, "")
    assert "cable k2 (line 30) at bench: free length: 7 in, was 4 in" in ran.said
    assert "PUT RIGHT VIOLATION Black of k2 in bench leaves 4 in; 6 in is needed." in ran.said
    assert "3 put right, 0 new, 0 changed and 0 still found." in ran.said
    assert "Outstanding now: nothing." in ran.said


def test_what_is_new_is_told_with_what_to_do(precover: Runner) -> None:
    ran = since(precover, BOATHOUSE, SHORT_TOP)
    assert ran.status == 1
    assert "NEW VIOLATION Black of k3 in top leaves 5 in; 6 in is needed." in ran.said
    assert "Do: Pull more cable into box top while the wall is open." in ran.said
    assert "STILL FOUND VIOLATION Black of k2 in bench leaves 4 in" in ran.said
    assert "Outstanding now: 6 violations." in ran.said


def test_what_changed_and_is_still_found_says_what_was_found_before(precover: Runner) -> None:
    ran = since(precover, BOATHOUSE, SHORTER)
    assert ran.status == 1
    assert "CHANGED, AND STILL FOUND" in ran.said
    assert "Changed since old.yaml: Black of k2 in bench leaves 4 in; 6 in is needed." in ran.said


def test_what_could_not_be_told_and_is_met_now_is_counted(precover: Runner) -> None:
    ran = since(precover, BOATHOUSE, LONG_TOP)
    assert "3 checks are met now; 1 still cannot be told, and 0 more." in ran.said


def test_what_cannot_be_told_any_more_is_not_called_put_right(precover: Runner) -> None:
    ran = since(precover, BOATHOUSE, UNKNOWN)
    assert "PUT RIGHT" not in ran.said
    assert "wire-end-long-enough; it cannot be told any more" in ran.said
    assert "0 put right" in ran.said


def test_a_thing_that_is_gone_has_not_been_put_right(precover: Runner) -> None:
    gone = BOATHOUSE.replace("  k2: {from: bench, to: winch, at_from: {free_length: 4 in}}\n", "")
    ran = since(precover, BOATHOUSE, gone)
    assert "cable k2 (line 30): gone" in ran.said
    assert "wire-end-long-enough; the job has no such thing" in ran.said


def test_what_only_the_new_stage_asks_says_so(precover: Runner) -> None:
    open_end = "holds: receptacle, make_up: {left_open: [k4.red]}}\n\ncables"
    loose = BOATHOUSE.replace("holds: receptacle}\n\ncables", open_end)
    ran = since(precover, loose.replace("stage: made up", "stage: pulled"), loose)
    assert "Boathouse, from pulled to made up" in ran.said
    assert "the job (line 3) stage: made up, was pulled" in ran.said
    assert "NEW DANGER Red of k4 in winch is joined to nothing and not capped." in ran.said
    assert "Asked from this stage on: made up." in ran.said


def test_the_same_file_twice_shows_no_change(precover: Runner) -> None:
    ran = since(precover, BOATHOUSE, BOATHOUSE)
    assert ran.status == 0
    assert "Nothing that the two files state is different." in ran.said
    assert "0 put right, 0 new, 0 changed and 3 still found." in ran.said


def test_what_is_signed_shows_and_does_not_count(precover: Runner) -> None:
    since(precover, LONG, BOATHOUSE)
    words = ("not-a-defect", "--at", "bench", "--because", "Spliced.", "--by", "O.")
    assert precover("signoff", "new.yaml", *words, "--packs", PACKS).status == 0
    ran = precover("progress", "old.yaml", "new.yaml", "--packs", PACKS)
    assert ran.status == 0
    assert "not a defect, says O. on" in ran.said
    assert "Outstanding now: nothing." in ran.said


@pytest.mark.parametrize("names", [(), ("old.yaml",), ("a", "b", "c"), ("-", "-")])
def test_two_files_are_needed(precover: Runner, names: tuple[str, ...]) -> None:
    ran = precover("progress", *names)
    assert (ran.status, ran.out) == (64, "")
