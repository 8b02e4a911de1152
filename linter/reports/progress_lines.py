"""What became of a job between two of its saved files, as lines."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.job.changes import CHANGED as OTHERWISE
from linter.reports.earlier import CHANGED, KNOWN, NEW
from linter.reports.entries import entries
from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import BADGES, CAUTION, CLOSING, counted, weighed
from linter.reports.sign_offs import in_short
from linter.signoff.standing import NOTHING_FOUND
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from linter.job.changes import Change
    from linter.reports.entries import Entry
    from linter.reports.progress import NoLonger, Progress

_HEADINGS = {NEW: "NEW", CHANGED: "CHANGED, AND STILL FOUND", KNOWN: "STILL FOUND"}
_NOTHING_CHANGED = "Nothing that the two files state is different."


def progress_page(of: Progress, changes: Sequence[Change]) -> Iterator[Line]:
    """The whole of it: what changed in the job, then what that came to."""
    yield Line((Span("CAUTION", "caution", whole=True), Span(f"  {CAUTION}")), hang=2)
    yield EMPTY
    yield from _heading(of)
    yield from _changes(changes)
    yield from _no_longer("PUT RIGHT", of.put_right)
    yield from _no_longer("NOT SHOWN ANY MORE, FOR ANOTHER REASON", of.not_shown)
    audited = of.after
    found = entries(audited.audit.findings, audited.signed, audited.news)
    for state, heading in _HEADINGS.items():
        yield from _found(heading, [each for each in found if each.state == state], of)
    yield EMPTY
    yield from _totals(of)
    yield EMPTY
    yield line(CLOSING)


def _heading(of: Progress) -> Iterator[Line]:
    before, after = of.before, of.after
    yield Line((Span(after.audit.job or after.file, "box"), Span(_stages(of), "quiet")))
    yield line(f"from {before.file}, by {before.audit.pack}", "quiet", indent=2, hang=2)
    yield line(f"to {after.file}, by {after.audit.pack}", "quiet", indent=2, hang=2)
    if before.audit.job != after.audit.job:
        yield line(f'The first file is of the job "{before.audit.job}".', indent=2, hang=2)


def _stages(of: Progress) -> str:
    then, now = of.before.audit.stage, of.after.audit.stage
    return f", {now}" if then == now else f", from {then} to {now}"


def _changes(changes: Sequence[Change]) -> Iterator[Line]:
    yield EMPTY
    yield line("WHAT CHANGED IN THE JOB", "room")
    if not changes:
        yield line(_NOTHING_CHANGED, indent=2)
    for each in changes:
        where = f" (line {each.place.line})"
        if each.what != OTHERWISE:
            yield Line((Span(each.thing, "box"), Span(f"{where}: {each.what}")), 2, 4)
            continue
        yield Line((Span(each.thing, "box"), Span(where)), 2, 4)
        for name, was, now in each.differences:
            label = f"{name}: " if name else ""
            stated = now or "not stated any more"
            yield line(
                f"{label}{stated}{f', was {was}' if was else ', not stated before'}", "", 4, 4
            )


def _no_longer(heading: str, told: Sequence[NoLonger]) -> Iterator[Line]:
    if told:
        yield EMPTY
        yield line(heading, "advice-heading")
    for (rule, _, _), then, why in told:
        badge = Span(BADGES[then.weight], then.weight, whole=True)
        yield Line((badge, Span(f" {then.sentence}")), indent=3, hang=5)
        reason = "" if why == NOTHING_FOUND else f"; {why}"
        yield line(f"{rule}{reason}", "quiet", indent=8, hang=2)


def _found(heading: str, found: Sequence[Entry], of: Progress) -> Iterator[Line]:
    if found:
        yield EMPTY
        yield line(heading, "advice-heading")
    for each in found:
        yield from in_short(each)
        if each.state == CHANGED:
            yield line(each.news, indent=8, hang=2)
        elif each.state == NEW and each.first.rule in of.newly_asked:
            yield line(f"Asked from this stage on: {of.after.audit.stage}.", indent=8, hang=2)
        if each.state != KNOWN:
            yield line(f"Do: {each.first.do}", indent=8, hang=4)


def _totals(of: Progress) -> Iterator[Line]:
    states = list(of.after.news.states.values()) if of.after.news else []
    parts = [f"{len(of.put_right)} put right"]
    parts += [f"{states.count(state)} {word}" for state, word in _COUNTED.items()]
    parts += [f"{len(of.not_shown)} not shown any more"] if of.not_shown else []
    yield line(f"{join_words(parts)}.", "box", hang=2)
    counting = [each for each in of.after.audit.findings if of.after.counts(each)]
    weights = {weight: sum(each.weight == weight for each in counting) for weight in BADGES}
    still = join_words(weighed(weights)) or "nothing"
    yield line(f"Outstanding now: {still}.", "box", hang=2)
    yield line(
        f"Of what could not be told, {counted(of.met, 'check is', 'checks are')} met now; "
        f"{of.still_untold} still cannot be told, and {of.newly_untold} more.",
        hang=2,
    )


_COUNTED = {NEW: "new", CHANGED: "changed", KNOWN: "still found"}
