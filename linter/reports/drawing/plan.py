"""What a plan of the dwelling shows: rooms, boxes with their devices, runs of cable by circuit."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.job.devices import ApplianceOutlet, Receptacle, Switch
from linter.wiring.circuits import poles_of
from linter.wiring.devices import is_way_switch

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from linter.job.boxes import Box
    from linter.job.devices import AnyDevice
    from linter.job.jobs import Job
    from linter.job.values import OnPlan
    from linter.wiring.model import Wiring

Point = tuple[float, float]


class RoomOn(NamedTuple):
    """A room: its name, its upper left corner and its size, in metres."""

    name: str
    at: Point
    size: Point


class SpotOn(NamedTuple):
    """A box or panel: its name, its number, where it is, the symbols of what it holds.

    `tags` are the letters that electricians put beside a symbol.
    """

    name: str
    number: str
    at: Point
    symbols: tuple[str, ...]
    tags: tuple[str, ...] = ()


class RunOn(NamedTuple):
    """A cable from a box to another, or towards a panel, and the numbers of its circuits."""

    circuits: tuple[int, ...]
    box: str
    to: str
    is_home: bool


class CircuitOn(NamedTuple):
    """A circuit of the legend: its name and the spaces of its breakers."""

    name: str
    spaces: str


class Plan(NamedTuple):
    """The plan of one storey, or of all where none is told apart.

    `leaving` are cables to boxes that are not on it.
    """

    storey: str
    rooms: tuple[RoomOn, ...]
    spots: tuple[SpotOn, ...]
    runs: tuple[RunOn, ...]
    circuits: tuple[CircuitOn, ...]
    leaving: tuple[RunOn, ...] = ()


def plans_of(job: Job, wiring: Wiring, numbers: Mapping[str, str]) -> Iterator[Plan]:
    """A plan for each storey with a box in place; `numbers` has that of each box."""
    storeys = {str(name): room.storey or "" for name, room in job.rooms.items()}
    circuits = tuple(_circuits(job))
    for storey in dict.fromkeys(storeys.values()):
        rooms = tuple(
            RoomOn(str(name), _metres(room.at), _metres(room.size))
            for name, room in job.rooms.items()
            if room.at is not None and room.size is not None and (room.storey or "") == storey
        )
        spots = {spot.name: spot for spot in _spots(job, storeys, storey, numbers)}
        if any(spot.number for spot in spots.values()):
            runs = list(_runs(job, wiring, spots, [each.name for each in circuits]))
            here = tuple(each for each in runs if each.is_home or each.to in spots)
            leaving = tuple(each for each in runs if each not in here)
            yield Plan(storey, rooms, tuple(spots.values()), here, circuits, leaving)


def _metres(at: OnPlan) -> Point:
    return at[0].value, at[1].value


def _spots(
    job: Job, storeys: Mapping[str, str], storey: str, numbers: Mapping[str, str]
) -> Iterator[SpotOn]:
    for panel in job.panels.values():
        if panel.at is not None and storeys.get(str(panel.room), "") == storey:
            yield SpotOn(panel.name, "", _metres(panel.at), ("panel",))
    for box in job.boxes.values():
        if box.at is not None and storeys.get(str(box.room), "") == storey:
            symbols, tags = tuple(_symbols(box)), tuple(dict.fromkeys(_tags(box)))
            yield SpotOn(box.name, numbers[box.name], _metres(box.at), symbols, tags)


def _symbols(box: Box) -> Iterator[str]:
    """The symbols of a box, named as electricians name them on a plan."""
    if not box.holds:
        yield "junction"
    for device in box.holds:
        yield _symbol(device)


def _tags(box: Box) -> Iterator[str]:
    for device in box.holds:
        if "ground-fault" in (device.protection or ()):
            yield "GFCI"
        if isinstance(device, Receptacle) and device.cover_in_use:
            yield "WP"


def _symbol(device: AnyDevice) -> str:
    if isinstance(device, Switch):
        for ways in ("three", "four"):
            if is_way_switch(device, f"{ways}-way"):
                return f"switch {ways}-way"
        return "switch double pole" if device.type == "double pole" else "switch"
    if isinstance(device, Receptacle):
        kind = "single receptacle" if device.single else "receptacle"
        return f"split {kind}" if device.split else kind
    return "special outlet" if isinstance(device, ApplianceOutlet) else device.kind


def _circuits(job: Job) -> Iterator[CircuitOn]:
    for name, circuit in job.circuits.items():
        spaces = [str(pole.takes) for pole in poles_of(job, circuit)]
        yield CircuitOn(name, "/".join(spaces))


def _runs(
    job: Job, wiring: Wiring, spots: Mapping[str, SpotOn], circuits: Sequence[str]
) -> Iterator[RunOn]:
    for name, cable in job.cables.items():
        uses = dict.fromkeys(part.use.circuit for part in wiring.parts.get(name, ()))
        inside = tuple(circuits.index(each) for each in uses if each in circuits)
        here = [str(each) for each in cable.ends if each in job.boxes and each in spots]
        if not inside or not here:
            continue
        panels = [str(each) for each in cable.ends if each in job.panels]
        if panels:
            yield RunOn(inside, here[0], panels[0], is_home=True)
        else:
            other = next((str(each) for each in cable.ends if each != here[0]), here[0])
            yield RunOn(inside, here[0], other, is_home=False)
