"""The careful evaluator: what an expression comes to if facts are unknown, and what it relies on.

Conditions follow Kleene's strong logic: `and` is broken by one broken part, whatever the others
are; `every` by one thing that breaks it; and so on. What cannot be told is an `Unknown` that names
what it hangs on. Everything else is plain: a sum, a product or a count with an unknown in it is
unknown, even where an unknown is multiplied by 0, or where a comparison would come out the same for
all that it could be. So making an unknown known never changes an answer that was told.
"""

from __future__ import annotations

import operator
from typing import TYPE_CHECKING, NamedTuple, assert_never, cast

from linter.language.checked import Checked, type_of
from linter.language.kleene import Answer, every, plain, some, turned, unknown_of, up_to
from linter.language.reckon import at_least, quotient, rounded_down, rounded_to, rounded_up
from linter.language.tree import (
    AllOf,
    AnyOf,
    Arithmetic,
    Choice,
    Compared,
    Comparison,
    Count,
    Extreme,
    FactOf,
    ForThings,
    Is,
    Joined,
    Limit,
    LimitList,
    LookUp,
    MeasureOf,
    Named,
    Node,
    Not,
    Number,
    OneOf,
    OverThings,
    Path,
    Pick,
    Reckoned,
    Rounded,
    Step,
    Sum,
    Variable,
    Word,
    WordList,
)
from linter.units import Unknown, same_value
from linter.vocabulary.model import FactRef, Shape, Thing, value_of

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from linter.language.library import Library


Steps = tuple[tuple[str, Answer], ...]


class Around(NamedTuple):
    """What stands around an expression: what its names mean, the steps so far, the library.

    `known` keeps the measures already worked out, by kind, name and thing, as long as the values of
    the things stay as they are.
    """

    things: Mapping[str, Thing]
    steps: Mapping[str, Answer]
    library: Library
    known: dict[tuple[str, str, str], Steps]

    def with_thing(self, name: str, thing: Thing) -> Around:
        """The same with one more name."""
        return self._replace(things={**self.things, name: thing})


def evaluate(checked: Checked, thing: Thing, library: Library) -> object:
    """The value of an expression for a thing, or an `Unknown` that names what it hangs on."""
    return answer(checked.node, Around({checked.subject: thing}, {}, library, {})).value


def facts_used(checked: Checked, thing: Thing, library: Library) -> frozenset[FactRef]:
    """The facts the answer was taken from; of a condition that is broken, those that break it."""
    return answer(checked.node, Around({checked.subject: thing}, {}, library, {})).relied


def measure_of(kind: str, name: str, thing: Thing, library: Library) -> object:
    """The value of a measure of a thing, or an `Unknown`."""
    return measured(kind, name, thing, Around({}, {}, library, {}))[-1][1].value


def measured(kind: str, name: str, thing: Thing, around: Around) -> Steps:
    """The steps of a measure with their answers; the last is the measure."""
    key = kind, name, thing.ref
    if key not in around.known:
        steps: dict[str, Answer] = {}
        inside = Around({kind: thing}, steps, around.library, around.known)
        for step, checked in around.library.measures[kind, name].steps:
            steps[step] = answer(checked.node, inside)
        around.known[key] = tuple(steps.items())
    return around.known[key]


def answer(node: Node, around: Around) -> Answer:
    """The answer of one node."""
    if isinstance(node, Named):
        return _named(node, around)
    if isinstance(node, Compared):
        return _compared(node, around)
    if isinstance(node, Joined):
        return _joined(node, around)
    if isinstance(node, Reckoned):
        return _reckoned(node, around)
    return _over_things(node, around)


def _named(node: Named, around: Around) -> Answer:
    match node:
        case Number(said) | Word(said):
            return Answer(said)
        case WordList(words):
            return Answer(tuple(word.text for word in words))
        case Limit(name) | LimitList(name):
            return Answer(around.library.limits[name])
        case Step(name):
            return around.steps[name]
        case FactOf() | MeasureOf():
            return _of_thing(node, around)
        case Variable() | Path():
            return Answer(around.things[_checked_name(node)])
        case _:
            assert_never(node)


def _checked_name(node: Variable | Path) -> str:
    if isinstance(node, Path):
        raise ValueError(f"{'.'.join(node.names)} was not checked")
    return node.name


def _of_thing(node: FactOf | MeasureOf, around: Around) -> Answer:
    thing, relied = answer(node.of, around)
    if isinstance(thing, Unknown):
        return Answer(thing, relied)
    thing = cast("Thing", thing)  # checked: what stands before a dot is a thing
    if isinstance(node, MeasureOf):
        found = measured(node.kind, node.measure, thing, around)[-1][1]
        return Answer(found.value, relied | found.relied)
    if type_of(node).shape in (Shape.THING, Shape.THINGS):
        return Answer(value_of(thing, node.fact), relied)
    return Answer(value_of(thing, node.fact), relied | {FactRef(thing.kind, thing.ref, node.fact)})


def _compared(node: Compared, around: Around) -> Answer:
    match node:
        case Comparison(order, left, right):
            return plain(_ORDERS[order], [answer(left, around), answer(right, around)])
        case Is(negated, left, right):
            same = operator.eq if type_of(left).shape is not Shape.QUANTITY else same_value
            found = plain(same, [answer(left, around), answer(right, around)])
        case OneOf(negated, value, among):
            one, several = answer(value, around), answer(among, around)
            if several.value == ():
                return Answer(negated, several.relied)
            found = plain(_found_in, [one, several])
        case _:
            assert_never(node)
    return turned(found) if negated else found


