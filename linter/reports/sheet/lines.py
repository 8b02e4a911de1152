"""What a field sheet asks, as values: stops in walking order, each with its lines."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.audit.findings import OUT_OF_SIGHT, TO_BE_LOOKED_AT
from linter.reports.sayings import counted
from linter.vocabulary.kinds import KINDS

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Mapping

    from linter.audit.findings import Asked, Audit, OpenQuestion, Stop, WalkItem
    from linter.job.stating import Stating, Way


class Places(NamedTuple):
    """What a sheet asks the job file: where a fact is stated, where its usual value, what stands.

    `stated` takes kind, name and fact; `usual` and `standing` take a way.
    """

    stated: Callable[[str, str, str], Stating | None]
    usual: Callable[[Way], Way | None]
    standing: Callable[[Way], str]


class Ask(NamedTuple):
    """One line to fill in; `way` is empty where the answer can only be written down by hand.

    `is_usual` says that it is asked for all of its kind at once as well.
    """

    label: str
    how: str
    means: str
    words: tuple[str, ...]
    format: str
    example: str
    way: Way
    was: str
    item: Mapping[str, str] | None
    instead: tuple[str, Way] | None
    is_usual: bool = False


class Tick(NamedTuple):
    """One item of the walk-through at one thing; `at` is empty where it is for all of them.

    `is_usual` says that it is listed for all of its things at once as well.
    """

    item: str
    label: str
    ask: str
    caution: str
    at: str
    is_usual: bool = False


class Halt(NamedTuple):
    """Where one stops, with what is asked and looked at there."""

    heading: str
    asks: tuple[Ask, ...]
    ticks: tuple[Tick, ...]


class Sheet(NamedTuple):
    """A field sheet: what is usual for all of a kind, then room by room the stops in order."""

    job: str
    stage: str
    usual: tuple[Ask, ...]
    usual_ticks: tuple[Tick, ...]
    rooms: tuple[tuple[str, tuple[Halt, ...]], ...]

    @property
    def number(self) -> int:
        """How many lines there are to fill in or tick, without those for what differs."""
        halts = [halt for _, each in self.rooms for halt in each]
        asks = sum(not ask.is_usual for each in halts for ask in each.asks)
        ticks = sum(not tick.is_usual for each in halts for tick in each.ticks)
        return len(self.usual) + len(self.usual_ticks) + asks + ticks


_WHOLE = "Whole dwelling"
_FEW = 2  # an item that is for more things than these is ticked once for all of them


def sheet_of(audit: Audit, places: Places) -> Sheet:
    """The sheet of an audit: each open question at each of its things, each item still to look at.

    What is the same line of the job file is asked once.
    """
    by_stop: dict[tuple[int, int, int], _Filling] = {}
    seen: set[Way] = set()
    usual = _usual(audit.open, places)
    everywhere = {each.way for each in usual}
    for question in audit.open:
        for each in question.things:
            stating = places.stated(question.kind, each.ref, question.fact)
            if stating is not None and stating.item is None and stating.way in seen:
                continue
            seen |= {stating.way} if stating is not None else set()
            ask = _ask(question, stating, places, each.label if _is_apart(each) else "")
            covered = bool(ask.way) and places.usual(ask.way) in everywhere
            _at(by_stop, each.stop).asks.append(ask._replace(is_usual=covered))
    ticks = tuple(_put_ticks(audit.walk_through, by_stop))
    return Sheet(audit.job, audit.stage, usual, ticks, _by_room(by_stop))


class _Filling(NamedTuple):
    stop: Stop
    asks: list[Ask]
    ticks: list[Tick]


def _at(by_stop: dict[tuple[int, int, int], _Filling], stop: Stop) -> _Filling:
    return by_stop.setdefault(stop.order, _Filling(stop, [], []))


def _is_apart(asked: Asked) -> bool:
    """Whether a thing is not itself what one stops at, so that it must be named."""
    return asked.label != asked.stop.heading


def _ask(question: OpenQuestion, stating: Stating | None, places: Places, of: str) -> Ask:
    label = f"{question.label}, {of}" if of else question.label
    if stating is None:
        return Ask(label, question.ask, "", (), "", "", (), "", None, None)
    accepts = stating.accepts
    return Ask(
        label,
        question.ask,
        accepts.means,
        accepts.words,
        accepts.format,
        accepts.example,
        stating.way,
        "" if stating.item else places.standing(stating.way),
        stating.item,
        stating.instead,
    )


def _usual(questions: Iterable[OpenQuestion], places: Places) -> tuple[Ask, ...]:
    """What holds for all of a kind, once, where a question is open at all of them."""
    asks: dict[Way, Ask] = {}
    for question in questions:
        first = question.things[0]
        stating = places.stated(question.kind, first.ref, question.fact)
        if not question.everywhere or len(question.things) == 1 or stating is None:
            continue
        way = places.usual(stating.way)
        if way is None or places.standing(way):
            continue
        instead = None
        if stating.instead is not None:
            above = places.usual(stating.instead[1])
            instead = (stating.instead[0], above) if above else None
        ask = _ask(question, stating, places, _all_of(question))
        asks.setdefault(way, ask._replace(way=way, was="", instead=instead))
    return tuple(asks.values())


def _all_of(question: OpenQuestion) -> str:
    kind = KINDS[question.kind]
    return f"all {counted(len(question.things), kind.label, kind.plural)}"


def _put_ticks(
    items: Iterable[WalkItem], by_stop: dict[tuple[int, int, int], _Filling]
) -> Iterator[Tick]:
    """Puts each item at its stops; those that are for many things are given once for all, too."""
    for item in items:
        looks = item.those(TO_BE_LOOKED_AT, OUT_OF_SIGHT)
        many = len(looks) > _FEW and len(looks) == len(item.looks)
        if many:
            kind = KINDS[item.kind]
            label = f"all {counted(len(looks), kind.label, kind.plural)}"
            yield Tick(item.item, label, item.ask, item.caution, "")
        for look in looks:
            at = "" if item.kind == "dwelling" else look.ref
            label = "" if item.kind == "dwelling" else look.label
            tick = Tick(item.item, label, item.ask, item.caution, at, many)
            _at(by_stop, look.stop).ticks.append(tick)


def _by_room(
    by_stop: Mapping[tuple[int, int, int], _Filling],
) -> tuple[tuple[str, tuple[Halt, ...]], ...]:
    rooms: dict[str, list[Halt]] = {}
    for _, each in sorted(by_stop.items()):
        halt = Halt(each.stop.heading, tuple(each.asks), tuple(each.ticks))
        rooms.setdefault(each.stop.room or _WHOLE, []).append(halt)
    return tuple((room, tuple(halts)) for room, halts in rooms.items())
