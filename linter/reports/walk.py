"""The findings of one job as lines, in the order in which one walks through its rooms."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import cited
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.audit.findings import Finding, Reference, Stop
    from linter.language.work import WorkLine

_BADGES = {"danger": " DANGER ", "violation": " VIOLATION ", "advice": " ADVICE "}
_SENTENCE, _WORK, _NOTE = 3, 8, 4
_LABEL_WIDTH = 9
_ONE_LINE = 68
_NOTHING = "nothing"
_VERDICTS = ("met", "not met", "cannot be told")


def walk(findings: Iterable[Finding]) -> Iterator[Line]:
    """The findings, room by room and box by box; what one rule says at a box stands together."""
    for room, in_room in groupby(findings, key=lambda each: each.stop.room):
        yield EMPTY
        yield line(room.upper() or "THE WHOLE DWELLING", "room")
        for stop, at_stop in groupby(in_room, key=lambda each: each.stop.heading):
            stopped = list(at_stop)
            yield from _stop(stop, stopped[0].stop)
            for number, (_, alike) in enumerate(groupby(stopped, key=_said_together)):
                yield from [EMPTY] if number else []
                yield from _findings(list(alike))


def _stop(heading: str, stop: Stop) -> Iterator[Line]:
    yield EMPTY
    yield Line((Span(heading, "box"), Span(f", line {stop.place.line}", "quiet")), indent=2)


def _said_together(finding: Finding) -> tuple[object, ...]:
    return finding.rule, finding.weight, finding.do, finding.caution, finding.reference


def _findings(alike: list[Finding]) -> Iterator[Line]:
    first = alike[0]
    for finding in alike:
        badge = Span(_BADGES[finding.weight], finding.weight, whole=True)
        yield Line((badge, Span(f" {finding.sentence}")), indent=_SENTENCE, hang=_WORK - _SENTENCE)
        yield line(_where(finding), "quiet", indent=_WORK)
        for step in finding.working:
            yield from _step(step)
    yield _note("Do:", first.do)
    if first.caution:
        yield _note("Caution:", first.caution, "caution")
    yield _note("Rule:", f"{first.rule}: {cited(first.reference)}.")
    if first.reference.doubt:
        yield _note("Doubt:", first.reference.doubt)
    yield from _bases(first)
    usual = tuple(dict.fromkeys(name for finding in alike for name in finding.usual))
    if usual:
        yield _note("Usual:", _rests_on(usual))


def _where(finding: Finding) -> str:
    circuit = finding.stop.circuit
    word = "circuits" if " and " in circuit else "circuit"
    return f"at {finding.place}{f', {word} {circuit}' if circuit else ''}"


def _step(step: WorkLine) -> Iterator[Line]:
    """A step of the arithmetic: on one line where it fits, else one line for each part.

    Of a named step the values are shown; its words stand in the pack and in the JSON form.
    """
    if step.result in _VERDICTS:
        parts, between = _verdict(step), "; "
    else:
        values = "" if step.values in (step.result, _NOTHING) else step.values
        first = step.name.replace("_", " ") or step.text
        parts, between = [each for each in (first, values, step.result) if each], " = "
    whole = between.join(parts)
    if len(whole) <= _ONE_LINE:
        yield line(whole, "work", indent=_WORK, hang=4)
        return
    yield line(parts[0], "work", indent=_WORK, hang=4)
    for part in parts[1:]:
        yield line(between.lstrip("; ") + part, "work", indent=_WORK + 2, hang=4)


def _verdict(step: WorkLine) -> list[str]:
    """What a condition asks, what it comes to with its values, and whether that is met."""
    if step.values == step.text:
        return [f"{step.text}: {step.result}"]
    if step.values in ("yes", "no"):
        return [f"{step.text} = {step.values}: {step.result}"]
    return [step.text, f"that is, {step.values}: {step.result}"]


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
    unread: dict[str, None] = {}
    doubtful: dict[str, None] = {}
    for basis in finding.rests_on:
        stated = basis.reference
        name = basis.name.rpartition(".")[2].replace("_", " ")
        if (stated.document, stated.edition) != (own.document, own.edition):
            elsewhere.setdefault(stated, []).append(f"{name} {basis.value}".rstrip())
        elif stated.known != "read":
            unread[name] = None
        elif stated.doubt not in ("", own.doubt):
            doubtful[name] = None
    for reference, names in elsewhere.items():
        yield _note("Values:", f"{join_words(names)}: {cited(reference)}.")
    said = [f"not read in a text: {join_words(list(unread))}"] if unread else []
    said += [f"in doubt: {join_words(list(doubtful))}"] if doubtful else []
    if said:
        more = f'"precover packs show {finding.rule}" tells more.'
        yield _note("Values:", f"{'; '.join(said)}. {more}")


def _rests_on(usual: tuple[str, ...]) -> str:
    if len(usual) == 1:
        return f"rests on the usual value of {usual[0]}, not on a measurement."
    return f"rests on the usual values of {join_words(usual)}, not on measurements."
