"""How a card calls what is in a box: conductors by breaker and leg, devices by kind, terminals."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.job.devices import Switch, WithCanopy
from linter.job.stated import PanelId
from linter.wiring.circuits import poles_of
from linter.wiring.devices import BOND_TERMINAL, COMMON, LINE_HOT, LOAD_HOT, SWITCHED
from linter.wiring.devices import is_way_switch as is_way
from linter.wiring.legs import leg_is_known, leg_of_pole
from linter.wiring.model import Role, Use

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.job.devices import Device
    from linter.job.jobs import Job
    from linter.units import Quantity
    from linter.wiring.model import Terminal

_SPLIT_PHASE = "split phase"
_DIMMER, _SWITCH = "dimmer", "switch"
_THE_BOX = "the box itself"
# A switch of one pole has no common; its screws are called by what comes in and what goes out.
_OF_A_SWITCH = {
    COMMON: "hot in",
    SWITCHED: "switched out",
    LINE_HOT: "hot in",
    LOAD_HOT: "switched out",
}


class CardWords:
    """The names on a card; `words` has the trade's word for a word of ours, as a pack has them."""

    def __init__(self, job: Job, words: Mapping[str, str]) -> None:
        self._job, self._words = job, words
        self._devices: Mapping[str, Device] = {
            device.name: device for box in job.boxes.values() for device in box.holds
        }
        self._poles = {str(name): poles_of(job, each) for name, each in job.circuits.items()}
        self._has_legs = any(each.kind == _SPLIT_PHASE for each in job.supplies.values())

    def use(self, use: Use) -> str:
        """What a conductor is for: "hot of space 3, leg B (counter)"."""
        said = [self._word(use.role.value)]
        said += [str(use.number)] if use.number is not None else []
        said += [f"of {use.group}"] if use.group else []
        said += [self._breaker(use)] if use.role is Role.HOT else []
        said += [f"({use.circuit})"] if use.circuit else []
        return " ".join(filter(None, said))

    def device(self, name: str) -> str:
        """A device with what it is: "three-way switch landing"."""
        if not name:
            return _THE_BOX
        return f"{self.kind(name)} {name}"

    def kind(self, name: str) -> str:
        """What a device is: "three-way switch"."""
        device = self._devices[name]
        if not isinstance(device, Switch):
            return self._word(device.kind)
        if device.type.endswith(_DIMMER):
            return self._word(device.type)
        return f"{self._word(device.type)} {self._word(_SWITCH)}"

    def terminal(self, terminal: Terminal) -> str:
        """A terminal with its device, as the device is marked."""
        return f"{self.device(terminal.device)}, {self.name(terminal)}"

    def is_lead(self, terminal: Terminal) -> bool:
        """Whether it is a wire that the device brings along, as luminaires and fans do."""
        return terminal.is_lead or isinstance(self._devices.get(terminal.device), WithCanopy)

    def lead_size(self, terminal: Terminal) -> Quantity | None:
        """The size of the wires that a device brings along, where the job states it."""
        wires = getattr(self._devices.get(terminal.device), "fixture_wires", None)
        size: Quantity | None = getattr(wires, "size", None)
        return size

    def name(self, terminal: Terminal) -> str:
        """A terminal as the device is marked: "hot in", "switched out", "hot lead"."""
        device = self._devices.get(terminal.device)
        name = terminal.name
        if isinstance(device, Switch) and not is_way(device, "three-way"):
            first, _, number = name.rpartition(" ")
            pair = (first, f" {number}") if number.isdecimal() else (name, "")
            name = "".join([_OF_A_SWITCH.get(pair[0], pair[0]), pair[1]])
        role, _, number = name.partition(" ")
        if role in (BOND_TERMINAL, Role.TRAVELLER.value):
            name = f"{self._word(role)} {number}".rstrip()
        return f"{name} lead" if self.is_lead(terminal) else name

    def _breaker(self, use: Use) -> str:
        """The space of the breaker and its leg, as far as they are known."""
        poles = self._poles.get(use.circuit or "", ())
        if use.pole is None or use.pole >= len(poles):
            return ""
        pole = poles[use.pole]
        of = f" of {pole.panel}" if len(self._job.panels) > 1 else ""
        panel = self._job.panels[PanelId(pole.panel)]
        breaker = panel.breakers[pole.space]
        is_known = self._has_legs and leg_is_known(breaker, panel)
        leg = f", leg {leg_of_pole(breaker, pole.pole)}" if is_known else ""
        return f"of space {pole.takes}{of}{leg}"

    def _word(self, word: str) -> str:
        return self._words.get(word, word)
