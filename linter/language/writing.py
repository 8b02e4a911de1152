"""Values as they stand in a working; how quantities are written is for the caller to say."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from linter.units import Unknown
from linter.vocabulary.model import FactType, Shape, Thing

Writer = Callable[[object, FactType, str | None], str]


class Writing(NamedTuple):
    """Writes values with the caller's writer, unknowns and things in words of its own."""

    writer: Writer

    def value(self, value: object, fact_type: FactType, written: str | None = None) -> str:
        """A value inside a line."""
        if isinstance(value, Unknown):
            return "unknown"
        if isinstance(value, Thing):
            return value.label
        return self.writer(value, fact_type, written)

    def outcome(self, value: object, fact_type: FactType) -> str:
        """What a line comes to."""
        if fact_type.shape is not Shape.YES_NO:
            return self.value(value, fact_type)
        if isinstance(value, Unknown):
            return "cannot be told"
        return "met" if value else "not met"
