"""A job and a pack to an audit: wiring, trace, facts, verdicts, findings and open questions."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.audit.assumed import assumed
from linter.audit.findings import WEIGHTS, Audit, Finding, Held
from linter.audit.judging import AtWork, Judged, Untold, in_force, judge_all
from linter.audit.looks import walked
from linter.audit.questions import in_words, lacks_of, open_questions
from linter.audit.settled import without_settled
from linter.audit.stops import Walk
from linter.audit.tell import Teller
from linter.audit.trials import Trials
from linter.audit.unlooked import unlooked
from linter.audit.wording import Wording
from linter.facts import facts_of
from linter.packs.writing import writer_of
from linter.trace import trace
from linter.wiring import derive

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from linter.facts import Facts
    from linter.job.jobs import Job
    from linter.packs.model import Pack, Rule

NOT_STATED = "stage not stated"


class Examined(NamedTuple):
    """An audit, and what it was drawn from, for those who ask more of single checks.

    `untold` are the checks that cannot be told, in the order of rules, then of things.
    """

    audit: Audit
    pack: Pack
    facts: Facts
    untold: tuple[Untold, ...]


def audit(job: Job, pack: Pack) -> Audit:
    """What the pack's rules in force at the job's stage say of the job.

    Raises `Refused` where the make-up of a box cannot be derived. Anything else that is thrown is a
    mistake of ours; its notes name the rule and the thing at hand.
    """
    return examined(job, pack).audit


def examined(job: Job, pack: Pack) -> Examined:
    """The audit of a job, with the facts and the untold checks behind it; raises as `audit`."""
    wiring = derive(job)
    facts = facts_of(job, wiring, trace(job, wiring))
    judged = judge_all(facts.things, in_force(pack.rules, job.stage, job.permit_date), pack.library)
    return _told(job, pack, facts, judged)


def _told(job: Job, pack: Pack, facts: Facts, judged: Judged) -> Examined:
    walk, write = Walk(facts.things), writer_of(pack)
    looks = walked(job, pack, facts, walk, write)
    told = _findings(judged, Teller(pack, facts, walk, write, job.permit_date))
    findings = _in_walking_order((*told, *looks.findings))
    trials, lacks = Trials(pack.library, write), lacks_of(pack.library, write)
    rules = in_force(pack.rules, job.stage, job.permit_date)
    judged = without_settled(judged, trials, pack.library)
    questions = open_questions(judged.untold, facts, walk, trials, lacks)
    audited = Audit(
        job=job.name,
        stage=job.stage or NOT_STATED,
        pack=pack.id,
        title=pack.title,
        layers=tuple(job.layers),
        findings=findings,
        open=in_words(questions, Wording(pack.words)),
        checks=judged.checks,
        counts=_by_weight(each.weight for each in findings),
        cannot_tell=_by_weight(each.rule.weight for each in judged.untold),
        unlooked=unlooked(job, facts, pack, looks.idle),
        assumed=assumed(facts, rules, judged.untold, pack.library),
        walk_through=looks.items,
        held=_held(rules),
        locality=job.locality or "",
        permit_date=job.permit_date or "",
    )
    return Examined(audited, pack, facts, judged.untold)


def _held(rules: Sequence[Rule]) -> Held:
    unsure = [rule for rule in rules if rule.unsure]
    return Held(
        rules=len(unsure),
        of=len(rules),
        unconfirmed=sum(bool(rule.clause.unconfirmed_in) for rule in unsure),
    )


def _findings(judged: Judged, teller: Teller) -> list[Finding]:
    findings = []
    with AtWork() as at_work:
        for rule, thing in judged.broken:
            at_work.rule, at_work.thing = rule.name, thing
            findings.append(teller.finding(rule, thing))
    return findings


def _in_walking_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    return tuple(
        sorted(
            findings,
            key=lambda each: (each.stop.order, WEIGHTS.index(each.weight), each.rule),
        )
    )


def _by_weight(weights: Iterable[str]) -> Mapping[str, int]:
    counts = dict.fromkeys(WEIGHTS, 0)
    for weight in weights:
        counts[weight] += 1
    return counts
