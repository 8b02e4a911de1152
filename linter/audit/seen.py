"""What a rule sees of a thing: things of which it sees the same come to the same.

What can be answered to an open question is tried once for all of them. Seen is every value that the
rule may ask for, through all measures and all things that it goes through, in one fixed order; a
thing itself stands as its number in the order in which things were met, so that only what is the
same thing counts as the same. What is not known stands as one of two marks: the unknown that is
asked for, or another.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.language.tree import (
    Extreme,
    FactOf,
    ForThings,
    MeasureOf,
    OverThings,
    Sum,
    Variable,
    children,
)
from linter.units import Unknown
from linter.vocabulary.model import Thing

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from linter.language.library import Library
    from linter.language.tree import Node
    from linter.packs.model import Rule
    from linter.vocabulary.model import FactRef

_ASKED, _NOT_KNOWN = object(), object()


class Seen(NamedTuple):
    """The values that a rule sees of a thing, and where among them the asked unknown stands."""

    values: tuple[object, ...]
    asked: tuple[tuple[Thing, str], ...]


class _Way(NamedTuple):
    """A value, reached from a name of the expression along facts."""

    name: str
    facts: tuple[str, ...]


class _Each(NamedTuple):
    """What is seen of each of several things."""

    things: _Way
    name: str
    parts: tuple[_Part, ...]


class _Measured(NamedTuple):
    """What a measure sees of a thing; it knows that thing only, by its kind."""

    thing: _Way
    kind: str
    parts: tuple[_Part, ...]


_Part = _Way | _Each | _Measured


class Sights:
    """What the rules of a pack see; what each of them looks at is found once."""

    def __init__(self, library: Library) -> None:
        self._library = library
        self._of_rules: dict[str, tuple[_Part, ...]] = {}
        self._of_measures: dict[tuple[str, str], tuple[_Part, ...]] = {}

    def seen(self, rule: Rule, thing: Thing, ref: FactRef) -> Seen:
        """What the rule sees of the thing, where one unknown is asked for."""
        if rule.name not in self._of_rules:
            nodes = [each.node for each in (rule.where, rule.need) if each is not None]
            self._of_rules[rule.name] = self._all_of(nodes)
        look = _Look(ref)
        look.at(self._of_rules[rule.name], {rule.about: thing})
        return Seen(tuple(look.values), tuple(look.asked))

    def _all_of(self, nodes: list[Node]) -> tuple[_Part, ...]:
        return tuple(dict.fromkeys(part for node in nodes for part in self._parts(node)))

    def _parts(self, node: Node) -> Iterator[_Part]:
        if isinstance(node, Variable | FactOf):
            yield _way(node)
        elif isinstance(node, MeasureOf):
            parts = self._of_measure(node.kind, node.measure)
            yield _Measured(_way(node.of), node.kind, parts)
        elif isinstance(node, OverThings):
            yield from self._parts_of_things(node)
        else:
            for child in children(node):
                yield from self._parts(child)

    def _parts_of_things(self, node: OverThings) -> Iterator[_Part]:
        inside = [] if node.where is None else [node.where]
        if isinstance(node, Sum | Extreme):
            inside.append(node.value)
        elif isinstance(node, ForThings):
            inside.append(node.condition)
        yield _Each(_way(node.things), node.name, self._all_of(inside))
        if isinstance(node, Extreme):
            yield from self._parts(node.if_none)

    def _of_measure(self, kind: str, name: str) -> tuple[_Part, ...]:
        key = kind, name
        if key not in self._of_measures:
            steps = self._library.measures[key].steps
            self._of_measures[key] = self._all_of([step.node for _, step in steps])
        return self._of_measures[key]


def _way(node: Node) -> _Way:
    """The way to a value; a checked expression reaches things by names and facts alone."""
    match node:
        case Variable(name):
            return _Way(name, ())
        case FactOf(of, _, fact):
            name, facts = _way(of)
            return _Way(name, (*facts, fact))
        case _:
            raise ValueError(f"{node} was not checked")


class _Look:
    """One look with the eyes of a rule."""

    def __init__(self, ref: FactRef) -> None:
        self.values: list[object] = []
        self.asked: list[tuple[Thing, str]] = []
        self._ref = ref
        self._numbers: dict[Thing, int] = {}
        self._measured: set[tuple[int, Thing]] = set()

    def at(self, parts: tuple[_Part, ...], names: Mapping[str, Thing]) -> None:
        """Notes all that the parts look at, where the names mean these things."""
        for part in parts:
            if isinstance(part, _Way):
                self.values.append(self._noted(self._reached(part, names)))
            elif isinstance(part, _Each):
                self._at_each(part, names)
            else:
                self._at_measured(part, names)

    def _at_each(self, part: _Each, names: Mapping[str, Thing]) -> None:
        things = self._reached(part.things, names)
        if not isinstance(things, tuple):
            self.values.append(things)
            return
        self.values.append(len(things))
        for thing in things:
            self.at(part.parts, {**names, part.name: thing})

    def _at_measured(self, part: _Measured, names: Mapping[str, Thing]) -> None:
        thing = self._reached(part.thing, names)
        if not isinstance(thing, Thing):
            self.values.append(thing)
            return
        self.values.append(self._noted(thing))
        measured = id(part.parts), thing
        if measured not in self._measured:
            self._measured.add(measured)
            self.at(part.parts, {part.kind: thing})

    def _reached(self, way: _Way, names: Mapping[str, Thing]) -> object:
        """What stands at the end of a way; a mark where it ends before, at what is not known."""
        value: object = names[way.name]
        for fact in way.facts:
            thing, value = value, value.__dict__[fact]
            if type(value) is Unknown:
                return self._mark(thing, fact, value)
        return value

    def _mark(self, thing: object, fact: str, unknown: Unknown) -> object:
        if fact != self._ref.fact or unknown.because != {self._ref}:
            return _NOT_KNOWN
        if isinstance(thing, Thing) and (thing, fact) not in self.asked:
            self.asked.append((thing, fact))
        return _ASKED

    def _noted(self, value: object) -> object:
        if isinstance(value, Thing):
            return self._numbers.setdefault(value, len(self._numbers))
        if isinstance(value, tuple):
            return tuple(map(self._noted, value))
        return value
