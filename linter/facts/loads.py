"""Outlets of which it is open whether a protecting device feeds them from its load side."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.knowing import all_hold
from linter.facts.made import answer
from linter.job.stated import BoxId

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from linter.facts.knowing import YesNo
    from linter.facts.made import Made, Site
    from linter.job.devices import Device
    from linter.vocabulary.model import Thing


class UnknownLoads:
    """The devices whose load side the job leaves open, by the outlets farther from the panel."""

    def __init__(self, site: Site, made: Made) -> None:
        self._made = made
        self._before: dict[str, list[str]] = {}
        for device in site.groups.devices.values():
            if device.load is None:
                for outlet in _beyond(site, device):
                    self._before.setdefault(outlet, []).append(str(device.name))

    def before(self, outlet: str, protects: Callable[[Thing], YesNo]) -> Iterator[YesNo]:
        """Whether each of them protects the outlet, as far as that can be told."""
        for name in self._before.get(outlet, ()):
            device = self._made.thing("device", name)
            yield all_hold((protects(device), answer(device, "feeds_from_load_side")))


def _beyond(site: Site, device: Device) -> Iterator[str]:
    """The devices of boxes that cables lead to from the device's box, away from the panel."""
    waiting, found = [str(device.box)], {str(device.box)}
    while waiting:
        fresh = set(_farther_boxes(site, waiting.pop())) - found
        found |= fresh
        waiting += sorted(fresh)
    for box in found - {str(device.box)}:
        yield from (str(held.name) for held in site.job.boxes[BoxId(box)].holds)


def _farther_boxes(site: Site, box: str) -> Iterator[str]:
    """The boxes at the far ends of cables that lead on from a box."""
    for end in site.wiring.boxes[box].wire_ends:
        for part in site.wiring.parts[end.cable]:
            if end.id in part.ends:
                (far,) = (each for each in part.ends if each != end.id)
                there = site.wiring.wire_ends[far].box
                if there in site.wiring.boxes and _is_farther(site, far, end.id):
                    yield there


def _is_farther(site: Site, far: str, near: str) -> bool:
    there, here = site.trace.distance(far), site.trace.distance(near)
    return there is not None and here is not None and there > here
