"""The order of cables, conductors and joints in which wires cross each other least.

A drawing is a channel: conductors come in from the left, each on a row; pins stand at the right,
each on a row; each net has a column between, a vertical that reaches all its rows. A wire that goes
in to its own column crosses the verticals on its way whose reach its row lies within. Rows are
numbers here, columns positions in a list: no length, no text.
"""

from __future__ import annotations

from itertools import permutations, product
from typing import TYPE_CHECKING, NamedTuple, TypeVar

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

    Heights = Callable[["Groups"], Mapping[str, float]]

_MOST_TRIED = 5  # conductors of a cable that are tried in every order; of more, neighbours swap
_FEW, _SOME, _FEW_CABLES = 3, 6, 2
_ROUNDS = 12

_T = TypeVar("_T")
Blocks = tuple[tuple[str, ...], ...]
Groups = tuple[Blocks, ...]


class Ties(NamedTuple):
    """A net: the rows that come to it from the left, and the pins that it goes to at the right."""

    rows: tuple[str, ...]
    pins: tuple[str, ...]


class Ordered(NamedTuple):
    """An order: groups of cables of one side, their conductors; columns as numbers of nets."""

    groups: Groups
    columns: tuple[int, ...]


def least_crossing(groups: Groups, nets: Sequence[Ties], heights: Heights) -> Ordered:
    """The order with the fewest crossings that swaps and moves find, the shortest among those.

    `heights` gives the height of each row and pin, from an order of the groups: what stands in the
    left margin and at the right is of no concern here.
    """
    if _is_small(groups, len(nets)):
        return _best_of(_every(groups, len(nets)), nets, heights)
    starts = (Ordered(groups, columns) for columns in _starts(len(nets)))
    return _best_of((_improved(each, nets, heights) for each in starts), nets, heights)


def crossings(columns: Sequence[int], nets: Sequence[Ties], at: Mapping[str, float]) -> int:
    """How often wires cross in that order.

    >>> nets = [Ties(("a",), ("x",)), Ties(("b",), ("y",))]
    >>> crossings([0, 1], nets, {"a": 0, "b": 2, "x": 3, "y": 1})
    1
    """
    return _crossings(columns, _reaches(nets, at))


class _Reach(NamedTuple):
    """The heights at which a net is reached from the left and goes on to the right; its reach."""

    left: tuple[float, ...]
    right: tuple[float, ...]
    low: float
    high: float


def _reaches(nets: Sequence[Ties], at: Mapping[str, float]) -> list[_Reach]:
    found = []
    for net in nets:
        left = tuple(at[each] for each in net.rows)
        right = tuple(at[each] for each in net.pins)
        found.append(_Reach(left, right, min(left + right), max(left + right)))
    return found


def _crossings(columns: Sequence[int], reaches: Sequence[_Reach]) -> int:
    found = 0
    for column, each in enumerate(columns):
        _, _, low, high = reaches[each]
        for other in columns[column + 1 :]:
            for y in reaches[other].left:
                found += low < y < high
        for other in columns[:column]:
            for y in reaches[other].right:
                found += low < y < high
    return found


def _cost(order: Ordered, nets: Sequence[Ties], heights: Heights) -> tuple[float, float]:
    """Crossings first, then the length of the verticals."""
    reaches = _reaches(nets, heights(order.groups))
    return _crossings(order.columns, reaches), sum(each.high - each.low for each in reaches)


def _best_of(orders: Iterable[Ordered], nets: Sequence[Ties], heights: Heights) -> Ordered:
    return min(orders, key=lambda each: _cost(each, nets, heights))


def _is_small(groups: Groups, nets: int) -> bool:
    """Whether there are few enough orders to try all: two cables with three conductors, say."""
    blocks = [block for group in groups for block in group]
    return len(blocks) <= _FEW_CABLES and nets <= _FEW and all(len(b) <= _FEW for b in blocks)


def _every(groups: Groups, nets: int) -> Iterator[Ordered]:
    """Every order there is."""
    for arranged in product(*(_arranged(group) for group in groups)):
        for columns in permutations(range(nets)):
            yield Ordered(arranged, columns)


def _arranged(group: Blocks) -> Iterator[Blocks]:
    for blocks in permutations(group):
        yield from product(*map(permutations, blocks))


def _starts(number: int) -> Iterator[tuple[int, ...]]:
    """Orders of columns to begin from: all of a few, each turned round of some, two of many."""
    columns = tuple(range(number))
    if number <= _FEW:
        yield from permutations(columns)
        return
    for turn in range(number if number <= _SOME else 1):
        turned = columns[turn:] + columns[:turn]
        yield turned
        yield turned[::-1]


def _improved(order: Ordered, nets: Sequence[Ties], heights: Heights) -> Ordered:
    """The order after every change that makes it better, until there is none."""
    cost = _cost(order, nets, heights)
    for _ in range(_ROUNDS):
        before = cost
        for way in (_by_columns, _by_conductors, _by_cables):
            for changed in way(order):
                tried = _cost(changed, nets, heights)
                if tried < cost:
                    order, cost = changed, tried
        if cost == before:
            break
    return order


def _by_columns(order: Ordered) -> Iterator[Ordered]:
    columns = order.columns
    for old in range(len(columns)):
        rest = columns[:old] + columns[old + 1 :]
        for new in range(len(columns)):
            if new != old:
                yield order._replace(columns=(*rest[:new], columns[old], *rest[new:]))


def _by_conductors(order: Ordered) -> Iterator[Ordered]:
    for number, group in enumerate(order.groups):
        for at, block in enumerate(group):
            for changed in _orders(block):
                blocks = (*group[:at], changed, *group[at + 1 :])
                yield _with_group(order, number, blocks)


def _orders(block: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    if len(block) <= _MOST_TRIED:
        yield from permutations(block)
        return
    yield from _swaps(block)


def _by_cables(order: Ordered) -> Iterator[Ordered]:
    for number, group in enumerate(order.groups):
        for blocks in _swaps(group):
            yield _with_group(order, number, blocks)


def _swaps(items: tuple[_T, ...]) -> Iterator[tuple[_T, ...]]:
    for at in range(len(items) - 1):
        yield (*items[:at], items[at + 1], items[at], *items[at + 2 :])


def _with_group(order: Ordered, number: int, blocks: Blocks) -> Ordered:
    return order._replace(groups=(*order.groups[:number], blocks, *order.groups[number + 1 :]))
