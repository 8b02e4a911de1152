"""A checked pack as JSON's types, for the cache and for other processes, and back.

Clauses stand once in a list and are named by their number, since rows and rules share them.
"""

from collections.abc import Mapping, Sequence
from typing import Any

from linter.language.data import from_data, to_data, type_from_data, type_to_data
from linter.language.library import Measure
from linter.language.tables import Key, Table
from linter.packs.model import (
    Amendment,
    Carried,
    Clause,
    History,
    Item,
    Layer,
    Origin,
    Pack,
    PackLimit,
    PackMeasure,
    PackTable,
    Row,
    Rule,
    Sentence,
    SheetLine,
    Source,
    Total,
    Unsure,
    Withdrawn,
    Worksheet,
    library_of,
)
from linter.text import Place
from linter.units import NUMBER

# What comes out of JSON has the shape that `pack_to_data` gave it; the cache checks that.
Data = Any


def pack_to_data(pack: Pack) -> dict[str, object]:
    """The pack as lists, maps, texts and numbers; the same pack gives the same bytes in JSON."""
    writing = _Writing()
    data: dict[str, object] = {
        "id": pack.id,
        "key": pack.key,
        "layers": pack.layers,
        "words": pack.words,
        "units": pack.units,
        "limits": [writing.limit(each) for each in pack.limits.values()],
        "tables": [writing.table(each) for each in pack.tables.values()],
        "measures": [writing.measure(each) for each in pack.measures.values()],
        "rules": [writing.rule(each) for each in pack.rules],
        "items": [writing.item(each) for each in pack.items],
        "worksheets": [writing.worksheet(each) for each in pack.worksheets],
        "titles": dict(pack.titles),
        "looks at": sorted(pack.looks_at),
        "withdrawn": [writing.withdrawn(each) for each in pack.withdrawn],
        "proofs": pack.proofs,
    }
    return data | {"clauses": list(writing.clauses)}


def pack_from_data(data: Mapping[str, Data]) -> Pack:
    """The pack that `pack_to_data` gave, as data or after a way through JSON."""
    reading = _Reading([_clause(each) for each in data["clauses"]])
    limits = {each.name: each for each in map(reading.limit, data["limits"])}
    tables = {each.table.name: each for each in map(reading.table, data["tables"])}
    measures = {
        (each.measure.kind, each.measure.name): each
        for each in map(reading.measure, data["measures"])
    }
    return Pack(
        data["id"],
        tuple(map(_layer, data["layers"])),
        data["words"],
        data["units"],
        limits,
        tables,
        measures,
        tuple(reading.rule(each) for each in data["rules"]),
        tuple(reading.withdrawn(each) for each in data["withdrawn"]),
        data["proofs"],
        data["key"],
        library_of(limits, tables, measures),
        tuple(reading.item(each) for each in data["items"]),
        tuple(reading.worksheet(each) for each in data["worksheets"]),
        data["titles"],
        frozenset((kind, fact) for kind, fact in data["looks at"]),
    )


class _Writing:
    """Data made from values; gathers the clauses on the way."""

    def __init__(self) -> None:
        self.clauses: dict[Clause, int] = {}

    def limit(self, limit: PackLimit) -> Data:
        return [*limit[:1], type_to_data(limit.type), *limit[2:5], self.history(limit.history)]

    def table(self, table: PackTable) -> Data:
        inner = table.table
        keys = [[key.name, type_to_data(key.type), key.how] for key in inner.keys]
        columns = [[name, type_to_data(type_)] for name, type_ in inner.columns]
        rows = [
            [cells, row.written, _flat(row.origin), self.clause(row.clause)]
            for cells, row in zip(inner.rows, table.rows, strict=True)
        ]
        totals = [[total.column, total.value, total.written] for total in table.totals]
        history = self.history(table.history)
        return [inner.name, keys, columns, rows, table.meaning, history, totals]

    def measure(self, measure: PackMeasure) -> Data:
        inner = measure.measure
        steps = [[name, to_data(step)] for name, step in inner.steps]
        head = [inner.kind, inner.name, type_to_data(inner.type), steps]
        return [*head, measure.meaning, self.history(measure.history)]

    def rule(self, rule: Rule) -> Data:
        return [
            *rule[:3],
            None if rule.where is None else to_data(rule.where),
            to_data(rule.need),
            *rule[5:7],
            *map(_sentence_data, rule[7:10]),
            self.history(rule.history),
            *rule[11:],
        ]

    def item(self, item: Item) -> Data:
        return [
            *item[:4],
            None if item.where is None else to_data(item.where),
            _sentence_data(item.ask),
            *item[6:8],
            *map(_sentence_data, item[8:10]),
            self.history(item.history),
            *item[11:],
        ]

    def worksheet(self, sheet: Worksheet) -> Data:
        lines = [
            [_sentence_data(line.said), to_data(line.shows), line.adds, line.result]
            for line in sheet.lines
        ]
        where = None if sheet.where is None else to_data(sheet.where)
        return [*sheet[:3], where, lines, sheet.units, self.history(sheet.history)]

    def withdrawn(self, each: Withdrawn) -> Data:
        return [*each[:3], self.amendment(each.amendment)]

    def history(self, history: History) -> Data:
        amendments = [self.amendment(each) for each in history.amendments]
        return [_flat(history.origin), self.clause(history.clause), amendments, history.carried]

    def amendment(self, each: Amendment) -> Data:
        return [_flat(each.origin), each.changed, self.clause(each.clause), each.reason]

    def clause(self, clause: Clause) -> int:
        return self.clauses.setdefault(clause, len(self.clauses))


