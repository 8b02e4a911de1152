"""A tree as text, with the fewest parentheses; parsing the text gives the tree again."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple, assert_never

from linter.language.tree import (
    AllOf,
    AnyOf,
    Arithmetic,
    Choice,
    Compared,
    Comparison,
    Count,
    Extreme,
    FactOf,
    ForThings,
    Is,
    Joined,
    Limit,
    LimitList,
    LookUp,
    MeasureOf,
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
    Step,
    Sum,
    Variable,
    Word,
    WordList,
)

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

# How tightly a text holds together, from what reaches as far as it can to what is one word.
_OPEN, _JOINED, _CONDITION, _COMPARED, _VALUE, _RECKONED, _PRODUCT, _ATOM = range(8)


class Style(NamedTuple):
    """How an expression is written out.

    Where `instead` has a text for a node, that one is taken, as one word; `signs` are those of
    arithmetic.
    """

    instead: Callable[[Node], str | None]
    signs: Mapping[str, str]


AS_WRITTEN = Style(lambda _: None, {sign: sign for sign in "+-*/"})


def to_text(node: Node, style: Style = AS_WRITTEN) -> str:
    """The expression in words.

    >>> total = Arithmetic("+", Path(("box", "gangs")), Path(("clamps",)))
    >>> to_text(Comparison("at least", Path(("fill",)), Arithmetic("*", total, Number(2))))
    'fill at least (box.gangs + clamps) * 2'
    """
    return _write(node, style)[0]


def _held(node: Node, least: int, style: Style) -> str:
    """The text of a node, in parentheses if it holds together less tightly than is needed."""
    text, level = _write(node, style)
    return text if level >= least else f"({text})"


def _write(node: Node, style: Style) -> tuple[str, int]:
    """The text of a node, and how tightly it holds together."""
    said = style.instead(node)
    if said is not None:
        return said, _ATOM
    if isinstance(node, Named):
        return _named(node, style), _ATOM
    if isinstance(node, Compared):
        return _compared(node, style), _COMPARED
    if isinstance(node, Joined):
        return _joined(node, style)
    if isinstance(node, Reckoned):
        return _reckoned(node, style)
    return _over_things(node, style)


def _named(node: Named, style: Style) -> str:
    match node:
        case Number(value):
            return _number(value)
        case Word(text):
            return f'"{text}"'
        case WordList(words):
            return f"({', '.join(_held(each, _ATOM, style) for each in words)})"
        case Path(names):
            return ".".join(names)
        case FactOf(of, _, name) | MeasureOf(of, _, name):
            return f"{_held(of, _ATOM, style)}.{name}"
        case Variable(name) | Limit(name) | LimitList(name) | Step(name):
            return name
        case _:
            assert_never(node)


def _number(value: float) -> str:
    """The number to its last figure, without powers of ten, which the language does not know."""
    if float(value).is_integer():
        return f"{value:.0f}"
    text = repr(value)
    return f"{value:.400f}".rstrip("0") if "e" in text else text


def _joined(node: Joined, style: Style) -> tuple[str, int]:
    match node:
        case Not(condition):
            return f"not {_held(condition, _CONDITION, style)}", _CONDITION
        case AllOf(parts):
            return " and ".join(_held(each, _CONDITION, style) for each in parts), _JOINED
        case AnyOf(parts):
            return " or ".join(_held(each, _CONDITION, style) for each in parts), _JOINED
        case _:
            assert_never(node)


def _compared(node: Compared, style: Style) -> str:
    match node:
        case Comparison(order, left, right):
            words: str = order
        case Is(negated, left, right):
            words = "is not" if negated else "is"
        case OneOf(negated, left, right):
            words = "is not one of" if negated else "is one of"
        case _:
            assert_never(node)
    return f"{_held(left, _VALUE, style)} {words} {_held(right, _VALUE, style)}"


def _reckoned(node: Reckoned, style: Style) -> tuple[str, int]:
    match node:
        case Arithmetic(sign, left, right):
            level = _RECKONED if sign in "+-" else _PRODUCT
            one, other = _held(left, level, style), _held(right, level + 1, style)
            return f"{one} {style.signs[sign]} {other}", level
        case Rounded(way, value, step):
            one, other = _held(value, _RECKONED, style), _held(step, _ATOM, style)
            return f"{one} rounded {way} {other}", _VALUE
        case Choice(condition, then, otherwise):
            texts = [_held(each, _OPEN, style) for each in (condition, then, otherwise)]
            return "if {} then {} else {}".format(*texts), _OPEN
        case Pick(which, values):
            return f"{which} of ({_several(values, style)})", _ATOM
        case LookUp(table, column, keys):
            name = f"{table}.{column}" if column else table
            return f"look up {name} at {_keys(keys, style)}", _ATOM
        case _:
            assert_never(node)


def _keys(keys: tuple[Node, ...], style: Style) -> str:
    """A key that is one name, word or number stands bare; all else stands in parentheses."""
    (first, *more) = keys
    bare = isinstance(first, Named) or style.instead(first) is not None
    if bare and not more:
        return _held(first, _ATOM, style)
    return f"({_several(keys, style)})"


def _several(nodes: tuple[Node, ...], style: Style) -> str:
    return ", ".join(_held(each, _OPEN, style) for each in nodes)


def _over_things(node: OverThings, style: Style) -> tuple[str, int]:
    things = _held(node.things, _ATOM, style)
    where = "" if node.where is None else f" where {_held(node.where, _OPEN, style)}"
    through = f"{node.name} of {things}{where}"
    level = _ATOM if node.where is None else _OPEN
    match node:
        case ForThings():
            condition = _held(node.condition, _CONDITION, style)
            return f"{node.which} {through} has {condition}", _CONDITION
        case Sum():
            return f"sum of {_held(node.value, _OPEN, style)} for {through}", level
        case Count():
            return f"count of {through}", level
        case Extreme():
            value = _held(node.value, _OPEN, style)
            if_none = _held(node.if_none, _VALUE, style)
            return f"{node.which} of {value} for {through}, or {if_none} if none", _ATOM
        case _:
            assert_never(node)
