"""The outcomes of an audit as JSON under schemas/findings.schema.json, the same bytes each time."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, assert_never

from linter.reports.outcomes import (
    Audited,
    OurFault,
    Outcome,
    TurnedAway,
    cannot_tell,
    counts,
    outstanding,
    untold_outstanding,
)
from linter.reports.sayings import CAUTION, CLOSING, provenance
from linter.reports.sign_offs_json import (
    against_json,
    sign_off_json,
    signed_json,
    untold_json,
)

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.audit.findings import (
        Answer,
        Asked,
        Basis,
        Finding,
        Look,
        OpenQuestion,
        Reference,
        Unlooked,
        WalkItem,
    )
    from linter.text import Place, Refusal

FORMAT = 1

Data = dict[str, object]


def as_json(outcomes: Sequence[Outcome]) -> str:
    """All outcomes as one document; beyond ASCII everything is escaped, so that no text acts."""
    document = {
        "precover_findings": FORMAT,
        "caution": CAUTION,
        "closing": CLOSING,
        "files": [_outcome(each) for each in outcomes],
        "counts": counts(outcomes),
        "cannot_tell": cannot_tell(outcomes),
        "outstanding": outstanding(outcomes),
        "untold_outstanding": untold_outstanding(outcomes),
    }
    return json.dumps(document, indent=2) + "\n"


def _outcome(outcome: Outcome) -> Data:
    match outcome:
        case Audited(file):
            return {"file": file, "outcome": "audited", **_audit(outcome)}
        case TurnedAway(file, refusals):
            return {
                "file": file,
                "outcome": "refused",
                "refusals": [_refusal(each) for each in refusals],
            }
        case OurFault(file, doing):
            return {"file": file, "outcome": "our fault", "doing": list(doing)}
        case _:
            assert_never(outcome)


def _audit(audited: Audited) -> Data:
    audit = audited.audit
    return {
        "job": audit.job,
        "stage": audit.stage,
        "pack": {
            "id": audit.pack,
            "title": audit.title,
            "layers": list(audit.layers),
            "chosen_by_place": audit.locality,
            "permit_date": audit.permit_date,
        },
        "checks": audit.checks,
        "counts": dict(audit.counts),
        "cannot_tell": dict(audit.cannot_tell),
        "outstanding": dict(audited.outstanding),
        "untold_outstanding": dict(audited.untold),
        "findings": [_finding(each, audited) for each in audit.findings],
        "open": [_question(each) for each in audit.open],
        "unlooked": [_unlooked(each) for each in audit.unlooked],
        "held_to_advice": {
            "rules": audit.held.rules,
            "of": audit.held.of,
            "not_confirmed_for_this_edition": audit.held.unconfirmed,
        },
        "assumed": [{**each._asdict(), "things": list(each.things)} for each in audit.assumed],
        "walk_through": [_walk_item(each) for each in audit.walk_through],
        "untold": untold_json(audited.checks),
        "sign_off": sign_off_json(audited.signed),
        "against": None if audited.news is None else against_json(audited.news),
    }


def _finding(finding: Finding, audited: Audited) -> Data:
    return {
        "rule": finding.rule,
        "weight": finding.weight,
        "subject": {
            "kind": finding.kind,
            "ref": finding.ref,
            "label": finding.label,
            "room": finding.stop.room,
            "box": finding.stop.box,
            "circuit": finding.stop.circuit,
        },
        "place": _place(finding.place),
        "sentence": finding.sentence,
        "working": [
            {
                "name": step.name,
                "expression": step.text,
                "values": step.values,
                "result": step.result,
            }
            for step in finding.working
        ],
        "do": finding.do,
        "caution": finding.caution,
        "reference": _reference(finding.reference),
        "rests_on": [_basis(each) for each in finding.rests_on],
        "relies_on": [each._asdict() for each in finding.relies_on],
        "stated_weight": finding.stated_weight,
        "wants_confirming": [each._asdict() for each in finding.unsure],
        "usual": list(finding.usual),
        "assumed": list(finding.assumed),
        "fingerprint": finding.fingerprint,
        "signed": signed_json(finding, audited.signed),
        "against": None if audited.news is None else audited.news.of(finding),
    }


def _basis(basis: Basis) -> Data:
    return {
        "what": basis.what,
        "name": basis.name,
        "value": basis.value,
        "reference": _reference(basis.reference),
    }


def _reference(reference: Reference) -> Data:
    return {
        "clause": reference.clause,
        "document": reference.document,
        "edition": reference.edition,
        "known": reference.known,
        "source": reference.source,
        "provenance": provenance(reference),
        "doubt": reference.doubt,
        "confidence": reference.confidence,
        "unconfirmed_in": reference.unconfirmed_in,
        "layer": reference.layer,
    }


def _question(question: OpenQuestion) -> Data:
    return {
        "kind": question.kind,
        "fact": question.fact,
        "label": question.label,
        "ask": question.ask,
        "lacking": question.lacking,
        "settles": question.settles,
        "helps": question.helps,
        "along_with": list(question.along),
        "weight": question.weight,
        "everywhere": question.everywhere,
        "things": [_asked(each) for each in question.things],
        "answers": [_answer(each) for each in question.answers],
    }


def _asked(asked: Asked) -> Data:
    return {
        "ref": asked.ref,
        "label": asked.label,
        "room": asked.stop.room,
        "box": asked.stop.box,
        "place": _place(asked.place),
    }


def _answer(answer: Answer) -> Data:
    return {
        "rule": answer.rule,
        "weight": answer.weight,
        "checks": answer.checks,
        "things": list(answer.things),
        "when": [{"answer": given, "outcome": outcome} for given, outcome in answer.when],
        "needs_more": answer.needs_more,
    }


def _unlooked(unlooked: Unlooked) -> Data:
    places = [_place(each) for each in unlooked.places]
    return {"of": unlooked.of, "key": unlooked.key, "places": places}


def _walk_item(item: WalkItem) -> Data:
    return {
        "item": item.item,
        "weight": item.weight,
        "group": item.subject,
        "ask": item.ask,
        "caution": item.caution,
        "reference": _reference(item.reference),
        "kind": item.kind,
        "everywhere": item.everywhere,
        "looks": [_look(each) for each in item.looks],
    }


def _look(look: Look) -> Data:
    return {
        "ref": look.ref,
        "label": look.label,
        "room": look.stop.room,
        "box": look.stop.box,
        "place": _place(look.place),
        "state": look.state,
        "by": look.by,
        "on": look.on,
        "found": look.found,
        "lacking": look.lacking,
        "fingerprint": look.fingerprint,
    }


def _refusal(refusal: Refusal) -> Data:
    said: Data = {
        "place": _place(refusal.place),
        "found": refusal.found,
        "expected": refusal.expected,
        "nearest": list(refusal.nearest),
        "mend": refusal.mend,
    }
    if refusal.also is not None:
        place, words = refusal.also
        said["also"] = {"place": _place(place), "words": words}
    return said


def _place(place: Place) -> Data:
    return {"file": place.file, "line": place.line, "column": place.column}
