"""Ids that are one: union-find with path halving.

An id that is one with another from the first can be put with it at once, which costs one look at
the ids instead of several; in a large job the looks are what costs.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator


class Numbers(Mapping[str, int]):
    """The number of the set of every id; `size` is how many sets there are."""

    __slots__ = ("_of", "_order", "size")

    def __init__(self, of: dict[str, int], order: list[int], size: int) -> None:
        self._of, self._order, self.size = of, order, size

    def place(self, each: str) -> int:
        """The number of an id, which gets a set of its own if it is new."""
        number = self._of.get(each)
        if number is None:
            number = self._of[each] = len(self._order)
            self._order.append(self.size)
            self.size += 1
        return self._order[number]

    def __getitem__(self, each: str) -> int:
        return self._order[self._of[each]]

    def __iter__(self) -> Iterator[str]:
        return iter(self._of)

    def __len__(self) -> int:
        return len(self._of)


class Unions:
    """Ids, each in a set of its own, or put into one, until two are tied; `of` has their numbers.

    >>> unions = Unions(["a", "b", "c"])
    >>> unions.tie("a", "b")
    >>> unions.put("d", unions.of["c"])
    >>> dict(unions.numbered())
    {'a': 0, 'b': 0, 'c': 1, 'd': 1}
    """

    __slots__ = ("_above", "of")

    of: dict[str, int]

    def __init__(self, ids: Iterable[str] = ()) -> None:
        self.of = {}
        self._above: list[int] = []
        for each in ids:
            self.add(each)

    def add(self, each: str, *others: str) -> None:
        """Puts a new id, and others that are one with it, in a new set."""
        number = len(self._above)
        self._above.append(number)
        self.of[each] = number
        for other in others:
            self.of[other] = number

    def put(self, each: str, number: int) -> None:
        """Makes a new id one with all that has this number."""
        self.of[each] = number

    def tie(self, one: str, other: str) -> None:
        """Makes two one, with all that each is one with."""
        self.tie_numbers(self.of[one], self.of[other])

    def tie_numbers(self, one: int, other: int) -> None:
        """Makes two one, by the numbers of their sets."""
        self._above[self._top(one)] = self._top(other)

    def numbered(self) -> Numbers:
        """The number of its set for every id, from 0 in the order of the sets."""
        compact: dict[int, int] = {}
        top = self._top
        numbers = range(len(self._above))
        order = [compact.setdefault(top(number), len(compact)) for number in numbers]
        return Numbers(self.of, order, len(compact))

    def _top(self, number: int) -> int:
        above = self._above
        while above[number] != number:
            above[number] = above[above[number]]
            number = above[number]
        return number
