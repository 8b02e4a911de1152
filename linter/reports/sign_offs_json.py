"""What people said of findings, and what is new of them, as JSON for findings.schema.json."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from linter.audit.findings import Finding
    from linter.audit.open_checks import OpenCheck
    from linter.reports.earlier import News
    from linter.signoff.said import Saying
    from linter.signoff.standing import Idle, SignedOff, Standing
    from linter.text import Place

Data = dict[str, object]


def signed_json(finding: Finding | OpenCheck, signed: SignedOff) -> Data | None:
    """What was said last of a finding and what became of it; None where nothing was said."""
    standing = signed.of(finding)
    return None if standing is None else _standing(standing)


def sign_off_json(signed: SignedOff) -> Data:
    """The sign-off file of a job: what was said of open checks, and of what is not found."""
    return {
        "file": signed.file,
        "open": [_open(each, signed) for each in signed.open],
        "idle": [_idle(each) for each in signed.idle],
    }


def untold_json(checks: Iterable[OpenCheck]) -> list[Data]:
    """The checks that cannot be told, rule by rule, with the things of which they cannot."""
    by_rule: dict[tuple[str, str, str], list[str]] = {}
    for each in checks:
        by_rule.setdefault((each.rule, each.weight, each.kind), []).append(each.ref)
    return [
        {"rule": rule, "weight": weight, "kind": kind, "things": things}
        for (rule, weight, kind), things in sorted(by_rule.items())
    ]


def against_json(news: News) -> Data:
    """What is new of a job against an earlier audit, but for the state of each finding."""
    return {
        "file": news.name,
        "untold": len(news.untold),
        "gone": [
            {"rule": rule, "kind": kind, "ref": ref, "weight": told.weight, "found": told.sentence}
            for (rule, kind, ref), told in news.gone
        ],
    }


def _standing(standing: Standing) -> Data:
    return {
        **_saying(standing.entry.saying),
        "holds": standing.holds,
        "counts": standing.counts,
        "why": standing.why,
        "found": standing.entry.item.found,
        "place": _place(standing.entry.place),
    }


def _saying(saying: Saying) -> Data:
    return {"says": saying.says, "by": saying.by, "on": saying.on, "because": saying.because}


def _open(check: OpenCheck, signed: SignedOff) -> Data:
    return {
        "rule": check.rule,
        "weight": check.weight,
        "kind": check.kind,
        "ref": check.ref,
        "label": check.label,
        "place": _place(check.place),
        "fingerprint": check.fingerprint,
        "signed": signed_json(check, signed),
    }


def _idle(idle: Idle) -> Data:
    item = idle.entry.item
    return {
        "rule": item.rule,
        "kind": item.kind,
        "ref": item.ref,
        "weight": item.weight,
        "found": item.found,
        **_saying(idle.entry.saying),
        "done": idle.done,
        "why": idle.why,
        "place": _place(idle.entry.place),
    }


def _place(place: Place) -> Data:
    return {"file": place.file, "line": place.line, "column": place.column}
