"""How each device of a box is to be wired: which circuit, which hots, which switched hot."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.job.devices import ApplianceOutlet, Device, Receptacle, Switch
from linter.text import Refusal, join_words
from linter.wiring.devices import Plan, is_alarm
from linter.wiring.model import Role, Use, WireEnd

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from linter.job.boxes import Box
    from linter.wiring.groups import Groups

_LIVE = frozenset({Role.HOT, Role.SWITCHED_HOT, Role.TRAVELLER, Role.NEUTRAL})
_HOTS = frozenset({Role.HOT, Role.SWITCHED_HOT})
TWO_CIRCUITS = "two circuits"
_HALVES = 2


class Around(NamedTuple):
    """A box with the wire ends in it and what the rest of the job says of it."""

    box: Box
    ends: Sequence[WireEnd]
    groups: Groups
    breakers_of: Mapping[str, int]
    commons: Mapping[str, str]

    def uses(self, *roles: Role) -> set[Use]:
        """The uses of those roles in the box."""
        return {end.use for end in self.ends if end.use.role in roles}

    def poles(self, circuit: str | None) -> list[int | None]:
        """The hots of a circuit that are in the box, in order."""
        found = {use.pole for use in self.uses(*_HOTS) if use.circuit == circuit}
        return sorted(found, key=lambda pole: -1 if pole is None else pole)

    def has_neutral(self, circuit: str | None) -> bool:
        """Whether a neutral of a circuit is in the box."""
        return any(use.circuit == circuit for use in self.uses(Role.NEUTRAL))

    def stated(self, device: Device) -> bool:
        """Whether the make-up of the box speaks of a terminal of the device, bond apart."""
        make_up = self.box.make_up
        if make_up is None:
            return False
        names = [each for joint in make_up.joints for each in joint.of]
        names += [each.terminal for each in make_up.landings]
        return any(
            name.rpartition(".")[0] == device.name and not name.endswith(".bond") for name in names
        )


class Untold(Exception):
    """What a device is to be wired to cannot be told; the caller says where."""

    def __init__(self, found: str, expected: str, mend: str) -> None:
        self.found, self.expected, self.mend = found, expected, mend
        super().__init__(found)


def plan_of(device: Device, around: Around) -> Plan:
    """How a device is to be wired.

    Raises `Untold` where several circuits or several hots meet and nothing says which is meant.
    """
    if isinstance(device, Receptacle) and device.split == TWO_CIRCUITS:
        return _two_circuits(device, around)
    circuit = _circuit(device, around)
    poles = _poles(device, circuit, around)
    neutral = around.has_neutral(circuit) or len(poles) <= 1
    split = None
    if isinstance(device, Receptacle) and device.switched_half_of is not None:
        split = around.groups.named(device.switched_half_of)
        poles = poles[:1]
    has_signal = is_alarm(device) and bool(around.uses(Role.SIGNAL))
    return Plan(device, (circuit,), tuple(poles), split, neutral, has_signal)


def refusal(device: Device, untold: Untold) -> Refusal:
    """The refusal of a device that cannot be wired, with its place."""
    return Refusal(device.place, untold.found, untold.expected, untold.mend)


def _circuit(device: Device, around: Around) -> str | None:
    if device.circuit is not None:
        return device.circuit
    group = _own_group(device, around.groups)
    live = around.uses(*_LIVE)
    own = {use.circuit for use in live if use.group is not None and use.group in group}
    every = {use.circuit for use in live}
    loads = {end.use.circuit for end in around.ends if end.cable in (device.load or ())} - {None}
    for circuits in (loads, own, every):
        if len(circuits) == 1:
            return next(iter(circuits))
    if not every:
        return None
    names = sorted(each or "a circuit without a name" for each in every)
    raise Untold(
        f"The circuit of {device.name} cannot be told: {join_words(names)} meet in its box",
        "one of these circuits",
        f'write "circuit:" and its name at {device.name}',
    )


def _own_group(device: Device, groups: Groups) -> tuple[str, ...]:
    if isinstance(device, Switch):
        return (groups.named(device.controls),) if device.controls else ()
    return (device.name, device.box)


def _poles(device: Device, circuit: str | None, around: Around) -> list[int | None]:
    poles = around.poles(circuit)
    if len(poles) <= 1:
        return poles or [0]
    if _takes_all(device, circuit, around):
        return poles
    counts = {pole: _wires(circuit, pole, around) for pole in poles}
    of_load = {
        end.use.pole
        for end in around.ends
        if end.cable in (device.load or ()) and end.use.role is Role.HOT
    }
    switched = {
        use.pole
        for use in around.uses(Role.SWITCHED_HOT)
        if use.group in _own_group(device, around.groups)
    }
    lone = {pole for pole, count in counts.items() if count == 1}
    for found in (of_load, switched, lone):
        if len(found) == 1:
            return list(found)
    raise Untold(
        f"The hot of {circuit} that {device.name} takes cannot be told: its box holds several",
        "one of these hots",
        f'write "make_up:" at the box with a joint that holds "{device.name}.hot"',
    )


def _takes_all(device: Device, circuit: str | None, around: Around) -> bool:
    """Whether a device takes all hots: those without a neutral, or of one breaker that end here."""
    if isinstance(device, Switch):
        return device.type == "double pole"
    if not around.has_neutral(circuit):
        return True
    if around.breakers_of.get(circuit or "", 1) > 1:
        return False
    if isinstance(device, ApplianceOutlet):
        return True
    fellows = [each for each in around.box.holds if each is not device]
    poles = around.poles(circuit)
    return not fellows and all(_wires(circuit, pole, around) == 1 for pole in poles)


def _wires(circuit: str | None, pole: int | None, around: Around) -> int:
    hots = (end for end in around.ends if end.use.role is Role.HOT)
    return sum(end.use.circuit == circuit and end.use.pole == pole for end in hots)


def _two_circuits(device: Receptacle, around: Around) -> Plan:
    """Both halves of a receptacle: two hots of one circuit, or the hots of two circuits."""
    hots = around.uses(Role.HOT)
    if device.circuit is not None:
        hots = {use for use in hots if use.circuit == device.circuit}
    pairs = sorted({(use.circuit or "", use.pole or 0) for use in hots})
    if len(pairs) != _HALVES:
        raise Untold(
            f"The two hots of {device.name} cannot be told: its box holds {len(pairs)}",
            "the hots of two breakers",
            "bring both hots to the box, or write its make-up joint by joint",
        )
    circuits = tuple(dict.fromkeys(circuit or None for circuit, _ in pairs))
    return Plan(device, circuits, tuple(pole for _, pole in pairs))
