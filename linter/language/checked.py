"""A checked expression, the type of each of its nodes, and the names of the pack it uses."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple, TypeVar, assert_never

from linter.language.tree import (
    Arithmetic,
    Choice,
    Count,
    Extreme,
    FactOf,
    Limit,
    LimitList,
    LookUp,
    MeasureOf,
    Node,
    Number,
    Pick,
    Rounded,
    Step,
    Sum,
    Variable,
    Word,
    children,
)
from linter.units import NUMBER, Dimension
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import FactType, Shape
from linter.vocabulary.shorthand import COUNT, YES_NO

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

_Class = TypeVar("_Class", bound=Node)


class Checked:
    """An expression without names that could be misspelt or dimensions that could be mixed.

    `subject` is the kind of thing it is about; `node` holds no `Path`. One is equal to itself only.
    """

    __slots__ = ("_node", "subject", "type")

    def __init__(self, subject: str, type: FactType, node: Node | Later) -> None:  # noqa: A002  the word is right
        self.subject = subject
        self.type = type
        self._node = node

    @property
    def node(self) -> Node:
        """What the expression says, as a tree."""
        if isinstance(self._node, Later):
            self._node = self._node.make()
        return self._node


class Later(NamedTuple):
    """A node that is made when it is first asked for."""

    make: Callable[[], Node]


def measures_used(checked: Checked) -> frozenset[tuple[str, str]]:
    """The measures it asks for, as kind and name."""
    return frozenset((each.kind, each.measure) for each in _all(checked.node, MeasureOf))


def limits_used(checked: Checked) -> frozenset[str]:
    """The names of the limits it uses, lists of words among them."""
    names = {each.name for each in _all(checked.node, Limit)}
    return frozenset(names | {each.name for each in _all(checked.node, LimitList)})


def tables_used(checked: Checked) -> frozenset[str]:
    """The names of the tables it looks up."""
    return frozenset(each.table for each in _all(checked.node, LookUp))


def type_of(node: Node) -> FactType:
    """The type of a checked node."""
    match node:
        case FactOf(_, kind, name):
            fact = KINDS[kind].fact(name)
            return fact.type if fact else COUNT
        case Variable(_, kind):
            return FactType(Shape.THING, kind=kind)
        case Limit(_, type_) | Step(_, type_) | MeasureOf(_, _, _, type_):
            return type_
        case Word(text):
            return FactType(Shape.WORD, words=(text,))
        case Arithmetic() | Rounded() | Choice() | Sum() | Extreme() | Pick() | LookUp():
            return _type_of_value(node)
        case _:
            return COUNT if isinstance(node, Number | Count) else YES_NO


def merged(one: FactType, other: FactType) -> FactType:
    """The type of a value that is of the one type or of the other, which are alike."""
    if one.shape is Shape.WORD and other.shape is Shape.WORD:
        return FactType(Shape.WORD, words=tuple(dict.fromkeys(one.words + other.words)))
    return other if other.shape is Shape.TEXT else one


def _type_of_value(
    node: Arithmetic | Rounded | Choice | Sum | Extreme | Pick | LookUp,
) -> FactType:
    match node:
        case Arithmetic(sign, left, right):
            return FactType(Shape.QUANTITY, _reckoned(sign, type_of(left), type_of(right)))
        case Rounded(_, value) | Sum(value) | Extreme(_, value):
            return type_of(value)
        case Choice(_, then, otherwise):
            return merged(type_of(then), type_of(otherwise))
        case Pick(_, values):
            return type_of(values[0])
        case LookUp(_, _, _, type_):
            return type_ or COUNT
        case _:
            assert_never(node)


def _reckoned(sign: str, left: FactType, right: FactType) -> Dimension:
    one, other = left.dimension or NUMBER, right.dimension or NUMBER
    if sign == "*":
        return one * other
    return one / other if sign == "/" else one


def _all(node: Node, kind: type[_Class]) -> Iterator[_Class]:
    if isinstance(node, kind):
        yield node
    for each in children(node):
        yield from _all(each, kind)
