"""The walk-through at a job: what only an eye can tell, and what is recorded of it.

An item is listed at each thing that its `where` picks, and where that cannot be told. It counts as
looked at where a record says by whom, when, and what came of it; what is to be put right is a
finding. Nothing else of it is: that nobody has looked yet is neither right nor wrong.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.audit.bases import reference
from linter.audit.findings import OUT_OF_SIGHT, TO_BE_LOOKED_AT, Finding, Look, WalkItem
from linter.audit.relied import fingerprint, mark_of
from linter.job.records import NOT_APPLICABLE, TO_BE_PUT_RIGHT
from linter.language.judge import judging
from linter.language.verdict import Verdict
from linter.language.work import WorkLine
from linter.packs.writing import write_sentence
from linter.vocabulary.kinds.dwelling import STAGES

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from linter.audit.findings import Reference
    from linter.audit.stops import Walk
    from linter.facts import Facts
    from linter.job.jobs import Job
    from linter.job.records import LookedAt
    from linter.language.writing import Writer
    from linter.packs.model import Item, Pack, Sentence
    from linter.vocabulary.model import Thing

_PUT_RIGHT = "Put it right, and have it looked at again."


class Walked(NamedTuple):
    """What came of a walk-through: its items, what is to be put right, and records of nothing."""

    items: tuple[WalkItem, ...]
    findings: tuple[Finding, ...]
    idle: tuple[LookedAt, ...]


def walked(job: Job, pack: Pack, facts: Facts, walk: Walk, write: Writer) -> Walked:
    """The walk-through of the pack at the job, in the order of the pack."""
    return _Walking(job, pack, facts, walk, write).walked()


class _Walking:
    """The work of one walk-through; `used` are the records that stand for a look."""

    def __init__(self, job: Job, pack: Pack, facts: Facts, walk: Walk, write: Writer) -> None:
        self._job, self._pack, self._facts, self._walk, self._write = job, pack, facts, walk, write
        self._used: set[int] = set()
        self._records: dict[str, list[tuple[int, LookedAt]]] = {}
        for number, record in enumerate(job.looked_at):
            self._records.setdefault(record.item, []).append((number, record))
        self._names = {
            kind: frozenset(each.ref for each in things) for kind, things in facts.things.items()
        }
        self._findings: list[Finding] = []

    def walked(self) -> Walked:
        reached = STAGES.index(self._job.stage) if self._job.stage else None
        items: list[WalkItem] = []
        for item in self._pack.items:
            if item.at_rest_by:
                continue
            if reached is None or STAGES.index(item.from_stage) <= reached:
                gone = bool(item.until_stage) and (reached or 0) >= STAGES.index(item.until_stage)
                items.extend(self._of(item, gone))
        idle = tuple(
            record
            for number, record in enumerate(self._job.looked_at)
            if number not in self._used and not self._is_later(record, reached)
        )
        return Walked(tuple(items), tuple(self._findings), idle)

    def _is_later(self, record: LookedAt, reached: int | None) -> bool:
        """Whether the record is of an item that is listed only at a later stage."""
        later = (each for each in self._pack.items if each.name == record.item)
        return reached is not None and any(STAGES.index(e.from_stage) > reached for e in later)

    def _things(self, item: Item) -> tuple[Thing, ...]:
        return self._facts.things.get(item.about, ())

    def _said(self, sentence: Sentence, thing: Thing) -> str:
        said = write_sentence(sentence, thing, self._pack.library, self._write)
        return said[:1].upper() + said[1:]

    def _of(self, item: Item, gone: bool) -> Iterator[WalkItem]:
        """The item as it is asked; it stands there once for each wording of what to look at."""
        own = reference(item.clause, item.history.cited[1].layer)
        by_wording: dict[tuple[str, str], list[Look]] = {}
        for thing in self._asked(item):
            look = self._look(item, thing, gone)
            said = self._said(item.ask, thing), self._said(item.caution, thing)
            by_wording.setdefault(said, []).append(look)
            if look.state == TO_BE_PUT_RIGHT:
                do = self._said(item.do, thing) or _PUT_RIGHT
                self._findings.append(_finding(item, own, thing, look, (*said, do)))
        for (ask, caution), looks in by_wording.items():
            everywhere = len(looks) == len(self._things(item))
            looks.sort(key=lambda each: each.stop.order)
            yield WalkItem(
                item.name, item.weight, item.subject, ask, caution, own, item.about, everywhere,
                tuple(looks),
            )  # fmt: skip

    def _asked(self, item: Item) -> Sequence[Thing]:
        """The things of which an item is asked: those that it picks, and those it may pick."""
        things = self._things(item)
        if item.where is None or not things:
            return things
        picked = judging(None, item.where, self._pack.library)
        return [each for each in things if picked(each) is not Verdict.BROKEN]

    def _look(self, item: Item, thing: Thing, gone: bool) -> Look:
        stop = self._walk.stop_of(thing)
        mark = fingerprint(item.name, thing, (), self._facts)
        record = self._record(item, thing)
        plain = OUT_OF_SIGHT if gone else TO_BE_LOOKED_AT
        if record is None:
            return Look(thing.ref, thing.label, stop, thing.place, plain, fingerprint=mark)
        lacking = _lacking(record)
        state = record.outcome if record.outcome and not lacking else plain
        said = record.by or "", record.on or "", record.found or ""
        place = record.place if state == TO_BE_PUT_RIGHT else thing.place
        return Look(thing.ref, thing.label, stop, place, state, *said, lacking, mark)

    def _record(self, item: Item, thing: Thing) -> LookedAt | None:
        """The record of the item at the thing; of several the last that the job lists."""
        found = None
        for number, record in self._records.get(item.name, ()):
            if self._is_at(record.at, thing, self._names[item.about]):
                self._used.add(number)
                found = record
        return found

    def _is_at(self, at: str | None, thing: Thing, known: frozenset[str]) -> bool:
        """Whether a record at a place is of the thing: by its name, else by its box or its room."""
        if at is None or thing.ref == at:
            return True
        stop = self._walk.stop_of(thing)
        return at not in known and at in (stop.box, stop.room)


def _lacking(record: LookedAt) -> str:
    """Why a record does not count as a look; empty where it does."""
    if record.outcome is None:
        return "what came of it is not stated"
    if not record.by or not record.on:
        return "who looked, or when, is not stated"
    if record.outcome == NOT_APPLICABLE and not record.found:
        return "why it does not apply is not stated"
    return ""


def _finding(
    item: Item, own: Reference, thing: Thing, look: Look, said: tuple[str, str, str]
) -> Finding:
    """The finding that an item is to be put right at a thing; `said` is to ask, to mind, to do."""
    ask, caution, do = said
    told = f"{TO_BE_PUT_RIGHT}, looked at by {look.by} on {look.on}"
    found = f"{look.found.rstrip('.')}." if look.found else f"Not so: {ask}"
    return Finding(
        rule=item.name,
        weight=item.weight,
        reference=own,
        kind=thing.kind,
        ref=thing.ref,
        label=thing.label,
        stop=look.stop,
        place=look.place,
        sentence=f"{thing.label[:1].upper()}{thing.label[1:]}: {found}",
        working=(WorkLine("", ask, told, told, told),),
        do=do,
        caution=caution,
        relies_on=(),
        rests_on=(),
        # Another look may find another thing: what is said of one is not said of the other.
        fingerprint=mark_of((look.fingerprint, look.by, look.on, look.found)),
        stated_weight=item.stated_weight,
        unsure=item.unsure,
    )
