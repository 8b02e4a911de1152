"""Checks that cannot be told, and come to nothing whatever the answer is: nobody is asked for them.

An unknown is never taken for right, so this is said only where every answer there can be was tried:
both of yes and no, all words of a fact, and, of a quantity, each stretch between the values at
which the rule turns. That is known where the quantity is only compared with limits or looked up in
tables; where it is reckoned with, the question stands.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from linter.language.tree import (
    Comparison,
    FactOf,
    Is,
    Limit,
    LookUp,
    MeasureOf,
    Node,
    Not,
    Word,
    children,
)
from linter.packs.reliance import reliance_of
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import FactRef, Shape

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from linter.audit.judging import Judged, Untold
    from linter.audit.trials import Trials
    from linter.language.library import Library
    from linter.packs.model import Rule

_NOTHING_TO_REPORT = ("met", "does not apply")


def without_settled(judged: Judged, trials: Trials, library: Library) -> Judged:
    """The same verdicts, without untold checks of which no answer leads to a finding."""
    known: dict[tuple[str, str, str], Sequence[object]] = {}

    def is_settled(check: Untold) -> bool:
        (ref, *more) = check.because
        if more or not isinstance(ref, FactRef):
            return False
        key = (check.rule.name, ref.kind, ref.fact)
        if key not in known:
            known[key] = _all_answers(check.rule, ref, library)
        answers = known[key]
        return bool(answers) and trials.come_to(check, ref, answers, _NOTHING_TO_REPORT)

    return judged._replace(untold=tuple(each for each in judged.untold if not is_settled(each)))


def _all_answers(rule: Rule, ref: FactRef, library: Library) -> Sequence[object]:
    """Answers of which one stands for every answer there can be; none where that is not known."""
    fact = KINDS[ref.kind].fact(ref.fact)
    if fact is None or _turns_on_it_alone(rule.need.node, library):
        return ()
    match fact.type.shape:
        case Shape.YES_NO:
            return (True, False)
        case Shape.WORD:
            return fact.type.words
        case Shape.QUANTITY:
            return _stretches(_turns(rule, ref, library))
        case _:
            return ()


def _turns_on_it_alone(need: Node, library: Library) -> bool:
    """Whether the rule asks one fact and nothing else, as most do: some answer breaks it."""
    match need:
        case FactOf() | Not(FactOf()) | Is(_, FactOf(), Word()):
            return True
        case Comparison(_, FactOf(), Limit(name)):
            return library.limits[name] != 0
        case _:
            return False


def _stretches(turns: Sequence[float] | None) -> Sequence[float]:
    """Each value at which the rule turns, one between each two, one below all and one above."""
    if not turns:
        return ()
    between = [(low + high) / 2 for low, high in pairwise(turns)]
    return [turns[0] / 2, *turns, *between, turns[-1] * 2 + 1]


def _turns(rule: Rule, ref: FactRef, library: Library) -> Sequence[float] | None:
    """The values of a quantity at which a rule may turn, in order; None where that is not known."""
    conditions = [each for each in (rule.where, rule.need) if each is not None]
    for kind, name in reliance_of(conditions, library).measures:
        steps = [step for _, step in library.measures[kind, name].steps]
        if ref.fact in {fact for _, fact in reliance_of(steps, library).facts}:
            return None
    turns: set[float] = set()
    for condition in conditions:
        found = list(_turns_of(condition.node, ref, library))
        if None in found:
            return None
        turns.update(each for each in found if each is not None)
    return sorted(turns)


def _turns_of(node: Node, ref: FactRef, library: Library) -> Iterator[float | None]:
    """The values at which a node turns; None for a use of the quantity that is not simple."""
    match node:
        case FactOf(_, _, ref.fact):
            yield None
        case Comparison(_, left, right) if _is(left, ref) or _is(right, ref):
            other = right if _is(left, ref) else left
            yield from _turns_against(other, ref, library)
        case LookUp(table, _, keys):
            for position, key in enumerate(keys):
                if _is(key, ref):
                    yield from (_size(row[position]) for row in library.tables[table].rows)
                else:
                    yield from _turns_of(key, ref, library)
        case MeasureOf(of):
            yield from _turns_of(of, ref, library)
        case _:
            for child in children(node):
                yield from _turns_of(child, ref, library)


def _turns_against(other: Node, ref: FactRef, library: Library) -> Iterator[float | None]:
    match other:
        case Limit(name):
            yield _size(library.limits[name])
        case LookUp(table, column):
            known = library.tables[table]
            at = len(known.keys) + [name for name, _ in known.columns].index(column)
            yield from (_size(row[at]) for row in known.rows if row[at] is not None)
            yield from _turns_of(other, ref, library)
        case _:
            yield None


def _is(node: Node, ref: FactRef) -> bool:
    """Whether the node is the fact: of its own thing, or of one that it was copied to."""
    return isinstance(node, FactOf) and node.fact == ref.fact


def _size(value: object) -> float | None:
    is_size = isinstance(value, int | float) and not isinstance(value, bool)
    return float(value) if is_size and isinstance(value, int | float) else None
