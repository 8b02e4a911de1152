"""Nodal analysis by taking nodes out one by one, the least connected first.

A node that is taken out is replaced by conductances between its neighbours (star to mesh: between
a and b, the product of theirs over the sum of all). That only multiplies, divides and adds what is
positive, so no digits cancel. Wiring is nearly a tree, in which a node has two or three neighbours
when its turn comes, so that the cost grows with the number of nodes.
"""

from __future__ import annotations

from heapq import heapify, heappop, heappush
from itertools import combinations
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Container, Iterable, Mapping

    Edges = Iterable[tuple[int, int, float]]


class TakenNode(NamedTuple):
    """A node as it was when it was taken out: its neighbours then, and the sum of conductances."""

    node: int
    neighbours: tuple[tuple[int, float], ...]
    total: float


class Elimination:
    """The order in which the free nodes are taken out; serves any potentials and currents.

    An edge is two nodes and siemens; a node is any number.
    """

    def __init__(self, edges: Edges, held: Container[int]) -> None:
        self._taken = _take_out(_beside(edges, held))

    def potentials(
        self, held: Mapping[int, float], injected: Mapping[int, float] | None = None
    ) -> dict[int, float]:
        """The potential of every free node in volts, with currents in amperes let in at some.

        A part that hangs on no held node is at 0 V at one of its nodes.

        >>> Elimination([(0, 1, 2.0), (1, 2, 1.0)], {0, 2}).potentials({0: 120.0, 2: 0.0})
        {1: 80.0}
        """
        entering = dict(injected or {})
        if entering:
            for node, neighbours, total in self._taken:
                share = entering.get(node, 0.0)
                if share and total:
                    for other, siemens in neighbours:
                        entering[other] = entering.get(other, 0.0) + share * siemens / total
        volts: dict[int, float] = {}
        for node, neighbours, total in reversed(self._taken):
            flow = entering.get(node, 0.0)
            for other, siemens in neighbours:
                flow += siemens * (held[other] if other in held else volts[other])
            volts[node] = flow / total if total else 0.0
        return volts


def _take_out(beside: dict[int, dict[int, float]]) -> list[TakenNode]:
    waiting = [(len(around), node) for node, around in beside.items()]
    heapify(waiting)
    taken: list[TakenNode] = []
    while beside:
        degree, node = heappop(waiting)
        if node not in beside or degree != len(beside[node]):
            continue
        neighbours = tuple(beside.pop(node).items())
        total = sum(siemens for _, siemens in neighbours)
        taken.append(TakenNode(node, neighbours, total))
        free = [other for other, _ in neighbours if other in beside]
        for other in free:
            del beside[other][node]
        _mesh(beside, neighbours, total)
        for other in free:
            heappush(waiting, (len(beside[other]), other))
    return taken


def _mesh(
    beside: dict[int, dict[int, float]], neighbours: tuple[tuple[int, float], ...], total: float
) -> None:
    """Puts the conductances between the neighbours of a node in its stead."""
    for (one, a), (other, b) in combinations(neighbours, 2):
        _tie(beside, one, other, a * b / total)


def _beside(edges: Edges, held: Container[int]) -> dict[int, dict[int, float]]:
    """The neighbours of each free node, parallel edges as one."""
    beside: dict[int, dict[int, float]] = {}
    for one, other, siemens in edges:
        for node in (one, other):
            if node not in held:
                beside.setdefault(node, {})
        if one != other:
            _tie(beside, one, other, siemens)
    return beside


def _tie(beside: dict[int, dict[int, float]], one: int, other: int, siemens: float) -> None:
    if one in beside:
        beside[one][other] = beside[one].get(other, 0.0) + siemens
    if other in beside:
        beside[other][one] = beside[other].get(one, 0.0) + siemens
