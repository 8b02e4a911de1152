"""What became of each file that an audit was asked for: audited, refused, or our own fault."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.audit.findings import WEIGHTS, Audit

if TYPE_CHECKING:
    from collections.abc import Iterable

    from linter.text import Refusal


class Audited(NamedTuple):
    """A job file that was understood, and its audit."""

    file: str
    audit: Audit


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
