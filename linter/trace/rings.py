"""Conductors in parallel: pieces of metal that lead to a panel, or round, by two ways."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.trace.distance import ties_of
from linter.trace.paths import Paths, Way
from linter.trace.solid import by_role
from linter.wiring.model import Role

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.trace.solid import Solid, Source
    from linter.wiring.model import Wiring

_BAR = "bar:"


class Ring(NamedTuple):
    """A ring of hots or neutrals: the source that feeds it, and the way round."""

    source: Source
    way: Way


def rings(wiring: Wiring, solid: Solid) -> tuple[Ring, ...]:
    """One ring for each piece of metal that has any; bonds, joined in every box, may have them.

    A ring closes in the panel where two conductors of it end on one breaker pole or bar.
    """
    closing = dict(_closing(wiring, solid))
    if not closing:
        return ()
    paths = Paths(wiring)
    return tuple(
        Ring(source, way)
        for piece, tie in closing.items()
        for source in sorted(solid.sources[piece], key=by_role)[:1]
        if (way := _way_round(paths, solid, tie))
    )


def _closing(wiring: Wiring, solid: Solid) -> Iterator[tuple[int, tuple[str, str]]]:
    """For each piece the first tie, in file order, that closes a ring."""
    above: dict[str, str] = {}

    def top(name: str) -> str:
        while above.setdefault(name, name) != name:
            above[name] = above.setdefault(above[name], above[name])
            name = above[name]
        return name

    told: set[int] = set()
    for one, other in _ties(wiring, solid):
        first, second = top(one), top(other)
        piece = solid.of(one)
        if first != second:
            above[first] = second
        elif piece not in told and _is_to_be_a_tree(solid, piece):
            told.add(piece)
            yield piece, (one, other)


def _ties(wiring: Wiring, solid: Solid) -> Iterator[tuple[str, str]]:
    """All ties within pieces that a panel feeds; conductors on a bar are tied by it."""
    for wire, source in solid.source_of.items():
        if source.role is not Role.BOND:
            panel = wiring.panel_landings[wire].panel
            yield wire, f"{_BAR}{panel} {source}"
    for one, other, _ in ties_of(wiring):
        piece = solid.of(one)
        if piece == solid.of(other) and _is_to_be_a_tree(solid, piece):
            yield one, other


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
