"""The working of an expression: each step in words, with its values, and what it comes to.

Working is computed only for what is reported, by the careful evaluator, so it also says where an
unknown stands in the way.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple, cast

from linter.language.brief import Brief
from linter.language.checked import Checked, type_of
from linter.language.evaluate import Around, answer, measured
from linter.language.print import Style, to_text
from linter.language.tree import (
    AllOf,
    AnyOf,
    Choice,
    Count,
    Extreme,
    FactOf,
    ForThings,
    Limit,
    LimitList,
    LookUp,
    MeasureOf,
    Node,
    OverThings,
    Step,
    Sum,
    Word,
    children,
)
from linter.language.work_over_things import said_of_things
from linter.language.writing import Writing
from linter.units import Unknown
from linter.vocabulary.model import Thing

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.language.evaluate import Steps
    from linter.language.library import Library
    from linter.language.writing import Writer


class WorkLine(NamedTuple):
    """One line of a working: what is named, the rule's words, the words with values, the outcome.

    `name` is a step or a measure, or empty for what the rule itself asks. The outcome of a
    condition is "met", "not met" or "cannot be told". `brief` is what one writes on paper: the
    values without terms of nothing, or the plain fact that a condition met; empty where the line
    says nothing new.
    """

    name: str
    text: str
    values: str
    result: str
    brief: str = ""


def working(
    checked: Checked, thing: Thing, library: Library, writer: Writer
) -> tuple[WorkLine, ...]:
    """The lines of the working of an expression for a thing, the measures it uses first.

    `writer` writes a value of a type; what the job's file writes out is given to it as written.
    """
    return next(workings([checked], thing, library, writer))


def workings(
    expressions: Iterable[Checked], thing: Thing, library: Library, writer: Writer
) -> Iterator[tuple[WorkLine, ...]]:
    """The lines of each of several expressions; a measure is worked in the first that uses it."""
    worker = _Worker(library, Writing(writer))
    known: dict[tuple[str, str, str], Steps] = {}
    for checked in expressions:
        worker.work("", checked.node, Around({checked.subject: thing}, {}, library, known))
        yield tuple(worker.lines)
        worker.lines.clear()


class _Worker:
    """Gathers the lines; a measure of a thing is worked once, before it is first used."""

    def __init__(self, library: Library, writing: Writing) -> None:
        self.lines: list[WorkLine] = []
        self._library = library
        self._writing = writing
        self._brief = Brief(self._with_values, writing)
        self._shown: set[tuple[str, str, str]] = set()

    def work(self, name: str, node: Node, around: Around) -> None:
        """Adds the lines of a node; of joined conditions of the rule itself, one for each."""
        self._work_measures(node, around)
        if isinstance(node, AllOf | AnyOf) and not name:
            for part in node.parts:
                self.work("", part, around)
            return
        value, values = answer(node, around).value, self._with_values(node, around)
        result = self._writing.outcome(value, type_of(node))
        brief = self._brief.of(node, around)
        self.lines.append(WorkLine(name, to_text(node), values, result, brief))

    def _work_measures(self, node: Node, around: Around) -> None:
        """Adds the lines of the measures that the node asks for, of things that are at hand."""
        if isinstance(node, MeasureOf):
            thing = answer(node.of, around).value
            if isinstance(thing, Thing):
                self._work_measure(node, thing, around)
            return
        for each in children(node):
            if not isinstance(node, OverThings) or each is node.things:
                self._work_measures(each, around)

    def _work_measure(self, node: MeasureOf, thing: Thing, outside: Around) -> None:
        key = (node.kind, thing.ref, node.measure)
        if key in self._shown:
            return
        self._shown.add(key)
        steps = self._library.measures[node.kind, node.measure].steps
        answers = dict(measured(node.kind, node.measure, thing, outside))
        around = outside._replace(things={node.kind: thing}, steps=answers)
        for index, (name, step) in enumerate(steps, 1):
            self.work(name if index < len(steps) else node.measure, step.node, around)

    def _with_values(self, node: Node, around: Around) -> str:
        """The text of a node, with values where names, look-ups, choices and things stand."""
        if isinstance(node, OverThings):
            return said_of_things(node, around, self._with_values, self._writing)
        if isinstance(node, Choice) and (chosen := _chosen(node, around)):
            return self._with_values(chosen, around)
        return to_text(node, Style(lambda each: self._instead(each, around), _SIGNS))

    def _instead(self, node: Node, around: Around) -> str | None:
        """What stands in a line instead of a node."""
        match node:
            case Word(text):
                return text
            case LimitList(name):
                return f"({', '.join(cast('tuple[str, ...]', self._library.limits[name]))})"
            case FactOf() | MeasureOf() | Limit() | Step() | Count() | Extreme():
                value = answer(node, around).value
                return self._writing.value(value, type_of(node), _written(node, around))
            case LookUp(table, _, keys):
                value = self._writing.value(answer(node, around).value, type_of(node))
                at = ", ".join(self._with_values(key, around) for key in keys)
                return f"{value} ({table.replace('_', ' ')} at {at})"
            case Choice() | Sum() | ForThings():
                return self._in_its_place(node, around)
            case _:
                return None

    def _in_its_place(self, node: Choice | Sum | ForThings, around: Around) -> str | None:
        """A choice as what is chosen, a sum as what is added, in parentheses if it is several."""
        if isinstance(node, Choice) and _chosen(node, around) is None:
            return None
        said = self._with_values(node, around)
        return f"({said})" if any(sign in said for sign in _PARTS) else said


def _chosen(node: Choice, around: Around) -> Node | None:
    """The value that a choice comes to, or nothing if that cannot be told."""
    condition = answer(node.condition, around).value
    if isinstance(condition, Unknown):
        return None
    return node.then if condition else node.otherwise


# As they are written on paper; what stands between such signs is more than one value.
_SIGNS = {"+": "+", "-": "-", "*": "\N{MULTIPLICATION SIGN}", "/": "/"}
_PARTS = (" + ", " - ", " \N{MULTIPLICATION SIGN} ", " / ", " rounded ", "; ")


def _written(node: Node, around: Around) -> str | None:
    """A fact as the job's file writes it, if it does, or a limit as the pack does."""
    if isinstance(node, Limit):
        return around.library.written.get(node.name)
    if not isinstance(node, FactOf):
        return None
    thing = answer(node.of, around).value
    return thing.written.get(node.fact) if isinstance(thing, Thing) else None
