"""Which circuit each cable belongs to, carried outward from the home runs, box by box."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping
    from collections.abc import Set as AbstractSet

    from linter.job.cables import Cable
    from linter.job.jobs import Job
    from linter.job.panel import Circuit

Values = frozenset[str]


class Pole(NamedTuple):
    """One hot of a circuit at the panel.

    `space` is the breaker's, `pole` counts within the breaker from 0, `takes` is the space that
    this very pole takes.
    """

    panel: str
    space: int
    pole: int
    takes: int


class Ambiguous(NamedTuple):
    """A cable of which several things could be true, since they meet in its boxes."""

    cable: str
    values: tuple[str, ...]


def poles_of(job: Job, circuit: Circuit) -> tuple[Pole, ...]:
    """The hots of a circuit in order: each pole of each of its breakers."""
    return tuple(
        Pole(panel, space, pole, takes)
        for panel, space in circuit.breakers
        for pole, takes in enumerate(job.panels[panel].breakers[space].spaces)
    )


def spread(
    cables: Mapping[str, Cable],
    stated: Mapping[str, Values],
    boxes: AbstractSet[str],
) -> tuple[dict[str, Values], tuple[Ambiguous, ...]]:
    """What is stated of some cables, carried to the others through boxes that hold one value only.

    Goes outward in rounds, one cable farther each, so that the order of the file does not matter.
    A cable at which several values meet is given back as ambiguous. Cables of a part of the job
    that nothing stated reaches are left out of the result.
    """
    known = dict(stated)
    at_box: dict[str, set[str]] = {}
    waiting = _cables_at(cables, known, boxes)
    fresh: Iterable[str] = [name for name in known if name in cables]
    ambiguous: dict[str, Ambiguous] = {}
    while fresh:
        touched = _add(cables, known, fresh, boxes, at_box)
        found: dict[str, Values] = {}
        for name in dict.fromkeys(each for box in touched for each in waiting.get(box, ())):
            if name in known or name in ambiguous:
                continue
            values = _values_at(cables[name], at_box)
            if len(values) == 1:
                found[name] = values
            else:
                ambiguous[name] = Ambiguous(name, tuple(sorted(values)))
        known |= found
        fresh = found
    return known, tuple(ambiguous[name] for name in cables if name in ambiguous)


def _cables_at(
    cables: Mapping[str, Cable], known: Mapping[str, Values], boxes: AbstractSet[str]
) -> dict[str, list[str]]:
    waiting: dict[str, list[str]] = {}
    for name, cable in cables.items():
        if name not in known:
            for box in cable.ends:
                if box in boxes:
                    waiting.setdefault(box, []).append(name)
    return waiting


def _add(
    cables: Mapping[str, Cable],
    known: Mapping[str, Values],
    fresh: Iterable[str],
    boxes: AbstractSet[str],
    at_box: dict[str, set[str]],
) -> list[str]:
    """The boxes that the fresh cables reach; what they carry is added to what the boxes hold."""
    touched: dict[str, None] = {}
    for name in fresh:
        for box in cables[name].ends:
            if box in boxes:
                at_box.setdefault(box, set()).update(known[name])
                touched[box] = None
    return list(touched)


def _values_at(cable: Cable, at_box: Mapping[str, set[str]]) -> Values:
    return frozenset().union(*(at_box.get(box, ()) for box in cable.ends))
