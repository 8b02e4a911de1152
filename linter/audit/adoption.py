"""What another pack would change for a saved job: findings added, removed and told otherwise."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.audit.audit import audit
from linter.packs.compare import are_related
from linter.packs.laid_out import subject_of

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from linter.audit.findings import Audit, Finding
    from linter.job.jobs import Job
    from linter.packs.model import Pack

Key = tuple[str, str, str]


class Retold(NamedTuple):
    """What two packs say of one thing, by one rule or on one subject."""

    before: tuple[Finding, ...]
    after: tuple[Finding, ...]


class Untold(NamedTuple):
    """A rule, and the things of which it cannot be told."""

    rule: str
    things: tuple[str, ...]


class Adoption(NamedTuple):
    """What adopting a pack would change for a job; `same` counts the findings that stay.

    `now_open` and `no_longer_open` are checks that could not be told under one pack alone.
    """

    job: str
    added: tuple[Finding, ...]
    removed: tuple[Finding, ...]
    retold: tuple[Retold, ...]
    same: int
    now_open: tuple[Untold, ...]
    no_longer_open: tuple[Untold, ...]


def adoption(job: Job, before: Pack, after: Pack) -> Adoption:
    """What the second pack would change for the job, were it judged by the first.

    Rules of packs that share a layer are held together by their names; of others by subject.
    Raises `Refused` where the make-up of a box cannot be derived.
    """
    related = are_related(before, after)
    first, second = audit(job, before), audit(job, after)
    old = _grouped(first.findings, _key_of(before, by_name=related))
    new = _grouped(second.findings, _key_of(after, by_name=related))
    both = [Retold(tuple(old[key]), tuple(new[key])) for key in old if key in new]
    retold = [each for each in both if _said(each.before) != _said(each.after)]
    open_before, open_after = _open_of(first), _open_of(second)
    return Adoption(
        first.job,
        tuple(each for key in new if key not in old for each in new[key]),
        tuple(each for key in old if key not in new for each in old[key]),
        tuple(retold),
        sum(len(each.before) for each in both) - sum(len(each.before) for each in retold),
        _by_rule(open_after - open_before),
        _by_rule(open_before - open_after),
    )


def _key_of(pack: Pack, *, by_name: bool) -> Callable[[Finding], Key]:
    if by_name:
        return lambda finding: (finding.rule, finding.kind, finding.ref)
    subjects = {rule.name: subject_of(rule) for rule in pack.rules}
    return lambda finding: (subjects[finding.rule], finding.kind, finding.ref)


def _grouped(
    findings: Iterable[Finding], key_of: Callable[[Finding], Key]
) -> dict[Key, list[Finding]]:
    groups: dict[Key, list[Finding]] = {}
    for each in findings:
        groups.setdefault(key_of(each), []).append(each)
    return groups


def _said(findings: Iterable[Finding]) -> list[tuple[str, str, str, str]]:
    """What a person reads of findings, without the edition, which always differs."""
    return [(each.rule, each.weight, each.sentence, each.reference.clause) for each in findings]


def _open_of(audit: Audit) -> frozenset[tuple[str, str]]:
    return frozenset(
        (answer.rule, thing)
        for question in audit.open
        for answer in question.answers
        for thing in answer.things
    )


def _by_rule(pairs: Iterable[tuple[str, str]]) -> tuple[Untold, ...]:
    rules: dict[str, list[str]] = {}
    for rule, thing in sorted(pairs):
        rules.setdefault(rule, []).append(thing)
    return tuple(Untold(rule, tuple(things)) for rule, things in rules.items())
