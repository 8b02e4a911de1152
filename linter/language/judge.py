"""Judging a rule on a thing: the quick way first, the careful way where something is not known."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from linter.language.compile import compile_rule
from linter.language.evaluate import evaluate
from linter.language.verdict import CannotTell, Judgement, Reason, Verdict
from linter.units import NotKnown, Unknown

if TYPE_CHECKING:
    from collections.abc import Callable

    from linter.language.checked import Checked
    from linter.language.library import Library
    from linter.vocabulary.model import Thing


def judge(where: Checked | None, need: Checked, thing: Thing, library: Library) -> Judgement:
    """What a rule comes to for one thing.

    It does not apply where `where` is broken. Where `where` cannot be told, the rule is met if
    `need` is met all the same; else it cannot be told, because of what either of them hangs on.
    """
    return judging(where, need, library)(thing)


def judging(where: Checked | None, need: Checked, library: Library) -> Callable[[Thing], Judgement]:
    """A function that judges a rule on any thing of its kind."""
    quickly = compile_rule(where, need, library)

    def judged(thing: Thing) -> Judgement:
        try:
            return quickly(thing)
        except NotKnown:
            return _carefully(where, need, thing, library)

    return judged


def _carefully(where: Checked | None, need: Checked, thing: Thing, library: Library) -> Judgement:
    applies = True if where is None else evaluate(where, thing, library)
    if applies is False:
        return Verdict.DOES_NOT_APPLY
    met = evaluate(need, thing, library)
    if met is True:
        return Verdict.MET
    unknown = [each.because for each in (applies, met) if isinstance(each, Unknown)]
    if not unknown:
        return Verdict.BROKEN
    # The careful evaluator puts nothing else into what an unknown hangs on.
    return CannotTell(cast("frozenset[Reason]", frozenset[object]().union(*unknown)))
