"""What is said of a sum, a count or a condition over things: equal ones are put together."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from typing import TYPE_CHECKING, assert_never, cast

from linter.language.checked import type_of
from linter.language.evaluate import Around, answer
from linter.language.kleene import Answer
from linter.language.tree import Count, Extreme, ForThings, Node, OverThings, Sum
from linter.text import join_words
from linter.units import Unknown
from linter.vocabulary.kinds import KINDS

if TYPE_CHECKING:
    from linter.language.writing import Writing
    from linter.vocabulary.model import Thing

WithValues = Callable[[Node, Around], str]
_MOST_NAMED = 6


class _Element:
    """One of the things gone through: whether it is one of those meant, and what is around it."""

    __slots__ = ("around", "fits", "thing")

    def __init__(self, node: OverThings, thing: Thing, around: Around) -> None:
        self.thing = thing
        self.around = around.with_thing(node.name, thing)
        self.fits = True if node.where is None else answer(node.where, self.around).value


def said_of_things(
    node: OverThings, around: Around, with_values: WithValues, writing: Writing
) -> str:
    """The node with values: six times 2.25 in3 plus 2 in3, "6 of 8", or who it is that decides."""
    things = answer(node.things, around).value
    if isinstance(things, Unknown):
        return "unknown"
    elements = [_Element(node, each, around) for each in cast("tuple[Thing, ...]", things)]
    meant = [each for each in elements if each.fits is not False]
    match node:
        case Count():
            return _counted(meant, len(elements), node.where is not None)
        case Sum():
            return " + ".join(_folded(_values(node, meant, writing))) or "nothing"
        case Extreme():
            values = list(dict.fromkeys(_values(node, meant, writing)))
            if not values:
                return f"{with_values(node.if_none, around)}, as there is none"
            return f"{node.which} of {join_words(values)}"
        case ForThings():
            return _decided(node, meant, with_values)
        case _:
            assert_never(node)


def _values(node: Sum | Extreme, meant: list[_Element], writing: Writing) -> list[str]:
    fact_type = type_of(node.value)
    values = [writing.value(answer(node.value, each.around).value, fact_type) for each in meant]
    doubts = ["" if each.fits is True else "perhaps " for each in meant]
    return [doubt + value for doubt, value in zip(doubts, values, strict=True)]


def _folded(values: list[str]) -> list[str]:
    """The values in the order they come, equal ones put together."""
    counts = Counter(values)
    return [value if many == 1 else f"{many} × {value}" for value, many in counts.items()]  # noqa: RUF001


def _counted(meant: list[_Element], of: int, some_do_not_count: bool) -> str:
    sure = sum(each.fits is True for each in meant)
    doubtful = len(meant) - sure
    if doubtful:
        return f"{sure} and perhaps {doubtful} more of {of}"
    return f"{sure} of {of}" if some_do_not_count else str(sure)


def _decided(node: ForThings, meant: list[_Element], with_values: WithValues) -> str:
    """Those that decide, with their values; or that it is all of them, or none."""
    answers = [(each, _answer(node, each)) for each in meant]
    deciding = [each for each, found in answers if found.value is (node.which != "every")]
    if not deciding:
        deciding = [each for each, found in answers if isinstance(found.value, Unknown)]
    if not deciding:
        return _all_or_none(node, meant)
    by_text: dict[str, list[str]] = {}
    for each in deciding:
        text = with_values(node.condition, each.around)
        by_text.setdefault(text, []).append(each.thing.label)
    return "; ".join(f"{_named(labels)}: {text}" for text, labels in by_text.items())


def _answer(node: ForThings, element: _Element) -> Answer:
    """Whether the condition holds of it; unknown too if it may not be one of those meant."""
    found = answer(node.condition, element.around)
    decides = found.value is (node.which != "every")
    if decides and isinstance(element.fits, Unknown):
        return Answer(element.fits)
    return found


def _all_or_none(node: ForThings, meant: list[_Element]) -> str:
    kind = KINDS[type_of(node.things).kind]
    if not meant:
        return f"there are no such {kind.plural}"
    many = f"{len(meant)} {kind.label if len(meant) == 1 else kind.plural}"
    return f"all of {many}" if node.which == "every" else f"none of {many}"


def _named(labels: list[str]) -> str:
    if len(labels) <= _MOST_NAMED:
        return join_words(labels)
    return f"{', '.join(labels[:_MOST_NAMED])} and {len(labels) - _MOST_NAMED} more"
