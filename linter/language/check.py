"""A tree to a checked tree: every name known, every dimension right; or all refusals at once."""

from __future__ import annotations

from typing import TYPE_CHECKING, assert_never

from linter.language.check_conditions import (
    check_comparison,
    check_count,
    check_extreme,
    check_for_things,
    check_is,
    check_one_of,
    check_sum,
)
from linter.language.check_names import check_number, check_path
from linter.language.check_values import (
    check_arithmetic,
    check_choice,
    check_look_up,
    check_pick,
    check_rounded,
)
from linter.language.checked import Checked, type_of
from linter.language.checking import Checker, Found, a, alike, mend_of_pair
from linter.language.tree import (
    AllOf,
    AnyOf,
    Arithmetic,
    Choice,
    Compared,
    Comparison,
    Count,
    Extreme,
    ForThings,
    Is,
    Joined,
    LookUp,
    Named,
    Node,
    Not,
    Number,
    OneOf,
    OverThings,
    Path,
    Pick,
    Reckoned,
    Rounded,
    Sum,
)
from linter.text import Refused, nearest
from linter.vocabulary.model import FactType, Shape
from linter.vocabulary.shorthand import YES_NO

if TYPE_CHECKING:
    from linter.language.scope import Scope


def check(node: Node, scope: Scope, expect: FactType | None = None) -> Checked:
    """The expression with all names resolved, of the type expected if one is.

    Raises `Refused` with every mistake of the expression, in the order of their places; what
    follows from a mistake is held back.
    """
    checker = Checker(scope, _node)
    found = checker.node(node)
    if found.type is not None:
        _check_whole(checker, node, found.type, expect)
    if checker.refusals or found.type is None:
        raise Refused(checker.refusals)
    return Checked(scope.subject, expect or found.type, found.node)


def _check_whole(checker: Checker, node: Node, got: FactType, expect: FactType | None) -> None:
    """Refuses an expression that is a thing, or not of the type expected."""
    if got.shape in (Shape.THING, Shape.THINGS):
        checker.refuse(
            node.place, f"this is {a(got)}", "a condition or a value", "name a fact of it"
        )
    elif expect is not None and not alike(got, expect):
        said = f"this is {a(got)}, where {a(expect)} is needed"
        checker.refuse(node.place, said, a(expect), mend_of_pair(got, expect))
    elif expect is not None and expect.shape is Shape.WORD:
        strange = [word for word in got.words if word not in expect.words]
        if strange:
            said = f'"{strange[0]}" is not a word that is needed here'
            near = nearest(strange[0], expect.words)
            expected = f"one of: {', '.join(expect.words)}"
            checker.refuse(node.place, said, expected, "write one of these", near)


def _node(checker: Checker, node: Node) -> Found:
    if isinstance(node, Named):
        return _named(checker, node)
    if isinstance(node, Reckoned):
        return _reckoned(checker, node)
    if isinstance(node, OverThings):
        return _over_things(checker, node)
    if isinstance(node, Compared):
        return _compared(checker, node)
    return _joined(checker, node)


def _named(checker: Checker, node: Named) -> Found:
    match node:
        case Path():
            return check_path(checker, node)
        case Number():
            return check_number(checker, node)
        case _:  # a word, or what checking itself puts in, stands as it is
            return Found(node, type_of(node))


def _over_things(checker: Checker, node: OverThings) -> Found:
    match node:
        case Sum():
            return check_sum(checker, node)
        case Count():
            return check_count(checker, node)
        case Extreme():
            return check_extreme(checker, node)
        case ForThings():
            return check_for_things(checker, node)
        case _:
            assert_never(node)


def _reckoned(checker: Checker, node: Reckoned) -> Found:
    match node:
        case Arithmetic():
            return check_arithmetic(checker, node)
        case Rounded():
            return check_rounded(checker, node)
        case Choice():
            return check_choice(checker, node)
        case Pick():
            return check_pick(checker, node)
        case LookUp():
            return check_look_up(checker, node)
        case _:
            assert_never(node)


def _compared(checker: Checker, node: Compared) -> Found:
    match node:
        case Comparison():
            return check_comparison(checker, node)
        case Is():
            return check_is(checker, node)
        case OneOf():
            return check_one_of(checker, node)
        case _:
            assert_never(node)


def _joined(checker: Checker, node: Joined) -> Found:
    match node:
        case Not(condition):
            return Found(Not(checker.condition(condition), node.place), YES_NO)
        case AllOf(parts):
            return Found(AllOf(tuple(map(checker.condition, parts)), node.place), YES_NO)
        case AnyOf(parts):
            return Found(AnyOf(tuple(map(checker.condition, parts)), node.place), YES_NO)
        case _:
            assert_never(node)
