"""A tree as text, with the fewest parentheses; parsing the text gives the tree again."""

from __future__ import annotations

from collections.abc import Callable
from typing import assert_never

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
from linter.text import write_number

# How tightly a text holds together, from what reaches as far as it can to what is one word.
_OPEN, _JOINED, _CONDITION, _COMPARED, _VALUE, _RECKONED, _PRODUCT, _ATOM = range(8)
Special = Callable[[Node], str | None]


def to_text(node: Node, special: Special = lambda _: None) -> str:
    """The expression in words; where `special` has a text for a node, that one, as one word.

    >>> total = Arithmetic("+", Path(("box", "gangs")), Path(("clamps",)))
    >>> to_text(Comparison("at least", Path(("fill",)), Arithmetic("*", total, Number(2))))
    'fill at least (box.gangs + clamps) * 2'
    """
    return _write(node, special)[0]


def _held(node: Node, least: int, special: Special) -> str:
    """The text of a node, in parentheses if it holds together less tightly than is needed."""
    text, level = _write(node, special)
    return text if level >= least else f"({text})"


def _write(node: Node, special: Special) -> tuple[str, int]:
    """The text of a node, and how tightly it holds together."""
    said = special(node)
    if said is not None:
        return said, _ATOM
    if isinstance(node, Named):
        return _named(node, special), _ATOM
    if isinstance(node, Compared):
        return _compared(node, special), _COMPARED
    if isinstance(node, Joined):
        return _joined(node, special)
    if isinstance(node, Reckoned):
        return _reckoned(node, special)
    return _over_things(node, special)


def _named(node: Named, special: Special) -> str:
    match node:
        case Number(value):
            return write_number(value)
        case Word(text):
            return f'"{text}"'
        case WordList(words):
            return f"({', '.join(_held(each, _ATOM, special) for each in words)})"
        case Path(names):
            return ".".join(names)
        case FactOf(of, _, name) | MeasureOf(of, _, name):
            return f"{_held(of, _ATOM, special)}.{name}"
        case Variable(name) | Limit(name) | LimitList(name) | Step(name):
            return name
        case _:
            assert_never(node)


def _joined(node: Joined, special: Special) -> tuple[str, int]:
    match node:
        case Not(condition):
            return f"not {_held(condition, _CONDITION, special)}", _CONDITION
        case AllOf(parts):
            return " and ".join(_held(each, _CONDITION, special) for each in parts), _JOINED
        case AnyOf(parts):
            return " or ".join(_held(each, _CONDITION, special) for each in parts), _JOINED
        case _:
            assert_never(node)


def _compared(node: Compared, special: Special) -> str:
    match node:
        case Comparison(order, left, right):
            words: str = order
        case Is(negated, left, right):
            words = "is not" if negated else "is"
        case OneOf(negated, left, right):
            words = "is not one of" if negated else "is one of"
        case _:
            assert_never(node)
    return f"{_held(left, _VALUE, special)} {words} {_held(right, _VALUE, special)}"


def _reckoned(node: Reckoned, special: Special) -> tuple[str, int]:
    match node:
        case Arithmetic(sign, left, right):
            level = _RECKONED if sign in "+-" else _PRODUCT
            one, other = _held(left, level, special), _held(right, level + 1, special)
            return f"{one} {sign} {other}", level
        case Rounded(way, value, step):
            one, other = _held(value, _RECKONED, special), _held(step, _ATOM, special)
            return f"{one} rounded {way} {other}", _VALUE
        case Choice(condition, then, otherwise):
            texts = [_held(each, _OPEN, special) for each in (condition, then, otherwise)]
            return "if {} then {} else {}".format(*texts), _OPEN
        case Pick(which, values):
            return f"{which} of ({_several(values, special)})", _ATOM
        case LookUp(table, column, keys):
            name = f"{table}.{column}" if column else table
            return f"look up {name} at {_keys(keys, special)}", _ATOM
        case _:
            assert_never(node)


def _keys(keys: tuple[Node, ...], special: Special) -> str:
    """A key that is one name, word or number stands bare; all else stands in parentheses."""
    (first, *more) = keys
    bare = isinstance(first, Named) or special(first) is not None
    if bare and not more:
        return _held(first, _ATOM, special)
    return f"({_several(keys, special)})"


def _several(nodes: tuple[Node, ...], special: Special) -> str:
    return ", ".join(_held(each, _OPEN, special) for each in nodes)


def _over_things(node: OverThings, special: Special) -> tuple[str, int]:
    things = _held(node.things, _ATOM, special)
    where = "" if node.where is None else f" where {_held(node.where, _OPEN, special)}"
    through = f"{node.name} of {things}{where}"
    level = _ATOM if node.where is None else _OPEN
    match node:
        case ForThings():
            condition = _held(node.condition, _CONDITION, special)
            return f"{node.which} {through} has {condition}", _CONDITION
        case Sum():
            return f"sum of {_held(node.value, _OPEN, special)} for {through}", level
        case Count():
            return f"count of {through}", level
        case Extreme():
            value = _held(node.value, _OPEN, special)
            if_none = _held(node.if_none, _VALUE, special)
            return f"{node.which} of {value} for {through}, or {if_none} if none", _ATOM
        case _:
            assert_never(node)
