"""The fingerprint of a rule: whatever it needs, and all limits, tables and measures it uses.

That of an item of the walk-through is of what it asks, and where.

Facts of the job have theirs in the fingerprint of a finding. This one changes when a layer, another
edition or a correction changes what the rule asks; words, clauses and places do not count.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.audit.relied import mark_of
from linter.language.print import to_text
from linter.packs.model import Rule
from linter.packs.reliance import reliance_of

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from linter.packs.model import Item, Pack


def rules_and_items(pack: Pack) -> Mapping[str, Rule | Item]:
    """All that a finding may come from, by name."""
    found: dict[str, Rule | Item] = {rule.name: rule for rule in pack.rules}
    return found | {item.name: item for item in pack.items}


def rule_mark(pack: Pack, rule: Rule | Item) -> str:
    """Sixteen hexadecimal digits of what the rule asks, by the pack with its layers."""
    return mark_of(_lines(pack, rule))


def _lines(pack: Pack, rule: Rule | Item) -> Iterator[str]:
    yield f"{rule.about} {rule.from_stage}"
    needed = rule.need if isinstance(rule, Rule) else None
    if not isinstance(rule, Rule):
        yield from (each if isinstance(each, str) else to_text(each.node) for each in rule.ask)
    conditions = [each for each in (rule.where, needed) if each is not None]
    yield from (to_text(each.node) for each in conditions)
    used = reliance_of(conditions, pack.library)
    for name in used.limits:
        yield f"{name}: {pack.library.limits[name]!r}"
    for name in used.tables:
        table = pack.library.tables[name]
        yield f"{name}: {[(key.name, key.how) for key in table.keys]!r}"
        yield from (repr(row) for row in table.rows)
    for key in used.measures:
        for step, checked in pack.library.measures[key].steps:
            yield f"{key} {step} {to_text(checked.node)}"
