"""Ids that are one: union-find with path halving."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable


class Unions:
    """Ids, each in a set of its own until two are tied.

    >>> unions = Unions(["a", "b", "c"])
    >>> unions.tie("a", "b")
    >>> unions.top("a") == unions.top("b"), unions.top("a") == unions.top("c")
    (True, False)
    """

    __slots__ = ("_above",)

    def __init__(self, ids: Iterable[str]) -> None:
        self._above = {each: each for each in ids}

    def top(self, each: str) -> str:
        """The id that stands for all that are one with this."""
        above = self._above
        while above[each] != each:
            above[each] = above[above[each]]
            each = above[each]
        return each

    def tie(self, one: str, other: str) -> None:
        """Makes two one, with all that each is one with."""
        self._above[self.top(one)] = self.top(other)

    def numbered(self) -> dict[str, int]:
        """The number of its set for every id, from 0 in the order of the ids."""
        numbers: dict[str, int] = {}
        return {each: numbers.setdefault(self.top(each), len(numbers)) for each in self._above}
