"""The findings of one job as lines, in the order in which one walks through its rooms."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from linter.reports.entries import named
from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import cited
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    from linter.audit.findings import Finding, Reference, Stop
    from linter.language.work import WorkLine
    from linter.reports.entries import Entry

_BADGES = {"danger": " DANGER ", "violation": " VIOLATION ", "advice": " ADVICE "}
_SENTENCE, _WORK, _NOTE = 3, 8, 4
_HANG = 4
_LABEL_WIDTH = 9
_ONE_LINE = 68
_NOTHING = "nothing"
_VERDICTS = ("met", "not met", "cannot be told")


def walk(findings: Iterable[Entry], full: bool = False) -> Iterator[Line]:
    """The findings, room by room and box by box; what one rule says at a box stands together.

    With `full` the working is shown as the rule has it, else as one writes it on paper.
    """
    work = _in_full if full else _in_brief
    told: set[object] = set()
    for room, in_room in groupby(findings, key=lambda each: each.first.stop.room):
        yield EMPTY
        yield line(room.upper() or "THE WHOLE DWELLING", "room")
        for stop, at_stop in groupby(in_room, key=lambda each: each.first.stop.heading):
            stopped = list(at_stop)
            yield from _stop(stop, stopped[0].first.stop)
            for number, (_, alike) in enumerate(groupby(stopped, key=_said_together)):
                yield from [EMPTY] if number else []
                yield from _entries(list(alike), work, told)


def _stop(heading: str, stop: Stop) -> Iterator[Line]:
    yield EMPTY
    yield Line((Span(heading, "box"), Span(f", line {stop.place.line}", "quiet")), indent=2)


def _said_together(entry: Entry) -> tuple[object, ...]:
    finding = entry.first
    return finding.rule, finding.weight, finding.do, finding.caution, finding.reference


def _entries(
    alike: list[Entry], work: Callable[[WorkLine], Iterator[Line]], told: set[object]
) -> Iterator[Line]:
    first = alike[0].first
    for entry in alike:
        yield from _entry(entry)
        for step in entry.first.working:
            yield from work(step)
    yield _note("Do:", first.do)
    if first.caution:
        yield _note("Caution:", first.caution, "caution")
    yield from _sources(first, told)
    usual = dict.fromkeys(name for entry in alike for each in entry.all for name in each.usual)
    if usual:
        yield _note("Usual:", _rests_on(tuple(usual)))
    taken = dict.fromkeys(name for entry in alike for each in entry.all for name in each.assumed)
    if taken:
        names = join_words(list(taken))
        yield _note("Assumed:", f"taken as none, since the job says nothing of it: {names}.")


def _sources(finding: Finding, told: set[object]) -> Iterator[Line]:
    """The clause with what is known and in doubt of it; what was told of a rule is not repeated."""
    own = finding.reference
    if (finding.rule, own) in told:
        yield _note("Rule:", f"{finding.rule}: {own.clause}, as told above.")
        return
    told.add((finding.rule, own))
    yield _note("Rule:", f"{finding.rule}: {cited(own)}.")
    if own.doubt:
        yield _note("Doubt:", own.doubt)
    yield from _bases(finding)


def _entry(entry: Entry) -> Iterator[Line]:
    finding = entry.first
    badge = Span(_BADGES[finding.weight], finding.weight, whole=True)
    yield Line((badge, Span(f" {finding.sentence}")), indent=_SENTENCE, hang=_WORK - _SENTENCE)
    if entry.others:
        also = f"Also: {named(entry.others, finding.place.line)}."
        yield line(also, indent=_WORK, hang=_HANG)
    yield line(_where(finding), "quiet", indent=_WORK)


def _where(finding: Finding) -> str:
    circuit = finding.stop.circuit
    word = "circuits" if " and " in circuit else "circuit"
    return f"at {finding.place}{f', {word} {circuit}' if circuit else ''}"


def _in_brief(step: WorkLine) -> Iterator[Line]:
    """A step as on paper: name, values, result; a step that says nothing new is left out."""
    if not step.brief or (step.name and step.result in _VERDICTS):
        return
    if step.result in _VERDICTS:
        yield line(step.brief, "work", indent=_WORK, hang=_HANG)
        return
    values = "" if step.brief in (step.result, _NOTHING) else step.brief
    yield from _parts([step.name.replace("_", " "), values, step.result], " = ")


def _in_full(step: WorkLine) -> Iterator[Line]:
    """A step as the rule has it: name, words, words with values, result."""
    if step.result in _VERDICTS:
        yield from _parts([step.name.replace("_", " "), *_verdict(step)], "; ")
        return
    values = "" if step.values in (step.result, _NOTHING) else step.values
    yield from _parts([step.name.replace("_", " "), step.text, values, step.result], " = ")


def _parts(parts: list[str], between: str) -> Iterator[Line]:
    """The parts on one line where they fit, else one line for each."""
    first, *others = [each for each in parts if each]
    whole = between.join([first, *others])
    if len(whole) <= _ONE_LINE:
        yield line(whole, "work", indent=_WORK, hang=_HANG)
        return
    yield line(first, "work", indent=_WORK, hang=_HANG)
    for part in others:
        yield line(between.lstrip("; ") + part, "work", indent=_WORK + 2, hang=_HANG)


def _verdict(step: WorkLine) -> list[str]:
    """What a condition asks, what it comes to with its values, and whether that is met."""
    if step.values == step.text:
        return [f"{step.text}: {step.result}"]
    if step.values in ("yes", "no"):
        return [f"{step.text} = {step.values}: {step.result}"]
    return [step.text, f"{step.values}: {step.result}"]


def _note(label: str, text: str, style: str = "") -> Line:
    return Line(
        (Span(label.ljust(_LABEL_WIDTH), style or "label", whole=True), Span(text)),
        indent=_NOTE,
        hang=_LABEL_WIDTH,
    )


def _bases(finding: Finding) -> Iterator[Line]:
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
        yield _note("Doubt:", f"{name}: {doubt}")
    for reference, names in elsewhere.items():
        yield _note("Values:", f"{join_words(names)}: {cited(reference)}.")
    said = [f"{len(unread)} from memory or common practice"] if unread else []
    said += [f"{len(doubtful)} in doubt"] if doubtful else []
    if said:
        which = f'"precover packs show {finding.rule}" tells which.'
        yield _note("Values:", f"{join_words(said)}; {which}")


def _doubts_of_limits(finding: Finding) -> dict[str, str]:
    """What is uncertain about the limits that the finding compares with, by their names."""
    own = finding.reference.doubt
    limits = [each for each in finding.rests_on if each.what == "limit"]
    doubts = {each.name.replace("_", " "): each.reference.doubt for each in limits}
    return {name: doubt for name, doubt in doubts.items() if doubt not in ("", own)}


def _rests_on(usual: tuple[str, ...]) -> str:
    if len(usual) == 1:
        return f"rests on the usual value of {usual[0]}, not on a measurement."
    return f"rests on the usual values of {join_words(usual)}, not on measurements."