class _Reading:
    """Values made from data, with the clauses by their number."""

    def __init__(self, clauses: Sequence[Clause]) -> None:
        self.clauses = clauses

    def limit(self, data: Data) -> PackLimit:
        name, type_, value, written, meaning, history = data
        known = tuple(value) if isinstance(value, list) else value
        kept = self.history(history)
        return PackLimit(name, type_from_data(type_), known, written, meaning, kept)

    def table(self, data: Data) -> PackTable:
        name, keys, columns, rows, meaning, history, totals = data
        table = Table(
            name,
            tuple(Key(key, type_from_data(type_), how) for key, type_, how in keys),
            tuple((column, type_from_data(type_)) for column, type_ in columns),
            tuple(tuple(row[0]) for row in rows),
        )
        kept = tuple(
            Row(tuple(written), _origin(origin), self.clauses[clause])
            for _, written, origin, clause in rows
        )
        return PackTable(table, kept, meaning, self.history(history), _totals(table, totals))

    def measure(self, data: Data) -> PackMeasure:
        kind, name, type_, steps, meaning, history = data
        checked = tuple((step, from_data(expression)) for step, expression in steps)
        measure = Measure(kind, name, type_from_data(type_), checked)
        return PackMeasure(measure, meaning, self.history(history))

    def rule(self, data: Data) -> Rule:
        name, about, stage, where, need, weight, subject, *data = data
        say, do, caution, history, stated_weight, unsure, at_rest_by, permits = data
        return Rule(
            name,
            about,
            stage,
            None if where is None else from_data(where),
            from_data(need),
            weight,
            subject,
            _sentence(say),
            _sentence(do),
            _sentence(caution),
            self.history(history),
            stated_weight,
            _unsure(unsure),
            at_rest_by,
            tuple(permits),
        )

    def item(self, data: Data) -> Item:
        name, about, stage, until, where, ask, weight, subject, *data = data
        do, caution, history, stated_weight, unsure, at_rest_by = data
        return Item(
            name,
            about,
            stage,
            until,
            None if where is None else from_data(where),
            _sentence(ask),
            weight,
            subject,
            _sentence(do),
            _sentence(caution),
            self.history(history),
            stated_weight,
            _unsure(unsure),
            at_rest_by,
        )

    def worksheet(self, data: Data) -> Worksheet:
        name, about, title, where, lines, units, history = data
        read = tuple(
            SheetLine(_sentence(said), from_data(shows), adds, result)
            for said, shows, adds, result in lines
        )
        kept = None if where is None else from_data(where)
        return Worksheet(name, about, title, kept, read, units, self.history(history))

    def withdrawn(self, data: Data) -> Withdrawn:
        what, name, about, amendment = data
        return Withdrawn(what, name, about, self.amendment(amendment))

    def history(self, data: Data) -> History:
        origin, clause, amendments, carried = data
        return History(
            _origin(origin),
            self.clauses[clause],
            tuple(map(self.amendment, amendments)),
            tuple(Carried(*each) for each in carried),
        )

    def amendment(self, data: Data) -> Amendment:
        origin, changed, clause, reason = data
        return Amendment(_origin(origin), tuple(changed), self.clauses[clause], reason)


def _unsure(data: Data) -> tuple[Unsure, ...]:
    return tuple(Unsure(*each) for each in data)


def _flat(origin: Origin) -> Data:
    place = origin.place
    return [origin.layer, place.file, place.line, place.column]


def _origin(data: Data) -> Origin:
    layer, file, line, column = data
    return Origin(layer, Place(file, line, column))


def _clause(data: Data) -> Clause:
    id_, known, document, edition, source, *doubts = data
    read = None if source is None else Source(*source)
    return Clause(id_, known, document, edition, read, *doubts)


def _totals(table: Table, data: Data) -> tuple[Total, ...]:
    types = {key.name: key.type for key in table.keys} | dict(table.columns)
    return tuple(
        Total(column, value, written, types[column].dimension or NUMBER)
        for column, value, written in data
    )


def _layer(data: Data) -> Layer:
    *head, (begin, end) = data
    return Layer._make([*head, (begin, end)])


def _sentence_data(sentence: Sentence) -> Data:
    return [part if isinstance(part, str) else to_data(part) for part in sentence]


def _sentence(data: Data) -> Sentence:
    return tuple(part if isinstance(part, str) else from_data(part) for part in data)
