"""Control groups: what a switch controls, by one name however the job calls it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.job.devices import Device, Switch

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.job.cables import Cable
    from linter.job.jobs import Job


class Groups:
    """The control groups of a job; a box with one outlet only is another name of that outlet."""

    def __init__(self, job: Job) -> None:
        self.devices: Mapping[str, Device] = {
            device.name: device for box in job.boxes.values() for device in box.holds
        }
        self._in_box: Mapping[str, tuple[Device, ...]] = {
            name: box.holds for name, box in job.boxes.items()
        }
        self.switches: dict[str, list[Switch]] = {}
        self._at: dict[str, set[str]] = {}
        for device in self.devices.values():
            if isinstance(device, Switch) and device.controls:
                group = self.named(device.controls)
                self.switches.setdefault(group, []).append(device)
                self._at.setdefault(device.box, set()).add(group)

    def named(self, name: str) -> str:
        """The one name of the group that the job calls `name`."""
        outlets = self._outlets(name)
        return outlets[0].name if len(outlets) == 1 and name not in self.devices else name

    def in_box(self, box: str) -> tuple[Device, ...]:
        """What a box holds."""
        return self._in_box.get(box, ())

    def _outlets(self, box: str) -> tuple[Device, ...]:
        return tuple(each for each in self.in_box(box) if not isinstance(each, Switch))

    def has(self, group: str, device: Device) -> bool:
        """Whether the device is what the group controls: by its own name, or by that of its box."""
        return group in (device.name, device.box)

    def of_cable(self, cable: Cable) -> tuple[str, ...]:
        """The groups that a cable can be for: as stated, or those of its ends, near ones first.

        One name is an answer; none or several are for a person to tell.
        """
        if cable.for_ is not None:
            return (self.named(cable.for_),)
        ends = cable.ends
        controlled = {group for end in ends for group in self._controlled_at(end)}
        switched = {group for end in ends for group in self._at.get(end, ())}
        both = controlled & switched
        return tuple(sorted(both or switched or controlled))

    def _controlled_at(self, box: str) -> set[str]:
        names = {box, *(each.name for each in self._outlets(box))}
        return names & self.switches.keys()
