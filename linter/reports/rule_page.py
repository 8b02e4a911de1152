"""One rule or item as lines: what it needs, what it rests on, which layer states each value."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.audit.bases import for_permits, reference
from linter.language.print import to_text
from linter.packs.describe import Described, sentence_text, steps_of
from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import cited, counted, wants_confirming
from linter.text import join_words
from linter.vocabulary.kinds import KINDS

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.packs.model import Amendment, Clause, History, Item, Pack, PackMeasure, PackTable

_WIDTH = 9


def rule_page(pack: Pack, rule: Described) -> Iterator[Line]:
    """The rule as the pack has it in force."""
    said = rule.rule
    yield Line((Span(said.name, "box"), Span(f", {said.weight}, by {pack.id}", "quiet")))
    yield from _titles(pack, said.name)
    if said.at_rest_by:
        limit = pack.limits[said.at_rest_by]
        yield _row("At rest", f"while {limit.name} is {limit.written}; a layer may turn it.")
    if said.unsure:
        own = reference(*_now(said.history))
        yield _row("Confirm", f"{wants_confirming(said.unsure, own, said.stated_weight)}.")
    asked = for_permits(said.permits)
    about = f'each {KINDS[said.about].label}, from the stage "{said.from_stage}" on'
    yield _row("About", f"{about}{asked and f', {asked}'}")
    for label, text in (
        ("Where", rule.where), ("Need", rule.need),
        ("Say", rule.say), ("Do", rule.do), ("Caution", rule.caution),
    ):  # fmt: skip
        if text:
            yield _row(label, text)
    yield from _history(said.history, 2)
    yield from _limits(rule)
    for measure in rule.measures:
        yield from _measure(measure)
    for table in rule.tables:
        yield from _table(table)
    yield from _asks(rule)
    yield _row("Proofs", _proofs(rule))


def _titles(pack: Pack, rule: str) -> Iterator[Line]:
    """The titles of the rule in further languages."""
    for language, titles in sorted(pack.titles.items()):
        if rule in titles:
            yield _row("Title", f"{titles[rule]} ({language})")


def item_page(pack: Pack, item: Item) -> Iterator[Line]:
    """An item of the walk-through as the pack has it in force."""
    yield Line(
        (Span(item.name, "box"), Span(f", to look at, {item.weight}, by {pack.id}", "quiet"))
    )
    until = f', until the stage "{item.until_stage}"' if item.until_stage else ""
    about = f'each {KINDS[item.about].label}, from the stage "{item.from_stage}" on{until}'
    yield _row("About", about)
    where = "" if item.where is None else to_text(item.where.node)
    for label, text in (
        ("Where", where), ("Ask", sentence_text(item.ask)),
        ("Do", sentence_text(item.do)), ("Caution", sentence_text(item.caution)),
    ):  # fmt: skip
        if text:
            yield _row(label, text)
    yield from _history(item.history, 2)


def _row(label: str, text: str, indent: int = 2) -> Line:
    return Line(
        (Span((label and f"{label}:").ljust(_WIDTH), "label", whole=True), Span(text)),
        indent,
        _WIDTH,
    )


def _history(history: History, indent: int) -> Iterator[Line]:
    yield _row("Clause", _cited(history.clause, history.origin.layer), indent)
    yield _row("Stated", f"by {history.origin.layer}, at {history.origin.place}", indent)
    for each in history.amendments:
        yield _row("Amended", _amended(each), indent)
    cited_now, _ = history.cited
    if cited_now.unconfirmed_in:
        yield _row("Edition", f"not confirmed for {cited_now.unconfirmed_in}.", indent)


def _now(history: History) -> tuple[Clause, str]:
    clause, origin = history.cited
    return clause, origin.layer


def _amended(amendment: Amendment) -> str:
    origin = amendment.origin
    changed = join_words(amendment.changed)
    why = f"{amendment.reason.rstrip('.')}; {_cited(amendment.clause, origin.layer)}"
    return f"by {origin.layer}, at {origin.place}: {changed}. {why}"


def _cited(clause: Clause, layer: str) -> str:
    doubt = f" Doubt: {clause.doubt}" if clause.doubt else ""
    low = " Confidence: low; confirm it." if clause.confidence else ""
    return f"{cited(reference(clause, layer))}.{low}{doubt}"


def _limits(rule: Described) -> Iterator[Line]:
    for limit in rule.limits:
        yield EMPTY
        meaning = f", {limit.meaning}" if limit.meaning else ""
        yield Line((Span(f"limit {limit.name}", "box"), Span(f" = {limit.written}{meaning}")), 2, 2)
        yield from _history(limit.history, 4)


def _measure(measure: PackMeasure) -> Iterator[Line]:
    yield EMPTY
    name = f"measure {measure.measure.kind}.{measure.measure.name}"
    yield Line((Span(name, "box"), Span(f", {measure.meaning}" if measure.meaning else "")), 2, 2)
    for step, text in steps_of(measure):
        yield line(f"{step} = {text}", indent=6, hang=4)
    yield from _history(measure.history, 4)


def _table(table: PackTable) -> Iterator[Line]:
    yield EMPTY
    keys = join_words([f"{key.name} ({key.how})" for key in table.table.keys])
    meaning = f"{table.meaning} " if table.meaning else ""
    yield Line(
        (
            Span(f"table {table.table.name}", "box"),
            Span(f", {meaning}by {keys}: {counted(len(table.rows), 'row', 'rows')}"),
        ),
        2,
        2,
    )
    yield from _history(table.history, 4)
    base = table.history.origin.layer
    for row in table.rows:
        if row.origin.layer != base:
            yield line(
                f"row {', '.join(row.written)}: by {row.origin.layer}, at {row.origin.place}",
                indent=6,
            )


def _asks(rule: Described) -> Iterator[Line]:
    asked = []
    for kind, name in rule.facts:
        fact = KINDS[kind].fact(name)
        if fact is not None and fact.ask:
            asked.append(f"{KINDS[kind].label}, {fact.label}: {fact.ask}")
    yield EMPTY
    for number, each in enumerate(asked):
        yield _row("" if number else "Asks", each)


def _proofs(rule: Described) -> str:
    outcomes: dict[str, int] = {}
    for proof in rule.proofs:
        outcomes[proof.outcome] = outcomes.get(proof.outcome, 0) + 1
    return ", ".join(f"{number} {outcome}" for outcome, number in outcomes.items()) or "none"
