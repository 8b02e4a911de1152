"""Puts every rule to everything it is about; keeps what is broken or cannot be told."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple, Self

from linter.language.judge import judging
from linter.language.verdict import CannotTell, Reason, Verdict
from linter.vocabulary.kinds.dwelling import STAGES

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence
    from types import TracebackType

    from linter.language.library import Library
    from linter.packs.model import Days, Rule
    from linter.vocabulary.model import Thing


class Broken(NamedTuple):
    """A rule that a thing breaks."""

    rule: Rule
    thing: Thing


class Untold(NamedTuple):
    """A rule that cannot be told of a thing, and what that hangs on."""

    rule: Rule
    thing: Thing
    because: frozenset[Reason]


class Judged(NamedTuple):
    """What came of all checks; `checks` counts those that apply."""

    checks: int
    broken: tuple[Broken, ...]
    untold: tuple[Untold, ...]


class AtWork:
    """Names the rule and the thing at hand in whatever is thrown meanwhile.

    An error inside a rule is our fault; whoever catches it can say where it happened.
    """

    def __init__(self) -> None:
        self.rule = ""
        self.thing: Thing | None = None

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        at: TracebackType | None,
    ) -> None:
        if error is not None and self.rule:
            of = f" for {self.thing.kind} {self.thing.ref}" if self.thing else ""
            error.add_note(f"judging the rule {self.rule}{of}")


def in_force(
    rules: Iterable[Rule], stage: str | None, permit_date: str | None = None
) -> list[Rule]:
    """The rules that hold at a stage for a permit of a day, and are not at rest.

    Where the job does not say its stage or that day, none is left out for it.
    """
    reached = STAGES.index(stage) if stage else len(STAGES)
    return [
        rule
        for rule in rules
        if STAGES.index(rule.from_stage) <= reached
        and not rule.at_rest_by
        and _is_for(rule.permits, permit_date)
    ]


def _is_for(permits: Days, day: str | None) -> bool:
    first, last = permits
    return day is None or ((not first or first <= day) and (not last or day <= last))


def judge_all(
    things: Mapping[str, tuple[Thing, ...]], rules: Sequence[Rule], library: Library
) -> Judged:
    """What every rule says of everything it is about, in the order of rules, then of things."""
    checks = 0
    broken: list[Broken] = []
    untold: list[Untold] = []
    with AtWork() as at_work:
        for rule in rules:
            at_work.rule, at_work.thing = rule.name, None
            judge = judging(rule.where, rule.need, library)
            for thing in things.get(rule.about, ()):
                at_work.thing = thing
                outcome = judge(thing)
                if outcome is Verdict.DOES_NOT_APPLY:
                    continue
                checks += 1
                if outcome is Verdict.BROKEN:
                    broken.append(Broken(rule, thing))
                elif isinstance(outcome, CannotTell):
                    untold.append(Untold(rule, thing, outcome.because))
    return Judged(checks, tuple(broken), tuple(untold))
