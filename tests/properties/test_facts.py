"""Laws of facts: units and order change nothing, an unknown opens only what depends on it."""

import json
from collections.abc import Iterator
from copy import deepcopy
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from linter.facts import Facts, facts_of
from linter.jobfile import read_job
from linter.text import Refused
from linter.text.yaml_places import read_places
from linter.trace import trace
from linter.units import (
    LENGTH,
    POWER,
    TEMPERATURE,
    VOLUME,
    NotAQuantity,
    Unknown,
    read_quantity,
    same_value,
)
from linter.vocabulary.model import Thing
from linter.wiring import derive
from tests.cases.filled import faults

JOBS = Path(__file__).parents[1] / "cases" / "jobs"
NAMES = ("boathouse", "bell-foundry")
# Keys whose values shape the wiring itself, or merge with others: to make them unknown is to
# change what there is, not what is known of it.
SHAPING = {
    "job", "supplies", "precover", "room", "from", "to", "carries", "for", "circuit", "through",
    "leg_of", "holds", "make_up", "box", "outlets", "outlet", "circuits", "panel",
    "breakers", "poles", "tied_to", "sheath", "conductors", "material", "bond_screw", "connector",
    "protection", "load", "split", "controls", "type", "gangs", "name", "of", "left_open", "marks",
    "walls", "counters", "products", "usual", "leg", "spaces", "volume", "looked_at", "readings",
    "trade_size", "serves",
}  # fmt: skip
OTHER_UNITS = {
    LENGTH: ("mm", 1000, 0.0),
    VOLUME: ("mL", 1e6, 0.0),
    POWER: ("W", 1, 0.0),
    TEMPERATURE: ("C", 1, -273.15),
}

Value = Any
Snapshot = dict[tuple[str, str, str], Value]


@cache
def raw(name: str) -> Any:
    return read_places((JOBS / f"{name}.yaml").read_text(encoding="utf-8"), name).plain()


def facts_in(job: Any) -> Facts:
    read = read_job(json.dumps(job), "job.json")
    wiring = derive(read)
    return facts_of(read, wiring, trace(read, wiring))


def snapshot(facts: Facts) -> Snapshot:
    """All facts as plain values: things by their names, in no order."""
    return {
        (kind, name_of(thing), fact): plain(value)
        for kind, things in facts.things.items()
        for thing in things
        for fact, value in thing.__dict__.items()
    }


def plain(value: Value) -> Value:
    if isinstance(value, Thing):
        return name_of(value)
    if isinstance(value, tuple):
        return frozenset(map(name_of, value))
    if isinstance(value, Unknown):
        return Unknown(ref for ref in value.because if getattr(ref, "kind", "") != "joint")
    return value


def name_of(thing: Thing) -> str:
    """The name of a thing; a joint, whose number says nothing, by the wire ends it joins."""
    if thing.kind != "joint":
        return thing.ref
    return "joint of " + ", ".join(sorted(end.ref for end in thing.__dict__["wire_ends"]))


@cache
def usual_snapshot(name: str) -> Snapshot:
    return snapshot(facts_in(raw(name)))


def differing(one: Snapshot, other: Snapshot) -> Iterator[tuple[str, str, str]]:
    assert one.keys() == other.keys()
    return (key for key in one if not is_same(one[key], other[key]))


def is_same(one: Value, other: Value) -> bool:
    if isinstance(one, Unknown) or isinstance(other, Unknown):
        both = isinstance(one, Unknown) and isinstance(other, Unknown)
        return both and one.because == other.because
    if isinstance(one, float) and isinstance(other, float):
        return same_value(one, other)
    return bool(one == other)


def leaves(value: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    if isinstance(value, dict):
        for key, each in value.items():
            yield from leaves(each, (*path, key))
    elif isinstance(value, list):
        for number, each in enumerate(value):
            yield from leaves(each, (*path, number))
    else:
        yield path


def at(job: Any, path: tuple[Any, ...]) -> Any:
    for key in path:
        job = job[key]
    return job


def in_other_units(text: object) -> str | None:
    """The same measure in another unit, or None of what is no measure of such a kind."""
    try:
        quantity = read_quantity(text) if isinstance(text, str) else None
    except NotAQuantity:
        return None
    if quantity is None or quantity.dimension not in OTHER_UNITS:
        return None
    unit, factor, zero = OTHER_UNITS[quantity.dimension]
    return f"{quantity.value * factor + zero!r} {unit}"


MEASURES = {
    name: [path for path in leaves(raw(name)) if in_other_units(at(raw(name), path))]
    for name in NAMES
}
OPEN_TO_DOUBT = {
    name: [
        path
        for path in leaves(raw(name))
        if len(path) > 2 and not SHAPING & {key for key in path[2:] if isinstance(key, str)}
        and path[0] in ("rooms", "boxes", "cables", "appliances", "panel")
    ]
    for name in NAMES
}  # fmt: skip


@pytest.mark.parametrize("name", NAMES)
def test_the_jobs_have_measures_and_facts_to_doubt(name: str) -> None:
    assert len(MEASURES[name]) >= 20
    assert len(OPEN_TO_DOUBT[name]) >= 20


@settings(max_examples=30, deadline=None)
@given(st.data())
def test_the_unit_of_a_measure_changes_nothing(data: st.DataObject) -> None:
    name = data.draw(st.sampled_from(NAMES))
    chosen = data.draw(st.sets(st.sampled_from(MEASURES[name]), min_size=1))
    job = deepcopy(raw(name))
    for path in chosen:
        at(job, path[:-1])[path[-1]] = in_other_units(at(job, path))
    assert list(differing(usual_snapshot(name), snapshot(facts_in(job)))) == []


def in_other_order(value: Any, data: st.DataObject) -> Any:
    if isinstance(value, dict):
        keys = data.draw(st.permutations(list(value)))
        return {key: in_other_order(value[key], data) for key in keys}
    return value


@settings(max_examples=20, deadline=None)
@given(st.data())
def test_the_order_of_rooms_boxes_cables_and_keys_changes_nothing(data: st.DataObject) -> None:
    name = data.draw(st.sampled_from(NAMES))
    job = {key: in_other_order(value, data) for key, value in raw(name).items()}
    # The first supply is the usual one, so that their order does say something.
    job["supplies"] = raw(name)["supplies"]
    facts = facts_in(job)
    assert faults(facts) == []
    assert list(differing(usual_snapshot(name), snapshot(facts))) == []


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_a_fact_made_unknown_opens_only_what_depends_on_it(data: st.DataObject) -> None:
    name = data.draw(st.sampled_from(NAMES))
    path = data.draw(st.sampled_from(OPEN_TO_DOUBT[name]))
    job = deepcopy(raw(name))
    at(job, path[:-1])[path[-1]] = "unknown"
    try:
        facts = facts_in(job)
    except Refused:
        assume(False)
        return
    assert faults(facts) == []
    before, after = usual_snapshot(name), snapshot(facts)
    opened = list(differing(before, after))
    for key in opened:
        assert isinstance(after[key], Unknown), (path, key, before[key], after[key])
