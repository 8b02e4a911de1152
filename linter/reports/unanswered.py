"""What cannot be told yet, as lines: what to measure, where, how, and what that would settle."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from linter.audit.stops import stopped_at
from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import counted
from linter.text import join_words
from linter.vocabulary.kinds import KINDS

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.audit.findings import Answer, Asked, OpenQuestion

_MOST_ANSWERS = 4
_VISITS = {
    "box": "AT THE BOXES",
    "cable": "ALONG THE CABLES",
    "panel": "AT THE PANEL",
    "breaker": "AT THE PANEL",
    "circuit": "AT THE PANEL",
    "room": "IN THE ROOMS",
    "appliance": "ON THE APPLIANCES",
}


def unanswered(questions: Iterable[OpenQuestion]) -> Iterator[Line]:
    """The open questions under one heading, by visit, and in each the most useful first.

    Those that settle nothing by themselves, and the same checks together, are asked together. There
    is no line where there is no question.
    """
    by_visit: dict[str, list[OpenQuestion]] = {}
    for question in questions:
        by_visit.setdefault(_visit(question), []).append(question)
    if not by_visit:
        return
    yield EMPTY
    yield line("CANNOT BE TOLD YET", "advice-heading")
    if any(each.everywhere for group in by_visit.values() for each in group):
        yield line('What is alike at all of them is stated once, under "usual".', indent=2)
    for visit, group in by_visit.items():
        yield EMPTY
        yield line(visit, "room", indent=1)
        for number, (_, alike) in enumerate(groupby(group, key=_asked_together)):
            yield from [EMPTY] if number else []
            together = list(alike)
            yield from _together(together) if len(together) > 1 else _question(together[0])


def _visit(question: OpenQuestion) -> str:
    """Where one goes to answer it; where things of several sorts are asked about, the first."""
    return _VISITS.get(stopped_at(question.things[0].stop), "ELSEWHERE")


def _asked_together(question: OpenQuestion) -> tuple[object, ...]:
    if question.settles or question.lacking:
        return (question,)
    places = tuple(dict.fromkeys(each.stop.heading for each in question.things))
    rules = tuple((answer.rule, answer.checks) for answer in question.answers)
    return question.kind, frozenset((question.label, *question.along)), places, rules


def _question(question: OpenQuestion) -> Iterator[Line]:
    yield Line((Span(f"{question.label}{_at(question)}", "box"), Span(_settles(question))), 2, 2)
    yield line(question.ask, indent=4, hang=2)
    yield from _places(question)
    telling = [each for each in question.answers if question.lacking or each.when]
    for answer in telling[:_MOST_ANSWERS]:
        said = counted(answer.checks, "check", "checks") if question.lacking else _outcomes(answer)
        yield Line((Span(f"{answer.rule}: ", "quiet"), Span(said)), 4, 2)
    more = len(telling) - _MOST_ANSWERS
    if more > 0:
        yield line(f"and {counted(more, 'more outcome', 'more outcomes')}", "quiet", 4, 2)


def _together(questions: list[OpenQuestion]) -> Iterator[Line]:
    """Questions that settle the same checks, but only together."""
    first = questions[0]
    labels = join_words([each.label for each in questions])
    settled = counted(first.helps, "check", "checks")
    yield Line((Span(f"{labels}{_at(first)}", "box"), Span(f": together settle {settled}")), 2, 2)
    for each in questions:
        yield Line((Span(f"{each.label}: ", "label"), Span(each.ask)), 4, 2)
    yield from _places(first)
    for answer in first.answers:
        yield line(f"{answer.rule} ({counted(answer.checks, 'check', 'checks')})", "quiet", 4, 2)


def _places(question: OpenQuestion) -> Iterator[Line]:
    if not question.everywhere:
        for room, in_room in groupby(question.things, key=lambda each: each.stop.room):
            stops = ", ".join(_stops(in_room))
            yield Line((Span(f"{room or 'the whole dwelling'}: ", "label"), Span(stops)), 4, 2)


def _at(question: OpenQuestion) -> str:
    """Where it is asked: " at 9 boxes", " of all 12 cables"."""
    every = "all " if question.everywhere else ""
    stops = len({each.stop.heading for each in question.things})
    if all(each.stop.box for each in question.things):
        at = "," if question.label.endswith(" at") else " at"
        return f"{at} {every}{counted(stops, 'box', 'boxes')}"
    kind = KINDS[question.kind]
    return f" of {every}{counted(len(question.things), kind.label, kind.plural)}"


def _settles(question: OpenQuestion) -> str:
    if question.lacking:
        held_up = question.settles + question.helps
        return f": holds up {counted(held_up, 'check', 'checks')}"
    parts = []
    if question.settles:
        parts.append(f"settles {counted(question.settles, 'check', 'checks')}")
    if question.helps:
        along = f", along with {join_words(question.along)}" if question.along else ""
        number = f"{question.helps} more" if question.settles else question.helps
        parts.append(f"helps with {number}{along}")
    return f": {', and '.join(parts)}"


def _stops(asked: Iterable[Asked]) -> Iterator[str]:
    """The places in a room, each with its line; the word "line" is said once."""
    seen: dict[tuple[str, int], None] = {}
    for each in asked:
        box = each.stop.box
        seen[box or each.ref, each.stop.place.line if box else each.place.line] = None
    for number, (name, row) in enumerate(seen):
        yield f"{name} ({row})" if number else f"{name} (line {row})"


def _outcomes(answer: Answer) -> str:
    checks = counted(answer.checks, "check", "checks")
    outcomes = {"met": "nothing to report", "broken": answer.weight}
    said = [f"{given}: {outcomes.get(outcome, outcome)}" for given, outcome in answer.when]
    return f"{'; '.join(said)} ({checks})"
