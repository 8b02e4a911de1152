"""The table of what answers each item that agencies ask is as generated, and leaves none out.

It is renewed by `pytest tests/golden/test_coverage.py --renew-golden`.
"""

from linter.resources import rulesets_dir
from tests.outside.coverage_table import (
    BY_LOOK,
    EDITIONS,
    MAIN,
    NOT_YET,
    answers,
    edition,
    names_in,
    state,
    strays,
    table,
)


def test_the_table_is_as_generated(renew_golden: bool) -> None:
    saved = rulesets_dir() / "COVERAGE.md"
    if renew_golden:
        saved.write_text(table(), encoding="utf-8")
    assert saved.read_text(encoding="utf-8") == table()


def test_every_name_is_of_a_pack() -> None:
    there = {edition_: names_in(edition(edition_)) for edition_ in EDITIONS}
    named = {
        (what, name) for each in answers() for what, names in each.names.items() for name in names
    }
    unknown = {
        (what, name)
        for what, name in named
        if not any(name in names[what] for names in there.values())
    }
    assert not unknown


def test_every_line_is_of_an_item_of_the_matrix() -> None:
    assert not strays()
    assert len({each.item for each in answers()}) == len(answers())


def test_every_decidable_item_has_an_answer_or_a_reason() -> None:
    silent = {
        each.item
        for each in answers()
        if not each.not_yet and state(each, edition(MAIN)) == NOT_YET
    }
    assert not silent


def test_what_a_file_can_tell_is_left_to_the_eye_for_a_reason_only() -> None:
    looks = [each for each in answers() if state(each, edition(MAIN)) == BY_LOOK]
    assert not [each.item for each in looks if each.decidable != "eyes-only" and not each.why]


def test_what_only_an_eye_can_tell_is_answered_by_no_rule() -> None:
    assert not [e.item for e in answers() if e.decidable == "eyes-only" and e.names["rule"]]
