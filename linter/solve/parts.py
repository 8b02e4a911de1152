"""The parts into which held nodes divide a network: nothing in one depends on another."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.solve.network import Missing, Unsteady

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.solve.network import Fed, Network

Reason = Missing | Unsteady


class Parts(NamedTuple):
    """The part of every free node (a held one has -1), and what is not known in a part.

    `driven` are the parts that hang on a held node. Of those in which nothing can flow (no load,
    held at one potential at most), `still` has the potential: it is so whatever the resistances,
    so only doubts of the wiring itself make it unknown.
    """

    of: list[int]
    unknown: dict[int, frozenset[Reason]]
    driven: frozenset[int]
    still: dict[int, float]


def parts_of(network: Network) -> Parts:
    """The parts of a network, and what each of them hangs on."""
    of = _tops(network)
    potentials: dict[int, set[float]] = {}
    for one, other in _ends(network):
        for node, beyond in ((one, other), (other, one)):
            if of[node] >= 0 and beyond in network.held:
                potentials.setdefault(of[node], set()).add(network.held[beyond])
    loads = [load for load in network.loads if load.watts != 0]
    flowing = {part for part, volts in potentials.items() if len(volts) > 1}
    flowing |= {of[node] for load in loads for node in (load.one, load.other)}
    unknown: dict[int, set[Reason]] = {}
    lacking = [(each.one, each.other, each.missing) for each in network.wires if each.missing]
    lacking += [(each.one, each.other, each.missing) for each in loads if each.missing]
    for one, other, missing in lacking:
        for part in {of[one], of[other]} & flowing:
            unknown.setdefault(part, set()).update(missing)
    for node, doubt in network.doubts:
        unknown.setdefault(of[node], set()).add(doubt)
    for part, leg in _legs_not_known(network, of):
        unknown.setdefault(part, set()).add(leg)
    reasons = {part: frozenset(each) for part, each in unknown.items() if part >= 0}
    still = {part: next(iter(potentials.get(part, (0.0,)))) for part in {*of} - flowing - {-1}}
    return Parts(of, reasons, frozenset(potentials), still)


def _legs_not_known(network: Network, of: list[int]) -> Iterator[tuple[int, Missing]]:
    """The legs that are not known of breakers which feed a part together with one beside them.

    Of a part that one breaker of a panel feeds it is the same whichever leg that is on.
    """
    by_part: dict[tuple[int, str], list[Fed]] = {}
    for each in network.fed:
        by_part.setdefault((of[each.node], each.breaker[0]), []).append(each)
    for (part, _), found in by_part.items():
        if len({each.breaker for each in found}) > 1:
            for _, (panel, space), leg_is_known in found:
                if not leg_is_known:
                    yield part, Missing("breaker", f"{panel} {space}", "leg")


def _ends(network: Network) -> Iterator[tuple[int, int]]:
    yield from ((wire.one, wire.other) for wire in network.wires)
    yield from ((load.one, load.other) for load in network.loads if load.watts != 0)


def _tops(network: Network) -> list[int]:
    above = list(range(network.size))
    held = network.held

    def top(node: int) -> int:
        while above[node] != node:
            above[node] = above[above[node]]
            node = above[node]
        return node

    for one, other in _ends(network):
        if one not in held and other not in held:
            above[top(one)] = top(other)
    return [-1 if node in held else top(node) for node in range(network.size)]
