"""What a checked pack is: plain values, each with its clause, layer and line."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal, NamedTuple, Self

from linter.language.checked import Checked
from linter.language.library import Library, Measure
from linter.language.tables import Table
from linter.text import Place
from linter.units import Dimension
from linter.vocabulary.model import FactType

Weight = Literal["danger", "violation", "advice"]
Known = Literal["read", "memory", "common-practice"]
What = Literal["limit", "table", "measure", "rule", "item", "worksheet"]
Cell = float | str | bool | None
LimitValue = float | str | bool | tuple[str, ...]
Sentence = tuple[str | Checked, ...]
Days = tuple[str, str]


_WORDS = ("subject", "say", "ask", "do", "caution", "meaning", "title")
STATED_ELSEWHERE = frozenset((*_WORDS, "weight", "given", "proofs", "totals"))
"""Fields that are no part of what a clause demands."""
NUMBER, CONFIRMED = "number", "confirmed"
"""What an edition changes where it renumbers, and where it confirms."""


class Origin(NamedTuple):
    """The layer and the place that a value came from."""

    layer: str
    place: Place


class Source(NamedTuple):
    """A published text, as the manifest of a layer lists it."""

    name: str
    title: str
    kind: str
    year: str = ""
    by: str = ""


class Layer(NamedTuple):
    """One pack of those that were laid on each other."""

    id: str
    title: str
    jurisdiction: str
    document: str
    edition: str
    version: str
    extends: str
    in_force: tuple[str, str]


class Clause(NamedTuple):
    """Where something is stated, how that is known, and what is in doubt about it.

    `unconfirmed_in` is the edition at hand, where it is not known to hold in that.
    """

    id: str
    known: Known
    document: str
    edition: str
    source: Source | None = None
    doubt: str = ""
    confidence: Literal["low", ""] = ""
    unconfirmed_in: str = ""

    def renumbered(self, new: Self) -> Self:
        """The clause under its new number, for which it need not have been read again."""
        known = new if new.known == "read" else self
        return new._replace(
            known=known.known,
            source=known.source,
            doubt=new.doubt or self.doubt,
            confidence=new.confidence or self.confidence,
        )


class Amendment(NamedTuple):
    """What a layer changed in an entry, under which clause and why."""

    origin: Origin
    changed: tuple[str, ...]
    clause: Clause
    reason: str


class Carried(NamedTuple):
    """The edition to which what a layer states is carried by the editions laid on it.

    `to` is the last one in which it is known to hold; `unconfirmed_in` the edition at hand, where
    that is another one.
    """

    layer: str
    document: str
    edition: str
    to: str
    unconfirmed_in: str

    def over(self, clause: Clause) -> Clause:
        """The clause as it is cited in the edition at hand; one of another document as it is.

        Common practice belongs to no edition, and needs confirming in none.
        """
        if (clause.document, clause.edition) != (self.document, self.edition):
            return clause
        if clause.known == "common-practice":
            return clause._replace(edition=self.to)
        return clause._replace(edition=self.to, unconfirmed_in=self.unconfirmed_in)


class History(NamedTuple):
    """Where an entry was first stated, under which clause, and what layers changed since.

    `carried` has the layers whose clauses are cited in a later edition of the same document.
    """

    origin: Origin
    clause: Clause
    amendments: tuple[Amendment, ...] = ()
    carried: tuple[Carried, ...] = ()

    @property
    def cited(self) -> tuple[Clause, Origin]:
        """The clause that states what holds now, with the layer and place that brought it."""
        return self.holding[-1]

    @property
    def holding(self) -> list[tuple[Clause, Origin]]:
        """The clauses that state what holds now, as they are numbered now, the lowest first.

        A layer that changes only a weight, words or proofs leaves the clause that it stood on.
        """
        found = [(self.clause, self.origin)]
        for each in self.amendments:
            if each.changed == (NUMBER,):
                found = [(found[-1][0].renumbered(each.clause), each.origin)]
            elif each.changed == (CONFIRMED,):
                found = [(each.clause, each.origin)]
            elif not STATED_ELSEWHERE.issuperset(each.changed):
                found.append((each.clause, each.origin))
        return [(self._carried(clause, origin), origin) for clause, origin in found]

    def _carried(self, clause: Clause, origin: Origin) -> Clause:
        for each in self.carried:
            if each.layer == origin.layer:
                return each.over(clause)
        return clause

    def origin_of(self, field: str) -> Origin:
        """The layer and place from which a field of the entry has its value."""
        for each in reversed(self.amendments):
            if field in each.changed:
                return each.origin
        return self.origin


class PackLimit(NamedTuple):
    """A limit: its value in base units, and as written."""

    name: str
    type: FactType
    value: LimitValue
    written: str
    meaning: str
    history: History


class Row(NamedTuple):
    """A row of a table as written, with the layer, place and clause it came from."""

    written: tuple[str, ...]
    origin: Origin
    clause: Clause


class Total(NamedTuple):
    """What a column of a table adds up to, in base units and as written."""

    column: str
    value: float
    written: str
    dimension: Dimension


class PackTable(NamedTuple):
    """A table for looking up, its rows as written, in the same order, and what columns come to."""

    table: Table
    rows: tuple[Row, ...]
    meaning: str
    history: History
    totals: tuple[Total, ...] = ()


class PackMeasure(NamedTuple):
    """A measure with its checked steps."""

    measure: Measure
    meaning: str
    history: History


class Unsure(NamedTuple):
    """What of a rule or an item, or of what it uses, wants confirming, and why.

    `why` is "low confidence" or "not confirmed for this edition".
    """

    what: str
    name: str
    why: str


class Rule(NamedTuple):
    """A rule: what it is about, where it applies, what it needs, and what is said of it.

    `stated_weight` is the weight that the pack states; `weight` is less while what is `unsure`
    wants confirming. `permits` are the first and the last day of the permits that it is for, each
    empty where there is none. `at_rest_by` names the yes-or-no limit that keeps it from applying
    anywhere, until a layer turns it.
    """

    name: str
    about: str
    from_stage: str
    where: Checked | None
    need: Checked
    weight: Weight
    subject: str
    say: Sentence
    do: Sentence
    caution: Sentence
    history: History
    stated_weight: Weight
    unsure: tuple[Unsure, ...] = ()
    at_rest_by: str = ""
    permits: Days = ("", "")

    @property
    def clause(self) -> Clause:
        """The clause a finding cites."""
        return self.history.cited[0]


class Item(NamedTuple):
    """An item of the walk-through: what a person looks at, at each thing that `where` picks.

    It is listed from one stage on and, where `until_stage` is not empty, can be seen before that.
    """

    name: str
    about: str
    from_stage: str
    until_stage: str
    where: Checked | None
    ask: Sentence
    weight: Weight
    subject: str
    do: Sentence
    caution: Sentence
    history: History
    stated_weight: Weight
    unsure: tuple[Unsure, ...] = ()
    at_rest_by: str = ""

    @property
    def clause(self) -> Clause:
        """The clause that is cited where it is to be put right."""
        return self.history.cited[0]


class SheetLine(NamedTuple):
    """A line of a worksheet: what it is, its value, whether that is added up or the result."""

    said: Sentence
    shows: Checked
    adds: bool
    result: bool


class Worksheet(NamedTuple):
    """A calculation shown line by line for each thing of a kind; `where` says for which.

    `units` has the unit in which a dimension is written, where another than that of the pack.
    """

    name: str
    about: str
    title: str
    where: Checked | None
    lines: tuple[SheetLine, ...]
    units: Mapping[str, str]
    history: History

    @property
    def expressions(self) -> tuple[Checked, ...]:
        """The conditions and values that it is made of."""
        said = (part for line in self.lines for part in line.said if isinstance(part, Checked))
        where = () if self.where is None else (self.where,)
        return (*where, *(line.shows for line in self.lines), *said)


class Withdrawn(NamedTuple):
    """What a layer took away."""

    what: What
    name: str
    about: str
    amendment: Amendment


class Pack(NamedTuple):
    """A pack with its layers laid on it, checked, ready to audit and to prove.

    `words` has the word shown for a word of ours; `units` the unit in which a dimension is written.
    `proofs` is JSON text, read only by those who prove or print. `key` names the texts it is of.
    `titles` has titles of rules by language and name. `looks_at` has the facts, each after its
    kind, that rules, items and worksheets rely on, of any stage, but for rules that are at rest.
    """

    id: str
    layers: tuple[Layer, ...]
    words: Mapping[str, str]
    units: Mapping[str, str]
    limits: Mapping[str, PackLimit]
    tables: Mapping[str, PackTable]
    measures: Mapping[tuple[str, str], PackMeasure]
    rules: tuple[Rule, ...]
    withdrawn: tuple[Withdrawn, ...]
    proofs: str
    key: str
    library: Library
    items: tuple[Item, ...] = ()
    worksheets: tuple[Worksheet, ...] = ()
    titles: Mapping[str, Mapping[str, str]] = MappingProxyType({})
    looks_at: frozenset[tuple[str, str]] = frozenset()

    @property
    def title(self) -> str:
        """The title of the pack that was asked for."""
        return next(each.title for each in self.layers if each.id == self.id)

    def rule(self, name: str) -> Rule:
        """The rule of that name; `KeyError` where there is none."""
        return {rule.name: rule for rule in self.rules}[name]

    def item(self, name: str) -> Item:
        """The item of the walk-through of that name; `KeyError` where there is none."""
        return {item.name: item for item in self.items}[name]

    def layer(self, name: str) -> Layer:
        """The layer of that name; `KeyError` where there is none."""
        return {each.id: each for each in self.layers}[name]


def library_of(
    limits: Mapping[str, PackLimit],
    tables: Mapping[str, PackTable],
    measures: Mapping[tuple[str, str], PackMeasure],
) -> Library:
    """The values that the expressions of a pack run on."""
    return Library(
        {name: each.value for name, each in limits.items()},
        {name: each.table for name, each in tables.items()},
        {key: each.measure for key, each in measures.items()},
        {name: each.written for name, each in limits.items()},
    )
