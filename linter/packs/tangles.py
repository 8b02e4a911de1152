"""Measures that use each other in a ring, or rest on each other too deep to be followed."""

from collections.abc import Mapping, Sequence

from linter.language.checked import measures_used
from linter.language.library import Measure
from linter.packs.entries import Entry
from linter.packs.reliance import MeasureKey
from linter.text import Place, Refusal

DEEPEST = 40


def tangle_of(measures: Mapping[MeasureKey, Measure], entries: Sequence[Entry]) -> Refusal | None:
    """What there is to say of the first ring or of the first measure that stands too high."""
    left = {key: _uses(measure) & set(measures) for key, measure in measures.items()}
    for _ in range(DEEPEST):
        ready = {key for key, uses in left.items() if uses.isdisjoint(left)}
        if not ready:
            break
        left = {key: uses for key, uses in left.items() if key not in ready}
    if not left:
        return None
    places = {(entry.key.about, entry.key.name): entry.place for entry in entries}
    ring = _ring(left)
    return (
        _in_a_ring(ring, places) if ring else _too_deep(min(left, key=places.__getitem__), places)
    )


def _uses(measure: Measure) -> frozenset[MeasureKey]:
    return frozenset(used for _, step in measure.steps for used in measures_used(step))


def _ring(left: Mapping[MeasureKey, frozenset[MeasureKey]]) -> list[MeasureKey]:
    """The measures of a ring, in order; none where the way ends at measures that are done."""
    way: list[MeasureKey] = []
    at = min(left)
    while at not in way:
        way.append(at)
        further = sorted(left[at] & set(left))
        if not further:
            return []
        at = further[0]
    return way[way.index(at) :]


def _in_a_ring(ring: Sequence[MeasureKey], places: Mapping[MeasureKey, Place]) -> Refusal:
    first = min(ring, key=places.__getitem__)
    begin = list(ring).index(first)
    names = [f"{kind}.{name}" for kind, name in (*ring[begin:], *ring[:begin], first)]
    return Refusal(
        places[first],
        f"Measures use each other in a ring: {', '.join(names)}",
        "measures that lead back to facts",
        "take one of them out of the ring",
    )


def _too_deep(key: MeasureKey, places: Mapping[MeasureKey, Place]) -> Refusal:
    return Refusal(
        places[key],
        f'The measure "{key[1]}" rests on measures more than {DEEPEST} deep',
        "",
        "make one measure of several, in steps",
    )
