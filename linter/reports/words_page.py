"""What a rule may speak of, as lines: kinds of thing, their facts, and what a pack adds to them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.packs.describe import steps_of
from linter.packs.reliance import reliance_of
from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import counted
from linter.text import join_words
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import Fact, Kind, Shape
from linter.vocabulary.reference import type_words

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.packs.model import Pack, PackMeasure


def kinds_page(pack: Pack | None) -> Iterator[Line]:
    """All kinds of thing; and the limits and tables of a pack, as a layer may amend them."""
    yield line("A rule is about one of these:", "box")
    for kind in KINDS.values():
        facts = counted(len(kind.facts), "fact", "facts")
        yield _named(kind.name, f", {kind.meaning}; {facts}", 2)
    if pack is not None:
        yield from _limits_and_tables(pack)
    yield EMPTY
    yield line(
        '"precover packs words KIND" tells the facts of one, KIND.FACT all of a fact.', hang=2
    )


def kind_page(kind: Kind, pack: Pack | None) -> Iterator[Line]:
    """One kind: its facts, what each is, and the measures that a pack has for it."""
    yield _named(kind.name, f", {kind.meaning}:", 0)
    for fact in kind.facts:
        yield _named(f"{kind.name}.{fact.name}", f", {type_words(fact.type)}: {fact.meaning}", 2)
    for measure in _measures_of(kind, pack):
        given = f", measure of {pack.id if pack else ''}, {type_words(measure.measure.type)}"
        meaning = f": {measure.meaning}" if measure.meaning else ""
        yield _named(f"{kind.name}.{measure.measure.name}", f"{given}{meaning}", 2)


def fact_page(kind: Kind, fact: Fact, pack: Pack | None) -> Iterator[Line]:
    """One fact: what it is, an example, how to learn it, and the rules of a pack that ask it."""
    yield _named(f"{kind.name}.{fact.name}", f", {type_words(fact.type)}: {fact.meaning}", 0)
    if fact.example:
        yield line(f"Such as: {fact.example}.", indent=2, hang=4)
    if fact.type.shape is Shape.THINGS:
        go_through = f"count of e of {kind.name}.{fact.name}"
        yield line(
            f'To go through them: "{go_through}", or every, some, no, sum.', indent=2, hang=4
        )
    if fact.type.shape in (Shape.THING, Shape.THINGS):
        yield line(f'Their facts: "precover packs words {fact.type.kind}".', indent=2, hang=4)
    learn = fact.ask or "It is always known: it follows from what the job file says."
    yield line(f"To learn it: {learn}" if fact.ask else learn, indent=2, hang=4)
    if pack is not None:
        rules = [
            rule.name for rule in pack.rules if (kind.name, fact.name) in _asked(pack, rule.name)
        ]
        yield line(f"Asked by: {', '.join(rules) or f'no rule of {pack.id}'}.", indent=2, hang=4)


def measure_page(measure: PackMeasure, pack: Pack) -> Iterator[Line]:
    """A measure of a pack: what it is, and its steps."""
    inner = measure.measure
    meaning = f": {measure.meaning}" if measure.meaning else ""
    said = f", measure of {pack.id}, {type_words(inner.type)}{meaning}"
    yield _named(f"{inner.kind}.{inner.name}", said, 0)
    for name, text in steps_of(measure):
        yield line(f"{name} = {text}", indent=2, hang=4)


def _limits_and_tables(pack: Pack) -> Iterator[Line]:
    yield EMPTY
    yield line(f"Limits of {pack.id}, as a layer may amend them:", "box")
    for limit in pack.limits.values():
        meaning = f", {limit.meaning}" if limit.meaning else ""
        yield _named(limit.name, f" = {limit.written}{meaning}", 2)
    yield EMPTY
    yield line(f"Tables of {pack.id}:", "box")
    for name, table in pack.tables.items():
        keys = join_words([f"{key.name} ({key.how})" for key in table.table.keys])
        gives = join_words([column for column, _ in table.table.columns])
        rows = counted(len(table.rows), "row", "rows")
        yield _named(name, f", {gives} by {keys}: {rows}", 2)


def _measures_of(kind: Kind, pack: Pack | None) -> list[PackMeasure]:
    if pack is None:
        return []
    return [each for (of, _), each in pack.measures.items() if of == kind.name]


def _asked(pack: Pack, name: str) -> tuple[tuple[str, str], ...]:
    rule = pack.rule(name)
    conditions = [each for each in (rule.where, rule.need) if each is not None]
    return reliance_of(conditions, pack.library).facts


def _named(name: str, said: str, indent: int) -> Line:
    return Line((Span(name, "box", whole=True), Span(said)), indent, 4)
