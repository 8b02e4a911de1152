"""A pack with one thing changed: what a proof must notice.

Every limit is moved past its proofs, every comparison turned round, every `where` dropped, every
part of an `and` or an `or` left out. A mutant that no proof of a rule or measure notices is a
survivor: a missing proof.
"""

from collections.abc import Iterator
from typing import NamedTuple

from linter.language.checked import Checked
from linter.language.library import Library, Measure
from linter.language.print import to_text
from linter.language.tree import (
    AllOf,
    AnyOf,
    Base,
    Comparison,
    Count,
    Extreme,
    ForThings,
    Is,
    Node,
    OneOf,
    Sum,
)
from linter.packs.model import LimitValue, Pack, Rule
from linter.packs.proofs import Proof
from linter.packs.prove import cases_of, failing_cases
from linter.packs.reliance import reliance_of
from linter.units import AREA, NUMBER, Dimension

_ROUND = {
    "at least": "less than", "less than": "at least",
    "at most": "more than", "more than": "at most",
}  # fmt: skip


class Mutant(NamedTuple):
    """A pack with one thing changed, in words, and the cases that could notice."""

    change: str
    pack: Pack
    cases: list[list[Proof]]

    def survives(self) -> bool:
        """Whether no case fails."""
        return not any(
            failing for proofs in self.cases for failing in failing_cases(self.pack, proofs)
        )


def mutants_of(pack: Pack, layer: str) -> Iterator[Mutant]:
    """Every mutant of what a layer of the pack states; what stands below is proved there."""
    yield from _of_limits(pack, layer)
    yield from _of_rules(pack, layer)
    yield from _of_items(pack, layer)
    yield from _of_measures(pack, layer)


def _of_limits(pack: Pack, layer: str) -> Iterator[Mutant]:
    cases, users = cases_of(pack), _users(pack)
    for name, limit in pack.limits.items():
        touched = [proofs for key, proofs in cases.items() if name in users[key]]
        if limit.history.origin_of("value").layer != layer or not touched:
            continue  # what only a sentence shows has no case to notice it
        for value in _moved(limit.value, limit.type.dimension):
            limits = {**pack.library.limits, name: value}
            library = Library(limits, pack.library.tables, pack.library.measures)
            change = f"limit {name}: {limit.value} to {value}"
            yield Mutant(change, pack._replace(library=library), touched)


def _users(pack: Pack) -> dict[tuple[str, str, str], tuple[str, ...]]:
    """The limits that each rule and measure relies on."""
    users = {}
    for rule in pack.rules:
        conditions = [each for each in (rule.where, rule.need) if each is not None]
        users["rule", rule.about, rule.name] = reliance_of(conditions, pack.library).limits
    for item in pack.items:
        if item.where is not None:
            users["item", item.about, item.name] = reliance_of([item.where], pack.library).limits
    for (kind, name), each in pack.measures.items():
        steps = [step for _, step in each.measure.steps]
        users["measure", kind, name] = reliance_of(steps, pack.library).limits
    return users


def _moved(value: LimitValue, dimension: Dimension | None) -> list[LimitValue]:
    """The limit moved either way, turned round, or without one of its words.

    A count moves by one, a wire past the next size that is sold, anything else by a quarter: the
    steps in which breakers and the like are sold are not finer.
    """
    match value:
        case bool():
            return [not value]
        case tuple():
            return [tuple(word for word in value if word != each) for each in value]
        case str():
            return ["a word that nothing is"]
        case _ if value == 0 or (dimension == NUMBER and value == int(value)):
            return [value + 1, value - 1]
        case _:
            by = 1.7 if dimension == AREA else 1.25
            return [value * by, value / by]


def _of_rules(pack: Pack, layer: str) -> Iterator[Mutant]:
    cases = cases_of(pack)
    for rule in pack.rules:
        own = [cases["rule", rule.about, rule.name]]
        for changed, said in _of_rule(rule, layer):
            yield Mutant(f"{rule.name}: {said}", pack._replace(rules=(changed,)), own)


def _of_items(pack: Pack, layer: str) -> Iterator[Mutant]:
    cases = cases_of(pack)
    for item in pack.items:
        if item.where is None or item.history.origin_of("where").layer != layer:
            continue
        own = [cases["item", item.about, item.name]]
        for where, said in ((None, "where dropped"), *_changed(item.where)):
            changed = pack._replace(items=(item._replace(where=where),))
            yield Mutant(f"{item.name}: {said}", changed, own)


def _of_rule(rule: Rule, layer: str) -> Iterator[tuple[Rule, str]]:
    if rule.where is not None and rule.history.origin_of("where").layer == layer:
        yield rule._replace(where=None), "where dropped"
        for where, said in _changed(rule.where):
            yield rule._replace(where=where), f"where {said}"
    if rule.history.origin_of("need").layer == layer:
        for need, said in _changed(rule.need):
            yield rule._replace(need=need), f"need {said}"


def _of_measures(pack: Pack, layer: str) -> Iterator[Mutant]:
    cases = cases_of(pack)
    for key, each in pack.measures.items():
        measure = each.measure
        if each.history.origin_of("steps").layer != layer:
            continue
        for position, (name, step) in enumerate(measure.steps):
            for other, said in _changed(step):
                steps = list(measure.steps)
                steps[position] = (name, other)
                library = _with(pack.library, measure._replace(steps=tuple(steps)))
                own = [cases["measure", *key]]
                yield Mutant(f"{measure.name}: {name} {said}", pack._replace(library=library), own)


def _with(library: Library, measure: Measure) -> Library:
    measures = {**library.measures, (measure.kind, measure.name): measure}
    return Library(library.limits, library.tables, measures)


def _changed(checked: Checked) -> Iterator[tuple[Checked, str]]:
    for node, said in _nodes(checked.node):
        yield Checked(checked.subject, checked.type, node), f"{said}: {to_text(node)}"


def _nodes(node: Node) -> Iterator[tuple[Node, str]]:
    """The node with one thing changed, in it or below it."""
    match node:
        case Comparison(order, left, right):
            yield Comparison(_ROUND[order], left, right), "comparison turned round"
        case Is(negated, left, right):
            yield Is(not negated, left, right), "comparison turned round"
        case OneOf(negated, value, among):
            yield OneOf(not negated, value, among), "comparison turned round"
        case AllOf(parts) | AnyOf(parts):
            for left_out in range(len(parts)):
                kept = parts[:left_out] + parts[left_out + 1 :]
                yield kept[0] if len(kept) == 1 else type(node)(kept), "part left out"
        case Sum() | Count() | Extreme() | ForThings() if node.where is not None:
            yield _replaced(node, "where", None), "where dropped"
    yield from _below(node)


def _below(node: Node) -> Iterator[tuple[Node, str]]:
    for name in node.__match_args__[:-1]:
        field = getattr(node, name)
        if isinstance(field, Base):
            for changed, said in _nodes(field):
                yield _replaced(node, name, changed), said
        elif isinstance(field, tuple):
            for position, part in enumerate(field):
                for changed, said in _nodes(part) if isinstance(part, Base) else ():
                    parts = (*field[:position], changed, *field[position + 1 :])
                    yield _replaced(node, name, parts), said


def _replaced(node: Node, name: str, value: object) -> Node:
    fields = {each: getattr(node, each) for each in node.__match_args__} | {name: value}
    return type(node)(**fields)
