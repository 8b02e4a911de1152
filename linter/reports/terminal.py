"""The report of an audit for people at a terminal, or in a plain text file."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from linter.audit.findings import OUT_OF_SIGHT, TO_BE_LOOKED_AT
from linter.reports.entries import entries
from linter.reports.layout import EMPTY, Line, Span, fold, line
from linter.reports.outcomes import Audited, Outcome, audits, cannot_tell, counts
from linter.reports.sayings import (
    CAUTION,
    CLOSING,
    counted,
    counted_by_weight,
    held_to_advice,
    judged_by,
    taken_as_none,
)
from linter.reports.to_look_at import to_look_at
from linter.reports.unanswered import unanswered
from linter.reports.walk import walk
from linter.signoff.standing import is_judged_no_defect

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from rich.text import Text

    from linter.audit.findings import Audit, Unlooked
    from linter.reports.entries import Entry

# The signal words of ISO 3864 and ANSI Z535 and their colours: danger red, warning orange, caution
# yellow, notice blue.
_COLOURS = {
    "danger": "bold #ffffff on #c8102e",
    "violation": "bold #000000 on #ff8200",
    "caution": "bold #000000 on #ffd100",
    "advice": "bold #ffffff on #005eb8",
    "advice-heading": "bold #ffffff on #005eb8",
    "room": "bold underline",
    "box": "bold",
    "label": "bold",
    "quiet": "dim",
}


def report(outcomes: Sequence[Outcome], full: bool = False) -> Iterator[Line]:
    """The whole report: the caution, each audit, the counts, and who decides.

    With `full` the arithmetic is shown in the words of the rules. Where nothing was audited nothing
    is counted either: a row of noughts would look like a clean sheet.
    """
    if not audits(outcomes):
        yield from _not_audited(len(outcomes))
        return
    yield Line((Span("CAUTION", "caution", whole=True), Span(f"  {CAUTION}")), hang=2)
    shown = [
        (each, entries(each.audit.findings, each.signed, each.news))
        for each in outcomes
        if isinstance(each, Audited)
    ]
    for audited, found in shown:
        yield from _audit(audited, found, full)
    yield EMPTY
    yield from _totals(outcomes, sum(len(found) for _, found in shown))
    if len(outcomes) > 1:
        from linter.reports.news import by_file  # noqa: PLC0415  of one file all is said above

        yield from by_file(outcomes)
    yield EMPTY
    yield line(CLOSING)


def coloured(lines: Iterable[Line], width: int) -> Iterator[Text]:
    """The lines as `rich` prints them, folded to the width of the terminal."""
    from rich.text import Text  # noqa: PLC0415  only what prints to a terminal pays for it

    for row in fold(lines, width):
        alike = groupby(row, key=lambda span: _COLOURS.get(span.style, ""))
        parts = [("".join(span.text for span in spans), style) for style, spans in alike]
        yield Text.assemble(*parts)


def _audit(audited: Audited, found: tuple[Entry, ...], full: bool) -> Iterator[Line]:
    file, audit, signed = audited.file, audited.audit, audited.signed
    yield EMPTY
    yield Line((Span(audit.job or file, "box"), Span(f", {audit.stage}", "quiet")))
    yield line(f"{file}, by {judged_by(audit)}", "quiet", indent=2, hang=2)
    if audit.held.rules:
        yield line(held_to_advice(audit.held), indent=2, hang=2)
    judged, known, told = _sorted_out(found, audited)
    yield from walk(told, full)
    if audited.news is not None:
        from linter.reports.news import known_before  # noqa: PLC0415  only against an earlier audit

        yield from known_before(known, audited.news)
    if audited.news is None or audited.news.untold:
        yield from unanswered(audit.open)
    yield from to_look_at(audit.walk_through)
    if signed.file:
        from linter.reports.sign_offs import settled  # noqa: PLC0415  only where something was said

        yield from settled(judged, signed)
    if audit.unlooked:
        listed = ", ".join(map(_unlooked, audit.unlooked))
        yield EMPTY
        yield line(f"Stated, but no rule of this pack looks at it: {listed}.", "quiet", hang=2)
    if audit.assumed:
        listed = ", ".join(taken_as_none(audit.assumed))
        yield EMPTY
        yield line(f"Taken as none, since the job says nothing of it: {listed}.", hang=2)


def _sorted_out(
    found: Iterable[Entry], audited: Audited
) -> tuple[list[Entry], list[Entry], list[Entry]]:
    """What is judged not a defect, what is known from an earlier audit, and what else is found."""
    judged, known, told = [], [], []
    for each in found:
        if is_judged_no_defect(each.standing):
            judged.append(each)
        elif audited.news is not None and audited.news.is_known(each.first):
            known.append(each)
        else:
            told.append(each)
    return judged, known, told


def _unlooked(unlooked: Unlooked) -> str:
    """A key and where it first stands: "depth of box (line 8)", "walls (2, from line 40)"."""
    what = f"{unlooked.key} of {unlooked.of}" if unlooked.of else unlooked.key
    count, first = len(unlooked.places), unlooked.places[0].line
    return f"{what} (line {first})" if count == 1 else f"{what} ({count}, from line {first})"


def _not_audited(number: int) -> Iterator[Line]:
    files = counted(number, "file was", "files were")
    yield line(f"NOT AUDITED: {files} not understood, and nothing was looked at.", "box", hang=2)


def _totals(outcomes: Sequence[Outcome], places: int) -> Iterator[Line]:
    found = audits(outcomes)
    by_weight = counts(outcomes)
    checks = counted(sum(audit.checks for audit in found), "check", "checks")
    untold = sum(cannot_tell(outcomes).values())
    said = f"{counted_by_weight(by_weight)}, from {checks}."
    findings = sum(by_weight.values())
    if places != findings:
        said = f"{counted(places, 'place', 'places')}, {findings} findings: {said}"
    yield line(said, "box", hang=2)
    if untold:
        yield line(f"{counted(untold, 'check', 'checks')} cannot be told yet.", "box")
    yield from _signed_and_new([each for each in outcomes if isinstance(each, Audited)])
    yield from _not_looked_at(found)
    if len(outcomes) > len(found):
        files = counted(len(outcomes) - len(found), "file was", "files were")
        yield line(f"{files} not audited; the reasons stand apart from this report.", "box", hang=2)


def _signed_and_new(found: Sequence[Audited]) -> Iterator[Line]:
    """How much was signed off, and how much is new, where either is so."""
    if any(each.signed.file for each in found):
        from linter.reports.sign_offs import totals  # noqa: PLC0415  only where something was said

        yield from totals(each.signed for each in found)
    if any(each.news for each in found):
        from linter.reports.news import against  # noqa: PLC0415  only against an earlier audit

        yield from against(found)


def _not_looked_at(found: Iterable[Audit]) -> Iterator[Line]:
    """How much of the walk-through nobody has looked at, and how much nobody can any more."""
    items = [item for audit in found for item in audit.walk_through]
    for state, said in (
        (TO_BE_LOOKED_AT, "of the walk-through: still to be looked at, at"),
        (OUT_OF_SIGHT, "of the walk-through: covered before anyone is said to have looked, at"),
    ):
        looks = [len(item.those(state)) for item in items]
        if any(looks):
            number = counted(len([each for each in looks if each]), "item", "items")
            yield line(f"{number} {said} {counted(sum(looks), 'place', 'places')}.", "box", hang=2)
