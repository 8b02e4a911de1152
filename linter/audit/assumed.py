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
    from collections.abc import Callable, Iterable, Iterator, Sequence
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

    Every rule is asked again with that hidden: what it then stumbles on is what it takes, and stays
    shown from then on. So a job that says everything pays nothing.
    """
    hidden = _Hidden(facts)
    if hidden.places:
        untold_of: dict[str, set[Thing]] = {}
        for each in untold:
            untold_of.setdefault(each.rule.name, set()).add(each.thing)
        with hidden:
            hard = []
            for rule in rules:
                left = untold_of.get(rule.name, ())
                told = (each for each in facts.things.get(rule.about, ()) if each not in left)
                hard += [(rule, each) for each in hidden.hard(rule, told, library)]
        hidden.found.update(*(_carefully(each, facts, library) for each in hard))
    return tuple(_listed(hidden.found, facts))


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

    `places` has, for each fact that would say it, what follows from it, with the value taken;
    `found` has those that a check asked for.
    """

    def __init__(self, facts: Facts) -> None:
        self.places: dict[object, list[tuple[Thing, str, object]]] = {}
        self.found: set[object] = set()
        for things in facts.things.values():
            for thing in things:
                for fact, root in thing.assumed.items():
                    at = thing, fact, thing.__dict__[fact]
                    self.places.setdefault(root, []).append(at)

    def __enter__(self) -> Self:
        for root, places in self.places.items():
            for thing, fact, _ in places:
                thing.__dict__[fact] = Unknown((root,))
        return self

    def __exit__(self, *_: object) -> None:
        self._show(self.places)

    def hard(self, rule: Rule, things: Iterable[Thing], library: Library) -> Iterator[Thing]:
        """Adds what a rule asks for to `found`; the things of which that does not tell it."""
        quickly = compile_rule(rule.where, rule.need, library)
        for thing in things:
            stumbled = _stumbled(quickly, thing)
            while stumbled is not None:
                fresh = [x for x in stumbled.because if x in self.places and x not in self.found]
                if not fresh:
                    yield thing
                    break
                self._show(fresh)
                self.found.update(fresh)
                stumbled = _stumbled(quickly, thing)

    def _show(self, roots: Iterable[object]) -> None:
        for root in roots:
            for thing, fact, value in self.places[root]:
                thing.__dict__[fact] = value


def _stumbled(quickly: Callable[[Thing], object], thing: Thing) -> NotKnown | None:
    try:
        quickly(thing)
    except NotKnown as stumbled:
        return stumbled
    return None


def _listed(found: set[object], facts: Facts) -> Iterator[Assumed]:
    for kind, fields in LEFT_OUT.items():
        for fact, noun in fields.values():
            refs = [each.ref for each in facts.things[kind]]
            taken = tuple(ref for ref in refs if FactRef(kind, ref, fact) in found)
            if taken:
                yield Assumed(kind, fact, noun, taken)
