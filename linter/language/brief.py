"""A working as it is written on paper: terms of nothing left out, plain facts for conditions.

What stays away changes no result: a 0 that is added, a 1 that is multiplied by, a 0 that something
larger is picked over. What a condition asks stands in the rule; here stands what was found.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.language.checked import type_of
from linter.language.evaluate import Around, answer
from linter.language.tree import (
    AllOf,
    AnyOf,
    Arithmetic,
    Choice,
    Comparison,
    Count,
    Extreme,
    FactOf,
    ForThings,
    Is,
    Limit,
    LimitList,
    LookUp,
    MeasureOf,
    Named,
    Node,
    Not,
    OneOf,
    Pick,
    Rounded,
    Step,
)
from linter.language.work_over_things import said_of_things
from linter.units import AREA, TEMPERATURE, Unknown
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import Shape, Thing

if TYPE_CHECKING:
    from collections.abc import Callable

    from linter.language.writing import Writing

Told = FactOf | MeasureOf | Limit | LimitList | Step
_TIMES = "\N{MULTIPLICATION SIGN}"
_APART = {"at least": "short", "more than": "short", "at most": "over", "less than": "over"}
# A difference of temperatures is no temperature, one of wire sizes no size.
_NO_DIFFERENCE = (AREA, TEMPERATURE)


class Brief(NamedTuple):
    """Writes a step or a condition in brief; `with_values` writes a node with its values."""

    with_values: Callable[[Node, Around], str]
    writing: Writing

    def of(self, node: Node, around: Around) -> str:
        """What stands between the name and the result; empty where the line says nothing new."""
        if type_of(node).shape is Shape.YES_NO:
            return self._condition(node, around)
        if _says_nothing(node, around):
            return ""
        left = reduced(node, around)
        if isinstance(left, LookUp):
            return self._portions(left, around) or self._looked_up(left, around)
        if isinstance(left, Named):
            return ""
        said = self.with_values(left, around)
        # A count of some is a number to see; the largest of one is no choice.
        result = self.writing.value(answer(node, around).value, type_of(node))
        if isinstance(left, Extreme) and said == f"{left.which} of {result}":
            return ""
        return result if isinstance(left, Count) and "perhaps" not in said else said

    def _looked_up(self, node: LookUp, around: Around) -> str:
        keys = ", ".join(self.with_values(key, around) for key in node.keys)
        return f"{_words(node.table)} at {keys}"

    def _portions(self, node: LookUp, around: Around) -> str:
        """What a table by tiers adds up, each portion with its share; empty for other tables."""
        table = around.library.tables[node.table]
        *others, last = [answer(key, around).value for key in node.keys]
        if table.keys[-1].how != "tiers" or isinstance(last, Unknown):
            return ""
        column = len(table.keys) + [name for name, _ in table.columns].index(node.column)
        rows = [row for row in table.rows if list(row[: len(others)]) == others]
        begins = [_number(row[len(others)]) for row in rows]
        said = []
        for row, begin, end in zip(rows, begins, [*begins[1:], float("inf")], strict=True):
            portion = min(_number(last), end) - begin
            if portion > 0:
                share = self.writing.value(row[column], table.columns[column - len(table.keys)][1])
                size = self.writing.value(portion, type_of(node.keys[-1]))
                said.append(size if row[column] == 1 else f"{share} {_TIMES} {size}")
        return " + ".join(said)

    def _condition(self, node: Node, around: Around) -> str:
        if isinstance(node, Named):
            return ""
        return self._fact(node, around)

    def _fact(self, node: Node, around: Around) -> str:
        match node:
            case Not(condition):
                return self._condition(condition, around)
            case AllOf(parts) | AnyOf(parts):
                return "; ".join(filter(None, (self._fact(each, around) for each in parts)))
            case Comparison():
                return self._comparison(node, around)
            case Is(_, left, right) | OneOf(_, left, right):
                sides = [left, right] if isinstance(right, Told) else [left]
                return "; ".join(self._named(each, around) for each in sides)
            case ForThings():
                return said_of_things(node, around, self._fact, self.writing)
            case _:
                return self._named(node, around)

    def _comparison(self, node: Comparison, around: Around) -> str:
        left, right = answer(node.left, around).value, answer(node.right, around).value
        asked = "" if isinstance(node.right, Told) else f"{node.order} "
        said = f"{self._named(node.left, around)}; {asked}{self._named(node.right, around)}"
        if isinstance(left, Unknown) or isinstance(right, Unknown):
            return said
        broken = answer(node, around).value is False
        type_, apart = type_of(node.left), abs(_number(left) - _number(right))
        if not broken or not apart or type_.dimension in _NO_DIFFERENCE:
            return said
        return f"{said}: {_APART[node.order]} by {self.writing.value(apart, type_)}"

    def _named(self, node: Node, around: Around) -> str:
        """A value with its name, as far as it has one: "free length 5 in"."""
        value = self.with_values(reduced(node, around), around)
        name = _name(node)
        if isinstance(node, FactOf) and value in ("yes", "no"):
            return _yes_or_no(node.fact, name, value)
        if type_of(node).shape is Shape.QUANTITY or not name:
            return f"{name} {value}".lstrip()
        return f"{name}: {value}"


def reduced(node: Node, around: Around, inside: bool = False) -> Node:
    """The node without the parts that change nothing of its value as things stand.

    >>> from linter.language.library import Library
    >>> from linter.language.print import to_text
    >>> from linter.language.tree import Number
    >>> nothing = Arithmetic("-", Number(2), Number(2))
    >>> twice = Arithmetic("*", Number(2), Pick("larger", (nothing, Number(5))))
    >>> node = Arithmetic("+", nothing, twice)
    >>> to_text(reduced(node, Around({}, {}, Library({}, {}, {}), {})))
    '2 * 5'
    """
    match node:
        case Arithmetic():
            return _arithmetic(node, around)
        case Pick():
            return _pick(node, around, inside)
        case Choice(condition, then, otherwise):
            holds = answer(condition, around).value
            if isinstance(holds, Unknown):
                return node
            return reduced(then if holds else otherwise, around, inside)
        case Rounded(way, value, step, place):
            return Rounded(way, reduced(value, around, inside=True), step, place)
        case _:
            return node


def _arithmetic(node: Arithmetic, around: Around) -> Node:
    left, right = (reduced(each, around, inside=True) for each in (node.left, node.right))
    if node.sign in "+-" and _is(node.right, 0, around):
        return left
    if node.sign == "+" and _is(node.left, 0, around):
        return right
    if node.sign in "*/" and _is_factor_of_one(node.right, around):
        return left
    if node.sign == "*" and _is_factor_of_one(node.left, around):
        return right
    return Arithmetic(node.sign, left, right, node.place)


def _pick(node: Pick, around: Around, inside: bool) -> Node:
    """Within a reckoning, only what is picked; else without the nothing that is smaller."""
    if any(isinstance(answer(each, around).value, Unknown) for each in node.values):
        return node
    picked = answer(node, around).value
    for each in node.values if inside else ():
        if answer(each, around).value == picked:
            return reduced(each, around, inside)
    values = [each for each in node.values if node.which == "smaller" or not _is(each, 0, around)]
    if len(values) == 1:
        return reduced(values[0], around, inside)
    return Pick(node.which, tuple(values) or node.values, node.place)


def _says_nothing(node: Node, around: Around) -> bool:
    """Whether a step comes to nothing, or is a factor that leaves all as it is."""
    return _is(node, 0, around) or _is_factor_of_one(node, around)


def _is_factor_of_one(node: Node, around: Around) -> bool:
    """Whether it is worked out apart and changes nothing; one of a count is a number to see."""
    return isinstance(node, Step | LookUp | Choice) and _is(node, 1, around)


def _is(node: Node, number: int, around: Around) -> bool:
    value = answer(node, around).value
    return not isinstance(value, Unknown) and isinstance(value, float | int) and value == number


def _name(node: Node) -> str:
    match node:
        case FactOf(of, kind, name):
            fact = KINDS[kind].fact(name)
            label = fact.label if fact else _words(name)
            return f"{label} of the {_words(kind)}" if isinstance(of, FactOf) else label
        case MeasureOf(_, _, name) | Limit(name) | LimitList(name) | Step(name):
            return _words(name)
        case _:
            return ""


def _yes_or_no(fact: str, name: str, value: str) -> str:
    """A predicate as one says it: "not connected", "no neutral in box"."""
    for prefix, negation in (("is_", "not"), ("has_", "no")):
        if fact.startswith(prefix):
            return name if value == "yes" else f"{negation} {name}"
    return f"{name}: {value}"


def _words(name: str) -> str:
    return name.replace("_", " ")


def _number(value: object) -> float:
    if isinstance(value, Thing) or not isinstance(value, float | int):
        raise TypeError(f"{value!r} is no quantity")
    return float(value)
