"""Every declared fact is filled for every thing, of its type, and unknowns have a ground."""

from pathlib import Path

import pytest
import yaml

from linter.facts import Facts, facts_of
from linter.job.jobs import Job
from linter.jobfile import read_job
from linter.trace import trace
from linter.units import Unknown
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import Thing, place_of, value_of
from linter.wiring import derive
from tests.cases.filled import faults

ROOT = Path(__file__).resolve().parents[3]
BOATHOUSE = ROOT / "tests/cases/jobs/boathouse.yaml"
FOUNDRY = ROOT / "tests/cases/jobs/bell-foundry.yaml"
STATED = ROOT / "tests/cases/facts-stated.yaml"
JOBS = (BOATHOUSE, FOUNDRY, *sorted((ROOT / "examples").rglob("*.yaml")))


def facts_in(path: Path) -> tuple[Job, Facts]:
    job = read_job(path.read_text(encoding="utf-8"), path.name)
    wiring = derive(job)
    return job, facts_of(job, wiring, trace(job, wiring))


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.stem)
def test_every_fact_of_every_thing_is_filled(path: Path) -> None:
    _, facts = facts_in(path)
    assert faults(facts) == []
    assert list(facts.things) == list(KINDS)


def test_the_two_jobs_have_things_of_every_kind() -> None:
    found = {
        kind
        for path in (BOATHOUSE, FOUNDRY)
        for kind, things in facts_in(path)[1].things.items()
        if things
    }
    assert found == KINDS.keys()


def test_every_fact_is_known_somewhere_in_the_two_jobs() -> None:
    every = {(kind.name, fact.name) for kind in KINDS.values() for fact in kind.facts}
    known = {
        (kind, fact.name)
        for path in (BOATHOUSE, FOUNDRY)
        for kind, things in facts_in(path)[1].things.items()
        for thing in things
        for fact in KINDS[kind].facts
        if not isinstance(value_of(thing, fact.name), Unknown)
    }
    assert every - known == set()


def test_a_thing_knows_where_and_how_its_facts_are_stated() -> None:
    _, facts = facts_in(FOUNDRY)
    end = facts.thing("wire_end", "k3.black@furnace-light")
    assert end.label == "black of k3 in furnace-light"
    assert end.written["free_length"] == "7 in"
    assert end.usual == {"size"}
    assert place_of(end, "free_length").line != end.place.line or end.place.column > 1
    assert place_of(end, "circuits") == end.place
    loop = facts.thing("passing_wire", "k5.red@door")
    assert loop.written == {"loop_length": "14 in", "size": "14 AWG"}
    assert loop.usual == frozenset()
    assert facts.thing("conductor", "k2.black").usual >= {"size", "material"}
    assert "bundled_conductors" not in facts.thing("conductor", "k2.black").usual


def test_a_fact_that_follows_from_one_field_knows_the_place_of_it() -> None:
    expected = yaml.safe_load(STATED.read_text(encoding="utf-8"))
    stated = {
        (kind, fact)
        for path in (BOATHOUSE, FOUNDRY)
        for kind, things in facts_in(path)[1].things.items()
        for thing in things
        for fact in thing.stated_at
    }
    assert stated == {(kind, fact) for kind, facts in expected.items() for fact in facts}


def test_the_place_of_a_fact_is_where_its_value_is_written() -> None:
    job, facts = facts_in(FOUNDRY)
    lines = FOUNDRY.read_text(encoding="utf-8").splitlines()
    checked = 0
    for things in facts.things.values():
        for thing in things:
            for fact in thing.written.keys() & thing.stated_at.keys():
                place = place_of(thing, fact)
                assert place.file == job.place.file
                text = lines[place.line - 1][place.column - 1 :]
                assert thing.written[fact].split()[0] in text, (thing, fact)
                checked += 1
    assert checked > 100


def test_a_fact_that_rests_on_a_usual_value_says_so() -> None:
    _, facts = facts_in(FOUNDRY)
    for kind, ref, fact in (
        ("box", "mould-bench", "marked_volume"),
        ("cable", "k2", "size"),
        ("conductor", "k2.black", "size"),
        ("wire_end", "k2.black@furnace-light", "size"),
        ("wire_end", "k2.black@furnace-light", "free_length"),
        ("breaker", "panel 1", "is_arc_fault"),
        ("joint", "door/1", "largest_size"),
        ("cable", "k9", "ambient"),
        ("outlet", "mould-bench", "room_has_tub"),
        ("device", "mould-bench", "largest_wire"),
        ("receptacle", "mould-bench", "rating"),
    ):
        assert fact in facts.thing(kind, ref).usual, (kind, ref, fact)
    assert "free_length" not in facts.thing("wire_end", "k3.black@furnace-light").usual


@pytest.mark.parametrize(
    ("kind", "ref", "label"),
    [
        ("receptacle", "mould-bench", "receptacle mould-bench in casting"),
        ("cable", "k1", "cable k1, panel to door"),
        ("cable_end", "k1@door", "cable k1 at door"),
        ("panel_end", "k1.black@panel", "black of k1 in the panel"),
        ("joint", "door/1", "joint 1 in door"),
        ("breaker", "panel 1", "breaker 1 of the panel"),
        ("passing_wire", "k5.red@door", "red of k5 through door"),
        ("bored_hole", "k5/2", "notch 2 of cable k5"),
        ("box", "door", "box door"),
        ("circuit", "moulds", "circuit moulds"),
    ],
)
def test_a_thing_is_called_as_an_electrician_calls_it(kind: str, ref: str, label: str) -> None:
    _, facts = facts_in(FOUNDRY)
    assert facts.thing(kind, ref).label == label


def test_things_stand_in_the_order_of_the_file() -> None:
    job, facts = facts_in(FOUNDRY)
    assert refs(facts.things["box"]) == list(job.boxes)
    assert refs(facts.things["cable"]) == list(job.cables)
    assert refs(facts.things["room"]) == list(job.rooms)


def refs(things: tuple[Thing, ...]) -> list[str]:
    return [thing.ref for thing in things]
