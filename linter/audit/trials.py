"""Tries answers to what is not known yet, to tell beforehand what each would settle."""

from __future__ import annotations

from functools import cache, cached_property, partial
from typing import TYPE_CHECKING

from linter.audit.answers import When, along_counts, along_scale, along_steps, among_words
from linter.audit.findings import WEIGHTS, Answer
from linter.audit.hints import gauges_of, hints_of
from linter.audit.seen import Sights
from linter.language.judge import judge
from linter.language.verdict import Verdict
from linter.units import AREA, NUMBER
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import Fact, FactRef, Shape

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable

    from linter.audit.answers import Trial
    from linter.audit.judging import Untold
    from linter.language.library import Library
    from linter.language.writing import Writer
    from linter.packs.model import Rule
    from linter.vocabulary.model import Thing

_OUTCOME = {Verdict.MET: "met", Verdict.BROKEN: "broken", Verdict.DOES_NOT_APPLY: "does not apply"}


class Trials:
    """Answers put in the place of what is unknown, one at a time, and taken out again.

    What was tried at one thing is not tried again at others of which the rule sees the same.
    """

    def __init__(self, library: Library, write: Writer) -> None:
        self._library, self._write = library, write
        self._hints = hints_of(library)
        self._sights = Sights(library)
        self._trials: dict[tuple[object, ...], Trial] = {}
        self._whens: dict[Trial, When] = {}

    def answers(self, checks: Iterable[Untold]) -> tuple[Answer, ...]:
        """What answers settle, for each rule; things for which they settle alike stand together."""
        alike: dict[tuple[str, When, bool], list[Untold]] = {}
        for check in checks:
            needs_more = len({(each.kind, each.fact) for each in _refs(check)}) > 1
            alike.setdefault((check.rule.name, self._when(check), needs_more), []).append(check)
        answers = [
            Answer(rule, group[0].rule.weight, len(group), _names(group), when, needs_more)
            for (rule, when, needs_more), group in alike.items()
        ]
        return tuple(sorted(answers, key=lambda each: (WEIGHTS.index(each.weight), -each.checks)))

    def come_to(
        self, check: Untold, ref: FactRef, answers: Iterable[object], outcomes: Collection[str]
    ) -> bool:
        """Whether a check that hangs on one fact comes to one of the outcomes with each answer."""
        trial = self._trial(check, ref)
        return all(trial(each) in outcomes for each in answers)

    def _when(self, check: Untold) -> When:
        ref = next(iter(check.because))
        if len(check.because) > 1 or not isinstance(ref, FactRef):
            return ()
        fact = KINDS[ref.kind].fact(ref.fact)
        if fact is None:
            return ()
        trial = self._trial(check, ref)
        if trial not in self._whens:
            self._whens[trial] = self._tried(check.rule, fact, trial)
        return self._whens[trial]

    def _trial(self, check: Untold, ref: FactRef) -> Trial:
        """The trial of answers to a fact, the same for all things of which the rule sees alike."""
        seen = self._sights.seen(check.rule, check.thing, ref)
        key = check.rule.name, ref.kind, ref.fact, seen.values
        if key not in self._trials:
            self._trials[key] = cache(partial(self._outcome, check, seen.asked))
        return self._trials[key]

    def _tried(self, rule: Rule, fact: Fact, trial: Trial) -> When:
        def write(value: float) -> str:
            return self._write(value, fact.type, None)

        kind = fact.type
        if kind.shape is Shape.YES_NO:
            return among_words(("yes", "no"), (True, False), trial)
        if kind.shape is Shape.WORD:
            return among_words(kind.words, kind.words, trial)
        if kind.shape is not Shape.QUANTITY or kind.dimension is None:
            return ()
        if kind.dimension == NUMBER:
            return along_counts(self._hints(rule, NUMBER), write, trial)
        if kind.dimension == AREA and fact.example.endswith("AWG"):
            return along_steps(self._gauges, write, trial)
        return along_scale(kind.dimension, self._hints(rule, kind.dimension), write, trial)

    @cached_property
    def _gauges(self) -> tuple[float, ...]:
        """The sizes of wire that can be answered: the pack knows no others."""
        return gauges_of(self._library)

    def _outcome(self, check: Untold, places: tuple[tuple[Thing, str], ...], answer: object) -> str:
        if not places:  # it hangs on what was worked out from the fact before any rule was asked
            return ""
        kept = [thing.__dict__[name] for thing, name in places]
        try:
            for thing, name in places:
                thing.__dict__[name] = answer
            outcome = judge(check.rule.where, check.rule.need, check.thing, self._library)
        finally:
            for (thing, name), value in zip(places, kept, strict=True):
                thing.__dict__[name] = value
        return _OUTCOME[outcome] if isinstance(outcome, Verdict) else ""


def _refs(check: Untold) -> list[FactRef]:
    return [each for each in check.because if isinstance(each, FactRef)]


def _names(group: list[Untold]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(check.thing.ref for check in group))
