"""What checking carries along: the names in reach, the refusals so far, and the words for types."""

from __future__ import annotations

from contextlib import contextmanager
from typing import TYPE_CHECKING, NamedTuple

from linter.text import Place, Refusal
from linter.units import NUMBER, TEMPERATURE
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import FactType, Shape

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from linter.language.scope import Scope
    from linter.language.tree import Node


class Found(NamedTuple):
    """A checked node with its type; no type if it was refused, so that no more is said of it."""

    node: Node
    type: FactType | None


class Checker:
    """One check of one expression; `node` checks a node of any class."""

    def __init__(self, scope: Scope, node: Callable[[Checker, Node], Found]) -> None:
        self.scope = scope
        self.refusals: list[Refusal] = []
        self.variables: dict[str, str] = {scope.subject: scope.subject}
        self.element = ""
        self.left_behind: set[str] = set()
        self._node = node

    def node(self, node: Node) -> Found:
        """The node with its names resolved, and its type."""
        return self._node(self, node)

    def condition(self, node: Node, reason: str = "") -> Node:
        """The node, refused if it is not a condition."""
        found = self.node(node)
        if found.type is not None and found.type.shape is not Shape.YES_NO:
            mend = reason or "compare it with something, or name a yes/no fact"
            self.refuse(
                node.place, f"this is {a(found.type)}, not a condition", "a condition", mend
            )
        return found.node

    def quantity(self, node: Node, doing: str) -> Found:
        """The node, refused if it cannot be reckoned with; `doing` is what is done: "added up"."""
        found = self.node(node)
        if found.type is None:
            return found
        if found.type.shape is not Shape.QUANTITY:
            said = f"this is {a(found.type)}, which cannot be {doing}"
            self.refuse(node.place, said, "a quantity or a number", _mend_of(found.type))
            return Found(found.node, None)
        if found.type.dimension == TEMPERATURE and doing != "compared":
            said = f"this is a temperature, which cannot be {doing}"
            mend = "compare it with a limit, or look it up in a table"
            self.refuse(node.place, said, "temperatures that are compared or looked up", mend)
            return Found(found.node, None)
        return found

    @contextmanager
    def going_through(self, name: str, kind: str) -> Iterator[None]:
        """While what stands within is checked, `name` is a thing of `kind`."""
        before = self.variables.get(name)
        self.variables[name] = kind
        yield
        del self.variables[name]
        if before is not None:
            self.variables[name] = before
        self.left_behind.add(name)

    @contextmanager
    def after_has(self, name: str) -> Iterator[None]:
        """While what stands within is checked, a bare fact is one of `name`'s."""
        before, self.element = self.element, name
        yield
        self.element = before

    def refuse(
        self, place: Place, found: str, expected: str, mend: str, near: tuple[str, ...] = ()
    ) -> None:
        """Adds a refusal."""
        self.refusals.append(Refusal(place, found, expected, mend, near))


def a(fact_type: FactType) -> str:
    """The type as it stands in a sentence.

    >>> a(FactType(Shape.QUANTITY, NUMBER)), a(FactType(Shape.THING, kind="wire_end"))
    ('a number', 'a wire end')
    """
    match fact_type.shape:
        case Shape.QUANTITY:
            return _with_article(str(fact_type.dimension))
        case Shape.YES_NO:
            return "a condition"
        case Shape.THING:
            return _with_article(KINDS[fact_type.kind].label)
        case Shape.THINGS:
            return f"several {KINDS[fact_type.kind].plural}"
        case Shape.WORD | Shape.TEXT:
            return "a word"


def alike(one: FactType, other: FactType) -> bool:
    """Whether values of the two types can be the same: of one shape, dimension and kind."""
    words = (Shape.WORD, Shape.TEXT)
    if one.shape in words and other.shape in words:
        return True
    return (one.shape, one.dimension, one.kind) == (other.shape, other.dimension, other.kind)


def mend_of_pair(one: FactType, other: FactType) -> str:
    """How to mend two values that are not alike."""
    if Shape.YES_NO in (one.shape, other.shape):
        return 'a yes/no fact stands by itself: write the fact, or "not" and the fact'
    both = one.shape is other.shape is Shape.QUANTITY
    if both and NUMBER in (one.dimension, other.dimension):
        return (
            "plain numbers have no unit: state the quantity as a limit, with its unit, and name it"
        )
    return "put two of one kind on either side"


def _mend_of(fact_type: FactType) -> str:
    match fact_type.shape:
        case Shape.THINGS:
            return 'count them: "count of e of …", or sum a fact of theirs: "sum of V for e of …"'
        case Shape.THING:
            return "name a fact of it, after a dot"
        case Shape.YES_NO:
            return 'make a number of it: "if … then 1 else 0"'
        case _:
            return "name a fact, a limit or a measure that is a quantity"


def _with_article(words: str) -> str:
    return f"an {words}" if words[:1] in "aeiou" else f"a {words}"
