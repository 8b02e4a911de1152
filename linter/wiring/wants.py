"""What each terminal in a box is to be joined to, like to like, by the use of conductors."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.job.devices import Switch
from linter.wiring import devices as at
from linter.wiring.commons import SWITCHED
from linter.wiring.model import BOND, SIGNAL, Role, Use, WireEnd

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.wiring.devices import Plan
    from linter.wiring.plans import Around


class Key(NamedTuple):
    """What is joined in one joint of a box: one use, on one side of a device that has sides.

    `behind` names the ground-fault device on whose load side it is, or a four-way switch and side.
    """

    use: Use
    behind: str = ""


def key_of_wire(end: WireEnd, plans: Sequence[Plan], around: Around) -> Key:
    """The key of a wire end in its box."""
    behind = next((plan for plan in plans if _protects(plan, end)), None)
    if behind is not None:
        return Key(end.use, behind.device.name)
    if end.use.role is Role.TRAVELLER:
        return Key(end.use, _side(end, plans, around))
    return Key(end.use)


def _protects(plan: Plan, end: WireEnd) -> bool:
    """Whether the wire is on the load side of the device: of a cable named so, and of its hot."""
    if end.cable not in (plan.device.load or ()) or end.use.circuit not in plan.circuits:
        return False
    is_its_hot = end.use.role is Role.HOT and end.use.pole in plan.poles
    return is_its_hot or end.use.role is Role.NEUTRAL


def _side(end: WireEnd, plans: Sequence[Plan], around: Around) -> str:
    """The side of a four-way switch that a traveller is on; cables in the order of their names."""
    four_way = next((each for each in plans if _is_crossed(each, end, around)), None)
    if four_way is None:
        return ""
    cables = traveller_cables(end.use.group, around)
    return f"{four_way.device.name} {min(cables.index(end.cable), 1)}"


def _is_crossed(plan: Plan, end: WireEnd, around: Around) -> bool:
    device = plan.device
    if not (isinstance(device, Switch) and at.is_way_switch(device, "four-way")):
        return False
    return device.controls is not None and around.groups.named(device.controls) == end.use.group


def traveller_cables(group: str | None, around: Around) -> list[str]:
    """The cables in a box that hold travellers of a group, by name."""
    return sorted(
        {
            end.cable
            for end in around.ends
            if end.use.role is Role.TRAVELLER and end.use.group == group
        }
    )


def wants_of(plan: Plan, around: Around) -> dict[str, Key]:
    """What each terminal of a device is joined to, by its name; those left unwired lack."""
    device = plan.device
    if isinstance(device, Switch):
        wants = _of_switch(device, plan, around)
    elif at.has_line_and_load(device):
        wants = _of_line_and_load(plan, around)
    else:
        wants = _of_outlet(plan, around)
    names = at.terminal_names(plan)
    if at.SIGNAL_TERMINAL in names:
        wants[at.SIGNAL_TERMINAL] = Key(SIGNAL)
    if at.BOND_TERMINAL in names:
        wants[at.BOND_TERMINAL] = Key(BOND)
    return {name: key for name, key in wants.items() if name in names}


def _hot(plan: Plan, half: int = 0) -> Key:
    circuit = plan.circuits[min(half, len(plan.circuits) - 1)]
    return Key(Use(Role.HOT, circuit, plan.poles[half]))


def _neutral(plan: Plan, half: int = 0) -> Key:
    return Key(Use(Role.NEUTRAL, plan.circuits[min(half, len(plan.circuits) - 1)]))


def _switched(plan: Plan, group: str | None, pole: int | None) -> Key:
    return Key(Use(Role.SWITCHED_HOT, plan.circuits[0], pole, group))


def _of_switch(switch: Switch, plan: Plan, around: Around) -> dict[str, Key]:
    group = around.groups.named(switch.controls) if switch.controls else _sole_group(plan, around)
    pole = plan.poles[0]
    if at.is_way_switch(switch, "four-way"):
        return _of_four_way(switch, group, plan)
    if at.is_way_switch(switch, "three-way"):
        is_far = around.commons.get(switch.name) == SWITCHED
        wants = {at.COMMON: _switched(plan, group, pole) if is_far else _hot(plan)}
        return wants | {
            name: Key(_traveller(plan, group, number))
            for number, name in enumerate(at.TRAVELLERS[:2], 1)
        }
    if switch.type == "double pole":
        wants = {at.LINE_HOT: _hot(plan), at.LOAD_HOT: _switched(plan, group, pole)}
        if len(plan.poles) > 1:
            wants[at.LINE_HOT_2] = _hot(plan, 1)
            wants[at.LOAD_HOT_2] = _switched(plan, group, plan.poles[1])
        return wants
    wants = {at.COMMON: _hot(plan)}
    return wants if group is None else wants | {at.SWITCHED: _switched(plan, group, pole)}


def _of_four_way(switch: Switch, group: str | None, plan: Plan) -> dict[str, Key]:
    return {
        name: Key(_traveller(plan, group, number % 2 + 1), f"{switch.name} {number // 2}")
        for number, name in enumerate(at.TRAVELLERS)
    }


def _traveller(plan: Plan, group: str | None, number: int) -> Use:
    return Use(Role.TRAVELLER, plan.circuits[0], None, group, number)


def _sole_group(plan: Plan, around: Around) -> str | None:
    """The only group with a switched hot in the box, for a switch that does not say its own."""
    groups = {
        use.group for use in around.uses(Role.SWITCHED_HOT) if use.circuit == plan.circuits[0]
    }
    return next(iter(groups)) if len(groups) == 1 else None


def _of_line_and_load(plan: Plan, around: Around) -> dict[str, Key]:
    device = plan.device
    wants = {at.LINE_HOT: _supply(plan, 0, around), at.LINE_NEUTRAL: _neutral(plan)}
    if len(plan.poles) > 1:
        wants[at.LINE_HOT_2] = _hot(plan, 1)
    if device.load:
        sides = ((at.LOAD_HOT, _hot(plan)), (at.LOAD_NEUTRAL, _neutral(plan)))
        wants |= {name: key._replace(behind=device.name) for name, key in sides}
        if len(plan.poles) > 1:
            wants[at.LOAD_HOT_2] = _hot(plan, 1)._replace(behind=device.name)
    return wants


def _of_outlet(plan: Plan, around: Around) -> dict[str, Key]:
    if plan.split_from is not None:
        switched = _switched(plan, plan.split_from, plan.poles[0])
        return {at.HOT: _hot(plan), at.HOT_2: switched, at.NEUTRAL: _neutral(plan)}
    wants = {at.HOT: _supply(plan, 0, around), at.NEUTRAL: _neutral(plan)}
    if len(plan.poles) > 1:
        wants[at.HOT_2] = _supply(plan, 1, around)
    if len(plan.circuits) > 1:
        wants[at.NEUTRAL_2] = _neutral(plan, 1)
    return wants


def _supply(plan: Plan, half: int, around: Around) -> Key:
    """The hot of an outlet: the switched hot of its name, else the hot, else the only switched."""
    device, pole = plan.device, plan.poles[half]
    groups = switched_in(plan.circuits[0], pole, around)
    own = [group for group in groups if group in (device.name, device.box)]
    if own:
        return _switched(plan, own[0], pole)
    hots = {use for use in around.uses(Role.HOT) if use.circuit == plan.circuits[0]}
    if not hots and len(groups) == 1:
        return _switched(plan, groups[0], pole)
    return _hot(plan, half)


def switched_in(circuit: str | None, pole: int | None, around: Around) -> list[str]:
    """The groups whose switched hot is in the box: on a wire, or on a switch that it holds."""
    groups = {
        use.group
        for use in around.uses(Role.SWITCHED_HOT)
        if use.circuit == circuit and use.pole == pole
    }
    for device in around.box.holds:
        if isinstance(device, Switch) and device.controls and _gives_switched(device, around):
            groups.add(around.groups.named(device.controls))
    return sorted(group for group in groups if group is not None)


def _gives_switched(switch: Switch, around: Around) -> bool:
    if at.is_way_switch(switch, "four-way"):
        return False
    if at.is_way_switch(switch, "three-way"):
        return around.commons.get(switch.name) == SWITCHED
    return True
