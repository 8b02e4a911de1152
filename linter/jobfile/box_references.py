"""References of boxes and what they hold: rooms, names, circuits, cables, what is controlled."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.job.devices import Device, Receptacle, Switch
from linter.text import Refusal

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.job.boxes import Box, StatedJoint
    from linter.job.jobs import Job
    from linter.job.stated import Stated
    from linter.jobfile.known import Known, Wrong


def wrong_in_boxes(job: Job, known: Known) -> Iterator[Wrong]:
    """What is wrong with names, and with references of boxes and devices."""
    yield from _one_name_for_two(job)
    for box in job.boxes.values():
        yield from known.rooms.missing(box.room, box.place_of("room"))
        yield from wrong_connector(job, box)
        for device in box.holds:
            yield from _device(job, device, known)
        yield from _load_twice(box)


def wrong_connector(job: Job, thing: Box | StatedJoint) -> Iterator[Wrong]:
    """A connector that is not among the products, where products state connectors at all."""
    name = thing.connector
    known = job.products.connectors
    if name is not None and known and name not in known:
        yield Refusal(
            thing.place_of("connector"),
            f'"{name}" is no connector of this job',
            f"one of: {', '.join(known)}",
            "write a name that stands under connectors of the products, or add it there",
        )


def _one_name_for_two(job: Job) -> Iterator[Wrong]:
    """Names of panels, boxes, cables and devices, each of which stands for one thing."""
    first: dict[str, tuple[str, Stated]] = {}
    things: list[tuple[str, str, Stated]] = [
        *(("panel", each.name, each) for each in job.panels.values()),
        *(("box", each.name, each) for each in job.boxes.values()),
        *(("cable", each.name, each) for each in job.cables.values()),
    ]
    devices = [("device", each.name, each) for box in job.boxes.values() for each in box.holds]
    for kind, name, thing in (*things, *devices):
        other = first.setdefault(name, (kind, thing))
        if other[1] is thing or (other[0] == "box" and _is_in(thing, name)):
            continue
        yield Refusal(
            thing.place_of("name"),
            f'"{name}" names a {kind}, and a {other[0]} as well',
            "a name for each thing",
            f"give one of them another name, such as {_another(name, first)}",
            also=(other[1].place, "first stated"),
        )


def _is_in(thing: Stated, box: str) -> bool:
    return isinstance(thing, Device) and thing.box == box


def _another(name: str, taken: dict[str, tuple[str, Stated]]) -> str:
    return next(each for each in (f"{name}-{n}" for n in range(2, 999)) if each not in taken)


def _device(job: Job, device: Device, known: Known) -> Iterator[Wrong]:
    yield from known.circuits.missing(device.circuit, device.place_of("circuit"))
    if isinstance(device, Switch):
        yield from known.targets.missing(device.controls, device.place_of("controls"))
    if isinstance(device, Receptacle):
        yield from known.targets.missing(device.switched_half_of, device.place_of("split"))
    for at, name in enumerate(device.load or ()):
        place = device.place_of(f"load.{at}")
        cable = job.cables.get(name)
        if cable is None:
            yield from known.cables.missing(name, place)
        elif not known.may_end_in(cable, device.box):
            here = [each.name for each in job.cables.values() if device.box in each.ends]
            yield Refusal(
                place,
                f'Cable "{name}" does not end in {device.box}, where {device.name} is',
                f"one of: {', '.join(here)}" if here else f"a cable that ends in {device.box}",
                "name a cable of this box, or correct where the cable ends",
                also=(cable.place, f'"{name}" is stated'),
            )


def _load_twice(box: Box) -> Iterator[Wrong]:
    """A cable on the load terminals of two devices of one box."""
    first: dict[str, Device] = {}
    for device in box.holds:
        for at, cable in enumerate(device.load or ()):
            other = first.setdefault(cable, device)
            if other is not device:
                yield Refusal(
                    device.place_of(f"load.{at}"),
                    f'Cable "{cable}" is on the load terminals of two devices',
                    "one device for each cable",
                    "leave it out at one of them",
                    also=(other.place_of("load"), "first stated"),
                )
