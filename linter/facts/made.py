"""The things made so far, by kind and name; their links and what follows from others come later."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.units import Unknown
from linter.vocabulary.model import Thing, value_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from linter.facts.knowing import Number, YesNo
    from linter.job.jobs import Job
    from linter.trace.trace import Trace
    from linter.wiring.groups import Groups
    from linter.wiring.model import Wiring

Values = dict[str, object]


class Site(NamedTuple):
    """All that facts are worked out from."""

    job: Job
    wiring: Wiring
    trace: Trace
    groups: Groups
    entering: Mapping[str, int]  # how many cables enter each box, those that run through too
    capped: frozenset[str]  # the wire ends that are capped, as stated or derived
    armoured: frozenset[str] = frozenset()  # boxes that a cable enters whose armour is its bond


class Made:
    """Things by kind, each kind in file order."""

    __slots__ = ("_by_ref", "_position")

    def __init__(self, kinds: Iterable[str]) -> None:
        self._by_ref: dict[str, dict[str, Thing]] = {kind: {} for kind in kinds}
        self._position: dict[Thing, int] = {}

    def add(self, things: Iterable[Thing]) -> None:
        """Takes in more things, each kind in file order."""
        for thing in things:
            of_kind = self._by_ref[thing.kind]
            self._position[thing] = len(of_kind)
            of_kind[thing.ref] = thing

    def all(self, kind: str) -> tuple[Thing, ...]:
        """All things of a kind, in file order."""
        return tuple(self._by_ref[kind].values())

    def by_ref(self, kind: str) -> Mapping[str, Thing]:
        """All things of a kind by name."""
        return self._by_ref[kind]

    def thing(self, kind: str, ref: str) -> Thing:
        """The thing of that kind and name."""
        return self._by_ref[kind][ref]

    def of(self, kind: str, refs: Iterable[str]) -> tuple[Thing, ...]:
        """The things of those names, each once, in file order."""
        by_ref = self._by_ref[kind]
        return self.in_order(by_ref[ref] for ref in refs)

    def in_order(self, things: Iterable[Thing]) -> tuple[Thing, ...]:
        """The things, each once, in file order; all of one kind."""
        once = dict.fromkeys(things)
        return tuple(sorted(once, key=self._position.__getitem__) if len(once) > 1 else once)


class Grouped:
    """Things gathered under the names of what they belong to."""

    __slots__ = ("_lists",)

    def __init__(self, pairs: Iterable[tuple[str, Thing]]) -> None:
        self._lists: dict[str, list[Thing]] = {}
        for name, thing in pairs:
            self._lists.setdefault(name, []).append(thing)

    def under(self, name: str) -> tuple[Thing, ...]:
        """The things under a name, each as often as it was gathered."""
        return tuple(self._lists.get(name, ()))


def complete(thing: Thing, values: Mapping[str, object]) -> None:
    """Adds facts to a thing that were not known when it was made."""
    thing.__dict__.update(values)


def number(thing: Thing, fact: str) -> Number:
    """The value of a fact that is a quantity."""
    value = value_of(thing, fact)
    if not isinstance(value, float | Unknown):
        raise TypeError(f"{thing!r}.{fact} is not a quantity: {value!r}")
    return value


def answer(thing: Thing, fact: str) -> YesNo:
    """The value of a fact that is yes or no."""
    value = value_of(thing, fact)
    if not isinstance(value, bool | Unknown):
        raise TypeError(f"{thing!r}.{fact} is not yes or no: {value!r}")
    return value


def things(thing: Thing, fact: str) -> tuple[Thing, ...]:
    """The value of a fact that is things and never unknown."""
    value = value_of(thing, fact)
    if not isinstance(value, tuple):
        raise TypeError(f"{thing!r}.{fact} is not things: {value!r}")
    return value


def one(thing: Thing, fact: str) -> Thing:
    """The value of a fact that is one thing and never unknown."""
    value = value_of(thing, fact)
    if not isinstance(value, Thing):
        raise TypeError(f"{thing!r}.{fact} is not a thing: {value!r}")
    return value
