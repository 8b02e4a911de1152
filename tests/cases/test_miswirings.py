"""Every single miswiring of small circuits does no harm, and it is said why, or is found."""

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from linter.audit.judging import in_force, judge_all
from linter.cli.shelf import Shelf
from linter.facts import facts_of
from linter.job.boxes import MakeUp, StatedJoint, StatedLanding
from linter.job.jobs import Job
from linter.job.stated import BoxId
from linter.packs.model import Pack
from linter.trace import trace
from linter.wiring import derive
from linter.wiring.model import Wiring
from tests.cases.miswiring_edits import Arrangement, arrangement, miswirings
from tests.cases.miswiring_oracle import Doing
from tests.cases.small_jobs import small_job

TABLE = yaml.safe_load(
    (Path(__file__).parent / "miswirings/circuits.yaml").read_text(encoding="utf-8")
)


@cache
def _pack() -> Pack:
    return Shelf().pack_named("us-nec-2023")


def _found(job: Job, wiring: Wiring) -> set[tuple[str, str]]:
    """What the pack's rules find, as pairs of rule and thing."""
    facts = facts_of(job, wiring, trace(job, wiring))
    judged = judge_all(facts.things, in_force(_pack().rules, job.stage), _pack().library)
    return {(each.rule.name, f"{each.thing.kind} {each.thing.ref}") for each in judged.broken}


def _boxes() -> Iterator[Any]:
    for case in TABLE["cases"]:
        for box in case["boxes"]:
            yield pytest.param(case, box, id=f"{case['case']}: {box}")


def _edited(job: Job, name: str, wrong: Arrangement) -> Job:
    """The job with one box made up as stated, joint by joint; nothing of it is derived."""
    box = job.boxes[BoxId(name)]
    make_up = MakeUp(
        place=box.place,
        joints=tuple(StatedJoint(place=box.place, of=each) for each in wrong.stated_joints),
        landings=tuple(
            StatedLanding(place=box.place, terminal=terminal, wires=on)
            for terminal, on in wrong.stated_landings
        ),
        capped=wrong.capped,
        left_open=wrong.stated_open,
    )
    boxes = {**job.boxes, BoxId(name): box.model_copy(update={"make_up": make_up})}
    return job.model_copy(update={"boxes": boxes})


@pytest.mark.parametrize(("case", "box"), list(_boxes()))
def test_every_miswiring_of_a_box_is_found_or_does_no_harm(case: dict[str, Any], box: str) -> None:
    job = small_job(TABLE["common"], case)
    wiring = derive(job)
    before, right = _found(job, wiring), Doing(job, wiring)
    overlooked = []
    for what, wrong in miswirings(arrangement(wiring, box)):
        changed = _edited(job, box, wrong)
        wired = derive(changed)
        if not _found(changed, wired) - before and not right.same_as(Doing(changed, wired)):
            overlooked.append(what)
    assert not overlooked


@pytest.mark.parametrize("case", TABLE["cases"], ids=lambda case: case["case"])
def test_a_make_up_stated_as_it_is_derived_changes_nothing(case: dict[str, Any]) -> None:
    job = small_job(TABLE["common"], case)
    wiring = derive(job)
    for box in case["boxes"]:
        changed = _edited(job, box, arrangement(wiring, box))
        wired = derive(changed)
        assert Doing(job, wiring).same_as(Doing(changed, wired)).startswith("each outlet")
        assert _found(changed, wired) == _found(job, wiring)


SAME = "each outlet has the same in every position of the switches"
FOUR_WAY = "a four-way switch between two three-way switches"
THROWS = "only which throw of a switch is which has changed"


@pytest.mark.parametrize(
    ("circuit", "box", "what", "why"),
    [
        ("a three-way pair", "low", "k2.black and k2.red exchanged", THROWS),
        (
            "a four-way switch between two three-way switches",
            "mid",
            "k2.black and k2.red exchanged",
            THROWS,
        ),
        ("a dead-end single outlet", "bench", "k1.black joined with what is on bench.hot 2", SAME),
        ("supply at the switch, one light", "door", "k1.black and k2.black exchanged", SAME),
        ("a dead-end single outlet", "bench", "k1.black and k1.white exchanged", ""),
        ("a three-way pair", "low", "k1.black and k2.red exchanged", ""),
        ("two circuits in one box", "desk", "k1.white and k2.white exchanged", ""),
    ],
)
def test_the_reason_why_a_miswiring_does_no_harm_is_told(
    circuit: str, box: str, what: str, why: str
) -> None:
    (case,) = [each for each in TABLE["cases"] if each["case"] == circuit]
    job = small_job(TABLE["common"], case)
    wiring = derive(job)
    wrong = dict(miswirings(arrangement(wiring, box)))[what]
    changed = _edited(job, box, wrong)
    assert Doing(job, wiring).same_as(Doing(changed, derive(changed))) == why
