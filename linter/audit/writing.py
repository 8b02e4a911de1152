"""Values written as the job writes them, or else in the units and words of the pack."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, TypeAlias

from linter.packs.values import unit_choice
from linter.text import join_words, write_number
from linter.units import Unknown, write_in
from linter.vocabulary.model import FactType, Shape, Thing

if TYPE_CHECKING:
    from linter.packs.model import Pack

Writer: TypeAlias = Callable[[object, FactType, "str | None"], str]


def writer(pack: Pack) -> Writer:
    """A function that writes a value of a type; how the job writes it goes first."""
    units = unit_choice(pack.units)

    def write(value: object, type_: FactType, written: str | None) -> str:
        if written:
            return written
        if isinstance(value, tuple):
            return join_words([write(each, type_, None) for each in value]) or "none"
        if isinstance(value, float | int) and not isinstance(value, bool) and type_.dimension:
            return write_in(value, type_.dimension, units)
        text = _plain(value)
        return pack.words.get(text, text) if type_.shape is Shape.WORD else text

    return write


def _plain(value: object) -> str:
    match value:
        case Unknown():
            return "unknown"
        case bool():
            return "yes" if value else "no"
        case float() | int():
            return write_number(value)
        case Thing():
            return value.label
        case _:
            return str(value)
