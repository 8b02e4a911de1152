"""The results of SARIF for one audited job: findings, open checks, and what is to be looked at."""

from __future__ import annotations

from itertools import chain
from typing import TYPE_CHECKING

from linter.audit.findings import OUT_OF_SIGHT, TO_BE_LOOKED_AT
from linter.audit.relied import mark_of
from linter.reports.backing import on_paper, resting, sources
from linter.reports.earlier import CHANGED, KNOWN, NEW
from linter.reports.sarif_words import LEVELS, Data, message
from linter.reports.sayings import counted
from linter.reports.sign_offs import said
from linter.signoff.standing import alike_in
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from linter.audit.findings import Finding, WalkItem
    from linter.audit.open_checks import OpenCheck
    from linter.packs.model import Pack
    from linter.reports.outcomes import Audited
    from linter.reports.sarif_rules import Components
    from linter.reports.sarif_words import Addresses
    from linter.signoff.standing import Standing

FINGERPRINT = "precover/v1"
_STATES = {NEW: "new", CHANGED: "updated", KNOWN: "unchanged"}
_FAIL, _OPEN, _REVIEW = "fail", "open", "review"


def results(audited: Audited, components: Components, addresses: Addresses) -> Iterator[Data]:
    """All results of a job, in the order of a walk through its rooms, kind by kind.

    Raises `ValueError` where the audit does not know its pack, whose rules the results name.
    """
    if audited.pack is None:
        raise ValueError(f"{audited.file}: the pack is needed for its rules")
    make = _Results(audited, audited.pack, components, addresses)
    yield from map(make.finding, audited.audit.findings)
    yield from make.open_checks()
    yield from make.to_look_at()


class _Results:
    def __init__(
        self, audited: Audited, pack: Pack, components: Components, addresses: Addresses
    ) -> None:
        self._audited, self._pack = audited, pack
        self._components, self._addresses = components, addresses

    def finding(self, finding: Finding) -> Data:
        things = [{"name": finding.ref, "fullyQualifiedName": f"{finding.kind} {finding.ref}"}]
        return {
            **self._head(finding.rule, _FAIL, LEVELS[finding.weight]),
            "message": message("\n".join(_told(finding))),
            "locations": [self._addresses.location(finding.place, logicalLocations=things)],
            "partialFingerprints": {FINGERPRINT: finding.fingerprint},
            "suppressions": self._suppressions(self._audited.signed.of(finding)),
            **self._news(finding),
            "properties": {
                "weight": finding.weight,
                "job": self._audited.audit.job,
                "thing": finding.label,
                "room": finding.stop.room,
                "box": finding.stop.box,
                "circuit": finding.stop.circuit,
                "reliesOn": [
                    f"{each.kind} {each.ref} {each.fact}: {each.value}"
                    for each in finding.relies_on
                ],
            },
        }

    def _news(self, finding: Finding) -> Data:
        news = self._audited.news
        return {} if news is None else {"baselineState": _STATES[news.of(finding)]}

    def open_checks(self) -> Iterator[Data]:
        """A result for each rule and what is to be learnt for it, with all places where."""
        alike: dict[tuple[object, ...], list[OpenCheck]] = {}
        for check in self._audited.checks:
            standing = self._audited.signed.of(check)
            same = check.rule, _learn(check), standing and alike_in(standing)
            alike.setdefault(same, []).append(check)
        yield from map(self._open, alike.values())

    def _open(self, checks: Sequence[OpenCheck]) -> Data:
        first = checks[0]
        places = dict.fromkeys(each.place for each in checks)
        mark = mark_of((_OPEN, first.rule, *chain.from_iterable(_learn(first))))
        return {
            **self._head(first.rule, _OPEN, "none"),
            "message": message("\n".join(_asked(checks))),
            "locations": list(map(self._addresses.location, places)),
            "partialFingerprints": {FINGERPRINT: mark},
            "suppressions": self._suppressions(self._audited.signed.of(first)),
            "properties": {
                "weight": first.weight,
                "job": self._audited.audit.job,
                "things": [each.label for each in checks],
            },
        }

    def to_look_at(self) -> Iterator[Data]:
        """A result for each item of the walk-through that nobody has looked at everywhere."""
        for item in self._audited.audit.walk_through:
            looks = item.those(TO_BE_LOOKED_AT, OUT_OF_SIGHT)
            if looks:
                places = dict.fromkeys(each.place for each in looks)
                yield {
                    **self._head(item.item, _REVIEW, "none"),
                    "message": message("\n".join(_looked(item))),
                    "locations": list(map(self._addresses.location, places)),
                    "partialFingerprints": {FINGERPRINT: mark_of((_REVIEW, item.item, item.ask))},
                    "suppressions": [],
                    "properties": {
                        "weight": item.weight,
                        "job": self._audited.audit.job,
                        "things": [each.label for each in looks],
                    },
                }

    def _head(self, rule: str, kind: str, level: str) -> Data:
        named = self._components.rule(self._pack, rule)
        return {"ruleId": rule, "rule": named, "kind": kind, "level": level}

    def _suppressions(self, standing: Standing | None) -> list[Data]:
        if standing is None:
            return []
        return [
            {
                "kind": "external",
                "status": "rejected" if standing.counts else "accepted",
                "justification": message(said(standing))["text"],
                "location": self._addresses.location(standing.entry.place),
            }
        ]


def _told(finding: Finding) -> Iterator[str]:
    yield finding.sentence
    for step in finding.working:
        parts = on_paper(step)
        if parts:
            yield " = ".join(parts)
    yield f"Do: {finding.do}"
    if finding.caution:
        yield f"Caution: {finding.caution}"
    for label, text in (*sources(finding), *resting([finding])):
        yield f"{label}: {text}"


def _learn(check: OpenCheck) -> tuple[tuple[str, str, str], ...]:
    return tuple(dict.fromkeys((each.kind, each.fact, each.ask) for each in check.to_learn))


def _asked(checks: Sequence[OpenCheck]) -> Iterator[str]:
    first = checks[0]
    number = f"of {counted(len(checks), 'thing', 'things')}" if len(checks) > 1 else ""
    facts = join_words([fact for _, fact, _ in _learn(first)])
    yield f"It cannot be told yet {number or f'of {first.label}'}: {facts} not known."
    for _, fact, ask in _learn(first):
        if ask:
            yield f"{fact}: {ask}"


def _looked(item: WalkItem) -> Iterator[str]:
    yield f"To look at: {item.ask}"
    if item.caution:
        yield f"Caution: {item.caution}"
    gone = item.those(OUT_OF_SIGHT)
    if gone:
        places = counted(len(gone), "place", "places")
        yield f"Covered before anyone is said to have looked, at {places}."
