"""The findings of one job as lines, in the order in which one walks through its rooms."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from linter.reports.backing import NOTHING, VERDICTS, on_paper, resting, sources
from linter.reports.entries import named
from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import BADGES

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    from linter.audit.findings import Finding, Stop
    from linter.language.work import WorkLine
    from linter.reports.entries import Entry

_SENTENCE, _WORK, _NOTE = 3, 8, 4
_HANG = 4
_LABEL_WIDTH = 9
_ONE_LINE = 68


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
        if entry.news:
            yield line(entry.news, indent=_WORK, hang=_HANG)
        if entry.standing is not None:
            from linter.reports.sign_offs import said  # noqa: PLC0415  only where one was

            yield line(f"Signed: {said(entry.standing)}", indent=_WORK, hang=_HANG)
    yield _note("Do:", first.do)
    if first.caution:
        yield _note("Caution:", first.caution, "caution")
    yield from _sources(first, told)
    for label, text in resting(each for entry in alike for each in entry.all):
        yield _note(f"{label}:", text)


def _sources(finding: Finding, told: set[object]) -> Iterator[Line]:
    """The clause with what is known and in doubt of it; what was told of a rule is not repeated."""
    own = finding.reference
    if (finding.rule, own) in told:
        yield _note("Rule:", f"{finding.rule}: {own.clause}, as told above.")
        return
    told.add((finding.rule, own))
    for label, text in sources(finding):
        yield _note(f"{label}:", text)


def _entry(entry: Entry) -> Iterator[Line]:
    finding = entry.first
    badge = Span(BADGES[finding.weight], finding.weight, whole=True)
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
    parts = on_paper(step)
    if step.result in VERDICTS:
        yield from (line(each, "work", indent=_WORK, hang=_HANG) for each in parts)
    elif parts:
        yield from _parts(list(parts), " = ")


def _in_full(step: WorkLine) -> Iterator[Line]:
    """A step as the rule has it: name, words, words with values, result."""
    if step.result in VERDICTS:
        yield from _parts([step.name.replace("_", " "), *_verdict(step)], "; ")
        return
    values = "" if step.values in (step.result, NOTHING) else step.values
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