def _joined(node: Joined, around: Around) -> Answer:
    match node:
        case Not(condition):
            return turned(answer(condition, around))
        case AllOf(parts):
            return every(up_to(False, (answer(each, around) for each in parts)))
        case AnyOf(parts):
            return some(up_to(True, (answer(each, around) for each in parts)))
        case _:
            assert_never(node)


def _reckoned(node: Reckoned, around: Around) -> Answer:
    match node:
        case Arithmetic(sign, left, right):
            return plain(_SIGNS[sign], [answer(left, around), answer(right, around)])
        case Rounded(way, value, step):
            return plain(_ROUNDED[way], [answer(value, around), answer(step, around)])
        case Choice():
            return _choice(node, around)
        case Pick(which, values):
            return plain(_PICKS[which], [answer(each, around) for each in values])
        case LookUp(table, column, keys):
            find = around.library.column(table, column)
            return plain(lambda *at: find(at), [answer(each, around) for each in keys])
        case _:
            assert_never(node)


def _choice(node: Choice, around: Around) -> Answer:
    """The value chosen; if that cannot be told, both are of one value or it hangs on all of it."""
    condition = answer(node.condition, around)
    if condition.value is True or condition.value is False:
        chosen = answer(node.then if condition.value else node.otherwise, around)
        return Answer(chosen.value, condition.relied | chosen.relied)
    one, other = answer(node.then, around), answer(node.otherwise, around)
    relied = condition.relied | one.relied | other.relied
    if not isinstance(one.value, Unknown) and not isinstance(other.value, Unknown):
        if one.value == other.value:
            return Answer(one.value, one.relied | other.relied)
        return Answer(condition.value, relied)
    return Answer(unknown_of([condition, one, other]), relied)


def _over_things(node: OverThings, around: Around) -> Answer:
    things, relied = answer(node.things, around)
    if isinstance(things, Unknown):
        return Answer(things, relied)
    arounds = [around.with_thing(node.name, each) for each in cast("tuple[Thing, ...]", things)]
    match node:
        case ForThings("every"):
            return every(_implied(node, each) for each in arounds)
        case ForThings("some"):
            return some(_both(node, each) for each in arounds)
        case ForThings():
            return turned(some(_both(node, each) for each in arounds))
        case Count():
            fitting = _fitting(node.where, arounds)
            return plain(lambda *all_of: float(sum(all_of)), fitting)
        case Sum() | Extreme():
            return _of_those_that_fit(node, arounds, around)
        case _:
            assert_never(node)


def _of_those_that_fit(node: Sum | Extreme, arounds: list[Around], around: Around) -> Answer:
    """The sum or extreme of the values of those that fit; unknown if it is not known which fit."""
    values: list[Answer] = []
    relied: frozenset[FactRef] = frozenset()
    for each, fits in zip(arounds, _fitting(node.where, arounds), strict=True):
        relied |= fits.relied
        if fits.value is False:
            continue
        value = answer(node.value, each)
        unknown = isinstance(fits.value, Unknown)
        values.append(Answer(unknown_of([fits, value]), value.relied) if unknown else value)
    if isinstance(node, Extreme) and not values:
        found = answer(node.if_none, around)
    elif isinstance(node, Extreme):
        pick = max if node.which == "largest" else min
        found = plain(lambda *all_of: pick(all_of), values)
    else:
        found = plain(lambda *all_of: sum(all_of), values)
    return Answer(found.value, relied | found.relied)


def _fitting(where: Node | None, arounds: list[Around]) -> list[Answer]:
    return [Answer(True) if where is None else answer(where, each) for each in arounds]


def _implied(node: ForThings, around: Around) -> Answer:
    """Whether a thing, if it is one of those meant, is as it must be."""
    where = Answer(True) if node.where is None else answer(node.where, around)
    if where.value is False:
        return Answer(True, where.relied)
    return some([turned(where), answer(node.condition, around)])


def _both(node: ForThings, around: Around) -> Answer:
    """Whether a thing is one of those meant, and as it is asked for."""
    where = Answer(True) if node.where is None else answer(node.where, around)
    if where.value is False:
        return where
    return every([where, answer(node.condition, around)])


_ORDERS: Mapping[str, Callable[[float, float], bool]] = {
    "at least": at_least,
    "at most": lambda a, b: at_least(b, a),
    "more than": lambda a, b: a > b and not same_value(a, b),
    "less than": lambda a, b: a < b and not same_value(a, b),
}
_SIGNS: Mapping[str, Callable[[float, float], float]] = {
    "+": operator.add,
    "-": operator.sub,
    "*": operator.mul,
    "/": quotient,
}
_ROUNDED: Mapping[str, Callable[[float, float], float]] = {
    "up to": rounded_up,
    "down to": rounded_down,
    "to": rounded_to,
}
_PICKS: Mapping[str, Callable[..., float]] = {"larger": max, "smaller": min}


def _found_in(value: object, several: tuple[object, ...]) -> bool:
    return value in several
