"""The facts a finding was worked out from, and its fingerprint."""

from __future__ import annotations

import hashlib
from typing import TYPE_CHECKING

from linter.audit.findings import Relied
from linter.language.evaluate import facts_used
from linter.units import is_known
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import FactRef, FactType, Shape, Thing, value_of

if TYPE_CHECKING:
    from collections.abc import Iterable

    from linter.facts import Facts
    from linter.language.library import Library
    from linter.language.writing import Writer
    from linter.packs.model import Rule

_FIGURES = ".9g"
_DIGITS = 16


def used_by(rule: Rule, thing: Thing, library: Library) -> frozenset[FactRef]:
    """The facts from which it was taken that a rule applies to a thing, and what came of it."""
    used = facts_used(rule.need, thing, library)
    if rule.where is not None:
        used |= facts_used(rule.where, thing, library)
    return used


def told_of(rule: Rule, thing: Thing, library: Library) -> frozenset[FactRef]:
    """The facts that the rule's sentence tells of a thing, such as the way by which a hot comes."""
    holes = (part for part in rule.say if not isinstance(part, str))
    return frozenset().union(*(facts_used(each, thing, library) for each in holes))


def relied_on(used: Iterable[FactRef], facts: Facts, write: Writer) -> tuple[Relied, ...]:
    """The facts with their values, as the job writes them where it does, in order of kind and name.

    Facts that only lead from one thing to another are left out: what they lead to is there.
    """
    found = []
    for ref in sorted(used):
        type_ = _type_of(ref)
        if type_.shape not in (Shape.THING, Shape.THINGS):
            thing = facts.thing(ref.kind, ref.ref)
            value = value_of(thing, ref.fact)
            text = write(value, type_, thing.written.get(ref.fact))
            usual, assumed = ref.fact in thing.usual, ref.fact in thing.assumed
            found.append(Relied(*ref, value=text, usual=usual, assumed=assumed))
    return tuple(found)


def fingerprint(rule: str, subject: Thing, used: Iterable[FactRef], facts: Facts) -> str:
    """Sixteen hexadecimal digits of rule, subject, and the facts relied on with their values.

    `used` has those that are told of the subject, too: another way by which a hot comes where it
    should not is another finding, though the rule asks only whether one does. Places do not count,
    nor how a quantity is written: edits elsewhere leave it as it is.
    """
    lines = [rule, f"{subject.kind} {subject.ref}"]
    for ref in sorted(used):
        value = value_of(facts.thing(ref.kind, ref.ref), ref.fact)
        lines.append(f"{ref.kind} {ref.ref} {ref.fact} {_canonical(value)}")
    return mark_of(lines)


def mark_of(lines: Iterable[str]) -> str:
    """Sixteen hexadecimal digits by which lines of text are recognised."""
    return hashlib.sha256("\n".join(lines).encode()).hexdigest()[:_DIGITS]


def _canonical(value: object) -> str:
    if not is_known(value):
        return "unknown"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float | int):
        return format(value, _FIGURES)
    if isinstance(value, Thing):
        return value.ref
    if isinstance(value, tuple):
        return " ".join(sorted(map(_canonical, value)))
    return str(value)


def _type_of(ref: FactRef) -> FactType:
    fact = KINDS[ref.kind].fact(ref.fact)
    if fact is None:
        raise KeyError(f"{ref.kind} has no fact {ref.fact}")
    return fact.type
