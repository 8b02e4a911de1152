"""The Canadian table of what answers each item is as generated, and leaves none out.

It is renewed by `pytest tests/golden/test_coverage_canada.py --renew-golden`.
"""

from linter.resources import rulesets_dir
from tests.outside.coverage_canada import (
    CANADIAN,
    CANADIAN_MAIN,
    canadian_answers,
    canadian_lines,
    canadian_table,
)
from tests.outside.coverage_table import NOT_YET, edition, names_in, state


def test_the_table_is_as_generated(renew_golden: bool) -> None:
    saved = rulesets_dir() / "COVERAGE-CANADA.md"
    if renew_golden:
        saved.write_text(canadian_table(), encoding="utf-8")
    assert saved.read_text(encoding="utf-8") == canadian_table()


def test_every_name_is_of_a_canadian_pack() -> None:
    there = [names_in(edition(name)) for name in CANADIAN]
    for answer in canadian_answers():
        for what, names in answer.names.items():
            assert all(any(name in each[what] for each in there) for name in names), answer.item


def test_every_line_is_of_an_item_of_the_matrix() -> None:
    assert canadian_lines().keys() <= {each.item for each in canadian_answers()}


def test_every_item_has_an_answer_or_a_reason() -> None:
    main = edition(CANADIAN_MAIN)
    silent = [
        each.item
        for each in canadian_answers()
        if state(each, main) == NOT_YET and not (each.not_yet and each.why)
    ]
    assert not silent
