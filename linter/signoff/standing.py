"""What the findings of a job count for, after what was said of them."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, NamedTuple

from linter.audit.findings import WEIGHTS
from linter.signoff.sayings import AGREED, NOT_A_DEFECT, PUT_RIGHT
from linter.vocabulary.kinds.dwelling import STAGES

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping, Sequence

    from linter.audit.audit import Examined
    from linter.audit.findings import Finding
    from linter.audit.open_checks import OpenCheck
    from linter.facts import Facts
    from linter.packs.model import Item, Rule
    from linter.signoff.said import Entry, Key, SignOffs

FACTS_CHANGED = "the facts it rests on have changed since"
RULE_CHANGED = "the rule, or a value that it uses, has changed since"
STILL_FOUND = "the job file still shows it"
NOT_KNOWN = "the job file does not show it yet"
DANGER_COUNTS = "a danger counts until it is gone"
NOTHING_FOUND = "nothing is found there any more"
NO_RULE = "the pack has no such rule"
NO_THING = "the job has no such thing"
NOT_AT_THIS_STAGE = "the rule is not asked at this stage"


class Standing(NamedTuple):
    """What was said last of a finding or an open check, and what became of it.

    `holds` tells that it was said of just this; `counts` that the finding is outstanding all the
    same, and `why` says for what reason.
    """

    entry: Entry
    holds: bool
    counts: bool
    why: str


class Idle(NamedTuple):
    """What was said of something not found now; `done` where it was said to be put right."""

    entry: Entry
    why: str
    done: bool


class SignedOff(NamedTuple):
    """What was said of the findings and open checks of a job, by their keys.

    `settled` and `settled_untold` number, by weight, those that need not count any more; `open` are
    the open checks of which something was said; `idle` is what was said of nothing.
    """

    file: str
    standings: Mapping[Key, Standing]
    open: tuple[OpenCheck, ...]
    idle: tuple[Idle, ...]
    settled: Mapping[str, int]
    settled_untold: Mapping[str, int]

    def of(self, found: Finding | OpenCheck) -> Standing | None:
        """What was said of a finding or an open check, if anything was."""
        return self.standings.get(key_of(found))


_NONE = dict.fromkeys(WEIGHTS, 0)
NOTHING_SAID = SignedOff("", {}, (), (), _NONE, _NONE)


def key_of(found: Finding | OpenCheck) -> Key:
    """What a finding or an open check is recognised by, whatever the facts."""
    return found.rule, found.kind, found.ref


def signed_off(
    file: str, said: SignOffs, examined: Examined, checks: Sequence[OpenCheck], stage: str | None
) -> SignedOff:
    """What was said in the sign-off file `file` of an examined job, at its stage."""
    latest = said.latest()
    # Only where something was said.
    from linter.signoff.rule_mark import rule_mark, rules_and_items  # noqa: PLC0415

    rules = rules_and_items(examined.pack)
    mark_of = cache(lambda name: rule_mark(examined.pack, rules[name]))

    def standings(found: Iterable[Finding | OpenCheck], *, is_open: bool) -> dict[Key, Standing]:
        return {
            key_of(each): _standing(latest[key_of(each)], each, mark_of, stage, is_open=is_open)
            for each in found
            if key_of(each) in latest
        }

    of_findings = standings(examined.audit.findings, is_open=False)
    of_checks = standings(checks, is_open=True)
    found: tuple[Finding | OpenCheck, ...] = (*examined.audit.findings, *checks)
    weights = {key_of(each): each.weight for each in found}
    return SignedOff(
        file=file,
        standings=of_findings | of_checks,
        open=tuple(each for each in checks if key_of(each) in of_checks),
        idle=tuple(
            _idle(entry, why_not_found(key, rules, examined.facts, stage))
            for key, entry in latest.items()
            if key not in weights
        ),
        settled=_settled(of_findings, weights),
        settled_untold=_settled(of_checks, weights),
    )


def _standing(
    entry: Entry,
    found: Finding | OpenCheck,
    mark_of: Callable[[str], str],
    stage: str | None,
    *,
    is_open: bool,
) -> Standing:
    why = _stale(entry, found, mark_of)
    if why:
        return Standing(entry, holds=False, counts=True, why=why)
    match entry.saying.says:
        case str(says) if says == PUT_RIGHT:
            why = NOT_KNOWN if is_open else STILL_FOUND
        case str(says) if says == AGREED and found.weight == WEIGHTS[0]:
            why = DANGER_COUNTS
        case str(says) if says == AGREED and _reached(stage) > _reached(entry.saying.stage):
            now = f"is now {stage}" if stage else "does not say its stage"
            why = f"it was agreed at the stage {entry.saying.stage or 'not stated'}; the job {now}"
    return Standing(entry, holds=True, counts=bool(why), why=why)


def _stale(entry: Entry, found: Finding | OpenCheck, mark_of: Callable[[str], str]) -> str:
    """Why what was said cannot be taken for what is found now; empty where it can."""
    item = entry.item
    if item.mark != found.fingerprint:
        return FACTS_CHANGED
    if item.by_rule != mark_of(found.rule):
        return RULE_CHANGED
    if WEIGHTS.index(found.weight) < WEIGHTS.index(item.weight):
        return f"its weight was {item.weight} then, and is {found.weight} now"
    return ""


def _reached(stage: str | None) -> int:
    """How far a stage is; a job that does not say its stage is held to all of them."""
    return STAGES.index(stage) if stage else len(STAGES)


def _idle(entry: Entry, why: str) -> Idle:
    return Idle(entry, why, done=entry.saying.says == PUT_RIGHT and why == NOTHING_FOUND)


def why_not_found(
    key: Key, rules: Mapping[str, Rule | Item], facts: Facts, stage: str | None
) -> str:
    """Why nothing is found by a rule of a thing: it is gone, or not asked, or all is well."""
    name, kind, ref = key
    if name not in rules:
        return NO_RULE
    if ref not in {each.ref for each in facts.things.get(kind, ())}:
        return NO_THING
    if STAGES.index(rules[name].from_stage) > _reached(stage):
        return NOT_AT_THIS_STAGE
    return NOTHING_FOUND


def _settled(standings: Mapping[Key, Standing], weights: Mapping[Key, str]) -> Mapping[str, int]:
    counts = dict.fromkeys(WEIGHTS, 0)
    for key, each in standings.items():
        counts[weights[key]] += not each.counts
    return counts


def alike_in(standing: Standing) -> tuple[object, ...]:
    """What is the same of findings of which a person said the same, with the same that came of it.

    Where it no longer holds, what was found then is told with it, and is not the same.
    """
    found = "" if standing.holds else standing.entry.item.found
    return standing.entry.saying, standing.holds, standing.counts, standing.why, found


def is_judged_no_defect(standing: Standing | None) -> bool:
    """Whether what was found is judged not a defect, and that still holds."""
    return standing is not None and standing.holds and standing.entry.saying.says == NOT_A_DEFECT
