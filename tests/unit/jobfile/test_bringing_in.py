"""Answers from a field sheet stand where they are meant; what they would undo is left and told."""

from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from linter.facts import facts_of
from linter.job.stating import Way
from linter.jobfile.bringing_in import Answer, bring_in
from linter.jobfile.reading import read_job
from linter.jobfile.ways import where_stated
from linter.text import Refused
from linter.text.yaml_places import read_places
from linter.trace import trace
from linter.vocabulary.kinds import KINDS
from linter.wiring import derive
from tests.seeded.edits import load

JOB = """\
# The net shed, made up by lamplight.
precover: 1
job: {name: Net shed, stage: pulled}
supplies: {shore: {kind: split phase, voltage: 240 V}}
panel: {breakers: {1: {rating: 20 A}}}   # behind the nets
circuits: {nets: {breakers: [1]}}
rooms:
  shed: {use: workshop}
boxes:
  bench: {room: shed, holds: receptacle}   # by the window
  door: {room: shed, volume: unknown, holds: [switch, {luminaire: {domed_canopy: no}}]}
  post: {room: shed, holds: {receptacle: {rating: 20 A}}}
cables:
  k1:
    from: panel
    circuit: nets
    to: bench  # the run home

    holes: none
  k2: {from: bench, to: door}
  k3: {from: bench, to: post}
"""


def brought(*answers: Answer) -> Any:
    return bring_in(JOB, "shed.yaml", answers)


