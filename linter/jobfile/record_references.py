"""References of appliances, runs of wall and counter, readings, and what was looked at."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.job.stated import BoxId
from linter.jobfile.known import Names
from linter.text import Refusal

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.job.jobs import Job
    from linter.job.passages import Door, Stair
    from linter.jobfile.known import Known, Wrong
    from linter.text import Place


def wrong_in_records(job: Job, known: Known) -> Iterator[Wrong]:
    """What is wrong with references of appliances, runs and records."""
    for appliance in job.appliances.values():
        for at, name in enumerate(appliance.outlets or ()):
            yield from _outlet(job, name, appliance.place_of(f"outlets.{at}"), known)
    yield from _wrong_in_runs(job, known)
    yield from _wrong_in_passages(job, known)
    yield from _wrong_in_rooms(job, known)
    for reading in job.readings:
        if reading.outlet is not None:
            yield from _outlet(job, reading.outlet, reading.place_of("outlet"), known)
        yield from known.circuits.missing(reading.circuit, reading.place_of("circuit"))
    anything = _anything(known)
    for each in job.looked_at:
        yield from anything.missing(each.at, each.place_of("at"))


def _wrong_in_rooms(job: Job, known: Known) -> Iterator[Wrong]:
    for room in job.rooms.values():
        yield from known.rooms.missing(room.opens_to, room.place_of("opens_to"))
        for at, name in enumerate(room.lit_by):
            yield from _outlet(job, name, room.place_of(f"lit_by.{at}"), known)
        for basin in room.basins or ():
            if basin.outlet is not None:
                yield from _outlet(job, basin.outlet, basin.place_of("outlet"), known)


def _wrong_in_runs(job: Job, known: Known) -> Iterator[Wrong]:
    for run in (*job.walls.values(), *job.counters.values()):
        yield from known.rooms.missing(run.room, run.place_of("room"))
        for served in run.outlets or ():
            yield from _outlet(job, served.outlet, served.place_of("outlet"), known)
    for name, run in job.counters.items():
        if name in job.walls:
            yield Refusal(
                run.place,
                f'"{name}" names a counter, and a wall as well',
                "a name for each run",
                f"give one of them another name, such as {name}-counter",
                also=(job.walls[name].place, "the wall is stated"),
            )


def _wrong_in_passages(job: Job, known: Known) -> Iterator[Wrong]:
    """What is wrong with references of stairs and doors."""
    passages: tuple[Stair | Door, ...] = (*job.stairs.values(), *job.doors.values())
    for each in passages:
        yield from known.rooms.missing(each.room, each.place_of("room"))
        for at, name in enumerate(each.lights or ()):
            yield from _outlet(job, name, each.place_of(f"lights.{at}"), known)
    for door in job.doors.values():
        yield from known.rooms.missing(door.to, door.place_of("to"))
    for stair in job.stairs.values():
        for level, switch in (stair.levels or {}).items():
            if switch:
                yield from _switch(job, switch, stair.place_of(f"levels.{level}"), known)


def _switch(job: Job, name: str, place: Place, known: Known) -> Iterator[Wrong]:
    """A switch that is not there, or is none; a box that holds one switch stands for it."""
    if name in known.switches:
        return
    box = job.boxes.get(BoxId(name))
    if (box is not None and not known.is_whole(name)) or name in known.unread:
        return
    if box is None and name not in known.outlets.all:
        yield from known.targets.missing(name, place)
        return
    yield Refusal(
        place,
        f'"{name}" is no switch',
        "the switch at that level, none, or unknown",
        "name the switch; where its box holds several devices, with its number, as in hall.1",
    )


def _outlet(job: Job, name: str, place: Place, known: Known) -> Iterator[Wrong]:
    """An outlet that is not there; a box that holds several, or nothing, names none."""
    if name in known.outlets.all:
        if name in known.switches:
            yield _no_outlet(name, place)
        return
    box = job.boxes.get(BoxId(name))
    if box is not None and not known.is_whole(name):
        return
    if box is None:
        yield from known.outlets.missing(name, place)
        return
    held = [each.name for each in box.holds]
    yield Refusal(
        place,
        f'Box "{name}" holds {"several devices" if held else "nothing"}',
        f"one of: {', '.join(held)}" if held else "the name of a device",
        "name one of its devices" if held else "say what the box holds, or name another outlet",
        also=(box.place, "the box is stated"),
    )


def _no_outlet(name: str, place: Place) -> Refusal:
    return Refusal(
        place,
        f'"{name}" is a switch, where no current is taken',
        "an outlet: a receptacle, a luminaire, an alarm, the outlet of an appliance",
        "name the outlet that the switch controls, or another one",
    )


def _anything(known: Known) -> Names:
    groups = (known.rooms, known.circuits, known.cables, known.ends, known.targets)
    names = {name: place for group in groups for name, place in group.all.items()}
    return Names("thing", "boxes", names, all(group.complete for group in groups))
