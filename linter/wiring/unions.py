"""Ids that are one: union-find with path halving."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator


class Numbers(NamedTuple):
    """The number of the set of every id, and how many sets there are."""

    of: dict[str, int]
    size: int


class Unions(Mapping[str, int]):
    """Ids, each in a set of its own, or put into one, until two are tied.

    As a mapping it gives a number of its set for every id, which stays as long as nothing is tied.
    All are below `size`, but some numbers below it are those of no set.

    >>> unions = Unions(["a", "b", "c"])
    >>> unions.tie("a", "b")
    >>> unions.add("d", "e")
    >>> unions.put("f", "c")
    >>> unions.numbered()
    Numbers(of={'a': 0, 'b': 0, 'c': 1, 'd': 2, 'e': 2, 'f': 1}, size=3)
    """

    __slots__ = ("_above", "_of")

    def __init__(self, ids: Iterable[str] = ()) -> None:
        self._of: dict[str, int] = {}
        self._above: list[int] = []
        for each in ids:
            self.add(each)

    def __getitem__(self, each: str) -> int:
        return self._top(self._of[each])

    def __iter__(self) -> Iterator[str]:
        return iter(self._of)

    def __len__(self) -> int:
        return len(self._of)

    def __contains__(self, each: object) -> bool:
        return each in self._of

    @property
    def size(self) -> int:
        """What all numbers are below."""
        return len(self._above)

    def add(self, each: str, *others: str) -> None:
        """Puts a new id, and others that are one with it, in a new set."""
        number = len(self._above)
        self._above.append(number)
        self._of[each] = number
        for other in others:
            self._of[other] = number

    def put(self, each: str, like: str) -> None:
        """Puts a new id in the set of another."""
        self._of[each] = self._of[like]

    def place(self, each: str) -> int:
        """The number of an id, which gets a set of its own if it is new."""
        if each not in self._of:
            self.add(each)
        return self[each]

    def tie(self, one: str, other: str) -> None:
        """Makes two one, with all that each is one with."""
        self._above[self._top(self._of[one])] = self._top(self._of[other])

    def numbered(self) -> Numbers:
        """The number of its set for every id, from 0 in the order of the sets, none left out.

        The sets take these numbers themselves: in a large wiring a second mapping of all ids would
        cost as much as finding the sets.
        """
        compact: dict[int, int] = {}
        top = self._top
        order = [
            compact.setdefault(top(number), len(compact)) for number in range(len(self._above))
        ]
        of = self._of
        for each, number in of.items():
            of[each] = order[number]
        self._above = list(range(len(compact)))
        return Numbers(of, len(compact))

    def _top(self, number: int) -> int:
        above = self._above
        while above[number] != number:
            above[number] = above[above[number]]
            number = above[number]
        return number
