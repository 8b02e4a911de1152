"""References of appliances, runs of wall and counter, readings, and what was looked at."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.job.stated import BoxId
from linter.jobfile.known import Names
from linter.text import Refusal

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.job.jobs import Job
    from linter.jobfile.known import Known, Wrong
    from linter.text import Place


def wrong_in_records(job: Job, known: Known) -> Iterator[Wrong]:
    """What is wrong with references of appliances, runs and records."""
    for appliance in job.appliances.values():
        for at, name in enumerate(appliance.outlets or ()):
            yield from _outlet(job, name, appliance.place_of(f"outlets.{at}"), known)
    for run in (*job.walls.values(), *job.counters.values()):
        yield from known.rooms.missing(run.room, run.place_of("room"))
        for served in run.outlets or ():
            yield from _outlet(job, served.outlet, served.place_of("outlet"), known)
    for reading in job.readings:
        if reading.outlet is not None:
            yield from _outlet(job, reading.outlet, reading.place_of("outlet"), known)
        yield from known.circuits.missing(reading.circuit, reading.place_of("circuit"))
    anything = _anything(known)
    for each in job.looked_at:
        yield from anything.missing(each.at, each.place_of("at"))


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
