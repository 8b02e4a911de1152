"""Laws of sign-offs: over edits of a job and things said of it, nothing is hidden that has changed.

The oracle is apart from fingerprints: what each finding relied on, as the audit shows it, is kept
beside every saying, and a finding that does not count must rely on just that still.
"""

from functools import cache
from typing import NamedTuple

from hypothesis import given, settings
from hypothesis import strategies as st

from linter.audit.audit import Examined, examined
from linter.audit.findings import Finding
from linter.audit.open_checks import OpenCheck, open_checks
from linter.cli.shelf import Shelf
from linter.jobfile import read_job
from linter.reports.layout import plain
from linter.reports.outcomes import Audited
from linter.reports.terminal import report
from linter.signoff.choosing import candidates
from linter.signoff.reading import read_sign_offs
from linter.signoff.said import Saying
from linter.signoff.sayings import AGREED, NOT_A_DEFECT, PUT_RIGHT, SAYINGS
from linter.signoff.standing import SignedOff, key_of, signed_off
from linter.signoff.writing import with_act
from tests.unit.cli.running import BOATHOUSE, PACKS

FILE = "boathouse.sign-off.yaml"
STAGES = ("pulled", "made up", "covered", "trimmed", "energised")
# What stands in the job, and what an edit may put there; the first of each is the boathouse's own.
EDITS = {
    "at_from: {free_length: @}": ("4 in", "3 in", "5 in", "7 in", "unknown"),
    "at_to: {free_length: @}": ("unknown", "2 in", "6 in"),
    "top: {room: loft, volume: @": ("unknown", "9 in3", "10 in3", "30 in3"),
    "bench: {room: slip, volume: @": ("11.5 in3", "7 in3", "8 in3", "unknown"),
    "cable: {sheath: @}": (
        "12/2 NM-B, free_length: 7 in",
        "14/2 NM-B, free_length: 7 in",
        "10/2 NM-B, free_length: 5 in",
    ),
    "rating: @, serves": ("20 A", "15 A", "unknown"),
    "stage: @": ("made up", "pulled", "covered", "energised"),
}
_OWN = {key: values[0] for key, values in EDITS.items()}


class Step(NamedTuple):
    """An edit of the job, or something said of some of what is found in it."""

    slot: str = ""
    value: str = ""
    says: str = ""
    every: int = 1
    day: int = 1


EDIT = st.sampled_from([Step(slot, value) for slot, values in EDITS.items() for value in values])
SAY = st.builds(
    Step,
    slot=st.just(""),
    value=st.just(""),
    says=st.sampled_from(SAYINGS),
    every=st.integers(1, 4),
    day=st.integers(1, 28),
)


class Then(NamedTuple):
    """What was said of a finding, and what it relied on."""

    says: str
    day: int
    relied: object
    stage: str


@cache
def shelf() -> Shelf:
    return Shelf([PACKS])


@cache
def audited(text: str) -> tuple[Examined, tuple[OpenCheck, ...]]:
    job = read_job(text, "boathouse.yaml")
    found = examined(job, shelf().pack_of(job))
    return found, open_checks(found)


def text_of(values: dict[str, str]) -> str:
    text = BOATHOUSE
    for slot, value in values.items():
        text = text.replace(slot.replace("@", _OWN[slot]), slot.replace("@", value))
    return text


def relied(found: Finding | OpenCheck) -> object:
    """What it relied on, as the audit shows it."""
    if isinstance(found, Finding):
        facts = tuple((each.kind, each.ref, each.fact, each.value) for each in found.relies_on)
        return facts, found.sentence
    return found.to_learn


@settings(max_examples=30, deadline=None)
@given(st.lists(st.one_of(EDIT, SAY), min_size=2, max_size=8))
def test_over_any_edits_and_sayings_nothing_is_hidden_whose_facts_have_changed(
    steps: list[Step],
) -> None:
    values, sign_off, then = dict(_OWN), "", {}
    for step in [Step(says=NOT_A_DEFECT, every=1), *steps]:
        if step.slot:
            values[step.slot] = step.value
        text = text_of(values)
        found, checks = audited(text)
        if step.says:
            sign_off = say(step, text, sign_off, then, values["stage: @"])
        if sign_off:
            said = read_sign_offs(sign_off, FILE, "Boathouse")
            signed = signed_off(FILE, said, found, checks, values["stage: @"])
            hidden_only_as_said(found, checks, signed, then, values["stage: @"])
            nothing_is_dropped(found, checks, signed, len(said.latest()))


def say(step: Step, text: str, sign_off: str, then: dict[object, Then], stage: str) -> str:
    """The sign-off file once it is said, of every so manieth; noted in `then` as well."""
    found, checks = audited(text)
    every = [*found.audit.findings, *checks]
    of = list(candidates(found, checks, None))[:: step.every]
    if not of:
        return sign_off
    because = "Looked at." if step.says == NOT_A_DEFECT else ""
    saying = Saying(step.says, "M. Ferrow", f"2026-03-{step.day:02}", because, stage)
    for each in every[:: step.every]:
        before = then.get(key_of(each))
        if before is None or before.day <= step.day:
            then[key_of(each)] = Then(step.says, step.day, relied(each), stage)
    return with_act(sign_off, "Boathouse", saying, [each.item for each in of])


def hidden_only_as_said(
    found: Examined,
    checks: tuple[OpenCheck, ...],
    signed: SignedOff,
    then: dict[object, Then],
    stage: str,
) -> None:
    """What does not count was said not to, of the same facts; and what was said so does not."""
    for each in (*found.audit.findings, *checks):
        standing, before = signed.of(each), then.get(key_of(each))
        hidden = standing is not None and not standing.counts
        same = before is not None and before.relied == relied(each)
        assert not hidden or same
        if before is not None and same:
            agreed = (
                before.says == AGREED
                and each.weight != "danger"
                and STAGES.index(stage) <= STAGES.index(before.stage)
            )
            assert not hidden or before.says == NOT_A_DEFECT or agreed
            assert before.says != PUT_RIGHT or not hidden


def nothing_is_dropped(
    found: Examined, checks: tuple[OpenCheck, ...], signed: SignedOff, said: int
) -> None:
    """Every finding stands in the report, whatever was said; every saying stands somewhere."""
    assert len(signed.standings) + len(signed.idle) == said
    told = " ".join(plain(report([Audited("a.yaml", found.audit, signed, checks)]), 10_000).split())
    for each in found.audit.findings:
        assert each.rule in told
        assert (
            each.label.removeprefix("the ").split(" of ")[0] in told.lower()
            or each.sentence in told
        )
    assert sum(found.audit.counts.values()) >= sum(signed.settled.values())
    assert told.count("Signed: ") or not any(
        each.counts
        for key, each in signed.standings.items()
        if key in {key_of(one) for one in found.audit.findings}
    )


def test_the_template_is_the_boathouse() -> None:
    assert text_of(_OWN) == BOATHOUSE
    for slot, values in EDITS.items():
        for value in values:
            text = text_of({**_OWN, slot: value})
            assert (text == BOATHOUSE) == (value == _OWN[slot])
            audited(text)
