"""What must hold of the facts of any job: all filled, each of its type, unknowns with a ground."""

from collections.abc import Iterator

from linter.facts import Facts
from linter.units import Unknown
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import Fact, FactRef, Shape, Thing, value_of


def faults(facts: Facts) -> list[str]:
    """What is wrong with the facts of a job; nothing, if all is well."""
    return [
        fault
        for things in facts.things.values()
        for thing in things
        for fault in (*_undeclared(thing), *_of_facts(facts, thing))
    ]


def _undeclared(thing: Thing) -> Iterator[str]:
    names = {fact.name for fact in KINDS[thing.kind].facts}
    for noted in (thing.__dict__, thing.written, thing.stated_at, thing.usual):
        yield from (f"{thing!r} has {name}, not declared" for name in noted if name not in names)


def _of_facts(facts: Facts, thing: Thing) -> Iterator[str]:
    for fact in KINDS[thing.kind].facts:
        if fact.name not in thing.__dict__:
            yield f"{thing!r} lacks {fact.name}"
            continue
        value = value_of(thing, fact.name)
        if isinstance(value, Unknown):
            yield from _of_unknown(facts, thing, fact, value)
        elif not _is_of_type(facts, fact, value):
            yield f"{thing!r}.{fact.name} is {value!r}, not of its type"


def _of_unknown(facts: Facts, thing: Thing, fact: Fact, value: Unknown) -> Iterator[str]:
    if not fact.may_be_unknown:
        yield f"{thing!r}.{fact.name} is unknown, but says no way to learn it"
    if not value.because:
        yield f"{thing!r}.{fact.name} is unknown because of nothing"
    for ref in value.because:
        if not isinstance(ref, FactRef):
            yield f"{thing!r}.{fact.name} is unknown because of {ref!r}"
            continue
        base = value_of(facts.thing(ref.kind, ref.ref), ref.fact)
        if not isinstance(base, Unknown) or base.because != {ref}:
            yield f"{thing!r}.{fact.name} hangs on {ref}, which is {base!r}"


def _is_of_type(facts: Facts, fact: Fact, value: object) -> bool:
    type_ = fact.type
    match type_.shape:
        case Shape.QUANTITY:
            return type(value) is float
        case Shape.YES_NO:
            return type(value) is bool
        case Shape.WORD:
            return value in type_.words
        case Shape.TEXT:
            return type(value) is str
        case Shape.THING:
            return _is_thing(facts, type_.kind, value)
        case Shape.THINGS:
            return (
                type(value) is tuple
                and all(_is_thing(facts, type_.kind, each) for each in value)
                and len(set(map(id, value))) == len(value)
            )


def _is_thing(facts: Facts, kind: str, value: object) -> bool:
    is_thing = isinstance(value, Thing) and value.kind == kind
    return is_thing and facts.thing(kind, value.ref) is value
