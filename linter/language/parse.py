"""The text of an expression to its tree, or to a refusal a pack writer can act on."""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING, cast

from linter.language.build import Builder, inside
from linter.language.slips import refuse_character, refuse_token
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
    from lark import UnexpectedCharacters, UnexpectedToken  # noqa: PLC0415  12 ms, only who parses

    if len(text) > LONGEST:
        raise Refused([_too_long(place)])
    try:
        tree = _parser().parse(text)
    except UnexpectedCharacters as slip:
        begin = cast("int", slip.pos_in_stream)  # lark declares it as None, and sets it
        raise Refused([refuse_character(text, begin, place)]) from None
    except UnexpectedToken as slip:
        begin = len(text) if slip.token.type == "$END" else slip.token.start_pos or 0
        raise Refused([refuse_token(text, begin, slip.accepts, place)]) from None
    builder = Builder(place)
    node = builder.node(tree)
    if builder.refusals:
        raise Refused(builder.refusals)
    return node


@cache
def _parser() -> Lark:
    """The parser, built on first use and kept: it takes some 20 ms."""
    from lark import Lark  # noqa: PLC0415  only who parses pays for it

    grammar = files("linter.language").joinpath("grammar.lark").read_text(encoding="utf-8")
    return Lark(grammar, start="expression", parser="lalr", lexer="basic")


def _too_long(place: Place) -> Refusal:
    return Refusal(
        inside(place, 1, 1),
        "this expression is too long",
        f"at most {LONGEST} characters",
        "name parts of it as steps of a measure",
    )
