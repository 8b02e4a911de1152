"""Tables: columns by which rows are looked up, columns they give, and the rows of all layers."""

from typing import cast

from linter.language.tables import How, Table, table_faults
from linter.language.tables import Key as KeyColumn
from linter.packs.clauses import Ground, read_clause, read_history
from linter.packs.entries import Change, Entry, Stated
from linter.packs.model import Cell, Origin, PackTable, Row, Total
from linter.packs.rows import ROW_WORDS, row_key
from linter.packs.values import NOTHING, read_value, refusal_of, type_named
from linter.text import Place, Refusal, nearest
from linter.text.yaml_places import Node
from linter.units import TEMPERATURE, NotAQuantity, read_quantity
from linter.vocabulary.model import FactType, Shape
from linter.vocabulary.shorthand import word

Cells = tuple[Cell, ...]


def read_table(entry: Entry, ground: Ground) -> PackTable | None:
    """The table; None where it is refused."""
    history = read_history(entry, ground)
    before = len(ground.refusals)
    _refuse_doubled_columns(entry, ground)
    _refuse_doubled_rows(entry, ground)
    rows = [(stated, _read_row(entry, stated, ground)) for stated in entry.rows]
    if len(ground.refusals) > before:
        return None
    rows.sort(key=lambda pair: _order(entry, pair[1]))
    table = _table(entry, [cells for _, cells in rows])
    for fault in table_faults(table):
        ground.refusals.append(Refusal(entry.place, fault, "", "mend the rows"))
    meaning = entry.fields["meaning"].text if "meaning" in entry.fields else ""
    written = tuple(_row(entry, stated, ground) for stated, _ in rows)
    return PackTable(table, written, meaning, history, _totals(entry, table, ground))


def _totals(entry: Entry, table: Table, ground: Ground) -> tuple[Total, ...]:
    """What columns add up to, as stated; none for words, nor for degrees, which are not added."""
    if "totals" not in entry.fields:
        return ()
    types = {key.name: key.type for key in table.keys} | dict(table.columns)
    added = {name: of.dimension for name, of in types.items() if of.dimension not in _NOT_ADDED}
    node = entry.fields["totals"].node
    totals: list[Total] = []
    for name, value in node.fields.items():
        dimension = added.get(name)
        if dimension is None:
            ground.refusals.append(_no_sum(node.keys[name], name, list(added)))
            continue
        try:
            read = read_quantity(value.text, dimension).value
            totals.append(Total(name, read, value.text, dimension))
        except NotAQuantity as error:
            ground.refusals.append(refusal_of(error, value))
    return tuple(totals)


def _no_sum(place: Place, name: str, columns: list[str]) -> Refusal:
    return Refusal(
        place,
        f'"{name}" is no column that can be added up',
        f"one of: {', '.join(columns)}" if columns else "a table with a column of quantities",
        "write the name of a column, or leave it out",
        nearest(name, columns),
    )


_NOT_ADDED = (None, TEMPERATURE)


def _columns(entry: Entry) -> list[Node]:
    return [*entry.fields["keys"].node.items, *entry.fields["gives"].node.items]


def _key_count(entry: Entry) -> int:
    return len(entry.fields["keys"].node.items)


def _read_row(entry: Entry, stated: Stated, ground: Ground) -> Cells:
    columns, cells = _columns(entry), stated.node.items
    if len(cells) != len(columns):
        names = ", ".join(column.fields["name"].text for column in columns)
        ground.refusals.append(
            Refusal(
                stated.node.place,
                f"The row has {len(cells)} values for {len(columns)} columns",
                names,
                "write one value for each column, and part of a number after a point, as in 2.5",
            )
        )
        return ()
    found: list[Cell] = []
    for position, (cell, column) in enumerate(zip(cells, columns, strict=True)):
        try:
            may_be_empty = position >= _key_count(entry) and cell.text == NOTHING
            type_ = type_named(column.fields["of"].text)
            found.append(None if may_be_empty else read_value(cell, type_))
        except NotAQuantity as error:
            ground.refusals.append(refusal_of(error, cell))
    return tuple(found)


def _order(entry: Entry, cells: Cells) -> list[tuple[float, str]]:
    """Rows go by their keys, quantities from small to large; words keep the order they have."""
    keys = cells[: _key_count(entry)]
    return [(cell, "") if isinstance(cell, float) else (0.0, "") for cell in keys]


def _table(entry: Entry, rows: list[Cells]) -> Table:
    types = [
        _with_words(type_named(column.fields["of"].text), [row[position] for row in rows])
        for position, column in enumerate(_columns(entry))
    ]
    count = _key_count(entry)
    keys = tuple(
        KeyColumn(node.fields["name"].text, type_, _way(node))
        for node, type_ in zip(entry.fields["keys"].node.items, types[:count], strict=True)
    )
    columns = tuple(
        (node.fields["name"].text, type_)
        for node, type_ in zip(entry.fields["gives"].node.items, types[count:], strict=True)
    )
    return Table(entry.key.name, keys, columns, tuple(rows))


def _way(column: Node) -> How:
    # The schema lets nothing else stand there.
    return cast("How", column.fields["by"].text) if "by" in column.fields else "exact"


def _with_words(type_: FactType, cells: list[Cell]) -> FactType:
    if type_.shape is not Shape.WORD:
        return type_
    return word(*dict.fromkeys(cell for cell in cells if isinstance(cell, str)))


def _row(entry: Entry, stated: Stated, ground: Ground) -> Row:
    change = next((each for each in entry.changes if _sets(each, stated.node)), None)
    if change is None:
        clause = read_clause(entry.fields["clause"], ground._replace(refusals=[]))
    else:
        stated_by = Stated(change.node.fields["clause"], change.layer)
        clause = read_clause(stated_by, ground._replace(refusals=[]))
    written = tuple(cell.text for cell in stated.node.items)
    return Row(written, Origin(stated.layer, stated.node.place), clause)


def _sets(change: Change, row: Node) -> bool:
    """Whether a row is stated in this amendment; a layer may change rows in several."""
    fields = change.node.fields
    return any(each is row for word in ROW_WORDS if word in fields for each in fields[word].items)


def _refuse_doubled_columns(entry: Entry, ground: Ground) -> None:
    seen: set[str] = set()
    for column in _columns(entry):
        name = column.fields["name"]
        if name.text in seen:
            ground.refusals.append(
                Refusal(name.place, f'Two columns are called "{name.text}"', "", "rename one")
            )
        seen.add(name.text)


def _refuse_doubled_rows(entry: Entry, ground: Ground) -> None:
    seen: dict[tuple[object, ...], Node] = {}
    for stated in entry.rows:
        key = row_key(entry, stated.node)
        if key in seen:
            ground.refusals.append(
                Refusal(
                    stated.node.place,
                    "A row with the same keys stands here a second time",
                    "",
                    "keep one of the two",
                    also=(seen[key].place, "first stated"),
                )
            )
        seen.setdefault(key, stated.node)
