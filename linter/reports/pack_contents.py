"""The rules of a pack as lines, by subject, its walk-through, and what a layer took away."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.audit.bases import reference
from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import cited, counted

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.packs.model import Pack, Rule, Withdrawn


def contents(pack: Pack, clause: str = "") -> Iterator[Line]:
    """The rules, items and worksheets of a pack, or of one clause, rules by subject."""
    rules = [rule for rule in pack.rules if rule.clause.id.startswith(clause)]
    of = f" under {clause}" if clause else ""
    number = counted(len(rules), "rule", "rules")
    items = [item for item in pack.items if item.clause.id.startswith(clause)]
    if items:
        number += f" and {counted(len(items), 'item', 'items')} of the walk-through"
    yield Line((Span(pack.id, "box"), Span(f", {pack.title}: {number}{of}")), hang=2)
    by_subject: dict[str, list[Rule]] = {}
    for rule in rules:
        by_subject.setdefault(rule.subject or rule.about.replace("_", " "), []).append(rule)
    for subject, group in by_subject.items():
        yield EMPTY
        yield line(subject, "box", indent=2)
        for rule in group:
            more = ", to be confirmed" if rule.unsure else ""
            more += ", at rest" if rule.at_rest_by else ""
            yield line(f"{rule.name}: {rule.clause.id}, {rule.weight}{more}", indent=4, hang=4)
    if items:
        yield EMPTY
        yield line("to look at", "box", indent=2)
    for item in items:
        yield line(f"{item.name}: {item.clause.id}, {item.weight}", indent=4, hang=4)
    yield from _worksheets(pack, clause)
    yield EMPTY
    yield line('"precover packs show RULE" tells all of one.', hang=2)


def _worksheets(pack: Pack, clause: str) -> Iterator[Line]:
    sheets = [(each, each.history.cited[0].id) for each in pack.worksheets]
    meant = [(sheet, number) for sheet, number in sheets if number.startswith(clause)]
    if meant:
        yield EMPTY
        yield line("worksheets", "box", indent=2)
    for sheet, number in meant:
        yield line(f"{sheet.name}: {number}, {sheet.title}", indent=4, hang=4)


def withdrawal(pack: Pack, withdrawn: Withdrawn) -> Iterator[Line]:
    """That a layer took a rule or an item away, under which clause and why."""
    origin, reason = withdrawn.amendment.origin, withdrawn.amendment.reason
    said = f", withdrawn by {origin.layer}, at {origin.place}: {reason.rstrip('.')}; "
    clause = cited(reference(withdrawn.amendment.clause, origin.layer))
    yield Line(
        (Span(withdrawn.name, "box"), Span(f"{said}{clause}. Not in force by {pack.id}.")), hang=2
    )
