"""Tries answers to what is not known yet, to tell beforehand what each would settle."""

from __future__ import annotations

from functools import cached_property
from itertools import chain
from typing import TYPE_CHECKING

from linter.audit.answers import When, along_counts, along_scale, along_steps, among_words
from linter.audit.findings import WEIGHTS, Answer
from linter.audit.hints import gauges_of, hints_of
from linter.language.judge import judge
from linter.language.verdict import Verdict
from linter.units import AREA, NUMBER, Unknown
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import Fact, FactRef, Shape, Thing

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable, Mapping

    from linter.audit.judging import Untold
    from linter.language.library import Library
    from linter.language.writing import Writer

_OUTCOME = {Verdict.MET: "met", Verdict.BROKEN: "broken", Verdict.DOES_NOT_APPLY: "does not apply"}


class Trials:
    """Answers put in the place of what is unknown, one at a time, and taken out again."""

    def __init__(
        self, things: Mapping[str, tuple[Thing, ...]], library: Library, write: Writer
    ) -> None:
        self._library, self._write = library, write
        self._things = things
        self._hints = hints_of(library)

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
        known = ref in self._unknown
        return known and all(self._outcome(check, ref, each) in outcomes for each in answers)

    @cached_property
    def _unknown(self) -> Mapping[FactRef, list[tuple[Thing, str]]]:
        """Where each unknown fact shows: at its own thing, and where it was copied to."""
        shown: dict[FactRef, list[tuple[Thing, str]]] = {}
        for thing in chain.from_iterable(self._things.values()):
            for name, value in thing.__dict__.items():
                if type(value) is Unknown and len(value.because) == 1:
                    (ref,) = value.because
                    if isinstance(ref, FactRef) and ref.fact == name:
                        shown.setdefault(ref, []).append((thing, name))
        return shown

    def _when(self, check: Untold) -> When:
        ref = next(iter(check.because))
        if len(check.because) > 1 or not isinstance(ref, FactRef) or ref not in self._unknown:
            return ()
        fact = KINDS[ref.kind].fact(ref.fact)
        return self._tried(check, ref, fact) if fact else ()

    def _tried(self, check: Untold, ref: FactRef, fact: Fact) -> When:
        def trial(answer: object) -> str:
            return self._outcome(check, ref, answer)

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
            return along_counts(self._hints(check.rule, NUMBER), write, trial)
        if kind.dimension == AREA and fact.example.endswith("AWG"):
            return along_steps(self._gauges, write, trial)
        return along_scale(kind.dimension, self._hints(check.rule, kind.dimension), write, trial)

    @cached_property
    def _gauges(self) -> tuple[float, ...]:
        """The sizes of wire that can be answered: the pack knows no others."""
        return gauges_of(self._library)

    def _outcome(self, check: Untold, ref: FactRef, answer: object) -> str:
        places = self._unknown[ref]
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
