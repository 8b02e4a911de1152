"""What became of a job between two of its saved files: put right, new, changed, still open."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.audit.findings import WEIGHTS
from linter.reports.earlier import Before, Earlier, EarlierFile, news_of
from linter.signoff.rule_mark import rules_and_items
from linter.signoff.standing import NOTHING_FOUND, key_of, why_not_found
from linter.vocabulary.kinds.dwelling import STAGES

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.audit.audit import Examined
    from linter.reports.outcomes import Audited
    from linter.signoff.said import Key


class NoLonger(NamedTuple):
    """A finding of the first file that the second has no more, and why not."""

    key: Key
    then: Before
    why: str


class Progress(NamedTuple):
    """What became of a job; `after` knows what of it is new, changed or known.

    `put_right` is what was found and is not; `not_shown` what is not found for another reason: the
    thing is gone, the rule is not asked, or it cannot be told any more. `newly_asked` are rules
    that only the stage of the second file asks. `met` counts checks that could not be told and are
    met now, `still_untold` those that still cannot be, `newly_untold` those that could or were not
    asked.
    """

    before: Audited
    after: Audited
    put_right: tuple[NoLonger, ...]
    not_shown: tuple[NoLonger, ...]
    newly_asked: frozenset[str]
    met: int
    still_untold: int
    newly_untold: int


CANNOT_BE_TOLD = "it cannot be told any more"


def progress(before: Audited, after: Audited, examined: Examined, stage: str | None) -> Progress:
    """What became of a job between two audits; `examined` and `stage` are of the second."""
    earlier = Earlier(before.file, {after.file: _as_earlier(before)})
    news = news_of(earlier, after.file, after.audit.findings, after.checks)
    told = tuple(_no_longer(earlier.files[after.file], after, examined, stage))
    open_then, open_now = ({key_of(each) for each in one.checks} for one in (before, after))
    found_now = {key_of(each) for each in after.audit.findings}
    return Progress(
        before=before,
        after=after._replace(news=news),
        put_right=tuple(each for each in told if each.why == NOTHING_FOUND),
        not_shown=tuple(each for each in told if each.why != NOTHING_FOUND),
        newly_asked=_newly_asked(examined, before.audit.stage, stage),
        met=len(open_then - open_now - found_now),
        still_untold=len(open_then & open_now),
        newly_untold=len(open_now - open_then),
    )


def _as_earlier(audited: Audited) -> EarlierFile:
    findings = {
        key_of(each): Before(each.weight, each.fingerprint, each.sentence, audited.counts(each))
        for each in audited.audit.findings
    }
    return EarlierFile(findings, {key_of(each): each.weight for each in audited.checks})


def _no_longer(
    earlier: EarlierFile, after: Audited, examined: Examined, stage: str | None
) -> Iterator[NoLonger]:
    rules = rules_and_items(examined.pack)
    found = {key_of(each) for each in after.audit.findings}
    untold = {key_of(each) for each in after.checks}
    for key, then in sorted(earlier.findings.items(), key=_heaviest_first):
        if key in untold:
            yield NoLonger(key, then, CANNOT_BE_TOLD)
        elif key not in found:
            yield NoLonger(key, then, why_not_found(key, rules, examined.facts, stage))


def _heaviest_first(found: tuple[Key, Before]) -> int:
    return WEIGHTS.index(found[1].weight)


def _newly_asked(examined: Examined, then: str, now: str | None) -> frozenset[str]:
    """The rules that the stage of the second file asks and that of the first did not."""
    reached_then = STAGES.index(then) if then in STAGES else len(STAGES)
    reached_now = STAGES.index(now) if now else len(STAGES)
    return frozenset(
        name
        for name, each in rules_and_items(examined.pack).items()
        if reached_then < STAGES.index(each.from_stage) <= reached_now
    )
