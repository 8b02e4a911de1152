"""A pack laid out as plain entries, each a set of named fields: what is compared, and shown."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.language.print import to_text
from linter.packs.describe import sentence_text, steps_of
from linter.packs.model import Item
from linter.packs.reliance import reliance_of
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from linter.packs.model import (
        Clause,
        History,
        Pack,
        PackLimit,
        PackMeasure,
        PackTable,
        Rule,
        What,
        Worksheet,
    )

CLAUSE = "clause"
"""The field that holds the number of the clause, and nothing else of it."""

WORDING = ("say", "do", "caution")
"""The fields of a rule that change nothing of what it demands."""


class Field(NamedTuple):
    """What a field comes to, for comparing, and as the pack writes it."""

    value: object
    written: str


class Entry(NamedTuple):
    """An entry of a pack: its fields by name, the clause it cites, its layer.

    `subjects` are those of the rules that use it; a rule or an item has its own.
    """

    what: What
    name: str
    subjects: tuple[str, ...]
    fields: Mapping[str, Field]
    clause: Clause
    layer: str

    @property
    def key(self) -> tuple[str, str]:
        """What it is and its name: no two entries of a pack share both."""
        return self.what, self.name


def laid_out(pack: Pack) -> tuple[Entry, ...]:
    """All entries of a pack: rules, items, limits, tables, measures, worksheets, each in order."""
    users = _users_of(pack)
    return (
        *(_rule(each) for each in pack.rules),
        *(_item(each) for each in pack.items),
        *(_limit(each, users) for each in pack.limits.values()),
        *(_table(each, users) for each in pack.tables.values()),
        *(_measure(each, users) for each in pack.measures.values()),
        *(_worksheet(each) for each in pack.worksheets),
    )


def subject_of(rule: Rule | Item) -> str:
    """The subject of a rule or an item: the one it names, or else what it is about."""
    return rule.subject or rule.about.replace("_", " ")


Users = dict[tuple[str, str], dict[str, None]]


def _users_of(pack: Pack) -> Users:
    """The subjects of the rules that use each limit, table and measure, in order."""
    users: Users = {}
    stated: list[Rule | Item] = [*pack.rules, *pack.items]
    for rule in stated:
        need = None if isinstance(rule, Item) else rule.need
        conditions = [each for each in (rule.where, need) if each is not None]
        used = reliance_of(conditions, pack.library)
        keys: Iterator[tuple[str, str]] = (
            (what, name)
            for what, names in (
                ("limit", used.limits),
                ("table", used.tables),
                ("measure", [".".join(each) for each in used.measures]),
            )
            for name in names
        )
        for key in keys:
            users.setdefault(key, {})[subject_of(rule)] = None
    return users


def _entry(
    what: What, name: str, users: Users, fields: Mapping[str, Field], history: History
) -> Entry:
    clause, origin = history.cited
    cited = {CLAUSE: Field(clause.id, clause.id)}
    return Entry(
        what, name, tuple(users.get((what, name), ())), {**fields, **cited}, clause, origin.layer
    )


def _rule(rule: Rule) -> Entry:
    texts = {
        "about": rule.about.replace("_", " "),
        "from stage": rule.from_stage,
        "where": to_text(rule.where.node) if rule.where is not None else "",
        "need": to_text(rule.need.node),
        "weight": rule.weight,
        "subject": subject_of(rule),
        "say": sentence_text(rule.say),
        "do": sentence_text(rule.do),
        "caution": sentence_text(rule.caution),
        "for permits from": rule.permits[0],
        "for permits until": rule.permits[1],
        "at rest by": rule.at_rest_by,
        "to be confirmed": join_words(list(dict.fromkeys(each.why for each in rule.unsure))),
    }
    fields = {name: Field(text, text) for name, text in texts.items() if text}
    own: Users = {("rule", rule.name): {subject_of(rule): None}}
    return _entry("rule", rule.name, own, fields, rule.history)


def _item(item: Item) -> Entry:
    texts = {
        "about": item.about.replace("_", " "),
        "from stage": item.from_stage,
        "until stage": item.until_stage,
        "where": to_text(item.where.node) if item.where is not None else "",
        "ask": sentence_text(item.ask),
        "weight": item.weight,
        "subject": subject_of(item),
        "do": sentence_text(item.do),
        "caution": sentence_text(item.caution),
    }
    fields = {name: Field(text, text) for name, text in texts.items() if text}
    own: Users = {("item", item.name): {subject_of(item): None}}
    return _entry("item", item.name, own, fields, item.history)


def _limit(limit: PackLimit, users: Users) -> Entry:
    # The order of a list of words means nothing; 4 ft and 48 in are one value.
    value = frozenset(limit.value) if isinstance(limit.value, tuple) else limit.value
    fields = {"value": Field(value, limit.written)}
    return _entry("limit", limit.name, users, fields, limit.history)


def _table(table: PackTable, users: Users) -> Entry:
    inner = table.table
    number = len(inner.keys)
    how = join_words([f"{key.name} ({key.how})" for key in inner.keys])
    gives = join_words([name for name, _ in inner.columns])
    fields = {"looked up": Field((how, gives), f"{gives} by {how}")}
    for cells, row in zip(inner.rows, table.rows, strict=True):
        fields[f"row {', '.join(row.written[:number])}"] = Field(
            cells, ", ".join(row.written[number:])
        )
    return _entry("table", inner.name, users, fields, table.history)


def _measure(measure: PackMeasure, users: Users) -> Entry:
    fields = {f"step {name}": Field(text, text) for name, text in steps_of(measure)}
    name = f"{measure.measure.kind}.{measure.measure.name}"
    return _entry("measure", name, users, fields, measure.history)


def _worksheet(sheet: Worksheet) -> Entry:
    texts = {
        "about": sheet.about.replace("_", " "),
        "title": sheet.title,
        "where": to_text(sheet.where.node) if sheet.where is not None else "",
        "units": join_words([f"{name} in {unit}" for name, unit in sheet.units.items()]),
    }
    for each in sheet.lines:
        marks = [name for name, is_so in (("adds", each.adds), ("result", each.result)) if is_so]
        shown = to_text(each.shows.node)
        # Lines go by what they say, so that one put in between leaves the others as they were.
        texts[f"line {sentence_text(each.said)}"] = ", ".join([shown, *marks])
    fields = {name: Field(text, text) for name, text in texts.items() if text}
    own: Users = {("worksheet", sheet.name): {"calculations": None}}
    return _entry("worksheet", sheet.name, own, fields, sheet.history)
