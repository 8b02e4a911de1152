"""Outlets that the job has on the load side of a ground-fault device, however they are joined."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.panels import GROUND_FAULT

if TYPE_CHECKING:
    from collections.abc import Iterable

    from linter.facts.made import Site
    from linter.job.devices import Device


def thought_protected(site: Site) -> frozenset[str]:
    """The outlets beyond the cables that a ground-fault device is said to have on its load side.

    Those of its circuit only; a cable that comes back to the device's box leads no farther.
    """
    return frozenset(
        outlet
        for device in site.groups.devices.values()
        if device.load and GROUND_FAULT in (device.protection or ())
        for outlet in _beyond(site, device, device.load)
    )


def _beyond(site: Site, device: Device, cables: Iterable[str]) -> set[str]:
    circuits = {*site.wiring.circuit_of_device.get(device.name, ())}
    boxes = _boxes_beyond(site, str(device.box), cables, circuits)
    return {
        str(held.name)
        for box in boxes
        for held in site.job.boxes[box].holds  # type: ignore[index]  # boxes by plain name
        if _is_on(site, str(held.name), circuits)
    }


def _is_on(site: Site, device: str, circuits: set[str]) -> bool:
    """Whether a device is on these circuits and no other."""
    own = {*site.wiring.circuit_of_device.get(device, ())}
    return bool(own) and own <= circuits


def _boxes_beyond(site: Site, start: str, cables: Iterable[str], circuits: set[str]) -> set[str]:
    """The boxes that cables of these circuits lead to from one, the way back left out."""
    waiting, found, gone = list(cables), {start}, set[str]()
    while waiting:
        cable = waiting.pop()
        parts = site.wiring.parts[cable]
        if cable in gone or not circuits & {part.use.circuit for part in parts}:
            continue
        gone.add(cable)
        ends = {site.wiring.wire_ends[end].box for part in parts for end in part.ends}
        for box in (ends & site.wiring.boxes.keys()) - found:
            found.add(box)
            waiting += (end.cable for end in site.wiring.boxes[box].wire_ends)
    return found - {start}
