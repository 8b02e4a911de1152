"""The tree of an expression: one node for each meaning, with the place where it begins.

A parsed tree has a `Path` wherever a name stands; checking puts what the path means in its stead
(`Variable`, `FactOf`, `MeasureOf`, `Limit`, `LimitList`, `Step`). Two nodes are equal when they say
the same, wherever they stand. `place` is always the last field.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar, Literal, TypeVar, cast, dataclass_transform

from linter.text import Place

if TYPE_CHECKING:
    from linter.vocabulary.model import FactType

_Class = TypeVar("_Class")
NOWHERE = Place("", 0, 0)

Order = Literal["at least", "at most", "more than", "less than"]
Sign = Literal["+", "-", "*", "/"]
Way = Literal["up to", "down to", "to"]
Every = Literal["every", "some", "no"]


@dataclass_transform(frozen_default=True, eq_default=False)
def _node(cls: type[_Class]) -> type[_Class]:
    """A slotted class, frozen for the type checker: to enforce it would cost time at each start."""
    return dataclass(slots=True, eq=False, repr=False)(cls)


class Base:
    """What all nodes share: equality by what they say, a hash, a text for whoever debugs."""

    __slots__ = ()
    __match_args__: ClassVar[tuple[str, ...]] = ()

    def said(self) -> tuple[object, ...]:
        """The values of all fields but the place."""
        return tuple(getattr(self, name) for name in self.__match_args__[:-1])

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Base) and type(self) is type(other) and self.said() == other.said()

    def __hash__(self) -> int:
        return hash((type(self), self.said()))

    def __repr__(self) -> str:
        return f"{type(self).__name__}{self.said()}"


@_node
class Number(Base):
    """A plain number: `2`."""

    value: float
    place: Place = NOWHERE


@_node
class Word(Base):
    """A word in quotes: `"kitchen"`."""

    text: str
    place: Place = NOWHERE


@_node
class Path(Base):
    """Names joined by dots, as written: `box.room.use`."""

    names: tuple[str, ...]
    place: Place = NOWHERE


@_node
class Variable(Base):
    """The subject, or the thing that `every e of …` goes through."""

    name: str
    kind: str
    place: Place = NOWHERE


@_node
class FactOf(Base):
    """A fact of a thing of a kind."""

    of: Node
    kind: str
    fact: str
    place: Place = NOWHERE


@_node
class MeasureOf(Base):
    """A measure of a thing of a kind."""

    of: Node
    kind: str
    measure: str
    type: FactType
    place: Place = NOWHERE


@_node
class Limit(Base):
    """A limit of the pack."""

    name: str
    type: FactType
    place: Place = NOWHERE


@_node
class LimitList(Base):
    """A limit that is a list of words."""

    name: str
    place: Place = NOWHERE


@_node
class Step(Base):
    """A step before this one in its measure."""

    name: str
    type: FactType
    place: Place = NOWHERE


@_node
class Arithmetic(Base):
    """Two values reckoned together: `conductors + bonds`."""

    sign: Sign
    left: Node
    right: Node
    place: Place = NOWHERE


@_node
class Rounded(Base):
    """A value rounded to a multiple of another: `load rounded up to one_ampere`."""

    way: Way
    value: Node
    step: Node
    place: Place = NOWHERE


@_node
class Choice(Base):
    """One of two values: `if C then V else V`."""

    condition: Node
    then: Node
    otherwise: Node
    place: Place = NOWHERE


@_node
class Sum(Base):
    """A sum over things: `sum of V for e of S where C`."""

    value: Node
    name: str
    things: Node
    where: Node | None
    place: Place = NOWHERE


@_node
class Count(Base):
    """A count of things: `count of e of S where C`."""

    name: str
    things: Node
    where: Node | None
    place: Place = NOWHERE


@_node
class Extreme(Base):
    """The largest or smallest over things: `largest of V for e of S, or V if none`."""

    which: Literal["largest", "smallest"]
    value: Node
    name: str
    things: Node
    where: Node | None
    if_none: Node
    place: Place = NOWHERE


@_node
class Pick(Base):
    """The larger or smaller of values written out: `larger of (V, V)`."""

    which: Literal["larger", "smaller"]
    values: tuple[Node, ...]
    place: Place = NOWHERE


@_node
class LookUp(Base):
    """A table looked up: `look up TABLE.COLUMN at (V, V)`; checking completes it."""

    table: str
    column: str
    keys: tuple[Node, ...]
    type: FactType | None
    place: Place = NOWHERE


@_node
class Comparison(Base):
    """Two quantities compared by size."""

    order: Order
    left: Node
    right: Node
    place: Place = NOWHERE


@_node
class Is(Base):
    """Two values compared for being the same: `X is Y`, or `X is not Y`."""

    negated: bool
    left: Node
    right: Node
    place: Place = NOWHERE


@_node
class WordList(Base):
    """Words written out: `("kitchen", "laundry")`."""

    words: tuple[Word, ...]
    place: Place = NOWHERE


@_node
class OneOf(Base):
    """A value found among several: `X is one of Z`, or `X is not one of Z`."""

    negated: bool
    value: Node
    among: Node
    place: Place = NOWHERE


@_node
class Not(Base):
    """A condition turned round."""

    condition: Node
    place: Place = NOWHERE


@_node
class AllOf(Base):
    """Several conditions, all of which must hold: `A and B and C`."""

    parts: tuple[Node, ...]
    place: Place = NOWHERE


@_node
class AnyOf(Base):
    """Several conditions, one of which must hold: `A or B`."""

    parts: tuple[Node, ...]
    place: Place = NOWHERE


@_node
class ForThings(Base):
    """A condition on things: `every e of S where C has C`."""

    which: Every
    name: str
    things: Node
    where: Node | None
    condition: Node
    place: Place = NOWHERE


# Nodes by what they are, so that whoever goes through a tree can take it in parts.
Named = Number | Word | WordList | Path | Variable | FactOf | MeasureOf | Limit | LimitList | Step
Reckoned = Arithmetic | Rounded | Choice | Pick | LookUp
OverThings = Sum | Count | Extreme | ForThings
Compared = Comparison | Is | OneOf
Joined = Not | AllOf | AnyOf
Node = Named | Reckoned | OverThings | Compared | Joined


def children(node: Node) -> list[Node]:
    """The nodes right under a node, in the order they are written."""
    found: list[Node] = []
    for field in node.said():
        if isinstance(field, Base):
            found.append(cast("Node", field))  # every class of Base is in the union Node
        elif isinstance(field, tuple):
            found.extend(cast("Node", each) for each in field if isinstance(each, Base))
    return found
