"""What findings count for after what was said of them, and when what was said no longer holds."""

from pathlib import Path

import pytest

from linter.signoff.choosing import NotMeant, chosen
from linter.signoff.sayings import AGREED, NOT_A_DEFECT, PUT_RIGHT
from linter.signoff.standing import (
    DANGER_COUNTS,
    FACTS_CHANGED,
    NO_RULE,
    NO_THING,
    NOT_AT_THIS_STAGE,
    NOT_KNOWN,
    NOTHING_FOUND,
    RULE_CHANGED,
    STILL_FOUND,
)
from tests.unit.cli.running import BOATHOUSE, PACKS
from tests.unit.signoff.made import (
    FERROW,
    held,
    looked_at,
    outstanding,
    packs_with,
    said_of,
    signable,
)

FINDINGS = [each for each in signable() if each.what == "finding"]
OPEN = [each for each in signable() if each.what == "open"]
RULE = "wire-end-long-enough"
SHORTER = BOATHOUSE.replace("free_length: 4 in", "free_length: 3 in")
MENDED = BOATHOUSE.replace("free_length: 4 in", "free_length: 7 in")
DANGER = ("weight: violation\n    subject: free length", "weight: danger\n    subject: free length")


def saying(says: str) -> str:
    """All findings of the boathouse, signed."""
    return said_of(FINDINGS, FERROW._replace(says=says))


def test_nothing_said_leaves_all_outstanding() -> None:
    assert outstanding(held(said_of(OPEN))) == {RULE}


@pytest.mark.parametrize("says", [AGREED, NOT_A_DEFECT])
def test_what_is_agreed_or_judged_no_defect_does_not_count(says: str) -> None:
    signed = held(saying(says))
    assert outstanding(signed) == set()
    assert signed.settled == {"danger": 0, "violation": 3, "advice": 0}
    assert all(each.holds for each in signed.standings.values())


def test_what_is_said_to_be_put_right_counts_while_the_job_file_shows_it() -> None:
    signed = held(saying(PUT_RIGHT))
    assert outstanding(signed) == {RULE}
    assert {each.why for each in signed.standings.values()} == {STILL_FOUND}


def test_what_is_put_right_and_not_found_is_done() -> None:
    signed = held(saying(PUT_RIGHT), MENDED)
    assert [(each.done, each.why) for each in signed.idle] == [(True, NOTHING_FOUND)] * 3


def test_what_is_agreed_and_not_found_is_told_as_said_of_nothing() -> None:
    signed = held(saying(AGREED), MENDED)
    assert [each.done for each in signed.idle] == [False] * 3


@pytest.mark.parametrize("says", [AGREED, PUT_RIGHT, NOT_A_DEFECT])
def test_what_was_said_of_other_facts_no_longer_holds(says: str) -> None:
    signed = held(saying(says), SHORTER)
    assert outstanding(signed, SHORTER) == {RULE}
    assert {(each.holds, each.why) for each in signed.standings.values()} == {
        (False, FACTS_CHANGED)
    }


@pytest.mark.parametrize(
    "edited",
    [
        "# another remark\n" + BOATHOUSE,
        BOATHOUSE.replace("free_length: 4 in", "free_length: 101.6 mm"),
        BOATHOUSE.replace("  k4:", "  k5: {from: top, to: winch}\n  k4:"),
        BOATHOUSE.replace("box: {volume: 20 in3}", "box: {volume: 22 in3}"),
    ],
)
def test_an_edit_elsewhere_leaves_what_was_said(edited: str) -> None:
    assert RULE not in outstanding(held(saying(NOT_A_DEFECT), edited), edited)


def test_a_limit_that_a_layer_changes_takes_back_what_was_said(tmp_path: Path) -> None:
    packs = packs_with(tmp_path, "value: 6 in\n", "value: 8 in\n")
    signed = held(saying(NOT_A_DEFECT), packs=packs)
    assert outstanding(signed, packs=packs) == {RULE}
    whys = {each.why for each in signed.standings.values()}
    assert whys == {RULE_CHANGED}


def test_other_words_of_a_rule_leave_what_was_said(tmp_path: Path) -> None:
    packs = packs_with(tmp_path, "Pull more cable", "Bring more cable")
    assert outstanding(held(saying(NOT_A_DEFECT), packs=packs), packs=packs) == set()


def test_a_rule_that_weighs_more_takes_back_what_was_said(tmp_path: Path) -> None:
    packs = packs_with(tmp_path, *DANGER)
    signed = held(saying(NOT_A_DEFECT), packs=packs)
    assert outstanding(signed, packs=packs) == {RULE}
    assert "its weight was violation then, and is danger now" in {
        each.why for each in signed.standings.values()
    }


