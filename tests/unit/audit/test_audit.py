"""Whole audits of the studio with its planted mistakes: what an edit elsewhere must not change."""

import re
from functools import cache
from pathlib import Path

from linter.audit.audit import audit
from linter.audit.findings import Audit, Finding
from linter.cli.shelf import Shelf
from linter.jobfile import read_job

STUDIO = Path(__file__).resolve().parents[3] / "examples/pottery-studio"
MISTAKES = (STUDIO / "with-mistakes.yaml").read_text(encoding="utf-8")


@cache
def shelf() -> Shelf:
    return Shelf()


@cache
def audited(text: str) -> Audit:
    job = read_job(text, "studio.yaml")
    return audit(job, shelf().pack_of(job))


def fingerprints(text: str) -> list[str]:
    return sorted(each.fingerprint for each in audited(text).findings)


def test_lines_put_in_above_move_every_place_and_no_fingerprint() -> None:
    moved = "# a remark\n\n\n" + MISTAKES
    assert fingerprints(moved) == fingerprints(MISTAKES)
    lines = [each.place.line for each in audited(MISTAKES).findings]
    assert [each.place.line for each in audited(moved).findings] == [line + 3 for line in lines]


def test_an_edit_elsewhere_keeps_the_fingerprints() -> None:
    edited = MISTAKES.replace("name: Pottery studio flat", "name: Another name")
    assert edited != MISTAKES
    assert fingerprints(edited) == fingerprints(MISTAKES)


def test_the_value_relied_on_changes_the_fingerprint() -> None:
    short = next(e for e in audited(MISTAKES).findings if e.rule == "wire-end-long-enough")
    written = next(each.value for each in short.relies_on if each.fact == "free_length")
    shorter = MISTAKES.replace(f"free_length: {written}", "free_length: 1 in")
    assert shorter != MISTAKES
    assert short.fingerprint not in fingerprints(shorter)


def test_no_two_findings_share_a_fingerprint() -> None:
    assert len(set(fingerprints(MISTAKES))) == len(fingerprints(MISTAKES))


def test_turning_a_section_upside_down_changes_no_finding() -> None:
    head, cables, rest = re.split(
        r"^(cables:\n(?:  .*\n)+)", MISTAKES, maxsplit=1, flags=re.MULTILINE
    )
    first, *lines = cables.splitlines(keepends=True)
    turned = head + first + "".join(reversed(lines)) + rest
    assert turned != MISTAKES
    assert fingerprints(turned) == fingerprints(MISTAKES)


def test_findings_come_in_the_order_of_rooms_then_boxes_then_weight() -> None:
    findings = audited(MISTAKES).findings
    orders = [each.stop.order for each in findings]
    assert orders == sorted(orders)
    rooms = list(dict.fromkeys(each.stop.room for each in findings))
    stated = [each for each in read_job(MISTAKES, "studio.yaml").rooms if each in rooms]
    assert rooms == stated


def test_counts_agree_with_what_is_told() -> None:
    told = audited(MISTAKES)
    for weight, number in told.counts.items():
        assert number == sum(1 for each in told.findings if each.weight == weight)
    assert told.checks > sum(told.counts.values()) + sum(told.cannot_tell.values())


def test_a_later_stage_brings_rules_and_an_unstated_one_leaves_none_out() -> None:
    stages = ["stage: pulled", "stage: made up", "stage: trimmed"]
    checks = [audited(MISTAKES.replace("stage: made up", each)).checks for each in stages]
    assert checks == sorted(checks)
    assert len(set(checks)) > 1
    unstated = audited(MISTAKES.replace(", stage: made up", ""))
    assert unstated.stage == "stage not stated"
    assert unstated.checks >= checks[-1]


def test_every_check_that_cannot_be_told_is_asked_for() -> None:
    pulled = audited((STUDIO / "as-pulled.yaml").read_text(encoding="utf-8"))
    assert pulled.cannot_tell["violation"] > 0
    assert sum(each.settles for each in pulled.open) <= sum(pulled.cannot_tell.values())
    asked = {
        (answer.rule, ref)
        for each in pulled.open
        for answer in each.answers
        for ref in answer.things
    }
    assert len(asked) == sum(pulled.cannot_tell.values())
    assert all(each.ask.endswith(".") for each in pulled.open)
    useful = [(each.settles, each.helps) for each in pulled.open]
    assert useful == sorted(useful, reverse=True)


def test_what_an_answer_is_said_to_settle_is_what_it_settles() -> None:
    text = MISTAKES.replace("free_length: 4-1/2 in", "free_length: unknown")
    (question,) = [each for each in audited(text).open if each.fact == "free_length"]
    (answer,) = question.answers
    assert answer.when == (("6 in or more", "met"), ("less than 6 in", "broken"))
    for length, broken in [("6 in", False), ("5.9 in", True)]:
        told = audited(text.replace("free_length: unknown", f"free_length: {length}"))
        found = {each.ref for each in told.findings if each.rule == answer.rule}
        assert set(answer.things) <= found if broken else not set(answer.things) & found


def test_another_way_of_the_same_mistake_is_another_finding() -> None:
    """The rule asks only whether a hot comes where the neutral belongs; the sentence says how."""

    def reversed_at_pugmill(text: str) -> Finding:
        (found,) = [each for each in audited(text).findings if each.rule == "polarity-is-kept"]
        return found

    one = reversed_at_pugmill(MISTAKES)
    other = reversed_at_pugmill(MISTAKES.replace("k55", "k56"))
    same = reversed_at_pugmill(MISTAKES.replace("rooms:", "# where things are\nrooms:"))
    assert "black of k55" in one.sentence
    assert (one.ref, one.rule) == (other.ref, other.rule)
    assert one.fingerprint == same.fingerprint != other.fingerprint
