"""What people said of findings, as lines: on each finding, of what is settled, and of nothing."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.reports.entries import named
from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import BADGES, counted
from linter.signoff.sayings import AGREED, NOT_A_DEFECT
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from linter.audit.open_checks import OpenCheck
    from linter.reports.entries import Entry
    from linter.signoff.choosing import Candidate
    from linter.signoff.said import Saying
    from linter.signoff.standing import Idle, SignedOff, Standing

_OF_NOTHING = "SAID OF WHAT IS NOT FOUND NOW"


def said(standing: Standing) -> str:
    """What was said of a finding, by whom and when, and why it counts all the same if it does."""
    words = told(standing.entry.saying)
    if not standing.why:
        return f"{words}."
    if standing.holds:
        return f"{words}; it counts: {standing.why}."
    return f"{words}; that no longer holds: {standing.why}. Then: {standing.entry.item.found}"


def told(saying: Saying) -> str:
    """A saying in words.

    >>> from linter.signoff.said import Saying
    >>> told(Saying("agreed", "M. Ferrow", "2026-03-14"))
    'agreed, says M. Ferrow on 2026-03-14'
    """
    because = f", because: {saying.because.rstrip('.')}" if saying.because else ""
    return f"{saying.says}, says {saying.by} on {saying.on}{because}"


def settled(judged: Sequence[Entry], signed: SignedOff) -> Iterator[Line]:
    """The findings judged not a defect, what was said of open checks, and what of nothing."""
    if judged:
        yield EMPTY
        yield line("JUDGED NOT A DEFECT", "advice-heading")
        yield line("It does not count, and stands here so that nobody forgets it.", indent=2)
        for each in judged:
            yield from in_short(each)
    yield from _of_open_checks(signed)
    yield from _of_nothing(signed)


def in_short(entry: Entry) -> Iterator[Line]:
    """Findings that are told together, without their working: what, where, and what was said."""
    finding, standing = entry.first, entry.standing
    badge = Span(BADGES[finding.weight], finding.weight, whole=True)
    yield Line((badge, Span(f" {finding.sentence}")), indent=3, hang=5)
    if entry.others:
        yield line(f"Also: {named(entry.others, finding.place.line)}.", indent=8, hang=4)
    yield line(f"{finding.rule}, at {finding.place}", "quiet", indent=8)
    if standing is not None:
        yield line(said(standing), indent=8, hang=2)


def totals(signed: Iterable[SignedOff]) -> Iterator[Line]:
    """How many findings and open checks need not count, and how many count all the same."""
    standings = [each for one in signed for each in one.standings.values()]
    by_saying = {
        says: sum(not each.counts and each.entry.saying.says == says for each in standings)
        for says in (NOT_A_DEFECT, AGREED)
    }
    parts = [f"{number} {_JUDGED[says]}" for says, number in by_saying.items() if number]
    if parts:
        yield line(f"Signed off, and not counted: {join_words(parts)}.", "box", hang=2)
    counting = sum(each.counts for each in standings)
    if counting:
        number = counted(counting, "finding or check counts", "findings or checks count")
        yield line(f"Signed, and {number} all the same; each says why.", "box", hang=2)


_JUDGED = {NOT_A_DEFECT: "judged not a defect", AGREED: "agreed"}


def listed(
    candidates: Sequence[Candidate], marks: Sequence[str], states: Sequence[str]
) -> Iterator[Line]:
    """What may be signed: each with its mark, its weight, where it stands, and what was said."""
    for each, mark, state in zip(candidates, marks, states, strict=True):
        item = each.item
        badge = Span(BADGES[item.weight], item.weight, whole=True)
        yield Line(
            (Span(mark, "label", whole=True), Span(" "), badge, Span(f" {item.found}")), 0, 4
        )
        yield line(f"{item.rule}, at {each.place}", "quiet", indent=4, hang=2)
        if state:
            yield line(state, indent=4, hang=2)


def _of_open_checks(signed: SignedOff) -> Iterator[Line]:
    """What was said of open checks, those of one rule of which the same was said together."""
    alike: dict[tuple[str, str], list[OpenCheck]] = {}
    for each in signed.open:
        standing = signed.of(each)
        if standing is not None:
            words = said(standing).partition(" Then: ")[0]
            alike.setdefault((each.rule, words), []).append(each)
    if alike:
        yield EMPTY
        yield line("CANNOT BE TOLD, AND SIGNED", "advice-heading")
    for (rule, words), checks in alike.items():
        number = counted(len(checks), "check", "checks")
        where = f"{checks[0].label} (line {checks[0].place.line})" if len(checks) == 1 else number
        yield Line((Span(f"{rule}: ", "label"), Span(where)), 2, 2)
        yield line(words, indent=4, hang=2)


def _of_nothing(signed: SignedOff) -> Iterator[Line]:
    """What was said of what is not found: put right, as it should be, or of nothing at all."""
    done = [each for each in signed.idle if each.done]
    others = [each for each in signed.idle if not each.done]
    if done:
        yield EMPTY
        yield line("PUT RIGHT, AND NOT FOUND ANY MORE", "advice-heading")
        for each in done:
            yield from _idle(each)
    if others:
        yield EMPTY
        yield line(_OF_NOTHING, "advice-heading")
        yield line("Mark it as put right, or take the entry out of the file.", indent=2)
        for each in others:
            yield from _idle(each)


def _idle(idle: Idle) -> Iterator[Line]:
    item, saying = idle.entry.item, idle.entry.saying
    yield Line((Span(f"{item.rule}: ", "label"), Span(item.found)), 2, 4)
    why = "" if idle.done else f"; {idle.why}"
    yield line(f"{told(saying)}{why}; {idle.entry.place}", indent=4, hang=2)
