"""What a kind of thing and a fact are, and the thing itself as rules see it.

A `Kind` is declared once, with its facts; a `Thing` is one box, one wire end, one circuit of a job,
with the values of those facts as plain attributes, so that a compiled rule reads them at the speed
of Python.
"""

from collections.abc import Mapping
from enum import Enum
from types import MappingProxyType
from typing import NamedTuple

from linter.text import Place
from linter.units import Dimension


class Shape(Enum):
    """What a value is, apart from its dimension."""

    QUANTITY = "quantity"
    YES_NO = "yes or no"
    WORD = "word"
    TEXT = "text"
    THING = "thing"
    THINGS = "things"


class FactType(NamedTuple):
    """The type of a fact: a shape, and what goes with that shape.

    `dimension` belongs to QUANTITY (a count is a quantity of no dimension), `words` to WORD (all
    that the fact can be), `kind` to THING and THINGS (the kind they are of).
    """

    shape: Shape
    dimension: Dimension | None = None
    words: tuple[str, ...] = ()
    kind: str = ""


class Fact(NamedTuple):
    """One fact of a kind of thing.

    `ask` tells a person how to learn it when it is unknown; it is empty for what is always known,
    since it follows from the shape of the job file. An example is written as the job file writes
    values.
    """

    name: str
    type: FactType
    meaning: str
    example: str
    ask: str = ""

    @property
    def label(self) -> str:
        """The fact as a person reads it: "free length"."""
        return self.name.removeprefix("is_").removeprefix("has_").replace("_", " ")

    @property
    def may_be_unknown(self) -> bool:
        """Whether a job may leave the fact open."""
        return bool(self.ask)


class Kind(NamedTuple):
    """A kind of thing: its name, what it is, and its facts."""

    name: str
    plural: str
    meaning: str
    facts: tuple[Fact, ...]

    @property
    def label(self) -> str:
        """The kind as a person reads it: "wire end"."""
        return self.name.replace("_", " ")

    def fact(self, name: str) -> Fact | None:
        """The fact of that name, or None."""
        return next((fact for fact in self.facts if fact.name == name), None)


class FactRef(NamedTuple):
    """One fact of one thing, by name: what an unknown hangs on, what a finding relied on."""

    kind: str
    ref: str
    fact: str


_NOTHING_WRITTEN: Mapping[str, str] = MappingProxyType({})
_NO_PLACES: Mapping[str, Place] = MappingProxyType({})
_NOTHING_ASSUMED: Mapping[str, FactRef] = MappingProxyType({})


class Thing:
    """One thing of a job with the values of its facts as attributes.

    `ref` names it within its kind; `label` is what a person calls it; `place` is where the job file
    states it. `written` has the texts of those facts that the job file writes out, `stated_at` the
    places where it does so, and `usual` names the facts that rest on the job's usual values.
    `assumed` has the facts that are taken as none because the job says nothing of them, each with
    the fact that would have said it, be it of another thing. The remaining attributes are the facts
    of its kind, given as one mapping: a quantity is a float in base units, an unknown is an
    `Unknown`, things are a tuple.

    The mapping is taken over, not copied, so that things which name each other can be completed
    later.
    """

    __slots__ = (
        "__dict__", "assumed", "kind", "label", "place", "ref", "stated_at", "usual", "written",
    )  # fmt: skip

    def __init__(  # noqa: PLR0913  five of them are optional and named
        self,
        kind: str,
        ref: str,
        place: Place,
        values: dict[str, object],
        *,
        label: str = "",
        written: Mapping[str, str] = _NOTHING_WRITTEN,
        stated_at: Mapping[str, Place] = _NO_PLACES,
        usual: frozenset[str] = frozenset(),
        assumed: Mapping[str, FactRef] = _NOTHING_ASSUMED,
    ) -> None:
        self.kind = kind
        self.ref = ref
        self.place = place
        self.label = label or ref
        self.written = written
        self.stated_at = stated_at
        self.usual = usual
        self.assumed = assumed
        self.__dict__ = values

    def __repr__(self) -> str:
        return f"<{self.kind} {self.ref}>"


# What a thing has besides its facts; no fact can have such a name.
NOT_FACTS = frozenset(Thing.__slots__)


def value_of(thing: Thing, fact: str) -> object:
    """The value of a fact, known or `Unknown`; `AttributeError` if the kind has no such fact."""
    return thing.__dict__[fact] if fact in thing.__dict__ else _missing(thing, fact)


def place_of(thing: Thing, fact: str) -> Place:
    """Where the job file states a fact; the place of the thing where it leaves it out."""
    return thing.stated_at.get(fact, thing.place)


def _missing(thing: Thing, fact: str) -> object:
    words = f"{thing.kind} {thing.ref} has no fact {fact}"
    raise AttributeError(words, name=fact, obj=thing)  # as Python says it of a missing attribute
