"""What stands behind a finding, in words: its arithmetic, clause, doubts, sources of values."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.reports.sayings import cited, wants_confirming
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.audit.findings import Finding, Reference
    from linter.language.work import WorkLine

Note = tuple[str, str]
"""A label, such as "Doubt", and what is said under it."""

VERDICTS = ("met", "not met", "cannot be told")
NOTHING = "nothing"


def on_paper(step: WorkLine) -> tuple[str, ...]:
    """A step as one writes it on paper: name, values, result; empty where it says nothing new."""
    if not step.brief or (step.name and step.result in VERDICTS):
        return ()
    if step.result in VERDICTS:
        return (step.brief,)
    values = "" if step.brief in (step.result, NOTHING) else step.brief
    return tuple(each for each in (step.name.replace("_", " "), values, step.result) if each)


def sources(finding: Finding) -> Iterator[Note]:
    """The clause with what is known and in doubt of it, and where the values come from."""
    own = finding.reference
    yield "Rule", f"{finding.rule}: {cited(own)}."
    if own.doubt:
        yield "Doubt", own.doubt
    if finding.unsure:
        yield "Confirm", f"{wants_confirming(finding.unsure, own, finding.stated_weight)}."
    yield from _bases(finding)


def resting(alike: Iterable[Finding]) -> Iterator[Note]:
    """The usual values that findings rest on, and what was taken as none for them."""
    alike = tuple(alike)
    usual = tuple(dict.fromkeys(name for each in alike for name in each.usual))
    if len(usual) == 1:
        yield "Usual", f"rests on the usual value of {usual[0]}, not on a measurement."
    elif usual:
        yield "Usual", f"rests on the usual values of {join_words(usual)}, not on measurements."
    taken = tuple(dict.fromkeys(name for each in alike for name in each.assumed))
    if taken:
        names = join_words(taken)
        yield "Assumed", f"taken as none, since the job says nothing of it: {names}."


def _bases(finding: Finding) -> Iterator[Note]:
    """What the working uses that another document states, that was not read, or is in doubt."""
    own = finding.reference
    elsewhere: dict[Reference, list[str]] = {}
    unread: set[str] = set()
    doubtful: set[str] = set()
    for basis in finding.rests_on:
        stated = basis.reference
        name = basis.name.rpartition(".")[2].replace("_", " ")
        if (stated.document, stated.edition) != (own.document, own.edition):
            elsewhere.setdefault(stated, []).append(f"{name} {basis.value}".rstrip())
        elif stated.known != "read":
            unread.add(name)
        elif stated.doubt not in ("", own.doubt) and basis.what != "limit":
            doubtful.add(name)
    for name, doubt in _doubts_of_limits(finding).items():
        yield "Doubt", f"{name}: {doubt}"
    for reference, names in elsewhere.items():
        yield "Values", f"{join_words(names)}: {cited(reference)}."
    said = [f"{len(unread)} from memory or common practice"] if unread else []
    said += [f"{len(doubtful)} in doubt"] if doubtful else []
    if said:
        which = f'"precover packs show {finding.rule}" tells which.'
        yield "Values", f"{join_words(said)}; {which}"


def _doubts_of_limits(finding: Finding) -> dict[str, str]:
    """What is uncertain about the limits that the finding compares with, by their names."""
    own = finding.reference.doubt
    limits = [each for each in finding.rests_on if each.what == "limit"]
    doubts = {each.name.replace("_", " "): each.reference.doubt for each in limits}
    return {name: doubt for name, doubt in doubts.items() if doubt not in ("", own)}
