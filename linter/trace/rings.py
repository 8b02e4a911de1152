"""Conductors in parallel: pieces of metal that lead to a panel, or round, by two ways."""

from __future__ import annotations

from itertools import chain
from typing import TYPE_CHECKING, NamedTuple

from linter.trace.distance import ties_of
from linter.trace.solid import OF_SWITCHES, by_role
from linter.wiring.model import Role
from linter.wiring.unions import Unions

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from linter.trace.paths import Paths, Way
    from linter.trace.solid import Solid, Source
    from linter.wiring.model import Wiring

_BAR = "bar:"


class Ring(NamedTuple):
    """A ring of hots or neutrals: the source that feeds it, and the way round."""

    source: Source
    way: Way


def rings(wiring: Wiring, solid: Solid, paths_of: Callable[[], Paths]) -> tuple[Ring, ...]:
    """One ring for each piece of metal that has any; bonds, joined in every box, may have them.

    A ring closes in the panel where two conductors of it end on one breaker pole or bar. `paths_of`
    gives the ways of the wiring, which are asked for only where there is a ring.
    """
    closing = dict(_closing(wiring, solid))
    if not closing:
        return ()
    paths = paths_of()
    return tuple(
        Ring(source, way)
        for piece, tie in closing.items()
        for source in sorted(solid.sources[piece], key=by_role)[:1]
        if (way := _way_round(paths, solid, tie))
    )


def _closing(wiring: Wiring, solid: Solid) -> Iterator[tuple[int, tuple[str, str]]]:
    """For each piece with a ring the first tie that closes one."""
    ringed = _ringed(wiring, solid)
    if not ringed:
        return
    unions = Unions()
    told: set[int] = set()
    within = [(one, other) for one, other in _ties(wiring) if solid.of(one) in ringed]
    # In an order that no file changes; bars last, so that a ring through the panel closes there.
    for one, other in chain(sorted(within), sorted(_on_bars(wiring, solid))):
        piece = solid.of(one)
        if piece not in ringed or piece in told:
            continue
        if unions.place(one) == unions.place(other):
            told.add(piece)
            yield piece, (one, other)
        unions.tie(one, other)


def _ringed(wiring: Wiring, solid: Solid) -> frozenset[int]:
    """The pieces that have more ties than a tree of so many ids, which has one less than those.

    The bars of a panel count as ids too: each source on one is tied to it.
    """
    spare = [1] * (max(solid.of_net, default=0) + 1)
    bars: set[tuple[int, str]] = set()
    for wire, bar in _on_bars(wiring, solid):
        piece = solid.of(wire)
        spare[piece] += 1
        if (piece, bar) not in bars:
            bars.add((piece, bar))
            spare[piece] -= 1
    for piece in solid.of_each():
        spare[piece] -= 1
    for one, _ in _ties(wiring):
        spare[solid.of(one)] += 1
    return frozenset(
        piece for piece, more in enumerate(spare) if more > 0 and _is_to_be_a_tree(solid, piece)
    )


def _ties(wiring: Wiring) -> Iterator[tuple[str, str]]:
    """What conductors, joints, screws and tabs tie; contacts of switches do not."""
    for one, other, _ in ties_of(wiring, but=OF_SWITCHES):
        yield one, other


def _on_bars(wiring: Wiring, solid: Solid) -> Iterator[tuple[str, str]]:
    """The conductors that end on bars and breakers, bonds apart, each with what it ends on."""
    for wire, source in solid.source_of.items():
        if source.role is not Role.BOND:
            yield wire, f"{_BAR}{wiring.panel_landings[wire].panel} {source}"


def _is_to_be_a_tree(solid: Solid, piece: int) -> bool:
    sources = solid.sources.get(piece)
    return bool(sources) and all(each.role is not Role.BOND for each in sources or ())


def _way_round(paths: Paths, solid: Solid, tie: tuple[str, str]) -> Way:
    one, other = tie
    if other.startswith(_BAR):
        source = solid.source_of[one]
        others = {wire for wire, each in solid.source_of.items() if each == source} - {one}
        return paths.way([one], others.__contains__)
    return paths.way([one], other.__eq__, without={tie})
