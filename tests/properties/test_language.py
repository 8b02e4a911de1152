"""Laws of the language, on generated expressions and boxes."""

import itertools
import string
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from linter.language.check import check
from linter.language.checked import Checked
from linter.language.compile import compile_value
from linter.language.data import from_data, to_data
from linter.language.evaluate import evaluate, facts_used
from linter.language.judge import judge
from linter.language.parse import parse
from linter.language.print import to_text
from linter.language.verdict import CannotTell, NoQuotient, NoRow
from linter.text import Refusal, Refused
from linter.units import NotKnown, Unknown, same_value
from linter.vocabulary.model import FactRef, Thing
from tests.cases.language_world import PLACE, checked, library, scope, thing
from tests.properties.language_generated import (
    DoesNotKnow,
    boxes,
    conditions,
    filled,
    naive,
    unknowns,
    values,
)

PACK = library()
expressions = st.one_of(conditions, values)


def same(a: object, b: object) -> bool:
    if isinstance(a, bool) or isinstance(b, bool) or isinstance(a, str):
        return a is b or a == b
    assert isinstance(a, int | float)
    assert isinstance(b, int | float)
    return same_value(a, b)


def quick(expression: Checked, box: Thing) -> Any:
    """What the compiled function says, or None where it does not know."""
    try:
        return compile_value(expression, PACK)(box)
    except NotKnown:
        return None


@given(expressions)
def test_printing_and_reading_gives_the_same_tree(text: str) -> None:
    tree = parse(text, PLACE)
    assert parse(to_text(tree), PLACE) == tree


@given(st.from_regex(r"[0-9]{1,30}(\.[0-9]{1,30})?", fullmatch=True))
def test_a_number_is_printed_and_read_again(text: str) -> None:
    tree = parse(text, PLACE)
    assert parse(to_text(tree), PLACE) == tree


@given(expressions)
def test_a_checked_expression_survives_as_data(text: str) -> None:
    expression = checked(text)
    again = from_data(to_data(expression))
    assert (again.subject, again.type, again.node) == (
        expression.subject, expression.type, expression.node,
    )  # fmt: skip


@settings(max_examples=120)
@given(expressions, boxes(holes=False))
def test_compiled_is_as_the_naive_evaluator_says(text: str, box: Thing) -> None:
    tree = parse(text, PLACE)
    expression = check(tree, scope("box"))
    try:
        expected = naive(tree, {"box": box})
    except DoesNotKnow:
        return  # a quotient or a row that there is not: the careful evaluator says it, see below
    assert same(quick(expression, box), expected)


@settings(max_examples=120)
@given(expressions, boxes(holes=True))
def test_the_naive_evaluator_never_knows_otherwise(text: str, box: Thing) -> None:
    tree = parse(text, PLACE)
    try:
        expected = naive(tree, {"box": box})
    except DoesNotKnow:
        return
    assert same(evaluate(check(tree, scope("box")), box, PACK), expected)


@settings(max_examples=120)
@given(expressions, boxes(holes=True))
def test_the_quick_way_and_the_careful_way_agree(text: str, box: Thing) -> None:
    expression = checked(text)
    careful, said = evaluate(expression, box, PACK), quick(expression, box)
    if isinstance(careful, Unknown):
        assert said is None
    elif said is not None:
        assert same(said, careful)


@settings(max_examples=120)
@given(expressions, boxes(holes=False))
def test_with_all_known_only_rows_and_quotients_can_be_missing(text: str, box: Thing) -> None:
    careful = evaluate(checked(text), box, PACK)
    if isinstance(careful, Unknown):
        assert careful.because
        assert all(isinstance(each, NoRow | NoQuotient) for each in careful.because)


@settings(max_examples=150)
@given(expressions, boxes(holes=True), st.data())
def test_making_an_unknown_known_never_changes_what_was_told(
    text: str, box: Thing, data: st.DataObject
) -> None:
    expression = checked(text)
    before = evaluate(expression, box, PACK)
    after = evaluate(expression, filled(data.draw, box, all_of_them=False), PACK)
    if not isinstance(before, Unknown):
        assert not isinstance(after, Unknown)
        assert same(before, after)


@settings(max_examples=120)
@given(conditions, conditions, boxes(holes=True), st.data())
def test_a_judgement_that_was_told_stays(
    where: str, need: str, box: Thing, data: st.DataObject
) -> None:
    rule = checked(where), checked(need)
    before = judge(*rule, box, PACK)
    after = judge(*rule, filled(data.draw, box, all_of_them=False), PACK)
    if not isinstance(before, CannotTell):
        # A rule that was met may turn out not to apply: it was met either way.
        assert after is before or (before.value, after.value) == ("met", "does not apply")


@settings(max_examples=120)
@given(expressions, boxes(holes=True))
def test_what_cannot_be_told_hangs_on_facts_that_are_not_known(text: str, box: Thing) -> None:
    careful = evaluate(checked(text), box, PACK)
    if isinstance(careful, Unknown):
        open_facts = {FactRef(each.kind, each.ref, name) for each, name in unknowns(box)}
        assert careful.because
        named = {each for each in careful.because if isinstance(each, FactRef)}
        assert named <= open_facts


