"""The walk-through: what is listed, what counts as looked at, what becomes a finding."""

from pathlib import Path

import pytest

from linter.audit.audit import audit
from linter.audit.findings import Audit, WalkItem
from linter.jobfile import read_job
from linter.packs.assemble import assemble
from tests.cases.small_packs import BASE, edited, texts_of

JOB = (Path(__file__).parents[2] / "cases/jobs/boathouse.yaml").read_text(encoding="utf-8")
PACK = assemble(texts_of(edited({})), BASE)
JOINTS, CLEAN = "joints-hold-when-pulled", "work-is-clean"
BY = "by: M. Ferrow, on: 2026-03-14"


def _audited(*records: str, stage: str = "made up") -> Audit:
    listed = "".join(f"\n  - {{{each}}}" for each in records)
    stated = JOB.partition("\nlooked_at:")[0].replace("stage: made up", f"stage: {stage}")
    return audit(read_job(f"{stated}\nlooked_at:{listed or ' []'}\n", "job.yaml"), PACK)


def _item(found: Audit, name: str) -> WalkItem:
    (item,) = [each for each in found.walk_through if each.item == name]
    return item


def _states(found: Audit, name: str) -> dict[str, str]:
    return {each.ref: each.state for each in _item(found, name).looks}


def test_nothing_recorded_is_listed_and_is_no_finding() -> None:
    found = _audited()
    assert set(_states(found, CLEAN).values()) == {"to be looked at"}
    assert len(_states(found, JOINTS)) > 1
    assert not {each.rule for each in found.findings} & {JOINTS, CLEAN}


def test_an_item_waits_for_its_stage() -> None:
    assert [each.item for each in _audited(stage="pulled").walk_through] == [CLEAN]


def test_what_nobody_looked_at_is_out_of_sight_once_covered() -> None:
    assert set(_states(_audited(stage="covered"), JOINTS).values()) == {"out of sight"}
    seen = _audited(f"item: {JOINTS}, outcome: as it should be, {BY}", stage="covered")
    assert set(_states(seen, JOINTS).values()) == {"as it should be"}


def test_a_record_without_a_place_is_of_all_things() -> None:
    found = _audited(f"item: {JOINTS}, outcome: as it should be, {BY}")
    item = _item(found, JOINTS)
    assert {each.state for each in item.looks} == {"as it should be"}
    assert {(each.by, each.on) for each in item.looks} == {("M. Ferrow", "2026-03-14")}


def test_a_record_at_a_room_is_of_what_is_in_it() -> None:
    states = {each.ref: (each.stop.room, each.state) for each in _item(_audited(), JOINTS).looks}
    room = next(iter(states.values()))[0]
    found = _audited(f"item: {JOINTS}, at: {room}, outcome: as it should be, {BY}")
    for ref, state in _states(found, JOINTS).items():
        assert (state == "as it should be") == (states[ref][0] == room)


def test_what_is_to_be_put_right_is_a_finding_where_it_was_found() -> None:
    box = next(iter(_states(_audited(), JOINTS)))
    record = f"item: {JOINTS}, at: {box}, outcome: to be put right, found: white slips out, {BY}"
    found = _audited(record)
    (finding,) = [each for each in found.findings if each.rule == JOINTS]
    assert (finding.ref, finding.weight, finding.reference.clause) == (box, "violation", "4-4")
    assert "white slips out" in finding.sentence
    assert finding.working[0].result == "to be put right, looked at by M. Ferrow on 2026-03-14"
    assert finding.do == "Make the joint anew."
    assert found.counts["violation"] == _audited().counts["violation"] + 1


def test_of_two_records_the_last_holds() -> None:
    bad = f"item: {CLEAN}, outcome: to be put right, {BY}"
    good = f"item: {CLEAN}, outcome: as it should be, {BY}"
    assert set(_states(_audited(bad, good), CLEAN).values()) == {"as it should be"}
    assert set(_states(_audited(good, bad), CLEAN).values()) == {"to be put right"}


@pytest.mark.parametrize(
    ("record", "lacking"),
    [
        (f"item: {CLEAN}, {BY}", "what came of it is not stated"),
        (f"item: {CLEAN}, outcome: unknown, {BY}", "what came of it is not stated"),
        (f"item: {CLEAN}, outcome: as it should be, by: M. Ferrow", "who looked, or when, is"),
        (f"item: {CLEAN}, outcome: not applicable, {BY}", "why it does not apply is not stated"),
    ],
)
def test_a_record_that_lacks_something_does_not_count(record: str, lacking: str) -> None:
    (look,) = _item(_audited(record), CLEAN).looks
    assert look.state == "to be looked at"
    assert look.lacking.startswith(lacking)


def test_what_does_not_apply_needs_a_reason() -> None:
    found = _audited(f"item: {CLEAN}, outcome: not applicable, found: no floor yet, {BY}")
    assert set(_states(found, CLEAN).values()) == {"not applicable"}


def test_a_record_of_no_item_is_said_and_one_of_a_later_stage_is_not() -> None:
    later = f"item: {JOINTS}, outcome: as it should be, {BY}"
    odd = f"item: work-is-clear, outcome: as it should be, {BY}"
    found = _audited(later, odd, stage="pulled")
    said = [each.key for each in found.unlooked if each.key.startswith("looked_at")]
    assert said == ["looked_at of work-is-clear, perhaps work-is-clean"]
