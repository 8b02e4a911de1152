"""Rows of a table that a layer sets, adds or removes."""

from collections.abc import Callable, Iterable

from linter.packs.entries import Entry, Stated
from linter.packs.values import read_value, type_named
from linter.text import Place, Refusal, nearest
from linter.text.yaml_places import Node
from linter.units import NotAQuantity

RowKey = tuple[object, ...]


def change_rows(entry: Entry, node: Node, layer: str, refusals: list[Refusal]) -> tuple[str, ...]:
    """What of the rows an amendment changes, done to the entry's rows: any of `ROW_WORDS`.

    A row is known by its keys as they are read, so `#14` and `14 AWG` are one key. To set is to
    change a row that is there, to add is to state a new one: a slip in a key is none of the two.
    """
    changed = []
    for word, change in _CHANGES.items():
        done = [change(entry, Stated(row, layer), refusals) for row in _rows(node, word)]
        changed.extend([word] if any(done) else [])
    return tuple(changed)


def rows_touched(entry: Entry, node: Node) -> list[tuple[RowKey, str, Place]]:
    """Each row that an amendment of a table names: its keys as read, as shown, and its place."""
    return [
        (row_key(entry, row), f"row {_keys(entry, row)}", row.place)
        for name in ROW_WORDS
        for row in _rows(node, name)
    ]


def _rows(node: Node, name: str) -> list[Node]:
    return node.fields[name].items if name in node.fields else []


def row_key(entry: Entry, row: Node) -> RowKey:
    """The keys of a row as they are read; what cannot be read stands as written."""
    keys = entry.fields["keys"].node.items
    cells = zip(row.items, keys, strict=False)
    return tuple(_cell(cell, key.fields["of"].text) for cell, key in cells)


def _cell(node: Node, of: str) -> object:
    try:
        return read_value(node, type_named(of))
    except NotAQuantity:
        return node.text


def _remove(entry: Entry, row: Stated, refusals: list[Refusal]) -> bool:
    position = _position(entry, row.node)
    if position is None:
        refusals.append(_no_row(entry, row.node, "write the keys of the row that falls away"))
        return False
    del entry.rows[position]
    return True


def _set(entry: Entry, row: Stated, refusals: list[Refusal]) -> bool:
    position = _position(entry, row.node)
    if position is None:
        mend = 'write the keys of a row that is there, or put a new row under "add"'
        refusals.append(_no_row(entry, row.node, mend))
        return False
    old = entry.rows[position].node
    if old.plain() == row.node.plain():
        refusals.append(
            Refusal(
                row.node.place,
                f"The row {_written(row.node.items)} is amended to what it is",
                "",
                "leave it out, or write what it is to be",
                also=(old.place, "stated"),
            )
        )
        return False
    entry.rows[position] = row
    return True


def _add(entry: Entry, row: Stated, refusals: list[Refusal]) -> bool:
    position = _position(entry, row.node)
    if position is not None:
        refusals.append(
            Refusal(
                row.node.place,
                f"{_begin(entry)} has a row {_keys(entry, row.node)} already",
                "the keys of a new row",
                'put the row under "set", or write other keys',
                also=(entry.rows[position].node.place, "stated"),
            )
        )
        return False
    entry.rows.append(row)
    return True


_CHANGES: dict[str, Callable[[Entry, Stated, list[Refusal]], bool]] = {
    "remove": _remove,
    "set": _set,
    "add": _add,
}
ROW_WORDS = tuple(_CHANGES)


def _position(entry: Entry, row: Node) -> int | None:
    """Where the table has a row of the same keys; None where it has none."""
    wanted = row_key(entry, row)
    keys = [row_key(entry, each.node) for each in entry.rows]
    return keys.index(wanted) if wanted in keys else None


def _no_row(entry: Entry, row: Node, mend: str) -> Refusal:
    there = [_keys(entry, each.node) for each in entry.rows]
    return Refusal(
        row.place,
        f"{_begin(entry)} has no row {_keys(entry, row)}",
        "the keys of a row that is there",
        mend,
        nearest(_keys(entry, row), there),
    )


def _keys(entry: Entry, row: Node) -> str:
    return _written(row.items[: len(entry.fields["keys"].node.items)])


def _begin(entry: Entry) -> str:
    return str(entry.key).replace("the", "The", 1)


def _written(cells: Iterable[Node]) -> str:
    return ", ".join(cell.text for cell in cells)
