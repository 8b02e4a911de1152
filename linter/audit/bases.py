"""The clauses behind a finding: of its rule, and of the limits, tables and measures it uses."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.audit.findings import Basis, Reference
from linter.packs.reliance import reliance_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.packs.model import Clause, Days, History, Pack, Rule, Source


def bases_of(pack: Pack, rule: Rule) -> tuple[Basis, ...]:
    """All limits, tables and measures that a rule uses, also through measures, by name.

    One that layers have changed stands there once for each clause that it goes back to; of a limit
    only the last counts.
    """
    conditions = [each for each in (rule.where, rule.need) if each is not None]
    used = reliance_of(conditions, pack.library)
    bases = [
        Basis("limit", name, pack.limits[name].written, _latest(pack.limits[name].history))
        for name in used.limits
    ]
    for name in used.tables:
        bases += [Basis("table", name, "", each) for each in _all(pack.tables[name].history)]
    for key in used.measures:
        name = ".".join(key)
        bases += [Basis("measure", name, "", each) for each in _all(pack.measures[key].history)]
    return tuple(bases)


def reference(clause: Clause, layer: str) -> Reference:
    """The clause as a finding cites it; `layer` states what rests on it."""
    return Reference(
        clause=clause.id,
        document=clause.document,
        edition=clause.edition,
        known=clause.known,
        source=_in_words(clause.source),
        doubt=clause.doubt,
        layer=layer,
        confidence=clause.confidence,
        unconfirmed_in=clause.unconfirmed_in,
    )


def for_permits(days: Days) -> str:
    """The days of the permits that a rule is for, in words; empty where it is for all.

    >>> for_permits(("2026-09-01", "")), for_permits(("", "2026-08-31"))
    ('for permits from 2026-09-01 on', 'for permits until 2026-08-31')
    """
    first, last = days
    if first and last:
        return f"for permits from {first} until {last}"
    return f"for permits from {first} on" if first else last and f"for permits until {last}"


def _latest(history: History) -> Reference:
    return list(_all(history))[-1]


def _all(history: History) -> Iterator[Reference]:
    for clause, origin in history.holding:
        yield reference(clause, origin.layer)


def _in_words(source: Source | None) -> str:
    if source is None:
        return ""
    more = ", ".join(part for part in (source.by, source.kind, source.year) if part)
    return f'"{source.title}" ({more})' if more else f'"{source.title}"'
