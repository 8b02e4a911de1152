"""What expressions rely on, through all measures: limits, tables, measures, facts."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.language.checked import limits_used, measures_used, tables_used
from linter.language.tree import FactOf, MeasureOf, children
from linter.vocabulary.kinds import KINDS

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.language.checked import Checked
    from linter.language.library import Library
    from linter.language.tree import Node
    from linter.packs.model import Pack

MeasureKey = tuple[str, str]


class Reliance(NamedTuple):
    """The names that expressions use, directly or through measures, each in order of its name."""

    limits: tuple[str, ...]
    tables: tuple[str, ...]
    measures: tuple[MeasureKey, ...]
    facts: tuple[tuple[str, str], ...]


def reliance_of(expressions: Iterable[Checked], library: Library) -> Reliance:
    """All that the expressions rely on."""
    all_of_them, measures = _with_measures(expressions, library)
    return Reliance(
        tuple(sorted({name for each in all_of_them for name in limits_used(each)})),
        tuple(sorted({name for each in all_of_them for name in tables_used(each)})),
        tuple(sorted(measures)),
        tuple(sorted({fact for each in all_of_them for fact in _facts(each.node)})),
    )


def looked_at(pack: Pack) -> frozenset[tuple[str, str]]:
    """The facts that a pack looks at, each after its kind, at any stage; rules at rest do not."""
    awake = [rule for rule in pack.rules if not rule.at_rest_by]
    asked = [each for rule in awake for each in (rule.where, rule.need)]
    asked += [item.where for item in pack.items]
    asked += [each for sheet in pack.worksheets for each in sheet.expressions]
    return _facts_alone((each for each in asked if each is not None), pack.library)


def _facts_alone(expressions: Iterable[Checked], library: Library) -> frozenset[tuple[str, str]]:
    """The facts that expressions rely on, in one walk over all nodes."""
    facts: set[tuple[str, str]] = set()
    measures: set[MeasureKey] = set()
    nodes: list[Node] = [each.node for each in expressions]
    while nodes:
        node = nodes.pop()
        if isinstance(node, FactOf):
            facts.add((node.kind, node.fact))
        elif isinstance(node, MeasureOf) and (node.kind, node.measure) not in measures:
            measures.add((node.kind, node.measure))
            steps = library.measures[node.kind, node.measure].steps
            nodes += [step.node for _, step in steps]
        nodes += children(node)
    return frozenset(facts)


def may_be_unknown(expressions: Iterable[Checked], library: Library) -> bool:
    """Whether any fact that the expressions rely on may be left open by a job."""
    for kind, name in reliance_of(expressions, library).facts:
        fact = KINDS[kind].fact(name)
        if fact is not None and fact.may_be_unknown:
            return True
    return False


def _with_measures(
    expressions: Iterable[Checked], library: Library
) -> tuple[list[Checked], set[MeasureKey]]:
    found: list[Checked] = []
    measures: set[MeasureKey] = set()
    to_do = list(expressions)
    while to_do:
        checked = to_do.pop()
        found.append(checked)
        for key in measures_used(checked) - measures:
            measures.add(key)
            to_do.extend(step for _, step in library.measures[key].steps)
    return found, measures


def _facts(node: Node) -> Iterator[tuple[str, str]]:
    if isinstance(node, FactOf):
        yield node.kind, node.fact
    for child in children(node):
        yield from _facts(child)
