"""Which answers give which outcome, in words: "6 in or more: met; less than 6 in: broken".

A trial (an answer in, the outcome of a check out, empty where it still cannot be told) is asked at
chosen answers; where two neighbours differ, the boundary between them is looked for.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import groupby, pairwise
from typing import NamedTuple

from linter.units import (
    CURRENT,
    LENGTH,
    POWER,
    TEMPERATURE,
    VOLTAGE,
    VOLUME,
    Dimension,
    NotAQuantity,
    read_quantity,
)

Trial = Callable[[object], str]
Write = Callable[[float], str]
When = tuple[tuple[str, str], ...]

OUTCOMES = ("met", "broken", "does not apply")
"""What a check can come to, in the order in which answers are told."""

# From the smallest to the largest value that a dwelling can show, in base units.
_REACH = {
    LENGTH: (0.0, 100.0),
    VOLUME: (0.0, 0.1),
    CURRENT: (0.1, 1000.0),
    VOLTAGE: (1.0, 1000.0),
    POWER: (0.0, 100_000.0),
    TEMPERATURE: (253.15, 523.15),
}
_OTHER_REACH = (0.0, 10_000.0)
_BESIDE = 1e-6
_HALVINGS = 60
_FIGURES = 7  # of a boundary that was looked for: fewer than comparisons tell apart
_TRIED_EACH = 13
_MOST_COUNTED = 1000.0  # more than a dwelling has of anything


class Boundary(NamedTuple):
    """A value at which the outcome changes: what holds below, at and above it."""

    at: float
    outcomes: tuple[str, str, str]


def among_words(words: Sequence[str], answers: Sequence[object], trial: Trial) -> When:
    """The outcomes of answers that can be listed, those of one outcome together.

    >>> among_words(["yes", "no"], [True, False], lambda answer: "met" if answer else "broken")
    (('yes', 'met'), ('no', 'broken'))
    """
    told = [(word, trial(answer)) for word, answer in zip(words, answers, strict=True)]
    if len({outcome for _, outcome in told}) == 1:
        return _in_order([("any answer", told[0][1])])
    return _in_order(
        (", ".join(word for word, got in told if got == outcome), outcome) for outcome in OUTCOMES
    )


def along_steps(steps: Sequence[float], write: Write, trial: Trial) -> When:
    """The outcomes of sizes or counts that come in steps, smallest first.

    >>> along_steps([0.0, 1.0, 2.0], "{:.0f}".format, lambda count: "broken" if count else "met")
    (('0', 'met'), ('1 or more', 'broken'))
    """
    return _by_runs([(step, trial(step)) for step in steps], write)


def along_counts(hints: Iterable[float], write: Write, trial: Trial) -> When:
    """The outcomes of a number of things; `hints` are values at which they may change.

    >>> along_counts([], "{:.0f}".format, lambda count: "broken" if count > 40 else "met")
    (('0 to 40', 'met'), ('41 or more', 'broken'))
    """
    steps = {*map(float, range(_TRIED_EACH)), _MOST_COUNTED}
    for hint in hints:
        beside = (math.floor(hint) + each for each in (-1, 0, 1, 2))
        steps |= {float(each) for each in beside if 0 <= each <= _MOST_COUNTED}
    told = {step: trial(step) for step in steps}
    for low, high in pairwise(sorted(told)):
        _narrow(low, high, told, trial)
    return _by_runs(sorted(told.items()), write)


def _narrow(low: float, high: float, told: dict[float, str], trial: Trial) -> None:
    """Tries counts between two of unlike outcomes, until two that are neighbours were tried."""
    while told[low] != told[high] and high - low > 1:
        middle = (low + high) // 2
        told[middle] = trial(middle)
        low, high = (middle, high) if told[middle] == told[low] else (low, middle)


def along_scale(dimension: Dimension, hints: Iterable[float], write: Write, trial: Trial) -> When:
    """The outcomes of a quantity; `hints` are values at which they may change.

    >>> along_scale(LENGTH, [0.15], "{:.2f} m".format, lambda x: "met" if x >= 0.15 else "broken")
    (('0.15 m or more', 'met'), ('less than 0.15 m', 'broken'))
    """
    least, most = _REACH.get(dimension, _OTHER_REACH)
    listed = [hint for hint in sorted(set(hints)) if least <= hint <= most]
    boundaries = list(_boundaries(least, most, listed, write, trial))
    alone = [(write(at), trial(at)) for at in listed if _stands_alone(at, trial)]
    if not boundaries:
        everywhere = trial((least + most) / 2)
        words = "any other answer" if alone else "any answer"
        return _in_order([*alone, (words, everywhere)])
    return _in_order([*alone, *_stretches(boundaries, write)])


def _stands_alone(hint: float, trial: Trial) -> bool:
    """Whether a value has an outcome that those beside it have not, as the row of a table has."""
    beside = {trial(hint * (1 - _BESIDE)), trial(hint * (1 + _BESIDE))}
    return len(beside) == 1 and trial(hint) not in beside


def _boundaries(
    least: float, most: float, hints: list[float], write: Write, trial: Trial
) -> Iterator[Boundary]:
    probes = [least, most]
    for hint in hints:
        probes += [x for x in (hint * (1 - _BESIDE), hint * (1 + _BESIDE)) if least < x < most]
    probes.sort()
    outcomes = [trial(x) for x in probes]
    for number, (below, above) in enumerate(pairwise(outcomes)):
        if below != above:
            near = [x for x in hints if probes[number] < x < probes[number + 1]]
            between = probes[number], probes[number + 1]
            at = near[0] if near else _as_told(_between(*between, below, trial), write)
            yield Boundary(at, (below, trial(at), above))


def _between(low: float, high: float, below: str, trial: Trial) -> float:
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if trial(middle) == below:
            low = middle
        else:
            high = middle
    return high


def _as_told(value: float, write: Write) -> float:
    """The value that a person reads in what is written, where that is this value but for rounding.

    A comparison holds a little beyond its limit: what is found is beside the limit, what is told is
    the limit, and which side that is on is asked of the limit.
    """
    rounded = float(f"{value:.{_FIGURES}g}")
    try:
        told = read_quantity(write(value)).value
    except NotAQuantity:
        return rounded
    is_near = value != told and abs(told - value) <= _BESIDE * abs(value)
    return told if is_near else rounded


def _stretches(boundaries: list[Boundary], write: Write) -> Iterator[tuple[str, str]]:
    """The stretches between boundaries, from the top down; a boundary belongs to its like."""
    last = boundaries[-1]
    words = "{} or more" if last.outcomes[1] == last.outcomes[2] else "more than {}"
    yield words.format(write(last.at)), last.outcomes[2]
    for lower, upper in reversed(list(pairwise(boundaries))):
        yield f"{write(lower.at)} to {write(upper.at)}", upper.outcomes[0]
    first = boundaries[0]
    words = "{} or less" if first.outcomes[1] == first.outcomes[0] else "less than {}"
    yield words.format(write(first.at)), first.outcomes[0]


def _by_runs(told: Sequence[tuple[float, str]], write: Write) -> When:
    """Steps with their outcomes, those of one outcome that follow each other in one run."""
    steps = [step for step, _ in told]
    runs = [(list(group), outcome) for outcome, group in groupby(told, key=lambda each: each[1])]
    return _in_order(
        (_run([step for step, _ in run], steps, write), outcome) for run, outcome in runs
    )


def _run(run: list[float], steps: Sequence[float], write: Write) -> str:
    first, last = write(run[0]), write(run[-1])
    if len(run) == len(steps):
        return "any answer"
    if run[-1] == steps[-1]:
        return f"{first} or more"
    return first if len(run) == 1 else f"{first} to {last}"


def _in_order(told: Iterable[tuple[str, str]]) -> When:
    """What is told, met first; what names no answer or no outcome is left out."""
    kept = [(words, outcome) for words, outcome in told if words and outcome]
    return tuple(sorted(kept, key=lambda each: OUTCOMES.index(each[1])))
