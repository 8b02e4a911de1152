"""A checked expression as a Python function: the quick way, on facts that are known.

The source is made of names from the vocabulary, of operators, and of names and numbers made here;
texts of a pack (words, tables, limits) come in as values, never as source. An unknown raises
`NotKnown` from whatever is done with it. This is the one module that compiles and executes.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, assert_never, cast

from linter.language.checked import Checked, type_of
from linter.language.reckon import quotient, rounded_down, rounded_to, rounded_up
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
from linter.language.verdict import Verdict
from linter.units import NotKnown, Unknown, same_value
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import Shape, Thing

if TYPE_CHECKING:
    from collections.abc import Callable

    from linter.language.library import Library, LimitValue, Measure


def compile_need(checked: Checked, library: Library) -> Callable[[Thing], bool]:
    """A function that tells whether a condition holds of a thing, or raises `NotKnown`."""
    made = library.compiled.get(checked)
    if made is None:
        writer = _Writer(library, checked.subject)
        source = f"made = lambda v0: True if {writer.text(checked.node)} else False"
        made = library.compiled[checked] = writer.made(source)
    return cast("Callable[[Thing], bool]", made)  # the source gives True or False


def compile_rule(
    where: Checked | None, need: Checked, library: Library
) -> Callable[[Thing], Verdict]:
    """A function that judges a rule on a thing whose facts are known, or raises `NotKnown`."""
    made = library.compiled.get((where, need))
    if made is None:
        writer = _Writer(library, need.subject)
        source = f"{writer.met} if {writer.text(need.node)} else {writer.broken}"
        if where is not None:
            source = f"({source}) if {writer.text(where.node)} else {writer.does_not_apply}"
        made = library.compiled[where, need] = writer.made(f"made = lambda v0: {source}")
    return cast("Callable[[Thing], Verdict]", made)  # the source gives nothing else


def compile_value(checked: Checked, library: Library) -> Callable[[Thing], object]:
    """A function that gives the value of an expression for a thing, or raises `NotKnown`."""
    made = library.compiled.get(checked)
    if made is None:
        writer = _Writer(library, checked.subject)
        source = f"made = lambda v0: {writer.known(checked.node)}"
        made = library.compiled[checked] = writer.made(source)
    return made


def compile_measure(measure: Measure, library: Library) -> Callable[[Thing], object]:
    """A function that gives a measure of a thing, step by step, or raises `NotKnown`."""
    made = library.compiled.get((measure.kind, measure.name))
    if made is None:
        writer = _Writer(library, measure.kind)
        lines = ["def made(v0):"]
        for name, step in measure.steps[:-1]:
            lines.append(f"    {writer.step(name)} = {writer.text(step.node)}")
        lines.append(f"    return {writer.known(measure.steps[-1][1].node)}")
        made = writer.made("\n".join(lines))
        library.compiled[measure.kind, measure.name] = made
    return made


class _Writer:
    """Writes the source of one function, and gathers the values its names stand for."""

    def __init__(self, library: Library, subject: str) -> None:
        self._library = library
        self._variables = {subject: "v0"}
        self._steps: dict[str, str] = {}
        self._count = 0
        self._values: dict[str, object] = {
            "__builtins__": {},
            "all": all,
            "any": any,
            "known": _known,
            "len": len,
            "max": max,
            "min": min,
            "quotient": quotient,
            "rounded_down": rounded_down,
            "rounded_to": rounded_to,
            "rounded_up": rounded_up,
            "same_value": same_value,
            "sum": sum,
        }

        self.met = self._value(Verdict.MET)
        self.broken = self._value(Verdict.BROKEN)
        self.does_not_apply = self._value(Verdict.DOES_NOT_APPLY)

    def made(self, source: str) -> Callable[[Thing], object]:
        """The function that the source makes."""
        exec(compile(source, "<rule>", "exec"), self._values)  # noqa: S102  made here, of nothing foreign
        return cast("Callable[[Thing], object]", self._values["made"])  # every source defines it so

    def known(self, node: Node) -> str:
        """The source of a value, with a test for unknown where nothing is done that would tell."""
        text = self.text(node)
        return f"known({text})" if isinstance(node, _MAY_BE_UNKNOWN) else text

    def step(self, name: str) -> str:
        """The name of a step in the source."""
        return self._steps.setdefault(name, f"s{len(self._steps)}")

    def text(self, node: Node) -> str:
        """The source of a node, in parentheses where it needs any."""
        if isinstance(node, Named):
            return self._named(node)
        if isinstance(node, Compared):
            return self._compared(node)
        if isinstance(node, Joined):
            return self._joined(node)
        if isinstance(node, Reckoned):
            return self._reckoned(node)
        return self._over_things(node)

    def _named(self, node: Named) -> str:
        match node:
            case Variable(name):
                return self._variables[name]
            case FactOf(of, kind, name):
                return f"{self.text(of)}.{_fact(kind, name)}"
            case MeasureOf(of, kind, name):
                measure = compile_measure(self._library.measures[kind, name], self._library)
                return f"{self._value(measure)}({self.text(of)})"
            case Step(name):
                return self._steps[name]
            case Number() | Word() | WordList() | Limit() | LimitList() | Path():
                return self._constant(node)
            case _:
                assert_never(node)

    def _constant(self, node: Number | Word | WordList | Limit | LimitList | Path) -> str:
        """The source of what is the same for all things: a number, or the name of a value."""
        match node:
            case Number(value):
                return repr(float(value))
            case Word(text):
                return self._value(text)
            case WordList(words):
                return self._value(frozenset(word.text for word in words))
            case Limit(name) | LimitList(name):
                return self._limit(self._library.limits[name])
            case Path(names):
                raise ValueError(f"{'.'.join(names)} was not checked")
            case _:
                assert_never(node)

    def _limit(self, value: LimitValue) -> str:
        if isinstance(value, str | tuple):
            return self._value(value if isinstance(value, str) else frozenset(value))
        if isinstance(value, bool) or not math.isfinite(value):
            return self._value(value)
        return repr(float(value))

    def _compared(self, node: Compared) -> str:
        match node:
            case Comparison(order, left, right):
                one, again = self._twice(left)
                other, and_other = self._twice(right)
                return _ORDERS[order].format(one, other, again, and_other)
            case Is(negated, left, right):
                one, other = self.text(left), self.text(right)
                if type_of(left).shape is Shape.QUANTITY:
                    return f"({'not ' * negated}same_value({one}, {other}))"
                return f"({one} {'!=' if negated else '=='} {other})"
            case OneOf(negated, value, among):
                return f"({self.text(value)} {'not ' * negated}in {self.text(among)})"
            case _:
                assert_never(node)

    def _twice(self, node: Node) -> tuple[str, str]:
        """The source of a value, and a shorter one that gives it again."""
        text = self.text(node)
        if isinstance(node, Number | Limit | Step) or (
            isinstance(node, FactOf) and isinstance(node.of, Variable)
        ):
            return text, text
        self._count += 1
        return f"(x{self._count} := {text})", f"x{self._count}"

    def _joined(self, node: Joined) -> str:
        match node:
            case Not(condition):
                return f"(not {self.text(condition)})"
            case AllOf(parts):
                return f"({' and '.join(map(self.text, parts))})"
            case AnyOf(parts):
                return f"({' or '.join(map(self.text, parts))})"
            case _:
                assert_never(node)

    def _reckoned(self, node: Reckoned) -> str:
        match node:
            case Arithmetic("/", left, right):
                return f"quotient({self.text(left)}, {self.text(right)})"
            case Arithmetic(sign, left, right):
                return f"({self.text(left)} {_SIGNS[sign]} {self.text(right)})"
            case Rounded(way, value, step):
                return f"{_ROUNDED[way]}({self.text(value)}, {self.text(step)})"
            case Choice(condition, then, otherwise):
                texts = (self.text(then), self.text(condition), self.text(otherwise))
                return "({} if {} else {})".format(*texts)
            case Pick(which, values):
                return f"{_PICKS[which]}({', '.join(map(self.text, values))})"
            case LookUp(table, column, keys):
                return self._look_up(table, column, [self.text(each) for each in keys])
            case _:
                assert_never(node)

    def _look_up(self, table: str, column: str, keys: list[str]) -> str:
        exact = self._library.exact_column(table, column)
        if exact is not None:
            return f"{self._value(exact)}[{keys[0]}]"
        return f"{self._value(self._library.column(table, column))}(({', '.join(keys)},))"

    def _over_things(self, node: OverThings) -> str:
        things = self.text(node.things)
        before = self._variables.get(node.name)
        self._count += 1
        variable = self._variables[node.name] = f"v{self._count}"
        where = "" if node.where is None else f" if {self.text(node.where)}"
        through = f"for {variable} in {things}{where}"
        match node:
            case ForThings(which, _, _, _, condition):
                text = _EVERY[which].format(self.text(condition), through)
            case Sum(value):
                text = f"sum([{self.text(value)} {through}])"
            case Count():
                text = f"len([1 {through}])" if where else f"len({things})"
            case Extreme(which, value):
                listed = f"[{self.text(value)} {through}]"
                self._variables.pop(node.name)
                self._count += 1
                found = f"x{self._count}"
                # Asked for only if there is none: it may be what cannot be told.
                if_none = self.text(node.if_none)
                text = f"({_PICKS[which]}({found}) if ({found} := {listed}) else {if_none})"
            case _:
                assert_never(node)
        self._variables.pop(node.name, None)
        if before is not None:
            self._variables[node.name] = before
        return text

    def _value(self, value: object) -> str:
        """A name in the source for a value that is not source."""
        name = f"k{len(self._values)}"
        self._values[name] = value
        return name


def _fact(kind: str, name: str) -> str:
    """The name of a fact, taken from the vocabulary."""
    fact = KINDS[kind].fact(name)
    if fact is None:
        raise ValueError(f"{name} was not checked")
    return fact.name


def _known(value: object) -> object:
    if isinstance(value, Unknown):
        raise NotKnown(value.because)
    return value


_MAY_BE_UNKNOWN = FactOf | Choice | Extreme | Step
_ORDERS = {
    "at least": "({0} >= {1} or same_value({2}, {3}))",
    "at most": "({0} <= {1} or same_value({2}, {3}))",
    "more than": "({0} > {1} and not same_value({2}, {3}))",
    "less than": "({0} < {1} and not same_value({2}, {3}))",
}
_SIGNS = {"+": "+", "-": "-", "*": "*"}
_ROUNDED = {"up to": "rounded_up", "down to": "rounded_down", "to": "rounded_to"}
_PICKS = {"larger": "max", "largest": "max", "smaller": "min", "smallest": "min"}
_EVERY = {"every": "all({0} {1})", "some": "any({0} {1})", "no": "(not any({0} {1}))"}
