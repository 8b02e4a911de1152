"""The language by its tables: tests/cases/language, one row each."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from linter.language.compile import compile_need, compile_value
from linter.language.evaluate import evaluate, facts_used
from linter.language.judge import judge
from linter.language.library import Library
from linter.language.parse import parse
from linter.language.print import to_text
from linter.language.verdict import CannotTell, NoQuotient, NoRow, Verdict
from linter.language.work import working
from linter.text import Refusal, Refused
from linter.units import DIMENSIONS_BY_NAME, IMPERIAL, NotKnown, Unknown, same_value, write_in
from linter.vocabulary.model import FactRef, FactType, Shape, Thing
from linter.vocabulary.shorthand import YES_NO, quantity
from tests.cases.language_world import PLACE, checked, library, q, thing

TABLES = Path(__file__).with_name("language")


def rows(name: str) -> list[Any]:
    table = yaml.safe_load((TABLES / name).read_text(encoding="utf-8"))
    return [pytest.param(row, id=row.get("case", row.get("text"))) for row in table]


@pytest.fixture(scope="module")
def pack() -> Library:
    return library()


def subject_of(row: dict[str, Any]) -> str:
    return str(row.get("subject", "box"))


def thing_of(row: dict[str, Any]) -> Thing:
    kind = subject_of(row)
    return thing(kind, row[kind])


def reason(each: object) -> str:
    """A reason as the tables write it."""
    match each:
        case FactRef(_, ref, fact):
            return f"{ref}.{fact}"
        case NoRow(table, _, facts):
            return f"no row in {table} of {', '.join(sorted(map(reason, facts)))}"
        case NoQuotient(facts):
            return f"no quotient of {', '.join(map(reason, facts))}" if facts else "no quotient"
    raise AssertionError(each)


def reasons(value: object) -> list[str]:
    assert isinstance(value, Unknown), value
    return sorted(map(reason, value.because))


def is_expected(value: object, expected: Any) -> bool:
    if expected in ("met", "broken"):
        return value is (expected == "met")
    if isinstance(value, str):
        return value == expected
    assert isinstance(value, int | float)
    return same_value(value, q(str(expected)))


@pytest.mark.parametrize(
    "row", [*rows("values.yaml"), *rows("lookups.yaml"), *rows("conditions.yaml")]
)
def test_an_expression_comes_to(row: dict[str, Any], pack: Library) -> None:
    expression, subject = checked(row["text"], subject_of(row)), thing_of(row)
    careful = evaluate(expression, subject, pack)
    if "because" in row:
        assert reasons(careful) == sorted(row["because"])
        with pytest.raises(NotKnown):
            compile_value(expression, pack)(subject)
    else:
        assert is_expected(careful, row["is"]), careful


@pytest.mark.parametrize(
    "row", [*rows("values.yaml"), *rows("lookups.yaml"), *rows("conditions.yaml")]
)
def test_the_quick_way_never_says_otherwise(row: dict[str, Any], pack: Library) -> None:
    expression, subject = checked(row["text"], subject_of(row)), thing_of(row)
    try:
        quick = compile_value(expression, pack)(subject)
    except NotKnown:
        assert "unknown" in str(row) or "because" in row
    else:
        assert is_expected(quick, row["is"])


@pytest.mark.parametrize(
    "row", [*rows("values.yaml"), *rows("lookups.yaml"), *rows("conditions.yaml")]
)
def test_an_expression_is_printed_and_read_again(row: dict[str, Any]) -> None:
    tree = parse(row["text"], PLACE)
    assert parse(to_text(tree), PLACE) == tree


def combinations() -> list[Any]:
    tables = yaml.safe_load((TABLES / "three_values.yaml").read_text(encoding="utf-8"))
    return [
        pytest.param(table, row, id=f"{table['case']}: {', '.join(map(said, row['is']))}")
        for table in tables
        for row in table["rows"]
    ]


def said(value: Any) -> str:
    return {True: "yes", False: "no"}.get(value, str(value))


def test_the_tables_of_three_values_are_complete() -> None:
    tables = yaml.safe_load((TABLES / "three_values.yaml").read_text(encoding="utf-8"))
    for table in tables:
        seen = {tuple(row["is"]) for row in table["rows"]}
        assert len(seen) == len(table["rows"]) == 3 ** len(table["of"])


@pytest.mark.parametrize(("table", "row"), combinations())
def test_three_values(table: dict[str, Any], row: dict[str, Any], pack: Library) -> None:
    facts: dict[str, Any] = {}
    ends: dict[str, dict[str, Any]] = {}
    for way, value in zip(table["of"], row["is"], strict=True):
        *before, fact = way.split(".")
        (ends.setdefault(before[-1], {}) if len(before) > 1 else facts)[fact] = value
    subject = thing("box", {**facts, "wire_ends": list(ends.values())})
    where = checked(table["where"], expect=YES_NO) if "where" in table else None
    need = checked(table["text"], expect=YES_NO)
    judgement = judge(where, need, subject, pack)
    if isinstance(row["comes to"], list):
        assert isinstance(judgement, CannotTell)
        assert sorted(map(reason, judgement.because)) == sorted(row["comes to"])
    else:
        assert judgement is Verdict(row["comes to"])


def refused(text: str, subject: str = "box", expect: FactType | None = None) -> list[Refusal]:
    with pytest.raises(Refused) as caught:
        checked(text, subject, expect)
    return list(caught.value.refusals)


def check_refusal(refusal: Refusal, at: list[int], says: list[str]) -> None:
    line, column = at
    place = refusal.place
    got = (place.line - PLACE.line + 1, place.column - PLACE.column + 1)
    assert got == (line, column), refusal.render()
    for words in says:
        assert words in refusal.render()
    assert refusal.expected
    assert refusal.mend


@pytest.mark.parametrize("row", rows("malformed.yaml"))
def test_what_is_not_of_the_language_is_refused(row: dict[str, Any]) -> None:
    (refusal,) = refused(row["text"])
    check_refusal(refusal, row["at"], row["says"])


@pytest.mark.parametrize("row", rows("misunderstood.yaml"))
def test_what_says_nothing_sensible_is_refused(row: dict[str, Any]) -> None:
    expect = None
    if "expect" in row:
        named = DIMENSIONS_BY_NAME.get(row["expect"])
        expect = quantity(named) if named else YES_NO
    got = refused(row["text"], subject_of(row), expect)
    assert len(got) == len(row["refusals"]), [each.render() for each in got]
    for refusal, expected in zip(got, row["refusals"], strict=True):
        check_refusal(refusal, expected["at"], expected["says"])


@pytest.mark.parametrize(
    "text",
    [
        "(" * 60 + "box.is_metal" + ")" * 60,
        "not " * 60 + "box.is_metal",
        "box.gangs" + " + 1" * 60,
        "if box.is_metal then 1 else " * 60 + "2",
        "(" * 1900,
        "box.is_metal and " * 400 + "box.is_metal",
    ],
    ids=["parentheses", "nots", "sums", "choices", "open parentheses", "a long text"],
)
def test_what_is_too_deep_or_too_long_is_refused_in_words(text: str) -> None:
    (refusal,) = refused(text)
    assert any(
        words in refusal.found for words in ("nested too deeply", "too long", "missing at the end")
    )


def write(value: object, fact_type: FactType, written: str | None) -> str:
    if written is not None:
        return written
    if isinstance(value, bool):
        return "yes" if value else "no"
    if fact_type.shape is Shape.QUANTITY:
        assert isinstance(value, int | float)
        assert fact_type.dimension is not None
        return write_in(value, fact_type.dimension, IMPERIAL)
    return str(value)


@pytest.mark.parametrize("row", rows("working.yaml"))
def test_the_working_shows(row: dict[str, Any], pack: Library) -> None:
    expression = checked(row["text"], subject_of(row))
    lines = working(expression, thing_of(row), pack, write)
    assert [[line.name, line.text, line.values, line.result] for line in lines] == row["lines"]


@pytest.mark.parametrize("row", rows("brief.yaml"))
def test_the_working_in_brief_shows(row: dict[str, Any], pack: Library) -> None:
    expression = checked(row["text"], subject_of(row))
    lines = working(expression, thing_of(row), pack, write)
    assert [[line.name, line.brief, line.result] for line in lines] == row["lines"]


@pytest.mark.parametrize("row", rows("relied.yaml"))
def test_an_answer_relies_on(row: dict[str, Any], pack: Library) -> None:
    relied = facts_used(checked(row["text"], subject_of(row)), thing_of(row), pack)
    assert sorted(map(reason, relied)) == row["facts"]


def test_a_need_gives_yes_or_no_and_nothing_else(pack: Library) -> None:
    need = compile_need(checked("box.is_metal", expect=YES_NO), pack)
    assert need(thing("box", {"is_metal": True})) is True
    with pytest.raises(NotKnown):
        need(thing("box", {"is_metal": "unknown"}))
