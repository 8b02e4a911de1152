"""What became of each file that an audit was asked for: audited, refused, or our own fault."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, NamedTuple

from linter.audit.findings import WEIGHTS, Audit
from linter.signoff.standing import NOTHING_SAID, SignedOff, key_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from linter.audit.findings import Finding
    from linter.audit.open_checks import OpenCheck
    from linter.packs.model import Pack
    from linter.reports.earlier import News
    from linter.text import Refusal


class Audited(NamedTuple):
    """A job file that was understood, its audit, and what people said of its findings.

    `checks` are the checks that cannot be told, one by one, and `pack` is what it was audited by,
    for reports that ask for them. `news` is what is new against an earlier audit, if one is named:
    nothing else counts then.
    """

    file: str
    audit: Audit
    signed: SignedOff = NOTHING_SAID
    checks: tuple[OpenCheck, ...] = ()
    pack: Pack | None = None
    news: News | None = None

    @property
    def outstanding(self) -> Mapping[str, int]:
        """The findings that count, by weight: those that are new, and no sign-off settled."""
        if self.news is None:
            return _less(self.audit.counts, self.signed.settled)
        return _by_weight(
            each.weight
            for each in self.audit.findings
            if not self.news.is_known(each) and self.counts(each)
        )

    @property
    def untold(self) -> Mapping[str, int]:
        """The checks that cannot be told and count, by weight."""
        if self.news is None:
            return _less(self.audit.cannot_tell, self.signed.settled_untold)
        return _by_weight(
            each.weight
            for each in self.checks
            if key_of(each) in self.news.untold and self.counts(each)
        )

    def counts(self, found: Finding | OpenCheck) -> bool:
        """Whether no sign-off settles a finding or an open check."""
        standing = self.signed.of(found)
        return standing is None or standing.counts


class TurnedAway(NamedTuple):
    """A file that was refused, for every reason named."""

    file: str
    refusals: tuple[Refusal, ...]


class OurFault(NamedTuple):
    """A file that precover failed on; `doing` says at what, the innermost first."""

    file: str
    doing: tuple[str, ...]


Outcome = Audited | TurnedAway | OurFault


def audits(outcomes: Iterable[Outcome]) -> list[Audit]:
    """The audits among the outcomes."""
    return [each.audit for each in outcomes if isinstance(each, Audited)]


def counts(outcomes: Iterable[Outcome]) -> dict[str, int]:
    """The findings by weight, over all files."""
    found = audits(outcomes)
    return {weight: sum(audit.counts[weight] for audit in found) for weight in WEIGHTS}


def cannot_tell(outcomes: Iterable[Outcome]) -> dict[str, int]:
    """The checks that cannot be told yet, by the weight of their rules, over all files."""
    found = audits(outcomes)
    return {weight: sum(audit.cannot_tell[weight] for audit in found) for weight in WEIGHTS}


def outstanding(outcomes: Iterable[Outcome]) -> dict[str, int]:
    """The findings that count, by weight, over all files."""
    found = [each.outstanding for each in outcomes if isinstance(each, Audited)]
    return {weight: sum(each[weight] for each in found) for weight in WEIGHTS}


def untold_outstanding(outcomes: Iterable[Outcome]) -> dict[str, int]:
    """The checks that cannot be told and count, by weight, over all files."""
    found = [each.untold for each in outcomes if isinstance(each, Audited)]
    return {weight: sum(each[weight] for each in found) for weight in WEIGHTS}


def _by_weight(weights: Iterable[str]) -> Mapping[str, int]:
    found = Counter(weights)
    return {weight: found[weight] for weight in WEIGHTS}


def _less(counts: Mapping[str, int], settled: Mapping[str, int]) -> Mapping[str, int]:
    return {weight: counts[weight] - settled[weight] for weight in WEIGHTS}
