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
    from collections.abc import Iterable, Mapping

    Edges = Iterable[tuple[int, int, float]]


class TakenNode(NamedTuple):
    """A node as it was when it was taken out: its neighbours then, and the sum of conductances."""

    node: int
    neighbours: tuple[tuple[int, float], ...]
    total: float


class Elimination:
    """The order in which the free nodes are taken out; serves any potentials and currents.

    Nodes are numbered from 0 to `count`; an edge is two nodes and siemens.
    """

    def __init__(self, count: int, edges: Edges, held: Iterable[int]) -> None:
        self._count = count
        self._taken = _take_out(count, edges, frozenset(held))

    def potentials(
        self, held: Mapping[int, float], injected: Mapping[int, float] | None = None
    ) -> list[float]:
        """The potential of every node in volts, with currents in amperes let in at some.

        A part that hangs on no held node is at 0 V at one of its nodes.

        >>> Elimination(3, [(0, 1, 2.0), (1, 2, 1.0)], [0, 2]).potentials({0: 120.0, 2: 0.0})
        [120.0, 80.0, 0.0]
        """
        volts = [0.0] * self._count
        for node, potential in held.items():
            volts[node] = potential
        entering = dict(injected or {})
        if entering:
            for node, neighbours, total in self._taken:
                share = entering.get(node, 0.0)
                if share and total:
                    for other, siemens in neighbours:
                        entering[other] = entering.get(other, 0.0) + share * siemens / total
        for node, neighbours, total in reversed(self._taken):
            if total:
                flow = sum(siemens * volts[other] for other, siemens in neighbours)
                volts[node] = (flow + entering.get(node, 0.0)) / total
        return volts


def _take_out(count: int, edges: Edges, held: frozenset[int]) -> list[TakenNode]:
    beside = _beside(count, edges, held)
    waiting = [(len(beside[node]), node) for node in range(count) if node not in held]
    heapify(waiting)
    taken: list[TakenNode] = []
    done = bytearray(count)
    while waiting:
        degree, node = heappop(waiting)
        if done[node] or degree != len(beside[node]):
            continue
        done[node] = 1
        neighbours = tuple(beside[node].items())
        total = sum(siemens for _, siemens in neighbours)
        taken.append(TakenNode(node, neighbours, total))
        free = [each for each in neighbours if each[0] not in held]
        for other, _ in free:
            del beside[other][node]
        _mesh(beside, neighbours, total, held)
        for other, _ in free:
            heappush(waiting, (len(beside[other]), other))
    return taken


def _mesh(
    beside: list[dict[int, float]],
    neighbours: tuple[tuple[int, float], ...],
    total: float,
    held: frozenset[int],
) -> None:
    """Puts the conductances between the neighbours of a node in its stead."""
    for (one, a), (other, b) in combinations(neighbours, 2):
        siemens = a * b / total
        if one not in held:
            beside[one][other] = beside[one].get(other, 0.0) + siemens
        if other not in held:
            beside[other][one] = beside[other].get(one, 0.0) + siemens


def _beside(count: int, edges: Edges, held: frozenset[int]) -> list[dict[int, float]]:
    """The neighbours of each free node, parallel edges as one."""
    beside: list[dict[int, float]] = [{} for _ in range(count)]
    for one, other, siemens in edges:
        if one == other:
            continue
        if one not in held:
            beside[one][other] = beside[one].get(other, 0.0) + siemens
        if other not in held:
            beside[other][one] = beside[other].get(one, 0.0) + siemens
    return beside
