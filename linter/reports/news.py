"""What is new against an earlier audit, as lines; and how each of many files came out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.reports.earlier import CHANGED, KNOWN, NEW
from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.outcomes import Audited, OurFault, TurnedAway
from linter.reports.sayings import counted, weighed
from linter.reports.sign_offs import in_short
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from linter.reports.earlier import News
    from linter.reports.entries import Entry
    from linter.reports.outcomes import Outcome


def known_before(entries: Sequence[Entry], news: News) -> Iterator[Line]:
    """The findings that were told then as they are now, in short; and those that are gone."""
    if entries:
        yield EMPTY
        yield line("KNOWN BEFORE", "advice-heading")
        yield line(f"As told in {news.name}; none of them counts.", indent=2)
    for entry in entries:
        yield from in_short(entry)
    if news.gone:
        yield EMPTY
        yield line("NO LONGER FOUND", "advice-heading")
    for (rule, _, _), each in news.gone:
        yield Line((Span(f"{rule}: ", "label"), Span(each.sentence)), 2, 4)


def against(outcomes: Sequence[Outcome]) -> Iterator[Line]:
    """How many findings are new, changed, known and gone, where an earlier audit is named."""
    news = [each.news for each in outcomes if isinstance(each, Audited) and each.news]
    if not news:
        return
    states = [state for each in news for state in each.states.values()]
    parts = [f"{states.count(state)} {state}" for state in (NEW, CHANGED, KNOWN)]
    gone = sum(len(each.gone) for each in news)
    yield line(
        f"Against {news[0].name}: {join_words(parts)}; {gone} no longer found.", "box", hang=2
    )
    untold = sum(len(each.untold) for each in news)
    yield line(f"{counted(untold, 'check', 'checks')} could be told then, and cannot now.")


def by_file(outcomes: Sequence[Outcome]) -> Iterator[Line]:
    """A line for each of several files: what counts of it."""
    yield EMPTY
    for each in outcomes:
        yield Line((Span(f"{each.file}: ", "label"), Span(_came_out(each))), hang=4)


def _came_out(outcome: Outcome) -> str:
    match outcome:
        case Audited():
            parts = weighed(outcome.outstanding)
            untold = sum(outcome.untold.values())
            parts += [f"{untold} cannot be told"] if untold else []
            nothing = "nothing outstanding" if outcome.news is None else "nothing new outstanding"
            return join_words(parts) if parts else nothing
        case TurnedAway():
            return "not understood, and not audited"
        case OurFault():
            return "not audited, by a fault of ours"
