"""Answers and how they are joined: Kleene's strong logic, and plain functions of values."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.language.verdict import NoQuotient, NoRow
from linter.units import NotKnown, Unknown
from linter.vocabulary.model import FactRef

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator


class Answer(NamedTuple):
    """A value, known or `Unknown`, and the facts it was taken from."""

    value: object
    relied: frozenset[FactRef] = frozenset()


def every(answers: Iterable[Answer]) -> Answer:
    """Kleene's `and`: broken by those that are broken; else unknown by those that are unknown."""
    return _decided(list(answers), by=False)


def some(answers: Iterable[Answer]) -> Answer:
    """Kleene's `or`: met by those that are met; else unknown by those that are unknown."""
    return _decided(list(answers), by=True)


def _decided(answers: list[Answer], *, by: bool) -> Answer:
    deciding = [each for each in answers if each.value is by]
    if deciding:
        return Answer(by, relied_on(deciding))
    unknown = [each for each in answers if isinstance(each.value, Unknown)]
    return Answer(unknown_of(unknown) if unknown else not by, relied_on(answers))


def turned(found: Answer) -> Answer:
    """Kleene's `not`."""
    return found if isinstance(found.value, Unknown) else Answer(not found.value, found.relied)


def plain(function: Callable[..., object], answers: list[Answer]) -> Answer:
    """A function of values; unknown if one of them is, or if the function has no value for them."""
    relied = relied_on(answers)
    if any(isinstance(each.value, Unknown) for each in answers):
        return Answer(unknown_of(answers), relied)
    try:
        return Answer(function(*(each.value for each in answers)), relied)
    except NotKnown as none:
        return Answer(Unknown(_with_facts(reason, answers) for reason in none.because), relied)


def _with_facts(reason: object, answers: list[Answer]) -> object:
    """The reason with the facts it comes from: of all keys of a table, or of the divisor alone."""
    match reason:
        case NoRow(table, keys):
            return NoRow(table, keys, relied_on(answers))
        case NoQuotient():
            return NoQuotient(answers[-1].relied)
        case _:
            return reason


def unknown_of(answers: Iterable[Answer]) -> Unknown:
    """Unknown, because of all that is unknown among the answers."""
    unknown = (each.value for each in answers if isinstance(each.value, Unknown))
    return Unknown(frozenset[object]().union(*(each.because for each in unknown)))


def relied_on(answers: Iterable[Answer]) -> frozenset[FactRef]:
    """The facts that any of the answers was taken from."""
    return frozenset[FactRef]().union(*(each.relied for each in answers))


def up_to(decisive: bool, answers: Iterable[Answer]) -> Iterator[Answer]:
    """The answers up to the first that decides; those after it are not asked for."""
    for each in answers:
        yield each
        if each.value is decisive:
            return