@settings(max_examples=120)
@given(expressions, boxes(holes=True), st.data())
def test_what_is_not_named_as_a_reason_settles_nothing(
    text: str, box: Thing, data: st.DataObject
) -> None:
    careful = evaluate(checked(text), box, PACK)
    if not isinstance(careful, Unknown):
        return
    fuller = filled(data.draw, box, all_of_them=True)
    for old, new in zip(everything(box), everything(fuller), strict=True):
        for name, value in old.__dict__.items():
            if isinstance(value, Unknown) and value.because <= careful.because:
                new.__dict__[name] = value
    assert isinstance(evaluate(checked(text), fuller, PACK), Unknown)


def everything(box: Thing) -> tuple[Thing, ...]:
    return (box, *box.__dict__["wire_ends"])


@settings(max_examples=120)
@given(expressions, boxes(holes=False), st.data())
def test_what_was_not_relied_on_does_not_matter(text: str, box: Thing, data: st.DataObject) -> None:
    expression = checked(text)
    relied = facts_used(expression, box, PACK)
    before = evaluate(expression, box, PACK)
    other = data.draw(
        boxes(holes=False).filter(lambda b: len(everything(b)) == len(everything(box)))
    )
    for old, new in zip(everything(box), everything(other), strict=True):
        for name in old.__dict__:
            if FactRef(old.kind, old.ref, name) in relied:
                new.__dict__[name] = old.__dict__[name]
    after = evaluate(expression, other, PACK)
    if not isinstance(before, Unknown):
        assert not isinstance(after, Unknown)
        assert same(before, after)


THREE = (True, False, "unknown")
FACTS = ("is_metal", "has_cover", "is_bonded")


def told(text: str, facts: tuple[object, ...]) -> object:
    box = thing("box", dict(zip(FACTS, facts, strict=True)))
    value = evaluate(checked(text), box, PACK)
    return value if not isinstance(value, Unknown) else frozenset(map(str, value.because))


A, B, C = (f"box.{name}" for name in FACTS)
LAWS = {
    "and commutes": (f"{A} and {B}", f"{B} and {A}"),
    "or commutes": (f"{A} or {B}", f"{B} or {A}"),
    "and associates": (f"({A} and {B}) and {C}", f"{A} and ({B} and {C})"),
    "or associates": (f"({A} or {B}) or {C}", f"{A} or ({B} or {C})"),
    "not of and": (f"not ({A} and {B})", f"(not {A}) or (not {B})"),
    "not of or": (f"not ({A} or {B})", f"(not {A}) and (not {B})"),
    "not of not": (f"not not {A}", A),
    "and with itself": (f"{A} and {A}", A),
    "or with itself": (f"{A} or {A}", A),
    "and with what holds": (f"{A} and metal_allowed", A),
    "or with what does not hold": (f"{A} or not metal_allowed", A),
}


@pytest.mark.parametrize(("one", "other"), LAWS.values(), ids=LAWS)
@pytest.mark.parametrize("facts", list(itertools.product(THREE, repeat=3)))
def test_laws_of_strong_kleene_logic(one: str, other: str, facts: tuple[object, ...]) -> None:
    assert told(one, facts) == told(other, facts)


@pytest.mark.parametrize("facts", list(itertools.product(THREE, repeat=3)))
def test_each_distributes_over_the_other(facts: tuple[object, ...]) -> None:
    pairs = (
        (f"{A} and ({B} or {C})", f"({A} and {B}) or ({A} and {C})"),
        (f"{A} or ({B} and {C})", f"({A} or {B}) and ({A} or {C})"),
    )
    for one, other in pairs:
        left, right = told(one, facts), told(other, facts)
        assert left == right or (isinstance(left, frozenset) and isinstance(right, frozenset))


_WORDS = [
    *(
        [
            "and",
            "or",
            "not",
            "is",
            "one",
            "of",
            "at",
            "least",
            "most",
            "more",
            "less",
            "than",
            "every",
            "some",
            "no",
            "has",
            "where",
            "if",
            "then",
        ]
    ),
    *(
        [
            "else",
            "sum",
            "count",
            "for",
            "largest",
            "smallest",
            "none",
            "larger",
            "smaller",
            "look",
            "up",
            "down",
            "to",
            "rounded",
        ]
    ),
    *["box", "box.wire_ends", "e", "e.is_bond", "fill", "least_free_length", "bundle_factor"],
    *["0", "1", "2.5", "(", ")", ",", "+", "-", "*", "/", '"hot"'],
]
_STRANGE = (
    "\N{MULTIPLICATION SIGN}\N{GREATER-THAN OR EQUAL TO}\N{RIGHT SINGLE QUOTATION MARK}\u00e9"
)


def refusals_of(text: str) -> tuple[Refusal, ...]:
    """What is said against a text; nothing if it is read, and then it can be printed."""
    try:
        assert to_text(check(parse(text, PLACE), scope("box")).node)
    except Refused as refused:
        return refused.refusals
    return ()


@settings(max_examples=250)
@given(
    st.one_of(
        st.lists(st.sampled_from(_WORDS), max_size=14).map(" ".join),
        st.text(alphabet=string.printable + _STRANGE, max_size=60),
        st.text(max_size=30),
    )
)
def test_any_text_is_read_or_refused(text: str) -> None:
    for each in refusals_of(text):
        assert each.found
        assert each.expected
        assert each.mend
        assert each.place.line >= PLACE.line


@settings(max_examples=120)
@given(expressions, st.integers(0, 200), st.sampled_from([*_WORDS, "", *_STRANGE]))
def test_an_expression_with_one_slip_is_read_or_refused(text: str, at: int, slip: str) -> None:
    words = text.split(" ")
    at %= len(words)
    words[at : at + 1] = [slip] if slip else []
    for each in refusals_of(" ".join(words)):
        assert each.mend
