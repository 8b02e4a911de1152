"""Tables of a pack: their keys, columns and rows, and what can be wrong with them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, NamedTuple

from linter.language.scope import KeyShape, TableShape
from linter.vocabulary.model import FactType, Shape

if TYPE_CHECKING:
    from collections.abc import Iterator

How = Literal["exact", "next size up", "band", "tiers"]
Cell = float | str | bool | None


class Key(NamedTuple):
    """A key of a table, and how a value finds its row.

    `exact`: the row of that very value. `next size up`: the smallest key that is not below it.
    `band`: the largest key that is not above it. `tiers`: each portion of the value, from a row's
    key up to the next, is multiplied by that row's factor, and the products are summed.
    """

    name: str
    type: FactType
    how: How


class Table(NamedTuple):
    """A table: rows of keys, in order, then the values of the columns; None is no value there."""

    name: str
    keys: tuple[Key, ...]
    columns: tuple[tuple[str, FactType], ...]
    rows: tuple[tuple[Cell, ...], ...]

    @property
    def shape(self) -> TableShape:
        """What checking an expression needs to know of it."""
        shapes = tuple(
            KeyShape(key.name, key.type, key.how, self._words(index))
            for index, key in enumerate(self.keys)
        )
        return TableShape(shapes, {name: self._gives(type_) for name, type_ in self.columns})

    def _words(self, index: int) -> frozenset[str]:
        return frozenset(cell for row in self.rows if isinstance(cell := row[index], str))

    def _gives(self, column: FactType) -> FactType:
        """The type of what is found: of tiers, portions of the key times factors."""
        key = self.keys[-1]
        if key.how != "tiers" or key.type.dimension is None or column.dimension is None:
            return column
        return FactType(Shape.QUANTITY, key.type.dimension * column.dimension)


def table_faults(table: Table) -> tuple[str, ...]:
    """What is wrong with the table as such: sentences, for whoever read it to place and refuse."""
    return (*_faults_of_rows(table), *_faults_of_keys(table))


def _faults_of_rows(table: Table) -> Iterator[str]:
    keys = [row[: len(table.keys)] for row in table.rows]
    if not keys:
        yield "the table has no rows"
    twice = [key for index, key in enumerate(keys) if key in keys[:index]]
    if twice:
        yield f"two rows have the same keys: {', '.join(map(str, twice[0]))}"
    if keys and table.keys[-1].how == "tiers":
        groups: dict[tuple[Cell, ...], list[Cell]] = {}
        for key in keys:
            groups.setdefault(key[:-1], []).append(key[-1])
        if not all(0 in begins for begins in groups.values()):
            yield "the first tier does not begin at 0"


def _faults_of_keys(table: Table) -> Iterator[str]:
    for key in table.keys:
        if key.how != "exact" and key.type.shape is not Shape.QUANTITY:
            yield f'"{key.name}" is no size, so it is looked up exactly'
        if key.how == "tiers" and key is not table.keys[-1]:
            yield "tiers stand only in the last key"
