"""What a job leaves out and is taken as none is recorded; what it says is not."""

from typing import Any

import pytest
import yaml

from linter.facts import Facts, facts_of
from linter.facts.left_out import LEFT_OUT
from linter.jobfile import read_job
from linter.trace import trace
from linter.vocabulary.model import FactRef
from linter.wiring import derive

SHED = """
precover: 1
job: {name: Net shed}
supplies: {service: {kind: split phase, voltage: 240 V, rating: 100 A}}
panel: {breakers: {1: {rating: 20 A}}}
circuits: {shed: {breakers: [1]}}
rooms: {shed: {use: workshop}, wash: {use: bathroom}}
boxes: {bench: {room: shed, holds: receptacle}, mirror: {room: wash, holds: receptacle}}
cables:
  k1: {sheath: 12/2 NM-B, from: panel, to: bench, circuit: shed, holes: [{distance_to_edge: 1 in}]}
  k2: {sheath: 12/2 NM-B, from: bench, to: mirror}
appliances: {winch: {outlets: [bench]}}
"""
PLACES: dict[str, tuple[tuple[str | int, ...], str]] = {
    "room": (("rooms", "shed"), "shed"),
    "box": (("boxes", "bench"), "bench"),
    "cable": (("cables", "k1"), "k1"),
    "cable_end": (("cables", "k1"), "k1@bench"),
    "bored_hole": (("cables", "k1", "holes", 0), "k1/1"),
    "appliance": (("appliances", "winch"), "winch"),
}
SAID: dict[str, Any] = {"bundled": "no", "largest_breaker": "none"}
COUNTS = ("fixture_studs", "hickeys", "terminal_blocks", "shares_clamp_with")
FIELDS = [(kind, field) for kind, fields in LEFT_OUT.items() for field in fields]


def facts(kind: str = "room", **said: object) -> Facts:
    """The facts of the shed, with more said of the thing of that kind."""
    data = yaml.safe_load(SHED)
    at = data
    for step in PLACES[kind][0]:
        at = at[step]
    at.update(said)
    job = read_job(yaml.safe_dump(data), "shed.yaml")
    wiring = derive(job)
    return facts_of(job, wiring, trace(job, wiring))


@pytest.mark.parametrize(("kind", "field"), FIELDS)
def test_what_is_left_out_is_recorded_and_what_is_said_is_not(kind: str, field: str) -> None:
    fact, ref = LEFT_OUT[kind][field].fact, PLACES[kind][1]
    assert facts().thing(kind, ref).assumed[fact] == FactRef(kind, ref, fact)
    none = 0 if field in COUNTS else SAID.get(field, "no")
    for said in (none, "unknown"):
        assert fact not in facts(kind, **{field: said}).thing(kind, ref).assumed


def test_what_follows_from_it_names_what_would_say_it() -> None:
    shed = facts()
    sink, bundle = FactRef("room", "shed", "has_sink"), FactRef("cable", "k1", "bundled_conductors")
    assert shed.thing("receptacle", "bench").assumed["room_has_sink"] == sink
    assert shed.thing("conductor", "k1.black").assumed["bundled_conductors"] == bundle
    assert shed.thing("cable", "k1").assumed["bundle_length"] == bundle


def test_a_room_that_may_well_have_a_sink_or_a_tub_is_asked() -> None:
    wash = facts().thing("room", "wash")
    assert not {"has_sink", "has_tub"} & wash.assumed.keys()
    asked = {fact: wash.__dict__[fact].because for fact in ("has_sink", "has_tub")}
    assert asked == {fact: {FactRef("room", "wash", fact)} for fact in asked}
