"""What the parser found, as nodes of our own with places in the pack's file."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, cast

from linter.language.tree import (
    AllOf,
    AnyOf,
    Arithmetic,
    Choice,
    Comparison,
    Count,
    Every,
    Extreme,
    ForThings,
    Is,
    LookUp,
    Node,
    Not,
    Number,
    OneOf,
    Order,
    Path,
    Pick,
    Rounded,
    Sign,
    Sum,
    Way,
    Word,
    WordList,
)
from linter.text import Place, Refusal, Refused

if TYPE_CHECKING:
    from collections.abc import Callable

    from lark import Token, Tree

DEEPEST = 40


class Part:
    """One production with its parts: what `_MAKE` has to make a node of."""

    __slots__ = ("names", "nodes", "place", "tokens", "words")

    def __init__(self, place: Place, nodes: list[Node], tokens: list[Token]) -> None:
        self.place = place
        self.nodes = nodes
        self.tokens = tokens
        self.names = [token for token in tokens if token.type == "NAME"]
        self.words = [str(token) for token in tokens]


class Builder:
    """Makes the nodes of one expression whose first character stands at `place`."""

    def __init__(self, place: Place) -> None:
        self._place = place
        self.refusals: list[Refusal] = []

    def node(self, tree: Tree[Token], depth: int = 1) -> Node:
        """The node of a part of the grammar's tree; refuses what is nested too deeply."""
        nodes: list[Node] = []
        tokens: list[Token] = []
        place: Place | None = None
        for child in tree.children:
            if isinstance(child, str):
                tokens.append(child)
                place = place or self._at(child)
            elif child is not None:
                if depth > DEEPEST:
                    raise Refused([_too_deep(place or self._place)])
                nodes.append(self.node(child, depth + 1))
                place = place or nodes[0].place
        part = Part(place or self._place, nodes, tokens)
        production = str(tree.data)
        if production in _GOES_THROUGH:
            self._refuse_dots(part.names[0])
        return _MAKE[production](part)

    def _at(self, token: Token) -> Place:
        return inside(self._place, token.line or 1, token.column or 1)

    def _refuse_dots(self, token: Token) -> None:
        if "." in token:
            mend = f'write a short name such as "{token[0]}", and use it in front of facts'
            found = f'"{token}" cannot name each thing in turn'
            self.refusals.append(Refusal(self._at(token), found, "one name without a dot", mend))


def inside(place: Place, line: int, column: int) -> Place:
    """The place of a line and column, counted from 1, of a text that begins at `place`."""
    return Place(place.file, place.line + line - 1, place.column + column - 1)


def _too_deep(place: Place) -> Refusal:
    return Refusal(
        place,
        "this expression is nested too deeply",
        f"at most {DEEPEST} levels of parentheses and operators",
        "leave out parentheses, or name parts of it as steps of a measure",
    )


def _path(token: Token, like: Place, first: Token | None = None) -> Path:
    """The path of a token; `like` is the place of `first`, from which the token's place is told."""
    begin = first if first is not None else token
    line = like.line + (token.line or 1) - (begin.line or 1)
    column = like.column + (token.column or 1) - (begin.column or 1)
    return Path(tuple(token.split(".")), Place(like.file, line, column))


def _things(part: Part) -> Path:
    return _path(part.names[1], part.place, part.tokens[0])


def _where(part: Part, index: int) -> Node | None:
    return part.nodes[index] if "where" in part.words else None


def _sum(part: Part) -> Node:
    return Sum(part.nodes[0], str(part.names[0]), _things(part), _where(part, 1), part.place)


def _count(part: Part) -> Node:
    return Count(str(part.names[0]), _things(part), _where(part, 0), part.place)


def _extreme(part: Part) -> Node:
    which = cast("Literal['largest', 'smallest']", part.words[0])  # the grammar has no other
    name, if_none = str(part.names[0]), part.nodes[-1]
    return Extreme(which, part.nodes[0], name, _things(part), _where(part, 1), if_none, part.place)


def _for_things(part: Part) -> Node:
    which = cast("Every", part.words[0])  # the grammar has no other
    name, condition = str(part.names[0]), part.nodes[-1]
    return ForThings(which, name, _things(part), _where(part, 0), condition, part.place)


def _look_up(part: Part) -> Node:
    table, _, column = part.names[0].partition(".")
    return LookUp(table, column, tuple(part.nodes), None, part.place)


def _word_list(part: Part) -> Node:
    words = [token for token in part.tokens if token.type == "WORD"]
    found = (
        Word(_unquoted(token), _path(token, part.place, part.tokens[0]).place) for token in words
    )
    return WordList(tuple(found), part.place)


def _rounded(part: Part) -> Node:
    way = cast("Way", " ".join(part.words[1:]))  # the grammar has no other
    return Rounded(way, part.nodes[0], part.nodes[1], part.place)


def _pick(part: Part) -> Node:
    which = cast("Literal['larger', 'smaller']", part.words[0])  # the grammar has no other
    return Pick(which, tuple(part.nodes), part.place)


def _comparison(order: Order) -> Callable[[Part], Node]:
    return lambda part: Comparison(order, part.nodes[0], part.nodes[1], part.place)


def _arithmetic(sign: Sign) -> Callable[[Part], Node]:
    return lambda part: Arithmetic(sign, part.nodes[0], part.nodes[1], part.place)


def _is(negated: bool) -> Callable[[Part], Node]:
    return lambda part: Is(negated, part.nodes[0], part.nodes[1], part.place)


def _one_of(negated: bool) -> Callable[[Part], Node]:
    return lambda part: OneOf(negated, part.nodes[0], part.nodes[1], part.place)


def _unquoted(word: str) -> str:
    return word[1:-1]


_GOES_THROUGH = frozenset({"sum", "sum_where", "count", "count_where", "extreme", "for_things"})
_MAKE: dict[str, Callable[[Part], Node]] = {
    "all_of": lambda part: AllOf(tuple(part.nodes), part.place),
    "any_of": lambda part: AnyOf(tuple(part.nodes), part.place),
    "choice": lambda part: Choice(part.nodes[0], part.nodes[1], part.nodes[2], part.place),
    "sum": _sum,
    "sum_where": _sum,
    "count": _count,
    "count_where": _count,
    "extreme": _extreme,
    "not": lambda part: Not(part.nodes[0], part.place),
    "for_things": _for_things,
    "at_least": _comparison("at least"),
    "at_most": _comparison("at most"),
    "more_than": _comparison("more than"),
    "less_than": _comparison("less than"),
    "is": _is(False),
    "is_not": _is(True),
    "one_of": _one_of(False),
    "not_one_of": _one_of(True),
    "word_list": _word_list,
    "rounded": _rounded,
    "plus": _arithmetic("+"),
    "minus": _arithmetic("-"),
    "times": _arithmetic("*"),
    "over": _arithmetic("/"),
    "pick": _pick,
    "look_up": _look_up,
    "in_parentheses": lambda part: part.nodes[0],
    "path": lambda part: _path(part.tokens[0], part.place),
    "number": lambda part: Number(float(part.words[0]), part.place),
    "word": lambda part: Word(_unquoted(part.words[0]), part.place),
}
