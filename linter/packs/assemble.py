"""Texts of packs to one checked pack: read, ordered, laid on each other, checked."""

from collections.abc import Iterable, Sequence

from linter.language.library import Library
from linter.packs.clauses import Ground, amendment_of, carried_by
from linter.packs.entries import Entry
from linter.packs.items import read_item
from linter.packs.layering import lay
from linter.packs.limits import read_limit
from linter.packs.model import (
    Item,
    Layer,
    Pack,
    PackLimit,
    PackMeasure,
    PackTable,
    Rule,
    What,
    Withdrawn,
    Worksheet,
    library_of,
)
from linter.packs.order import in_order
from linter.packs.pack_text import PackText, key_of
from linter.packs.proofs import read_proofs, to_text
from linter.packs.reliance import looked_at
from linter.packs.rules import Reader, at_rest_by
from linter.packs.scopes import Grounds, measure_type
from linter.packs.search import Laid
from linter.packs.shown import all_words, read_titles, read_units, read_words
from linter.packs.tables import read_table
from linter.packs.tangles import tangle_of
from linter.packs.texts import PackFiles, read_packs
from linter.packs.unsure import held
from linter.packs.worksheets import read_worksheet
from linter.text import Refusal, Refused
from linter.vocabulary.kinds import KINDS


def assemble(texts: Sequence[PackText], wanted: str, layers: Sequence[str] = ()) -> Pack:
    """The pack `wanted` with what it stands on below it and `layers` on it, checked.

    `texts` may hold more packs than are asked for. Raises `Refused` with all that is wrong, in file
    order; what only follows from a mistake is held back.
    """
    packs = read_packs(texts, (wanted, *layers))
    ordered = in_order(packs, wanted, layers, sorted(text.id for text in texts))
    ground = Ground(packs, [], carried_by(ordered))
    laid = lay(packs, ordered, ground.refusals)
    _stop_if_refused(ground)
    key = key_of(texts, wanted, *sorted(layers))
    pack = _Checking(ground, ordered, laid).pack(wanted, key)
    return held(pack._replace(looks_at=looked_at(pack)))


class _Checking:
    """The checking of what the layers come to: first what is named, then what names it."""

    def __init__(self, ground: Ground, ordered: Sequence[PackFiles], laid: Laid) -> None:
        self.ground, self.ordered, self.laid = ground, ordered, laid

    def pack(self, wanted: str, key: str) -> Pack:
        words = read_words(self.ordered, self.ground.refusals)
        units = read_units(self.ordered, self.ground.refusals)
        limits, tables = self.limits(), self.tables()
        _stop_if_refused(self.ground)
        types = {
            (entry.key.about, entry.key.name): measure_type(entry) for entry in self.of("measure")
        }
        reader = Reader(
            self.ground, Grounds(limits, tables, types), all_words(words), self.laid.withdrawn
        )
        measures = self.measures(reader)
        rules = {entry.key.name: reader.rule(entry) for entry in self.of("rule")}
        items = {
            entry.key.name: read_item(entry, self.laid.entries, reader) for entry in self.of("item")
        }
        sheets = self.worksheets(reader)
        titles = read_titles(self.ordered, rules, self.ground.refusals)
        proofs = self.proofs()
        _stop_if_refused(self.ground)
        library = library_of(limits, tables, measures)
        self.last_checks(rules, items, library)
        _stop_if_refused(self.ground)
        return Pack(
            wanted,
            tuple(_layer(pack) for pack in self.ordered),
            words,
            units,
            limits,
            tables,
            measures,
            tuple(rule for rule in rules.values() if rule is not None),
            self.withdrawn(),
            proofs,
            key,
            library,
            tuple(item for item in items.values() if item is not None),
            sheets,
            titles,
        )

    def of(self, what: What) -> list[Entry]:
        return [entry for entry in self.laid.entries.values() if entry.key.what == what]

    def limits(self) -> dict[str, PackLimit]:
        read = [read_limit(entry, self.ground) for entry in self.of("limit")]
        return {limit.name: limit for limit in read if limit is not None}

    def tables(self) -> dict[str, PackTable]:
        read = [read_table(entry, self.ground) for entry in self.of("table")]
        return {table.table.name: table for table in read if table is not None}

    def measures(self, reader: Reader) -> dict[tuple[str, str], PackMeasure]:
        read = [reader.measure(entry) for entry in self.of("measure")]
        return {(each.measure.kind, each.measure.name): each for each in read if each is not None}

    def worksheets(self, reader: Reader) -> tuple[Worksheet, ...]:
        read = [read_worksheet(entry, reader) for entry in self.of("worksheet")]
        return tuple(sheet for sheet in read if sheet is not None)

    def proofs(self) -> str:
        entries = [*self.of("measure"), *self.of("rule"), *self.of("item")]
        known = [entry for entry in entries if entry.fields["about"].text in KINDS]
        return to_text(
            [proof for entry in known for proof in read_proofs(entry, self.ground.refusals)]
        )

    def last_checks(
        self,
        rules: dict[str, Rule | None],
        items: dict[str, Item | None],
        library: Library,
    ) -> None:
        tangle = tangle_of(library.measures, self.of("measure"))
        if tangle is not None:
            self.ground.refusals.append(tangle)
            return
        for entry in self.of("rule"):
            rule = rules[entry.key.name]
            if rule is not None:
                by = at_rest_by(rule, entry, library, self.ground.refusals)
                rules[entry.key.name] = rule._replace(at_rest_by=by)
        for entry in self.of("item"):
            item = items[entry.key.name]
            if item is not None:
                by = at_rest_by(item, entry, library, self.ground.refusals)
                items[entry.key.name] = item._replace(at_rest_by=by)

    def withdrawn(self) -> tuple[Withdrawn, ...]:
        return tuple(
            Withdrawn(key.what, key.name, key.about, amendment_of(change, self.ground))
            for key, change in self.laid.withdrawn.items()
        )


def _layer(pack: PackFiles) -> Layer:
    manifest = pack.manifest
    dates = manifest.in_force
    return Layer(
        manifest.pack,
        manifest.title,
        manifest.jurisdiction,
        manifest.document,
        manifest.edition,
        manifest.version,
        manifest.base or "",
        (dates.from_, dates.until) if dates else ("unknown", "unknown"),
    )


def _stop_if_refused(ground: Ground) -> None:
    if ground.refusals:
        raise Refused(_without_doubles(ground.refusals))


def _without_doubles(refusals: Iterable[Refusal]) -> list[Refusal]:
    return list(dict.fromkeys(refusals))
