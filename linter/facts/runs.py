"""Runs of wall and counter: their unbroken stretches, and the outlets where they stand along them.

All distances are reckoned from the beginning of the run. Which outlets count for a wall, and which
stretches are long enough to matter, is for a pack to say.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple, TypeAlias

from linter.facts.given import Given, unknown
from linter.facts.knowing import hanging_on, known
from linter.facts.made import complete, number, one
from linter.units import Unknown
from linter.vocabulary.model import Thing, value_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.facts.knowing import Number
    from linter.facts.made import Made, Site
    from linter.job.dwelling import Break, OutletAt, Run

Placed: TypeAlias = "tuple[Thing, ...] | Unknown"

WALL, COUNTER = "wall", "counter"
IN_THE_FLOOR = "in the floor"
_FIELDS = {
    "form": "kind",
    "length": "length",
    "depth": "depth",
    "height": "height",
    "overhang": "overhang",
    "has_provision": "provision",
}
_BREAK_FIELDS = {"what": "what", "position": "at", "width": "width"}
_NEAR = 1e-6  # metres within which two places along a run are one


class _Span(NamedTuple):
    """Where a stretch begins and ends along its run; not told where a break is not measured."""

    begins: float
    ends: Number
    is_told: bool = True


def make_runs(site: Site, made: Made) -> None:
    """The runs of a job with their breaks, stretches and outlets; receptacles are made by now."""
    for what, runs in ((WALL, site.job.walls), (COUNTER, site.job.counters)):
        for run in runs.values():
            _make_run(made, what, run)


def _make_run(made: Made, what: str, run: Run) -> None:
    thing = _run_of(made, what, run)
    breaks = tuple(_break_of(thing, at, each) for at, each in enumerate(run.breaks, start=1))
    made.add((thing,))
    made.add(breaks)
    placed = tuple(_placed(made, thing, each) for each in _once(run))
    made.add(placed)
    not_said = unknown("run", run.name, "outlets") if run.outlets is None else None
    stretches = []
    for at, span in enumerate(_spans(thing, breaks), start=1):
        along = _along(span, placed, is_alone=not breaks) if not_said is None else not_said
        stretches.append(_stretch_of(thing, f"{run.name}/{at}", span, along))
    made.add(stretches)
    outlets = placed if not_said is None else not_said
    complete(thing, {"breaks": breaks, "stretches": tuple(stretches), "outlets": outlets})


def _run_of(made: Made, what: str, run: Run) -> Thing:
    given = Given("run", run.name, run, _FIELDS)
    given.put("what", what)
    given.put("room", made.thing("room", run.room))
    length, depth = number_in(given, "length"), number_in(given, "depth")
    is_known = not isinstance(length, Unknown) and not isinstance(depth, Unknown)
    given.put("area", length * depth if is_known else hanging_on((length, depth)))
    return given.thing(f"{what} {run.name}")


def number_in(given: Given, fact: str) -> Number:
    """The value of a quantity among the facts gathered so far."""
    value = given.values[fact]
    if not isinstance(value, float | Unknown):
        raise TypeError(f"{fact} is not a quantity: {value!r}")
    return value


def _break_of(run: Thing, at: int, stated: Break) -> Thing:
    given = Given("run_break", f"{run.ref}/{at}", stated, _BREAK_FIELDS)
    given.put("run", run)
    given.put("room", one(run, "room"))
    given.put("depth_behind", stated.behind if stated.says("behind") else 0.0, "behind")
    return given.thing(f"{stated.what or 'break'} {at} of {run.label}")


def _once(run: Run) -> tuple[OutletAt, ...]:
    """The outlets of a run; of one that is listed twice, the first."""
    return tuple({each.outlet: each for each in reversed(run.outlets or ())}.values())[::-1]


def _placed(made: Made, run: Thing, stated: OutletAt) -> Thing:
    outlet = made.thing("outlet", stated.outlet)
    given = Given("placed_outlet", f"{stated.outlet}@{run.ref}", stated, {"position": "at"})
    given.put("run", run)
    given.put("room", one(run, "room"))
    given.put("outlet", outlet)
    for fact in ("type", "serves", "height"):
        given.put(fact, value_of(outlet, fact))
    at, length = number_in(given, "position"), number(run, "length")
    given.put("to_end_of_run", less(length, at))
    height, surface = number(outlet, "height"), number(run, "height")
    given.put("above_surface", less(height, surface))
    given.put("below_surface", less(surface, height))
    _put_place(given, made, stated)
    # Where no stretch has it, or which has it is not known, it is as far as from the run's.
    given.put("from_start", at)
    return given.thing(f"{outlet.label} at {run.label}")


def _put_place(given: Given, made: Made, stated: OutletAt) -> None:
    """Where it is mounted; what a receptacle alone can be, another outlet is not."""
    receptacle = made.by_ref("receptacle").get(stated.outlet)
    for fact, of_others in (
        ("mounting", "in the wall"),
        ("is_wholly_switched", False),
        ("is_in_appliance_space", False),
    ):
        given.put(fact, value_of(receptacle, fact) if receptacle else of_others)
    place = given.values["mounting"]
    if place == IN_THE_FLOOR or stated.says("from_wall"):
        given.put("distance_to_wall", stated.from_wall, "from_wall")
    else:
        given.put("distance_to_wall", place if isinstance(place, Unknown) else 0.0)


def less(whole: Number, other: Number) -> Number:
    """What is left of one after the other is taken off; 0 where the other is larger."""
    if isinstance(whole, Unknown) or isinstance(other, Unknown):
        return hanging_on((whole, other))
    return max(0.0, whole - other)


def _spans(run: Thing, breaks: Sequence[Thing]) -> list[_Span]:
    """What the breaks leave; one span of unknown length where it is not known where they are."""
    length = number(run, "length")
    edges = [number(each, fact) for each in breaks for fact in ("position", "width")]
    if not known(edges):
        return [_Span(0.0, hanging_on((*edges, length)), is_told=False)]
    begins, spans = 0.0, []
    for each in sorted(breaks, key=lambda each: _known(number(each, "position"))):
        at = _known(number(each, "position"))
        spans.append(_Span(begins, at))
        begins = max(begins, at + _known(number(each, "width")))
    spans.append(_Span(begins, length))
    return [each for each in spans if _is_there(each)]


def _known(value: Number) -> float:
    """A number that is known by now."""
    return 0.0 if isinstance(value, Unknown) else value


def _is_there(span: _Span) -> bool:
    length = less(span.ends, span.begins)
    return isinstance(length, Unknown) or length > _NEAR


def _along(span: _Span, placed: Sequence[Thing], *, is_alone: bool) -> Placed:
    """The outlets within a span, each told how far it stands from its beginning."""
    places = [number(each, "position") for each in placed]
    if not is_alone and not known(places):
        return hanging_on(places)
    if not span.is_told and placed:
        return hanging_on((span.ends,))
    inside = tuple(
        each for each in placed if is_alone or _is_within(span, number(each, "position"))
    )
    for each in inside:
        complete(each, {"from_start": less(number(each, "position"), span.begins)})
    return inside


def _is_within(span: _Span, at: Number) -> bool:
    ends = math.inf if isinstance(span.ends, Unknown) else span.ends + _NEAR
    return span.begins - _NEAR <= _known(at) <= ends


def _stretch_of(run: Thing, ref: str, span: _Span, along: Placed) -> Thing:
    values = {fact: value_of(run, fact) for fact in ("what", "form", "room", "depth")}
    values |= {"run": run, "length": less(span.ends, span.begins), "outlets": along}
    is_whole = span.begins == 0 and span.ends is value_of(run, "length")
    label = run.label if is_whole else f"stretch {ref.rpartition('/')[2]} of {run.label}"
    return Thing("stretch", ref, run.place, values, label=label)
