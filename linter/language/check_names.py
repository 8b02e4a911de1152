"""What a name or a plain number means; names are those of the scope and of the vocabulary."""

from __future__ import annotations

from linter.language.checked import type_of
from linter.language.checking import Checker, Found, a
from linter.language.tree import (
    FactOf,
    Limit,
    LimitList,
    MeasureOf,
    Node,
    Number,
    Path,
    Step,
    Variable,
)
from linter.text import Place, nearest
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import FactType, Shape
from linter.vocabulary.shorthand import COUNT

_PLAIN = (0, 1, 2)


def check_number(checker: Checker, node: Number) -> Found:
    """A plain number, of those that are no number of a code."""
    if node.value in _PLAIN:
        return Found(node, COUNT)
    refuse_number_of_a_code(checker, node, f"{node.value:g} is a number of a code")
    return Found(node, None)


def refuse_number_of_a_code(checker: Checker, node: Node, found: str) -> None:
    """Refuses what states a number that belongs into a limit, with its clause."""
    checker.refuse(
        node.place,
        found,
        "the name of a limit; 0 and 1 stand in expressions, and 2 to double or halve",
        "state it as a limit, with its clause, and write the limit's name here",
    )


def check_path(checker: Checker, node: Path) -> Found:
    """A name or a path, as the limit, step, measure or fact that it means."""
    first, *rest = node.names
    if first in checker.variables:
        kind = checker.variables[first]
        if not kind:  # the things it goes through were refused
            return Found(node, None)
        return _walk(checker, Variable(first, kind, node.place), rest, node.place)
    meanings = _meanings(checker, first, node.place)
    if not meanings:
        _refuse_unknown(checker, node)
        return Found(node, None)
    if len(meanings) > 1:
        said = f'"{first}" could be {a_or_b(meanings)}'
        mend = "give one of them another name"
        checker.refuse(node.place, said, "a name with one meaning here", mend)
        return Found(node, None)
    (found,) = meanings.values()
    return _walk(checker, found, rest, node.place)


def a_or_b(meanings: dict[str, Node]) -> str:
    """The meanings of a name, as they are listed in a sentence."""
    return " or ".join(meanings)


def _meanings(checker: Checker, name: str, place: Place) -> dict[str, Node]:
    """What a bare name may mean, by the word for it; a step stands before a measure of its name."""
    scope, found = checker.scope, dict[str, Node]()
    if name in scope.limits:
        found["a limit"] = Limit(name, scope.limits[name], place)
    if name in scope.lists:
        found["a limit"] = LimitList(name, place)
    if name in scope.steps:
        found["a step"] = Step(name, scope.steps[name], place)
    elif (scope.subject, name) in scope.measures:
        subject = Variable(scope.subject, scope.subject, place)
        measure = scope.measures[scope.subject, name]
        found["a measure"] = MeasureOf(subject, scope.subject, name, measure, place)
    kind = checker.variables.get(checker.element)
    if kind and (fact := KINDS[kind].fact(name)):
        element = Variable(checker.element, kind, place)
        found[f"a fact of {checker.element}"] = FactOf(element, kind, fact.name, place)
    return found


def _walk(checker: Checker, node: Node, names: list[str], place: Place) -> Found:
    """The node that is reached from a node along the names of facts and measures."""
    column = place.column
    before = _name_of(node)
    for name in names:
        column += len(before) + 1
        at = Place(place.file, place.line, column)
        here = None if isinstance(node, LimitList) else type_of(node)
        further = _further(checker, node, here, name, place)
        if further is None:
            _refuse_further(checker, here, before, name, at)
            return Found(node, None)
        node, before = further, name
    if isinstance(node, LimitList):
        said = f'"{before}" is a list of words'
        checker.refuse(place, said, "one value", f'write "is one of {before}"')
        return Found(node, None)
    return Found(node, type_of(node))


def _further(
    checker: Checker, node: Node, here: FactType | None, name: str, place: Place
) -> Node | None:
    if here is None or here.shape is not Shape.THING:
        return None
    if KINDS[here.kind].fact(name):
        return FactOf(node, here.kind, name, place)
    measure = checker.scope.measures.get((here.kind, name))
    return MeasureOf(node, here.kind, name, measure, place) if measure else None


def _name_of(node: Node) -> str:
    match node:
        case FactOf(_, _, name) | MeasureOf(_, _, name):
            return name
        case Variable(name) | Limit(name) | LimitList(name) | Step(name):
            return name
        case _:
            return ""


def _refuse_further(
    checker: Checker, here: FactType | None, before: str, name: str, at: Place
) -> None:
    if here is not None and here.shape is Shape.THING:
        kind = KINDS[here.kind]
        known = [fact.name for fact in kind.facts]
        known += [measure for of, measure in checker.scope.measures if of == kind.name]
        near = nearest(name, known)
        mend = (
            f'write "{near[0]}"'
            if near
            else f'"precover packs words {kind.name}" lists what it has'
        )
        said = f'"{name}" is not known of a {kind.label}'
        checker.refuse(at, said, f"a fact or a measure of a {kind.label}", mend, near)
    elif here is not None and here.shape is Shape.THINGS:
        said = f'"{before}" are {a(here)}, which have no fact together'
        mend = f'go through them: "every {before[0]} of … has {before[0]}.{name} …"'
        checker.refuse(at, said, "one thing before the dot", mend)
    else:
        said = f'"{before}" is {a(here) if here else "a list of words"}, which has no facts'
        checker.refuse(at, said, "a thing before the dot", f'leave out ".{name}"')


def _refuse_unknown(checker: Checker, node: Path) -> None:
    first, expected = node.names[0], "a limit, a step, a measure, or a fact by its path"
    if first in checker.left_behind:
        said = f'"{first}" is known only up to the end of its own condition'
        mend = 'put parentheses around all that is asked of it, after "has"'
        checker.refuse(node.place, said, expected, mend)
        return
    near = nearest(first, _known(checker, path=len(node.names) > 1))
    mend = _mend_unknown(checker, first) or (
        f'write "{near[0]}"' if near else '"precover packs words" lists what rules may speak of'
    )
    checker.refuse(node.place, f'"{first}" is not known here', expected, mend, near)


def _known(checker: Checker, *, path: bool) -> list[str]:
    if path:
        return list(checker.variables)
    scope = checker.scope
    measures = [name for kind, name in scope.measures if kind == scope.subject]
    return [*scope.steps, *scope.limits, *scope.lists, *measures, *checker.variables]


def _mend_unknown(checker: Checker, name: str) -> str:
    """How to mend a name that means something, but not where it stands."""
    if name in ("yes", "no", "true", "false"):
        return 'a yes/no fact stands by itself: write the fact, or "not" and the fact'
    if name in checker.scope.tables:
        return f'a table is looked up: write "look up {name} at …"'
    for variable, kind in reversed(checker.variables.items()):
        if kind and (KINDS[kind].fact(name) or (kind, name) in checker.scope.measures):
            return f'write "{variable}.{name}"'
    words = {word for kind in KINDS.values() for fact in kind.facts for word in fact.type.words}
    return f'words stand in double quotes: write "{name}" with its quotes' if name in words else ""
