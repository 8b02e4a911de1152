"""The reference for pack writers: every kind and fact, as Markdown, from the one declaration."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.text import join_words
from linter.units import NUMBER
from linter.vocabulary.model import Fact, FactType, Kind, Shape

if TYPE_CHECKING:
    from collections.abc import Iterable

_HEAD = ("fact", "what it is", "type", "example", "how to learn it")


def reference(kinds: Iterable[Kind]) -> str:
    """The text of the reference: one table for each kind, its facts in the order of declaration.

    A fact without a way to learn it is never unknown.

    >>> from linter.vocabulary.kinds import KINDS
    >>> print(reference([KINDS["passing_wire"]]).splitlines()[-1])
    | `loop_length` | its length inside the box | length | 14 in | Measure the loop that \
stands in the box. |
    """
    return "\n".join(line for kind in kinds for line in _section(kind))


def type_words(type_: FactType) -> str:
    """A type as a person reads it.

    >>> from linter.vocabulary.shorthand import all_of, word
    >>> type_words(all_of("box")), type_words(word("A", "B", "both"))
    ('things: box', 'one of: A, B or both')
    """
    match type_.shape:
        case Shape.QUANTITY:
            return str(type_.dimension or NUMBER)
        case Shape.WORD:
            return f"one of: {join_words(type_.words, 'or')}"
        case Shape.THING | Shape.THINGS:
            return f"{type_.shape.value}: {type_.kind}"
        case Shape.YES_NO | Shape.TEXT:
            return str(type_.shape.value)


def _section(kind: Kind) -> list[str]:
    return [
        f"## {kind.name}",
        "",
        f"{kind.label.capitalize()}: {kind.meaning}.",
        "",
        _row(_HEAD),
        _row("---" for _ in _HEAD),
        *(_row(_cells(fact)) for fact in kind.facts),
        "",
    ]


def _cells(fact: Fact) -> tuple[str, ...]:
    return (f"`{fact.name}`", fact.meaning, type_words(fact.type), fact.example, fact.ask)


def _row(cells: Iterable[str]) -> str:
    return f"| {' | '.join(cells)} |"
