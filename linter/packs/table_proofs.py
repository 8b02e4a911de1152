"""What speaks for the rows of tables: cases that look them up, or what a column adds up to.

A row that was mistyped is noticed by a case that looks it up. For a long table its totals may stand
instead: they are added up from the page that the table was taken from, and held to the rows.
"""

from __future__ import annotations

from contextlib import suppress
from typing import TYPE_CHECKING, NamedTuple

from linter.language.library import Library
from linter.language.lookup import finder
from linter.language.tables import Table
from linter.packs.writing import writer_of
from linter.units import NUMBER, TEMPERATURE, NotKnown, same_value
from linter.vocabulary.shorthand import COUNT, quantity

if TYPE_CHECKING:
    from collections.abc import Callable, Collection, Iterator, Mapping, Sequence

    from linter.language.lookup import Found, Value
    from linter.language.writing import Writer
    from linter.packs.model import Pack, PackTable, Row
    from linter.text import Place

_NAMED = 6  # rows that nothing looks up, as many as are named


class Gap(NamedTuple):
    """What nothing speaks for in a table: its place, what is the case, what was looked for."""

    table: str
    place: Place
    actual: str
    expected: str


class Watching(Library):
    """A library that keeps which rows of its tables were looked up."""

    def __init__(self, library: Library) -> None:
        super().__init__(library.limits, library.tables, library.measures)
        self.looked_up: dict[str, set[int]] = {name: set() for name in library.tables}

    def column(self, table: str, column: str) -> Found:
        """The function that looks up a column, and keeps the rows that its answers come from."""
        find, rows = super().column(table, column), _rows_of(self.tables[table])

        def watched(keys: tuple[Value, ...]) -> Value:
            with suppress(NotKnown):
                self.looked_up[table].update(rows(keys))
            return find(keys)

        return watched


def _rows_of(table: Table) -> Callable[[tuple[Value, ...]], Collection[int]]:
    """A function that gives the numbers of the rows that the keys lead to."""
    count = len(table.keys)
    keys = [row[:count] for row in table.rows]
    if table.keys[-1].how == "tiers":
        return lambda at: [
            number
            for number, key in enumerate(keys)
            if key[:-1] == at[:-1] and float(key[-1] or 0.0) <= float(at[-1])
        ]
    rows = tuple((*key, float(number)) for number, key in enumerate(keys))
    find = finder(Table(table.name, table.keys, (("row", COUNT),), rows), "row")
    return lambda at: [int(float(find(at)))]


def gaps(pack: Pack, looked_up: Mapping[str, Collection[int]]) -> Iterator[Gap]:
    """What nothing speaks for in the rows that the uppermost layer states.

    Rows of layers below are proved there; what a layer proves anew does not repeat them.
    """
    write = writer_of(pack)
    for name, table in pack.tables.items():
        yield from _wrong_totals(name, table, write)
        own = pack.layers[-1].id
        yield from _begins_late(pack, name, table, own)
        if _has_all_totals(table):
            continue
        idle = [
            row
            for number, row in enumerate(table.rows)
            if row.origin.layer == own and number not in looked_up[name]
        ]
        if idle:
            actual = f"no case looks up the {_rows(idle, len(table.table.keys))}"
            yield Gap(name, idle[0].origin.place, actual, _WANTED)


def _rows(rows: Sequence[Row], keys: int) -> str:
    """Rows by their keys: all of a few, and how many more there are."""
    named = [", ".join(row.written[:keys]) for row in rows[:_NAMED]]
    more = f"; and {len(rows) - _NAMED} more" if len(rows) > _NAMED else ""
    return f"{'row' if len(rows) == 1 else 'rows'} {'; '.join(named)}{more}"


def _begins_late(pack: Pack, name: str, table: PackTable, own: str) -> Iterator[Gap]:
    """A band of sizes that begins above nothing, where no case says that this is meant."""
    key = table.table.keys[0]
    first = table.rows[0]
    least = table.table.rows[0][0]
    if key.how != "band" or key.type.dimension in (NUMBER, TEMPERATURE):
        return  # what is counted may begin at any number, and degrees go below nothing
    late = isinstance(least, float) and least > 0
    if late and first.origin.layer == own and f'"no row in {name}"' not in pack.proofs:
        actual = f"below {first.written[0]} there is no row"
        wanted = f'a first row from 0 on, or a case that cannot tell because of "no row in {name}"'
        yield Gap(name, first.origin.place, actual, wanted)


_WANTED = 'a case that looks up each row, or "totals" that its columns add up to'


def _has_all_totals(table: PackTable) -> bool:
    return {total.column for total in table.totals} == {name for name, _ in table.table.columns}


def _wrong_totals(name: str, table: PackTable, write: Writer) -> Iterator[Gap]:
    inner = table.table
    columns = [key.name for key in inner.keys] + [column for column, _ in inner.columns]
    for total in table.totals:
        cells = [row[columns.index(total.column)] for row in inner.rows]
        added = sum(float(cell) for cell in cells if cell is not None)
        if not same_value(added, total.value):
            place = table.history.origin_of("totals").place
            shown = write(added, quantity(total.dimension), None)
            actual = f"{total.column} adds up to {shown}"
            yield Gap(name, place, actual, f"it to add up to {total.written}, as stated")
