"""What stands on every way from a root: the tree of immediate dominators of a graph.

Source: K. D. Cooper, T. J. Harvey, K. Kennedy, "A Simple, Fast Dominance Algorithm" (2001).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

_NONE = -1


class Dominators:
    """For each vertex that the root reaches, those on every way to it.

    >>> tree = Dominators([[1], [2, 3], [4], [4], []], 0)
    >>> list(tree.before(4)), tree.dominates(1, 4), tree.dominates(2, 4)
    ([1, 0], True, False)
    """

    def __init__(self, after: Sequence[Sequence[int]], root: int) -> None:
        order = _post_order(after, root)
        self._root = root
        self._above = _immediate(after, root, order)
        self._first, self._last = _spans(self._above, root, order)

    def reaches(self, vertex: int) -> bool:
        """Whether the root reaches the vertex."""
        return self._above[vertex] != _NONE

    def before(self, vertex: int) -> Iterator[int]:
        """The vertices on every way to this one, nearest first, the root last."""
        while vertex != self._root and self._above[vertex] != _NONE:
            vertex = self._above[vertex]
            yield vertex

    def dominates(self, one: int, other: int) -> bool:
        """Whether every way to `other` goes through `one`; false where either is not reached."""
        if not (self.reaches(one) and self.reaches(other)):
            return False
        return self._first[one] <= self._first[other] and self._last[other] <= self._last[one]


def _post_order(after: Sequence[Sequence[int]], root: int) -> list[int]:
    order: list[int] = []
    seen = {root}
    stack = [(root, iter(after[root]))]
    while stack:
        vertex, rest = stack[-1]
        for each in rest:
            if each not in seen:
                seen.add(each)
                stack.append((each, iter(after[each])))
                break
        else:
            order.append(vertex)
            stack.pop()
    return order


def _immediate(after: Sequence[Sequence[int]], root: int, order: list[int]) -> list[int]:
    number = [_NONE] * len(after)
    for position, vertex in enumerate(order):
        number[vertex] = position
    before: list[list[int]] = [[] for _ in after]
    for vertex in order:
        for each in after[vertex]:
            before[each].append(vertex)
    above = [_NONE] * len(after)
    above[root] = root
    changed = True
    while changed:
        changed = False
        for vertex in reversed(order[:-1]):
            new = _meeting(before[vertex], above, number)
            if above[vertex] != new:
                above[vertex] = new
                changed = True
    return above


def _meeting(before: list[int], above: list[int], number: list[int]) -> int:
    """Where the ways over all known predecessors last meet."""
    known = [each for each in before if above[each] != _NONE]
    meeting = known[0]
    for each in known[1:]:
        other = each
        while meeting != other:
            while number[meeting] < number[other]:
                meeting = above[meeting]
            while number[other] < number[meeting]:
                other = above[other]
    return meeting


def _spans(above: list[int], root: int, order: list[int]) -> tuple[list[int], list[int]]:
    """First and last number of each vertex's part of the tree, counted depth first."""
    below: list[list[int]] = [[] for _ in above]
    for vertex in order:
        if vertex != root:
            below[above[vertex]].append(vertex)
    first, last = [_NONE] * len(above), [_NONE] * len(above)
    count = 0
    stack: list[tuple[int, bool]] = [(root, False)]
    while stack:
        vertex, done = stack.pop()
        if done:
            last[vertex] = count
            continue
        count += 1
        first[vertex] = count
        stack.append((vertex, True))
        stack += [(each, False) for each in below[vertex]]
    return first, last
