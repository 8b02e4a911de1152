"""What a pack gives to its rules at run time: limits, tables, measures; compiled on first use."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, NamedTuple

from linter.language.lookup import ExactColumn, Found, finder, has_one_exact_key
from linter.vocabulary.model import FactType, Thing

if TYPE_CHECKING:
    from linter.language.checked import Checked
    from linter.language.tables import Table

LimitValue = float | str | bool | tuple[str, ...]
Compiled = Callable[[Thing], object]
NOTHING_WRITTEN: Mapping[str, str] = {}


class Measure(NamedTuple):
    """A measure of a kind of thing: named steps, each seeing those before it; the last is it."""

    kind: str
    name: str
    type: FactType
    steps: tuple[tuple[str, Checked], ...]


class Library:
    """The limits, tables and measures of a pack, and the functions made of them so far.

    Quantities are floats in base units; a limit that is a list is a tuple of words. Measures do not
    ask for each other in a circle; whoever reads them has seen to that. `written` has limits as the
    pack writes them, for showing: 4.5 ft rather than 54 in.
    """

    def __init__(
        self,
        limits: Mapping[str, LimitValue],
        tables: Mapping[str, Table],
        measures: Mapping[tuple[str, str], Measure],
        written: Mapping[str, str] = NOTHING_WRITTEN,
    ) -> None:
        self.limits = limits
        self.tables = tables
        self.measures = measures
        self.written = written
        self.compiled: dict[object, Compiled] = {}
        self._columns: dict[tuple[str, str], Found] = {}

    def with_limit(self, name: str, value: LimitValue) -> Library:
        """The same with one limit at another value."""
        written = {each: text for each, text in self.written.items() if each != name}
        return Library({**self.limits, name: value}, self.tables, self.measures, written)

    def column(self, table: str, column: str) -> Found:
        """The function that looks up a column of a table."""
        found = self._columns.get((table, column))
        if found is None:
            found = self._columns[table, column] = finder(self.tables[table], column)
        return found

    def exact_column(self, table: str, column: str) -> ExactColumn | None:
        """The column as a mapping, if its table has one key that is looked up exactly."""
        known = self.tables[table]
        return ExactColumn(known, column) if has_one_exact_key(known) else None
