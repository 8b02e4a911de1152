"""One job at each of its stages: what a visit asks, and what an earlier one does not."""

from functools import cache
from pathlib import Path

import pytest

from linter.audit.audit import audit
from linter.audit.findings import Audit
from linter.cli.shelf import Shelf
from linter.jobfile import read_job
from linter.vocabulary.kinds.dwelling import STAGES

STUDIO = Path(__file__).resolve().parents[3] / "examples/pottery-studio/put-right.yaml"
READINGS = {
    ("outlet", "polarity_reading"),
    ("device", "trip_reading"),
    ("circuit", "trip_reading"),
    ("circuit", "arc_fault_trip_reading"),
}


@cache
def at(stage: str, more: str = "") -> Audit:
    text = STUDIO.read_text("utf-8").replace("stage: made up", f"stage: {stage}") + more
    job = read_job(text, "studio.yaml")
    return audit(job, Shelf().pack_of(job))


def asked(told: Audit) -> set[tuple[str, str]]:
    return {(each.kind, each.fact) for each in told.open}


def test_each_stage_asks_no_less_than_the_one_before() -> None:
    checks = [at(stage).checks for stage in STAGES]
    assert checks == sorted(checks)
    items = [{each.item for each in at(stage).walk_through} for stage in STAGES]
    assert len(items[-1]) > len(items[0])


@pytest.mark.parametrize("stage", STAGES[:-1])
def test_before_it_is_energised_no_reading_is_asked(stage: str) -> None:
    assert not asked(at(stage)) & READINGS


def test_once_it_is_energised_every_reading_that_anyone_would_take_is_asked() -> None:
    told = at("energised")
    assert asked(told) >= READINGS
    assert not told.findings
    (tester,) = [each for each in told.open if each.fact == "polarity_reading"]
    assert "tester" in tester.ask


def test_a_reading_that_was_taken_is_asked_no_more() -> None:
    taken = "readings:\n"
    for circuit in ("lights", "loft", "wheels", "pugmill", "counter", "porch", "laundry"):
        taken += f"  - {{test: arc-fault trip, circuit: {circuit}, result: tripped}}\n"
    taken += "  - {test: polarity, outlet: basin, result: correct}\n"
    before, after = at("energised"), at("energised", taken)
    polarity = [
        {each.ref for one in told.open if one.fact == "polarity_reading" for each in one.things}
        for told in (before, after)
    ]
    assert polarity[0] - polarity[1] == {"basin"}
    arcs = [each for each in after.open if each.fact == "arc_fault_trip_reading"]
    assert len(arcs[0].things if arcs else ()) < len(
        next(each for each in before.open if each.fact == "arc_fault_trip_reading").things
    )


SHED = STUDIO.parents[1] / "net-shed"


def test_the_saved_stages_of_an_example_tell_what_was_put_right_and_what_a_test_showed() -> None:
    found = {}
    for path in sorted(SHED.glob("*.yaml")):
        job = read_job(path.read_text("utf-8"), path.name)
        told = audit(job, Shelf().pack_of(job))
        found[job.stage] = {each.rule for each in told.findings}
    assert found == {
        "pulled": {"wire-end-long-enough", "box-grips-its-cables"},
        "made up": set(),
        "covered": set(),
        "trimmed": set(),
        "energised": {"tester-shows-correct-wiring", "bond-reaches-the-outlet"},
    }
