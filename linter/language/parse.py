"""The text of an expression to its tree, or to a refusal a pack writer can act on."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from linter.language.build import Builder, inside
from linter.text import Place, Refusal, Refused

if TYPE_CHECKING:
    from lark import Lark

    from linter.language.tree import Node

LONGEST = 4000


def parse(text: str, place: Place) -> Node:
    """The tree of the expression whose first character stands at `place`.

    The text is one line, or a literal block whose lines all begin at the column of `place`.
    Raises `Refused`, with one refusal, where the text is not of the language.

    >>> parse("not box.is_metal", Place("boxes.yaml", 7, 12)).place.column
    12
    """
    from lark import UnexpectedCharacters, UnexpectedInput, UnexpectedToken

    from linter.language.slips import refuse_character, refuse_token

    if len(text) > LONGEST:
        raise Refused([_too_long(place)])
    try:
        tree = _parser().parse(text)
    except UnexpectedCharacters as slip:
        raise Refused([refuse_character(text, slip.pos_in_stream or 0, place)]) from None
    except UnexpectedToken as slip:
        begin = len(text) if slip.token.type == "$END" else slip.token.start_pos or 0
        raise Refused([refuse_token(text, begin, slip.accepts, place)]) from None
    except UnexpectedInput:  # pragma: no cover  the two above are all that this lexer raises
        raise Refused([refuse_token(text, len(text), set(), place)]) from None
    builder = Builder(place)
    node = builder.node(tree)
    if builder.refusals:
        raise Refused(builder.refusals)
    return node


@cache
def _parser() -> Lark:
    """The parser, built on first use and kept: it takes some 20 ms."""
    from importlib.resources import files

    from lark import Lark

    grammar = files("linter.language").joinpath("grammar.lark").read_text(encoding="utf-8")
    return Lark(grammar, start="expression", parser="lalr", lexer="basic")


def _too_long(place: Place) -> Refusal:
    return Refusal(
        inside(place, 1, 1),
        "this expression is too long",
        f"at most {LONGEST} characters",
        "name parts of it as steps of a measure",
    )