POST: Way = ("boxes", "post", "holds", 0, "receptacle", "rating")
RECEPTACLE: Way = ("boxes", "bench", "holds", 0, "receptacle", "rating")
WRITTEN: list[tuple[Way, str, str, str]] = [
    (("boxes", "door", "volume"), "22.5 in3", "volume: unknown", "volume: 22.5 in3"),
    (("boxes", "bench", "depth"), "3 in", "receptacle}   # by", "receptacle, depth: 3 in}   # by"),
    (RECEPTACLE, "15 A", "receptacle}   # by", "{receptacle: {rating: 15 A}}}   # by"),
    (
        ("boxes", "post", "holds", 0, "receptacle", "height"),
        "16 in", "{rating: 20 A}}}\ncables", "{rating: 20 A, height: 16 in}}}\ncables",
    ),
    (
        ("boxes", "door", "holds", 0, "switch", "rating"),
        "15 A", "[switch, ", "[{switch: {rating: 15 A}}, ",
    ),
    (
        ("cables", "k1", "at_to", "free_length"),
        "7-1/2 in", "    holes: none\n", "    holes: none\n    at_to: {free_length: 7-1/2 in}\n",
    ),
    (
        ("cables", "k1", "holes", 0, "distance_to_edge"),
        "1-1/2 in", "holes: none", "holes: [{distance_to_edge: 1-1/2 in}]",
    ),
    (("cables", "k2", "along_framing"), "no", "to: door}", "to: door, along_framing: no}"),
    (("panel", "breakers", "1", "leg"), "A", "20 A}}}   # b", "20 A, leg: A}}}   # b"),
    (
        ("usual", "cable", "free_length"),
        "8 in", "to: post}\n", "to: post}\nusual: {cable: {free_length: 8 in}}\n",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("way", "value", "old", "new"), WRITTEN)
def test_an_answer_is_written_in_its_place(way: Way, value: str, old: str, new: str) -> None:
    assert JOB.count(old) == 1
    result = brought(Answer(way, value))
    assert result.text == JOB.replace(old, new)
    assert [each.now for each in result.changes] == [value]


def test_a_reading_is_added_to_those_there_are() -> None:
    item = {"test": "polarity", "outlet": "bench", "result": "correct"}
    result = brought(Answer(("readings",), item, is_item=True))
    assert result.text == f"{JOB}readings: [{{test: polarity, outlet: bench, result: correct}}]\n"


def test_what_the_job_has_come_to_say_since_is_not_written_over() -> None:
    result = brought(Answer(POST, "15 A"))
    assert result.text == JOB
    assert [each.why for each in result.left] == ['the job says "20 A" by now']


def test_what_the_job_said_when_it_was_asked_gives_way() -> None:
    result = brought(Answer(POST, "15 A", was="20 A"))
    assert [(each.was, each.now) for each in result.changes] == [("20 A", "15 A")]


def test_an_answer_that_the_job_cannot_hold_is_left_with_the_reason() -> None:
    result = brought(
        Answer(("boxes", "bench", "depth"), "3 A"), Answer(("boxes", "bench", "height"), "16 in")
    )
    assert [each.what for each in result.left] == ["depth of bench"]
    assert "3 A" in result.left[0].why
    assert ".;" not in result.left[0].why
    assert "height: 16 in" in result.text


def test_an_answer_that_the_job_has_already_changes_nothing() -> None:
    assert brought(Answer(POST, "20 A")) == ("Net shed", JOB, (), ())


def test_a_job_that_cannot_be_read_is_refused() -> None:
    with pytest.raises(Refused):
        bring_in(JOB.replace("precover: 1", "precover: 9"), "shed.yaml", [])


LENGTHS = st.integers(1, 40).map(lambda number: f"{number} in")
WAYS: list[Way] = [
    *(("boxes", box, key) for box in ("bench", "door", "post") for key in ("depth", "set_back")),
    *(
        ("cables", cable, *end, key)
        for cable in ("k1", "k2", "k3")
        for end, key in (((), "length"), (("at_to",), "free_length"), (("at_from",), "fastened_at"))
    ),
]


@settings(deadline=None, max_examples=40)
@given(st.dictionaries(st.sampled_from(WAYS), LENGTHS, max_size=6), st.booleans())
def test_only_the_values_meant_are_changed(values: dict[Way, str], other_ends: bool) -> None:
    text = JOB.replace("\n", "\r\n") if other_ends else JOB
    result = bring_in(text, "shed.yaml", [Answer(*each) for each in values.items()])
    assert len(result.changes) == len(values)
    root = read_places(result.text, "")
    assert all(root.at([*way]).plain() == value for way, value in values.items())
    # Every character of the old text is there, in its order: nothing was taken away or moved.
    rest = iter(result.text)
    assert all(each in rest for each in text)
    remarks = [line for line in text.splitlines() if "#" in line]
    assert all(each.partition("#")[2] in result.text for each in remarks)


def test_each_end_of_a_cable_is_stated_at_its_end() -> None:
    job = read_job(JOB, "shed.yaml")
    ways = [where_stated(job, "cable_end", f"k2@{box}", "free_length") for box in ("bench", "door")]
    assert [each.way[2] for each in ways if each] == ["at_from", "at_to"]


def test_a_fact_that_follows_from_others_is_stated_nowhere() -> None:
    job = read_job(JOB, "shed.yaml")
    assert where_stated(job, "box", "bench", "has_short") is None
    assert where_stated(job, "boxcar", "bench", "depth") is None


STATED = load(Path(__file__).parents[2] / "cases" / "facts-stated.yaml")
# Facts that follow from more than one key, from a list as a whole, or from the thing's being there.
NOT_ASKED_FOR_BY_KEY = {
    "dwelling": {"has_special_work", "has_temporary_power"},
    "appliance": {"distance_to_service_receptacle"},
    "run_break": {"depth_behind"},
    "basin": {"distance_to_receptacle", "receptacle_below_top"},
    "device": {"feeds_from_load_side", "has_electronics"},
    "cable": {"bundled_switched_neutrals", "runs_in_return_air", "terminal_temperature_is_marked"},
    "wire_end": {"free_length", "length_outside"},  # stated at the end of the cable
    "stair": {"level_count"},
}
EXAMPLES = ("weir-house/made-up", "pottery-studio/put-right", "laneway-flat/flat")


def test_what_a_job_can_state_has_its_way() -> None:
    """Of each kind, every fact that is stated by one key is found at some thing of an example."""
    missing: dict[str, set[str]] = {}
    found: dict[str, set[str]] = {}
    for name in EXAMPLES:
        text = (Path(__file__).parents[3] / f"examples/{name}.yaml").read_text(encoding="utf-8")
        job = read_job(text, name)
        wiring = derive(job)
        facts = facts_of(job, wiring, trace(job, wiring))
        for kind, stated in STATED.items():
            asked = [each for each in stated if (fact := KINDS[kind].fact(each)) and fact.ask]
            for thing in facts.things.get(kind, ()):
                for fact in asked:
                    way = where_stated(job, kind, thing.ref, fact)
                    (missing if way is None else found).setdefault(kind, set()).add(fact)
    left = {kind: facts - found.get(kind, set()) for kind, facts in missing.items()}
    assert {kind: facts for kind, facts in left.items() if facts} == NOT_ASKED_FOR_BY_KEY
