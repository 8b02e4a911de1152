"""What cannot be told yet, as lines: what to measure, where, how, and what that would settle."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import counted
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.audit.findings import Answer, Asked, OpenQuestion

_MOST_ANSWERS = 4


def unanswered(questions: Iterable[OpenQuestion]) -> Iterator[Line]:
    """The open questions under one heading, the most useful first; nothing where there are none."""
    for number, question in enumerate(questions):
        if not number:
            yield EMPTY
            yield line("CANNOT BE TOLD YET", "advice-heading")
        yield EMPTY
        yield from _question(question)


def _question(question: OpenQuestion) -> Iterator[Line]:
    yield Line((Span(f"{question.label} {_at(question)}", "box"), Span(_settles(question))), 2, 2)
    yield line(question.ask, indent=4, hang=2)
    for room, in_room in groupby(question.things, key=lambda each: each.stop.room):
        stops = join_words(_stops(in_room))
        yield Line((Span(f"{room or 'the whole dwelling'}: ", "label"), Span(stops)), 4, 2)
    for answer in question.answers[:_MOST_ANSWERS]:
        yield Line((Span(f"{answer.rule}: ", "quiet"), Span(_outcomes(answer))), 4, 2)
    more = len(question.answers) - _MOST_ANSWERS
    if more > 0:
        yield line(f"and {counted(more, 'more outcome', 'more outcomes')}", "quiet", 4, 2)


def _at(question: OpenQuestion) -> str:
    stops = len({each.stop.heading for each in question.things})
    things = len(question.things)
    boxes = all(each.stop.box for each in question.things)
    return (
        f"at {counted(stops, 'box', 'boxes')}"
        if boxes
        else f"of {counted(things, 'thing', 'things')}"
    )


def _settles(question: OpenQuestion) -> str:
    settled = (
        f": settles {counted(question.settles, 'check', 'checks')}" if question.settles else ""
    )
    if not question.helps:
        return settled
    joint = ", and" if settled else ":"
    return f"{settled}{joint} helps with {counted(question.helps, 'more', 'more')}"


def _stops(asked: Iterable[Asked]) -> list[str]:
    return [
        f"{heading} (line {next(iter(group)).stop.place.line})"
        for heading, group in groupby(asked, key=lambda each: each.stop.heading)
    ]


def _outcomes(answer: Answer) -> str:
    if not answer.when:
        return f"needs more than this ({counted(answer.checks, 'check', 'checks')})"
    outcomes = {
        "met": "nothing to report",
        "broken": answer.weight,
        "does not apply": "does not apply",
    }
    said = "; ".join(f"{given}: {outcomes[outcome]}" for given, outcome in answer.when)
    return f"{said} ({counted(answer.checks, 'check', 'checks')})"
