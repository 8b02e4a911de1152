"""The terminals of each kind of device, and the links between them inside it."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.job.devices import Device, Receptacle, Switch, WithCanopy
from linter.wiring.model import Link, LinkKind, Role, Terminal

if TYPE_CHECKING:
    from linter.job.boxes import Box

HOT, HOT_2, NEUTRAL, NEUTRAL_2, BOND_TERMINAL = "hot", "hot 2", "neutral", "neutral 2", "bond"
LINE_HOT, LOAD_HOT, LINE_NEUTRAL, LOAD_NEUTRAL = (
    "line hot",
    "load hot",
    "line neutral",
    "load neutral",
)
LINE_HOT_2, LOAD_HOT_2 = "line hot 2", "load hot 2"
COMMON, SWITCHED, SIGNAL_TERMINAL = "common", "switched", "signal"
TRAVELLERS = ("traveller 1", "traveller 2", "traveller 3", "traveller 4")
BOX_SCREW = "box.bond"
TERMINAL_NAMES = (
    HOT, HOT_2, NEUTRAL, NEUTRAL_2, BOND_TERMINAL, LINE_HOT, LOAD_HOT, LINE_NEUTRAL, LOAD_NEUTRAL,
    LINE_HOT_2, LOAD_HOT_2, COMMON, SWITCHED, SIGNAL_TERMINAL,
    *TRAVELLERS,
)  # fmt: skip
_ALIASES = {HOT: LINE_HOT, NEUTRAL: LINE_NEUTRAL}


class Plan(NamedTuple):
    """How one device is to be wired: its circuits, and what follows from the box around it.

    `poles` are the hots that it takes, in order; `split_from` is the group whose switched hot one
    half of a split receptacle takes; `has_signal` says whether a signal comes to an alarm.
    """

    device: Device
    circuits: tuple[str | None, ...]
    poles: tuple[int | None, ...]
    split_from: str | None = None
    has_neutral: bool = True
    has_signal: bool = False

    @property
    def two_hots(self) -> bool:
        """Whether two different hots end on it."""
        return len(self.poles) > 1 or self.split_from is not None


def has_line_and_load(device: Device) -> bool:
    """Whether the device has terminals for what it protects downstream."""
    return bool(device.protection) or bool(device.load)


def is_way_switch(device: Device, ways: str) -> bool:
    """Whether the device is a switch of that many ways ("three-way", "four-way"), dimmers too."""
    return isinstance(device, Switch) and device.type.startswith(ways)


def is_alarm(device: Device) -> bool:
    """Whether the device is an alarm, which has no terminal for a bond and may have a signal."""
    return isinstance(device, WithCanopy) and device.kind == "alarm"


def terminal_names(plan: Plan) -> tuple[str, ...]:
    """The terminals of a device, in the order in which they are wired."""
    device = plan.device
    if isinstance(device, Switch):
        return _switch_terminals(device)
    if has_line_and_load(device):
        second = (LINE_HOT_2, LOAD_HOT_2) if len(plan.poles) > 1 else ()
        return (LINE_HOT, LINE_NEUTRAL, LOAD_HOT, LOAD_NEUTRAL, *second, BOND_TERMINAL)
    if isinstance(device, Receptacle):
        neutrals = (NEUTRAL, NEUTRAL_2) if plan.has_neutral else ()
        return (HOT, HOT_2, *neutrals, BOND_TERMINAL)
    hots = (HOT, HOT_2) if plan.two_hots else (HOT,)
    neutral = (NEUTRAL,) if plan.has_neutral else ()
    signal = (SIGNAL_TERMINAL,) if plan.has_signal else ()
    bonds = () if is_alarm(device) else (BOND_TERMINAL,)
    return (*hots, *neutral, *signal, *bonds)


def _switch_terminals(switch: Switch) -> tuple[str, ...]:
    if is_way_switch(switch, "three-way"):
        return (COMMON, *TRAVELLERS[:2], BOND_TERMINAL)
    if is_way_switch(switch, "four-way"):
        return (*TRAVELLERS, BOND_TERMINAL)
    if switch.type == "double pole":
        return (LINE_HOT, LINE_HOT_2, LOAD_HOT, LOAD_HOT_2, BOND_TERMINAL)
    return (COMMON, SWITCHED, BOND_TERMINAL)


def terminals_of(plan: Plan) -> tuple[Terminal, ...]:
    """The terminals of a device; those that a luminaire brings its own wires for are leads."""
    device = plan.device
    wires = device.fixture_wires if isinstance(device, WithCanopy) else None
    leads = (wires.count or 0) if wires is not None else 0
    return tuple(
        Terminal(f"{device.name}.{name}", device.name, device.box, name, number < leads)
        for number, name in enumerate(terminal_names(plan))
    )


def box_screw(box: Box) -> tuple[Terminal, ...]:
    """The bond screw of a metal box that has one, as a terminal of no device."""
    if box.material == "metal" and box.bond_screw:
        return (Terminal(f"{box.name}/{BOX_SCREW}", "", box.name, BOND_TERMINAL),)
    return ()


def links_of(plan: Plan) -> tuple[Link, ...]:
    """The links inside a device: tabs, contacts of switches, line to load."""
    device = plan.device
    if isinstance(device, Switch):
        return _switch_links(device)
    if has_line_and_load(device):
        return _line_to_load(device, terminal_names(plan))
    if not isinstance(device, Receptacle):
        return ()
    links = [] if plan.two_hots else [_link(device, HOT, HOT_2, LinkKind.TAB, Role.HOT)]
    shares = plan.has_neutral and len(plan.circuits) <= 1
    if shares:
        links.append(_link(device, NEUTRAL, NEUTRAL_2, LinkKind.TAB, Role.NEUTRAL))
    return tuple(links)


def _switch_links(switch: Switch) -> tuple[Link, ...]:
    t1, t2, t3, t4 = TRAVELLERS
    if is_way_switch(switch, "three-way"):
        ways = [(COMMON, t1, LinkKind.THROW_1), (COMMON, t2, LinkKind.THROW_2)]
    elif is_way_switch(switch, "four-way"):
        ways = [(t1, t3, LinkKind.THROW_1), (t2, t4, LinkKind.THROW_1)]
        ways += [(t1, t4, LinkKind.THROW_2), (t2, t3, LinkKind.THROW_2)]
    elif switch.type == "double pole":
        ways = [(LINE_HOT, LOAD_HOT, LinkKind.CLOSED_WHEN_ON)]
        ways += [(LINE_HOT_2, LOAD_HOT_2, LinkKind.CLOSED_WHEN_ON)]
    else:
        ways = [(COMMON, SWITCHED, LinkKind.CLOSED_WHEN_ON)]
    return tuple(_link(switch, one, other, kind, Role.HOT) for one, other, kind in ways)


def _line_to_load(device: Device, names: tuple[str, ...]) -> tuple[Link, ...]:
    ways = [(LINE_HOT, LOAD_HOT, Role.HOT), (LINE_NEUTRAL, LOAD_NEUTRAL, Role.NEUTRAL)]
    ways += [(LINE_HOT_2, LOAD_HOT_2, Role.HOT)] if LINE_HOT_2 in names else []
    return tuple(
        _link(device, line, load, LinkKind.LINE_TO_LOAD, role) for line, load, role in ways
    )


def _link(device: Device, one: str, other: str, kind: LinkKind, carries: Role) -> Link:
    return Link(device.name, (f"{device.name}.{one}", f"{device.name}.{other}"), kind, carries)


def named_terminal(name: str, terminals: tuple[Terminal, ...]) -> Terminal | None:
    """The terminal that `make_up` calls `name`; "hot" is the line side where there are two."""
    if name == BOX_SCREW:
        return next((each for each in terminals if not each.device), None)
    by_name = {f"{each.device}.{each.name}": each for each in terminals if each.device}
    device, _, terminal = name.rpartition(".")
    return by_name.get(name) or by_name.get(f"{device}.{_ALIASES.get(terminal, terminal)}")
