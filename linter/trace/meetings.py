"""Where sources meet that are to be kept apart, each with the way that proves it."""

from __future__ import annotations

from enum import Enum
from itertools import combinations, pairwise
from typing import TYPE_CHECKING, NamedTuple

from linter.trace.outlets import is_short
from linter.trace.paths import both_ways
from linter.trace.positions import contacts_closed
from linter.trace.solid import Source, Sources, by_role
from linter.wiring.model import Role

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

    from linter.trace.paths import Paths, Way
    from linter.trace.positions import Positions
    from linter.trace.solid import Solid
    from linter.wiring.model import Link, Use, Wiring

_HOTS = frozenset({Role.HOT, Role.SWITCHED_HOT, Role.TRAVELLER})
_SEVERAL = 2
_Worst = tuple["Meets", tuple[Source, Source]]


class Meets(Enum):
    """What meets, the worst first; a place where the worse is found is said to have that alone."""

    SHORT = "a hot and what is no hot of its leg"
    NEUTRAL_AND_BOND = "a neutral and the bond"
    HOTS = "hots of two breakers"
    NEUTRALS = "neutrals of two circuits"


class Meeting(NamedTuple):
    """Two sources that meet: the way from one to the other, and the box where it turns.

    The box is where the way goes over from conductors of one use to those of another. `switches`
    names those in whose position, one of several, they meet.
    """

    what: Meets
    sources: tuple[Source, Source]
    box: str
    way: Way
    switches: tuple[str, ...]


class _Found(NamedTuple):
    """Two sources that meet, the contacts through which, and the switches of those."""

    what: Meets
    sources: tuple[Source, Source]
    closed: frozenset[tuple[str, str]] = frozenset()
    switches: tuple[str, ...] = ()


def meetings(
    wiring: Wiring, solid: Solid, positions: Positions, paths_of: Callable[[], Paths]
) -> tuple[Meeting, ...]:
    """All of them: one for each piece of metal, and for each that switches can join further.

    `paths_of` gives the ways of the wiring, which are asked for only where something meets.
    """
    each_piece = (_worst(sources) for sources in solid.sources.values())
    found = [_Found(*each) for each in each_piece if each is not None]
    found += _by_switches(wiring, positions, {(each.what, each.sources) for each in found})
    if not found:
        return ()
    paths = paths_of()
    ends: dict[Source, list[str]] = {}
    for wire, source in solid.source_of.items():
        ends.setdefault(source, []).append(wire)
    made = (_made(wiring, ends, paths, each) for each in found)
    return tuple(each for each in made if each is not None)


def _by_switches(wiring: Wiring, positions: Positions, known: set[_Worst]) -> list[_Found]:
    """What meets only in some position of switches."""
    found = []
    for group in positions.groups:
        for sources, position in _sets(group.reaching.values()).items():
            worst = _worst(sources) if group.is_followed else None
            if worst is None or worst in known:
                continue
            known.add(worst)
            links = [link for link in wiring.links if link.device in group.switches]
            closed = _closed_links(links, group.switches, position)
            found.append(_Found(*worst, both_ways(closed), group.switches))
    return found


def _sets(each_piece: Iterable[tuple[Sources, ...]]) -> dict[Sources, int]:
    """The sets of sources that come together, and a position in which they do."""
    sets: dict[Sources, int] = {}
    for reaching in each_piece:
        for position, sources in enumerate(reaching):
            if len(sources) >= _SEVERAL:
                sets.setdefault(sources, position)
    return sets


def _closed_links(links: Iterable[Link], switches: tuple[str, ...], position: int) -> list[Link]:
    return [link for link in links if contacts_closed(link.kind, link.device, switches, position)]


def _worst(sources: Sources) -> _Worst | None:
    """The worst two of the sources that meet in one piece; none where they belong together."""
    if len(sources) < _SEVERAL:
        return None
    pairs = [(_what(*pair), pair) for pair in combinations(sorted(sources, key=by_role), 2)]
    told = [(what, pair) for what, pair in pairs if what is not None]
    kinds = list(Meets)
    return min(told, key=lambda each: kinds.index(each[0])) if told else None


def _what(one: Source, other: Source) -> Meets | None:
    if is_short(frozenset((one, other))):
        return Meets.SHORT
    if one.role is Role.HOT:
        return Meets.HOTS if one.breaker_pole != other.breaker_pole else None
    if one.role is not other.role:
        return Meets.NEUTRAL_AND_BOND
    return Meets.NEUTRALS if one.circuit != other.circuit else None


def _made(
    wiring: Wiring, ends: Mapping[Source, Sequence[str]], paths: Paths, found: _Found
) -> Meeting | None:
    one, other = found.sources
    # From the source that fewer conductors begin at: a bond bar has one for each cable.
    is_turned = len(ends[one]) > len(ends[other])
    starts, goals = (ends[other], ends[one]) if is_turned else (ends[one], ends[other])
    way = paths.way(starts, frozenset(goals).__contains__, found.closed)
    way = way[::-1] if is_turned else way
    box = _turning(wiring, way)
    return Meeting(found.what, found.sources, box, way, found.switches) if box else None


def _turning(wiring: Wiring, way: Way) -> str:
    """The box in which a way goes over from conductors of one use to those of another."""
    ends = [wiring.wire_ends[name] for name in way if name in wiring.wire_ends]
    for one, other in pairwise(ends):
        if one.box == other.box in wiring.boxes and _kin(one.use) != _kin(other.use):
            return one.box
    boxes = [end.box for end in ends if end.box in wiring.boxes]
    return boxes[len(boxes) // 2] if boxes else ""


def _kin(use: Use) -> tuple[str, str | None, int | None]:
    if use.role in _HOTS:
        return "hot", use.circuit, use.pole
    return use.role.value, use.circuit, None


def box_of_each(found: Iterable[Meeting], what: Meets) -> Iterator[tuple[str, Meeting]]:
    """The boxes in which sources of that kind meet, each with the first meeting there."""
    seen: set[str] = set()
    for each in found:
        if each.what is what and each.box not in seen:
            seen.add(each.box)
            yield each.box, each
