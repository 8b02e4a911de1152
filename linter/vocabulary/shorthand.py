"""Short ways to write the type of a fact, used by the declarations of the kinds."""

from __future__ import annotations

from linter.units import NUMBER, Dimension
from linter.vocabulary.model import FactType, Shape

YES_NO = FactType(Shape.YES_NO)
TEXT = FactType(Shape.TEXT)
COUNT = FactType(Shape.QUANTITY, NUMBER)
NOT_STATED = "not stated"
"""The word for what a job may say of itself and does not; a walk-through asks for it."""


def quantity(dimension: Dimension) -> FactType:
    """A quantity of a dimension."""
    return FactType(Shape.QUANTITY, dimension)


def word(*words: str) -> FactType:
    """One of the given words."""
    return FactType(Shape.WORD, words=words)


def a(kind: str) -> FactType:
    """One thing of a kind."""
    return FactType(Shape.THING, kind=kind)


def all_of(kind: str) -> FactType:
    """Any number of things of a kind."""
    return FactType(Shape.THINGS, kind=kind)
