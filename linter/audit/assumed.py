"""What the answers of an audit took as none, because the job says nothing of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.audit.findings import Assumed
from linter.facts.left_out import LEFT_OUT
from linter.language.compile import compile_rule
from linter.language.evaluate import facts_used
from linter.units import NotKnown, Unknown
from linter.vocabulary.model import FactRef, Thing

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence
    from typing import Self

    from linter.audit.judging import Untold
    from linter.facts import Facts
    from linter.language.library import Library
    from linter.packs.model import Rule

Check = tuple["Rule", Thing]


def assumed(
    facts: Facts, rules: Sequence[Rule], untold: Iterable[Untold], library: Library
) -> tuple[Assumed, ...]:
    """What the answers that are told were taken from and the job leaves out, by kind and fact.

    Every rule is asked again with that hidden: what it then stumbles on is what it takes. So a job
    that says everything pays nothing.
    """
    hidden = _Hidden(facts)
    found: set[object] = set()
    if hidden.places:
        open_checks = {(each.rule.name, each.thing) for each in untold}
        told = [
            (rule, thing)
            for rule in rules
            for thing in facts.things.get(rule.about, ())
            if (rule.name, thing) not in open_checks
        ]
        with hidden:
            hard = [each for each in told if not hidden.asked_by(each, library, found)]
        found.update(*(_carefully(each, facts, library) for each in hard))
    return tuple(_listed(found, facts))


def _carefully(check: Check, facts: Facts, library: Library) -> Iterator[FactRef]:
    """What an answer takes that could be told although something else in it is not known."""
    rule, thing = check
    for condition in (rule.where, rule.need):
        for ref in facts_used(condition, thing, library) if condition is not None else ():
            taken = facts.thing(ref.kind, ref.ref).assumed
            if ref.fact in taken:
                yield taken[ref.fact]


class _Hidden:
    """The facts of a job that are taken as none; within its `with` they are not known.

    `places` has, for each fact that would say it, what follows from it, with the value taken.
    """

    def __init__(self, facts: Facts) -> None:
        self.places: dict[object, list[tuple[Thing, str, object]]] = {}
        for things in facts.things.values():
            for thing in things:
                for fact, root in thing.assumed.items():
                    at = thing, fact, thing.__dict__[fact]
                    self.places.setdefault(root, []).append(at)

    def __enter__(self) -> Self:
        self._hide(self.places)
        return self

    def __exit__(self, *_: object) -> None:
        self._show(self.places)

    def asked_by(self, check: Check, library: Library, found: set[object]) -> bool:
        """Adds what a check asks for to `found`; whether it can be told once that is shown."""
        rule, thing = check
        quickly = compile_rule(rule.where, rule.need, library)
        shown: list[object] = []
        is_told = False
        while not is_told:
            try:
                quickly(thing)
                is_told = True
            except NotKnown as stumbled:
                fresh = [
                    root for root in stumbled.because if root in self.places and root not in shown
                ]
                if not fresh:
                    break
                self._show(fresh)
                shown += fresh
        self._hide(shown)
        found.update(shown)
        return is_told

    def _hide(self, roots: Iterable[object]) -> None:
        for root in roots:
            for thing, fact, _ in self.places[root]:
                thing.__dict__[fact] = Unknown((root,))

    def _show(self, roots: Iterable[object]) -> None:
        for root in roots:
            for thing, fact, value in self.places[root]:
                thing.__dict__[fact] = value


def _listed(found: set[object], facts: Facts) -> Iterator[Assumed]:
    for kind, fields in LEFT_OUT.items():
        for fact, noun in fields.values():
            refs = [each.ref for each in facts.things[kind]]
            taken = tuple(ref for ref in refs if FactRef(kind, ref, fact) in found)
            if taken:
                yield Assumed(kind, fact, noun, taken)
