"""Values at which an answer may turn: the limits and the keys of tables that a rule relies on."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from linter.packs.reliance import reliance_of
from linter.units import AREA

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    from linter.language.library import Library
    from linter.packs.model import Rule
    from linter.units import Dimension


def hints_of(library: Library) -> Callable[[Rule, Dimension], tuple[float, ...]]:
    """A function that tells them for a rule, also through measures, for a fact of a dimension."""

    @cache
    def relied(rule: Rule) -> tuple[tuple[str, ...], tuple[str, ...]]:
        conditions = [each for each in (rule.where, rule.need) if each is not None]
        found = reliance_of(conditions, library)
        return found.limits, found.tables

    def hints(rule: Rule, dimension: Dimension) -> tuple[float, ...]:
        limits, tables = relied(rule)
        stated = (library.limits[name] for name in limits)
        values = {each for each in stated if isinstance(each, float)}
        return tuple(sorted(values.union(_keys(library, tables, dimension))))

    return hints


def gauges_of(library: Library) -> tuple[float, ...]:
    """The sizes of wire that the tables of a pack know, smallest first."""
    return tuple(sorted(set(_keys(library, library.tables, AREA))))


def _keys(library: Library, tables: Iterable[str], dimension: Dimension) -> Iterator[float]:
    for table in (library.tables[name] for name in tables):
        for number, key in enumerate(table.keys):
            if key.type.dimension == dimension:
                yield from (cell for row in table.rows if isinstance(cell := row[number], float))
