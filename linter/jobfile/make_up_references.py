"""References of a make-up stated joint by joint: wires and terminals of the box, each once."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.job.stated import CableId
from linter.jobfile.box_references import wrong_connector
from linter.jobfile.known import MissingName
from linter.text import Refusal, nearest

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from linter.job.boxes import Box, MakeUp
    from linter.job.cables import Cable
    from linter.job.jobs import Job
    from linter.job.panel import Panel
    from linter.job.stated import Stated
    from linter.jobfile.known import Known, Wrong
    from linter.text import Place

BOX_BOND = "box.bond"
_HOTS = ("hot", "hot 2", "neutral", "neutral 2", "bond")
_LINE_AND_LOAD = (
    "line hot",
    "line neutral",
    "load hot",
    "load neutral",
    "line hot 2",
    "load hot 2",
)
_TERMINALS: dict[str, tuple[str, ...]] = {
    "receptacle": (*_HOTS, *_LINE_AND_LOAD),
    "switch": (
        "common",
        "switched",
        *(f"traveller {number}" for number in range(1, 5)),
        *_HOTS,
        *_LINE_AND_LOAD,
    ),
    "other": (*_HOTS, *_LINE_AND_LOAD),
}


_OF_BOX = ("cable or device", "in this box or a device in it")
_OF_PANEL = ("cable, breaker or bar", "in this panel, or a breaker by its space, or bar, or feed")
_BARS = {"bar": ("neutral", "bond"), "feed": ("hot", "hot 2")}


class _Spoken(NamedTuple):
    """A wire or terminal that a make-up names, where it names it, and whether it must be a wire."""

    name: str
    place: Place
    of: Stated


class _Here(NamedTuple):
    """A box or panel: its make-up, and the terminals of each device, breaker or bar in it.

    `said` has what it may hold, in words, and where that is to be found.
    """

    name: str
    said: tuple[str, str]
    make_up: MakeUp | None
    terminals: Mapping[str, tuple[str, ...]]

    def takes_several(self, name: str) -> bool:
        """Whether a terminal may be named more than once: a bar has many screws."""
        return name.rpartition(".")[0] in _BARS.keys() & self.terminals.keys()


def wrong_in_make_up(job: Job, known: Known) -> Iterator[Wrong]:
    """What is wrong with the wires and terminals that make-ups name."""
    ends: dict[str, list[str]] = {}
    for cable in job.cables.values():
        for end in cable.ends:
            ends.setdefault(end, []).append(cable.name)
    for here in (*map(_in_box, job.boxes.values()), *map(_in_panel, job.panels.values())):
        if here.make_up is not None:
            for joint in here.make_up.joints:
                yield from wrong_connector(job, joint)
            yield from _twice(here)
            for spoken in _spoken(here.make_up):
                yield from _wire_or_terminal(job, here, spoken, ends.get(here.name, []), known)


def _in_box(box: Box) -> _Here:
    terminals = {str(each.name): _TERMINALS.get(each.kind, _HOTS) for each in box.holds}
    return _Here(box.name, _OF_BOX, box.make_up, terminals)


def _in_panel(panel: Panel) -> _Here:
    """What a panel holds; a breaker of which the protection is not known may take a neutral."""
    terminals = {
        str(space): (
            *("hot", "hot 2")[: breaker.poles],
            *(("neutral",) if breaker.protection != () else ()),
        )
        for space, breaker in panel.breakers.items()
    }
    return _Here(panel.name, _OF_PANEL, panel.make_up, {**terminals, **_BARS})


def _spoken(make_up: MakeUp) -> Iterator[_Spoken]:
    for joint in make_up.joints:
        yield from _each(joint, "of", joint.of)
    for landing in make_up.landings:
        yield _Spoken(landing.terminal, landing.place_of("terminal"), landing)
        yield from _each(landing, "wires", landing.wires)
    yield from _each(make_up, "capped", make_up.capped)
    yield from _each(make_up, "left_open", make_up.left_open)


def _each(thing: Stated, field: str, names: tuple[str, ...]) -> Iterator[_Spoken]:
    for at, name in enumerate(names):
        yield _Spoken(name, thing.place_of(f"{field}.{at}"), thing)


def _twice(here: _Here) -> Iterator[Wrong]:
    first: dict[str, Place] = {}
    for name, place, _ in _spoken(here.make_up) if here.make_up is not None else ():
        if here.takes_several(name):
            continue
        other = first.setdefault(name, place)
        if other is not place:
            yield Refusal(
                place,
                f'"{name}" is named a second time in this make-up',
                "each wire and terminal in one place",
                "leave it out in one of the two",
                also=(other, "first named"),
            )


def _wire_or_terminal(
    job: Job, here: _Here, spoken: _Spoken, ends: list[str], known: Known
) -> Iterator[Wrong]:
    thing = spoken.name.rpartition(".")[0]
    cable = job.cables.get(CableId(thing))
    if spoken.name == BOX_BOND or thing in known.unread or not known.cables.complete:
        return
    if thing in here.terminals:
        yield from _part(spoken, "terminal", here.terminals[thing])
    elif cable is None or not known.may_end_in(cable, here.name):
        yield _not_here(here, spoken, [*ends, *here.terminals], cable)
    elif cable.colours is not None and known.is_whole(thing):
        yield from _part(spoken, "conductor", cable.colours)


def _part(spoken: _Spoken, what: str, allowed: tuple[str, ...]) -> Iterator[Wrong]:
    thing, _, part = spoken.name.rpartition(".")
    if part not in allowed:
        yield Refusal(
            spoken.place,
            f'"{thing}" has no {what} "{part}"',
            f"one of: {', '.join(f'{thing}.{each}' for each in allowed)}",
            f"correct what stands after the last full stop of {spoken.name}",
            tuple(f"{thing}.{each}" for each in nearest(part, allowed)),
        )


def _not_here(place: _Here, spoken: _Spoken, here: list[str], cable: Cable | None) -> Wrong:
    thing, _, part = spoken.name.rpartition(".")
    refusal = Refusal(
        spoken.place,
        f'"{thing}" is no {place.said[0]} in {place.name}',
        f"one of: {', '.join(here)}" if here else "a cable that ends in the box",
        f"name a cable that ends {place.said[1]}, then a full stop, then colour or terminal",
        tuple(f"{each}.{part}" for each in nearest(thing, here)),
        also=(cable.place, f'cable "{thing}" is stated') if cable is not None else None,
    )
    return MissingName(refusal, thing, "cables" if cable is None else place.name)
