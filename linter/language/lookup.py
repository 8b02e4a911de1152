"""How a table is looked up: exact rows, next size up, bands, and tiers."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from linter.language.tables import Cell, Key, Table
from linter.language.verdict import NoRow
from linter.units import NotKnown, same_value
from linter.vocabulary.model import Shape

Value = float | str | bool
Found = Callable[[tuple[Value, ...]], Value]


def finder(table: Table, column: str) -> Found:
    """A function that gives the value of a column for the values of all keys, in order.

    It raises `NotKnown` with a `NoRow` where there is no row or no value for them.

    >>> from linter.vocabulary.shorthand import COUNT
    >>> band = Table("factor", (Key("wires", COUNT, "band"),), (("factor", COUNT),),
    ...              ((1.0, 1.0), (4.0, 0.8), (7.0, 0.7)))
    >>> finder(band, "factor")((6.0,))
    0.8
    """
    way = _way(table.rows, table.keys, _index(table, column))

    def find(keys: tuple[Value, ...]) -> Value:
        value = way(keys)
        if value is None:
            raise NotKnown([NoRow(table.name, keys)])
        return value

    return find


class ExactColumn(dict[Value, Value]):
    """A column of a table with one key, looked up exactly: the quick form of `finder`."""

    __slots__ = ("table",)

    def __init__(self, table: Table, column: str) -> None:
        at = _index(table, column)
        rows = ((row[0], row[at]) for row in table.rows)
        super().__init__((k, v) for k, v in rows if k is not None and v is not None)
        self.table = table

    def __missing__(self, key: Value) -> Value:
        """The value of the row whose size counts as equal to the key."""
        if not isinstance(key, str | bool):
            for size, value in self.items():
                if same_value(_size(size), key):
                    return value
        raise NotKnown([NoRow(self.table.name, (key,))])


def has_one_exact_key(table: Table) -> bool:
    """Whether `ExactColumn` can stand for it."""
    return len(table.keys) == 1 and table.keys[0].how == "exact"


_Way = Callable[[tuple[Value, ...]], Cell]


def _index(table: Table, column: str) -> int:
    return len(table.keys) + [name for name, _ in table.columns].index(column)


def _way(rows: Sequence[tuple[Cell, ...]], keys: tuple[Key, ...], at: int, depth: int = 0) -> _Way:
    """The way to a value through the rows that are left, by the keys that are left."""
    if depth == len(keys):
        value = rows[0][at]
        return lambda _: value
    key = keys[depth]
    if key.how == "tiers":
        return _tiers([(_size(row[depth]), _size(row[at])) for row in rows], depth)
    groups: dict[Cell, list[tuple[Cell, ...]]] = {}
    for row in rows:
        groups.setdefault(row[depth], []).append(row)
    below = {value: _way(group, keys, at, depth + 1) for value, group in groups.items()}
    if key.type.shape is not Shape.QUANTITY:
        return _by_word(below, depth)
    sizes = sorted(((_size(value), way) for value, way in below.items()), key=lambda pair: pair[0])
    return _by_size(sizes, _FITS[key.how], depth)


def _by_word(below: Mapping[Cell, _Way], depth: int) -> _Way:
    def way(keys: tuple[Value, ...]) -> Cell:
        further = below.get(keys[depth])
        return further(keys) if further else None

    return way


def _by_size(sizes: list[tuple[float, _Way]], fits: _Fits, depth: int) -> _Way:
    """Goes on with the first size that fits; tables are short, so all are tried in turn."""
    if fits is _is_band:
        sizes = sizes[::-1]

    def way(keys: tuple[Value, ...]) -> Cell:
        value = _size(keys[depth])
        for size, further in sizes:
            if fits(size, value):
                return further(keys)
        return None

    return way


def _is_next_size(size: float, value: float) -> bool:
    return size >= value or same_value(size, value)


def _is_band(size: float, value: float) -> bool:
    return size <= value or same_value(size, value)


_Fits = Callable[[float, float], bool]
_FITS: dict[str, _Fits] = {"exact": same_value, "next size up": _is_next_size, "band": _is_band}


def _tiers(tiers: list[tuple[float, float]], depth: int) -> _Way:
    begins = sorted(tiers)
    ends = [begin for begin, _ in begins[1:]] + [float("inf")]

    def way(keys: tuple[Value, ...]) -> Cell:
        value = _size(keys[depth])
        if value < begins[0][0]:
            return None
        portions = zip(begins, ends, strict=True)
        return sum(max(0.0, min(value, end) - begin) * factor for (begin, factor), end in portions)

    return way


def _size(cell: Cell) -> float:
    if isinstance(cell, str) or cell is None:
        raise TypeError(f"a size stands there, not {cell!r}")
    return float(cell)
