"""Rows of a table that a layer sets or removes."""

from collections.abc import Iterable

from linter.packs.entries import Entry, Stated
from linter.packs.values import read_value, type_named
from linter.text import Place, Refusal
from linter.text.yaml_places import Node
from linter.units import NotAQuantity

RowKey = tuple[object, ...]


def change_rows(entry: Entry, node: Node, layer: str, refusals: list[Refusal]) -> tuple[str, ...]:
    """What of the rows an amendment changes, done to the entry's rows: "set", "remove", both, none.

    A row is known by its keys as they are read, so `#14` and `14 AWG` are one key.
    """
    removed = [_remove(entry, row, refusals) for row in _rows(node, "remove")]
    were_set = [_set(entry, Stated(row, layer), refusals) for row in _rows(node, "set")]
    return tuple(name for name, done in (("remove", removed), ("set", were_set)) if any(done))


def rows_touched(entry: Entry, node: Node) -> list[tuple[RowKey, str, Place]]:
    """Each row that an amendment of a table names: its keys as read, as shown, and its place."""
    count = len(entry.fields["keys"].node.items) if "keys" in entry.fields else 0
    return [
        (row_key(entry, row), f"row {_written(row.items[:count])}", row.place)
        for name in ("set", "remove")
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


def _remove(entry: Entry, row: Node, refusals: list[Refusal]) -> bool:
    wanted = row_key(entry, row)
    kept = [each for each in entry.rows if row_key(entry, each.node) != wanted]
    found = len(kept) < len(entry.rows)
    if not found:
        refusals.append(
            Refusal(
                row.place,
                f"{entry.key} has no row {_written(row.items)}".replace("the", "The", 1),
                "the keys of a row that is there",
                "write the keys of the row that falls away",
            )
        )
    entry.rows = kept
    return found


def _set(entry: Entry, row: Stated, refusals: list[Refusal]) -> bool:
    wanted = row_key(entry, row.node)
    for position, each in enumerate(entry.rows):
        if row_key(entry, each.node) == wanted:
            if each.node.plain() == row.node.plain():
                refusals.append(
                    Refusal(
                        row.node.place,
                        f"The row {_written(row.node.items)} is amended to what it is",
                        "",
                        "leave it out, or write what it is to be",
                        also=(each.node.place, "stated"),
                    )
                )
                return False
            entry.rows[position] = row
            return True
    entry.rows.append(row)
    return True


def _written(cells: Iterable[Node]) -> str:
    return ", ".join(cell.text for cell in cells)
