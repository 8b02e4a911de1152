"""Worksheets of a pack worked out for a job: each line with its arithmetic, clause, running total.

What cannot be reckoned yet says which facts are missing, and how a person learns them.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.audit.bases import reference
from linter.audit.wording import Wording
from linter.language.evaluate import evaluate
from linter.language.tree import MeasureOf
from linter.language.work import WorkLine, workings
from linter.packs.writing import write_sentence, writer
from linter.text import join_words
from linter.units import Unknown
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import FactRef

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from linter.audit.findings import Reference
    from linter.facts import Facts
    from linter.language.checked import Checked
    from linter.language.writing import Writer
    from linter.packs.model import Pack, SheetLine, Worksheet
    from linter.vocabulary.model import Thing


class Missing(NamedTuple):
    """A fact that a line lacks: what it is, of which things, and how a person learns it."""

    kind: str
    fact: str
    label: str
    ask: str
    things: tuple[str, ...]


class Entered(NamedTuple):
    """A line worked out: what it is, its arithmetic, its value and the running total, as written.

    `value` is in base units, None where it cannot be told; then `missing` says because of what.
    `running` is empty where nothing has been added up, or where it cannot be told.
    """

    said: str
    work: tuple[WorkLine, ...]
    value: float | str | bool | None
    written: str
    adds: bool
    running: str
    result: bool
    reference: Reference
    missing: tuple[Missing, ...]


class Sheet(NamedTuple):
    """A worksheet of one thing; `doubt` says what it hangs on whether it may be used at all."""

    name: str
    title: str
    kind: str
    ref: str
    label: str
    reference: Reference
    lines: tuple[Entered, ...]
    doubt: tuple[Missing, ...]

    @property
    def results(self) -> tuple[Entered, ...]:
        """The lines that one wants to know of it."""
        return tuple(line for line in self.lines if line.result)

    @property
    def missing(self) -> tuple[Missing, ...]:
        """All that its lines lack, each once."""
        return tuple(dict.fromkeys(each for line in self.lines for each in line.missing))


def worksheets_of(facts: Facts, pack: Pack) -> tuple[Sheet, ...]:
    """The worksheets of the pack for everything they are for, in the order of the pack."""
    sheets = []
    for worksheet in pack.worksheets:
        filling = _Filling(facts, pack, worksheet)
        for thing in facts.things[worksheet.about]:
            applies = filling.applies(thing)
            if applies is not False:
                sheets.append(filling.sheet(thing, applies))
    return tuple(sheets)


class _Filling:
    """Fills in one worksheet for one thing after the other."""

    def __init__(self, facts: Facts, pack: Pack, worksheet: Worksheet) -> None:
        self._facts, self._pack, self._worksheet = facts, pack, worksheet
        self._write = _writer(pack, worksheet)
        self._wording = Wording(pack.words)

    def applies(self, thing: Thing) -> object:
        """Whether the worksheet is for the thing: yes, no, or an unknown."""
        where = self._worksheet.where
        return True if where is None else evaluate(where, thing, self._pack.library)

    def sheet(self, thing: Thing, applies: object) -> Sheet:
        """The worksheet filled in for a thing."""
        sheet = self._worksheet
        return Sheet(
            sheet.name,
            sheet.title,
            thing.kind,
            thing.ref,
            thing.label,
            reference(sheet.history.cited[0], sheet.history.cited[1].layer),
            tuple(self._lines(thing)),
            self._missing(applies),
        )

    def _lines(self, thing: Thing) -> Iterable[Entered]:
        lines, library = self._worksheet.lines, self._pack.library
        works = workings((each.shows for each in lines), thing, library, self._write)
        total: object = None
        for line, work in zip(lines, works, strict=True):
            value = _in_float(evaluate(line.shows, thing, library))
            if line.adds:
                total = _sum(total, value)
            # A measure says by its last step what it comes to.
            own = work[:-1] if isinstance(line.shows.node, MeasureOf) else work
            yield self._entered(line, thing, value, own, total if line.adds else None)

    def _entered(
        self,
        line: SheetLine,
        thing: Thing,
        value: object,
        work: tuple[WorkLine, ...],
        total: object,
    ) -> Entered:
        known = value if isinstance(value, float | str | bool) else None
        running = total if isinstance(total, float) else None
        write, type_ = self._write, line.shows.type
        return Entered(
            said=write_sentence(line.said, thing, self._pack.library, write),
            work=work,
            value=known,
            written=write(value, type_, None),
            adds=line.adds,
            running="" if running is None else write(running, type_, None),
            result=line.result,
            reference=self._reference(line.shows),
            missing=self._missing(value),
        )

    def _reference(self, shows: Checked) -> Reference:
        """The clause of the measure that a line shows; of the worksheet where it shows another."""
        node, history = shows.node, self._worksheet.history
        if isinstance(node, MeasureOf):
            history = self._pack.measures[node.kind, node.measure].history
        clause, origin = history.cited
        return reference(clause, origin.layer)

    def _missing(self, value: object) -> tuple[Missing, ...]:
        if not isinstance(value, Unknown):
            return ()
        things: dict[tuple[str, str], list[str]] = {}
        others: list[Missing] = []
        for reason in sorted(value.because, key=str):
            if isinstance(reason, FactRef):
                label = self._facts.thing(reason.kind, reason.ref).label
                things.setdefault((reason.kind, reason.fact), []).append(label)
            else:
                others.append(_lacking(reason))
        return (*(self._lack(*key, labels) for key, labels in sorted(things.items())), *others)

    def _lack(self, kind: str, name: str, labels: list[str]) -> Missing:
        fact = KINDS[kind].fact(name)
        label, ask = (fact.label, fact.ask) if fact else (name, "")
        of = self._wording.of
        return Missing(kind, name, of(label), of(ask or "Say it in the job file."), tuple(labels))


def _in_float(value: object) -> object:
    """A whole number as the float that quantities are; a sum of nothing is such a number."""
    return float(value) if isinstance(value, int) and not isinstance(value, bool) else value


def _sum(total: object, value: object) -> object:
    """The running total with one more value; unknown for good once a part is."""
    if total is None or isinstance(value, Unknown):
        return value
    if isinstance(total, float) and isinstance(value, float):
        return total + value
    return total


def _lacking(reason: object) -> Missing:
    table = getattr(reason, "table", "")
    said = f"a row in {table.replace('_', ' ')}" if table else "something to divide by"
    ask = "Check what the job states, or look it up in the code itself."
    return Missing("", "", said, ask, ())


def _writer(pack: Pack, worksheet: Worksheet) -> Writer:
    units: Mapping[str, str] = {**pack.units, **worksheet.units}
    return writer(pack.words, units)


def said_missing(missing: Missing) -> str:
    """What is missing in one phrase.

    >>> said_missing(Missing("appliance", "load", "load", "Read the nameplate.", ("kiln", "fan")))
    'load of kiln and fan'
    """
    return f"{missing.label} of {join_words(missing.things)}" if missing.things else missing.label