def test_a_danger_that_is_agreed_counts_and_one_judged_no_defect_does_not(tmp_path: Path) -> None:
    packs = packs_with(tmp_path, *DANGER)
    text = said_of(FINDINGS, FERROW._replace(says=AGREED)).replace('"violation"', '"danger"')
    signed = held(text, packs=packs)
    assert outstanding(signed, packs=packs) == {RULE}
    assert {each.why for each in signed.standings.values()} == {DANGER_COUNTS}
    judged = text.replace('says: "agreed"', 'says: "not a defect"')
    assert outstanding(held(judged, packs=packs), packs=packs) == set()


@pytest.mark.parametrize(
    ("then", "now", "counts"),
    [
        ("made up", "made up", False),
        ("made up", "pulled", False),
        ("made up", "covered", True),
        ("pulled", "made up", True),
        ("", "energised", False),
    ],
)
def test_what_is_agreed_is_agreed_for_the_visit(then: str, now: str, counts: bool) -> None:
    job = BOATHOUSE.replace("stage: made up", f"stage: {now}")
    text = said_of(FINDINGS, FERROW._replace(says=AGREED, stage=then))
    assert (RULE in outstanding(held(text, job), job)) == counts


def test_the_latest_day_holds_and_of_one_day_the_last_entry() -> None:
    later = said_of(FINDINGS, FERROW._replace(on="2026-04-01"))
    both = said_of(FINDINGS, FERROW._replace(says=PUT_RIGHT, on="2026-03-30"), later)
    assert outstanding(held(both)) == set()
    same_day = said_of(FINDINGS, FERROW._replace(says=PUT_RIGHT, on="2026-04-01"), later)
    assert outstanding(held(same_day)) == {RULE}


def test_an_open_check_may_be_judged_and_counts_again_once_it_is_known() -> None:
    signed = held(said_of(OPEN))
    assert signed.settled_untold == {"danger": 0, "violation": 4, "advice": 0}
    known = BOATHOUSE.replace("free_length: unknown", "free_length: 5 in")
    assert RULE in outstanding(held(said_of(OPEN), known), known)


def test_an_open_check_cannot_be_put_right() -> None:
    signed = held(said_of(OPEN, FERROW._replace(says=PUT_RIGHT)))
    assert {each.why for each in signed.standings.values()} == {NOT_KNOWN}
    assert set(signed.settled_untold.values()) == {0}


def test_a_finding_that_can_no_longer_be_told_counts_as_not_told() -> None:
    unknown = BOATHOUSE.replace("free_length: 4 in", "free_length: unknown")
    signed = held(saying(PUT_RIGHT), unknown)
    assert {each.why for each in signed.standings.values()} == {FACTS_CHANGED}
    assert not signed.idle


def test_what_was_said_of_nothing_says_why() -> None:
    text = saying(NOT_A_DEFECT)
    cases = {
        NO_RULE: text.replace(RULE, "wire-end-lengthy-enough"),
        NO_THING: text.replace("@bench", "@bunch"),
        NOTHING_FOUND: text.replace("k2", "k1"),
    }
    for why, edited in cases.items():
        assert {each.why for each in held(edited).idle} == {why}


def test_what_was_said_of_a_rule_that_is_not_asked_yet_says_so() -> None:
    text = saying(NOT_A_DEFECT).replace(RULE, "spare-wire-end-capped")
    pulled = BOATHOUSE.replace("stage: made up", "stage: pulled")
    assert {each.why for each in held(text, pulled).idle} == {NOT_AT_THIS_STAGE}


def test_what_a_look_found_is_another_thing_after_another_look() -> None:
    look = (
        "looked_at:\n  - {{item: joints-hold-when-pulled, at: winch, by: O. Tarn, on: {on}, "
        "outcome: to be put right, found: {found}}}\n"
    )
    first = BOATHOUSE + look.format(on="2026-03-01", found="one came out")
    again = BOATHOUSE + look.format(on="2026-03-02", found="two came out")
    meant = [each for each in signable(first) if each.item.rule == "joints-hold-when-pulled"]
    text = said_of(meant)
    assert "joints-hold-when-pulled" not in outstanding(held(text, first), first)
    assert "joints-hold-when-pulled" in outstanding(held(text, again), again)


def test_a_mark_says_which_is_meant_if_it_is_long_enough() -> None:
    one, other = (
        each.item._replace(mark=mark)
        for each, mark in zip(FINDINGS, ("ab12" * 4, "ab34" * 4), strict=False)
    )
    of = [FINDINGS[0]._replace(item=one), FINDINGS[1]._replace(item=other)]
    assert chosen(of, ["ab1"], [], []) == (of[0],)
    with pytest.raises(NotMeant, match="Several marks begin"):
        chosen(of, ["ab"], [], [])


def test_the_job_is_as_these_tests_take_it_to_be() -> None:
    found, checks = looked_at(BOATHOUSE, PACKS)
    assert [each.rule for each in found.audit.findings] == [RULE] * 3
    assert len(checks) == 4
