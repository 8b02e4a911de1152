"""One box made up: plans of its devices, what is stated, then like to like for all the rest."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.job.devices import Device, Switch
from linter.text import Refusal
from linter.wiring import devices as at
from linter.wiring.devices import Plan, box_screw, links_of, terminals_of
from linter.wiring.joining import Maker
from linter.wiring.model import BOND, BoxWiring, LinkKind, Passing, Role
from linter.wiring.plans import Around, Untold, plan_of, refusal
from linter.wiring.stated import extra_terminals, read_make_up
from linter.wiring.wants import Key, key_of_wire, traveller_cables, wants_of

if TYPE_CHECKING:
    from collections.abc import Sequence

_TWO_SIDES = 2


class BoxResult(NamedTuple):
    """A box made up, the circuits of its devices, and what could not be told."""

    wiring: BoxWiring
    circuits: dict[str, tuple[str, ...]]
    refusals: list[Refusal]


def wire_box(around: Around, passing: Sequence[Passing]) -> BoxResult:
    """The make-up of one box."""
    plans, refusals = _plans(around)
    terminals = [each for plan in plans for each in terminals_of(plan)]
    terminals += [*box_screw(around.box), *extra_terminals(around.box, terminals)]
    stated, more = read_make_up(around.box, around.ends, terminals)
    refusals += more
    maker = Maker(around.box, around.ends, {each.id: each for each in terminals})
    maker.state(stated)
    refusals += _derive(maker, plans, around, stated.claimed)
    made = maker.made()
    wiring = BoxWiring(
        around.box.name,
        tuple(around.ends),
        tuple(terminals),
        *made,
        tuple(link for plan in plans for link in links_of(plan)),
        tuple(passing),
    )
    circuits = {str(plan.device.name): tuple(filter(None, plan.circuits)) for plan in plans}
    return BoxResult(wiring, circuits, refusals)


def _plans(around: Around) -> tuple[list[Plan], list[Refusal]]:
    plans, refusals = [], []
    for device in around.box.holds:
        try:
            plans.append(plan_of(device, around))
        except Untold as untold:
            plans.append(Plan(device, (), ()))
            if not around.stated(device):
                refusals.append(refusal(device, untold))
        if isinstance(device, Switch):
            refusals += _too_many_sides(device, around)
    return plans, refusals


def _too_many_sides(switch: Switch, around: Around) -> list[Refusal]:
    group = around.groups.named(switch.controls) if switch.controls else None
    cables = traveller_cables(group, around) if at.is_way_switch(switch, "four-way") else []
    if len(cables) <= _TWO_SIDES or around.stated(switch):
        return []
    return [
        Refusal(
            switch.place,
            f"{len(cables)} cables bring travellers to the four-way switch {switch.name}",
            "two of them",
            "write the make-up of the box joint by joint",
        )
    ]


class _Met(NamedTuple):
    """What meets under each key of a box: wires, terminals, a device that they go on through."""

    wires: dict[Key, list[str]]
    terminals: dict[Key, list[str]]
    through: dict[Key, Plan]


def _derive(
    maker: Maker, plans: Sequence[Plan], around: Around, claimed: frozenset[str]
) -> list[Refusal]:
    """Joins like to like all that the job does not state; keys in the order of the wires."""
    met = _meeting(plans, around, claimed)
    refusals = []
    for key in {**met.wires, **met.terminals}:
        here, ends_on = met.wires.get(key, []), met.terminals.get(key, [])
        if key in met.through and len(here) > 1:
            refusals += _through(maker, met.through[key], here, ends_on, claimed)
        else:
            maker.like_to_like(key, here, ends_on)
    return refusals


def _meeting(plans: Sequence[Plan], around: Around, claimed: frozenset[str]) -> _Met:
    met = _Met({}, {}, {})
    for end in around.ends:
        if end.id not in claimed:
            met.wires.setdefault(key_of_wire(end, plans, around), []).append(end.id)
    for plan in plans:
        for name, key in _wants(plan, around).items():
            terminal = f"{plan.device.name}.{name}"
            if terminal in claimed:
                continue
            met.terminals.setdefault(key, []).append(terminal)
            if _goes_through(plan.device, key.use.role):
                met.through[key] = plan
    screws = [screw.id for screw in box_screw(around.box) if screw.id not in claimed]
    if screws:
        met.terminals.setdefault(Key(BOND), []).extend(screws)
    return met


def _wants(plan: Plan, around: Around) -> dict[str, Key]:
    """What its terminals are joined to; the bond alone where the rest is left to the make-up."""
    if plan.circuits:
        return wants_of(plan, around)
    return {at.BOND_TERMINAL: Key(BOND)} if at.BOND_TERMINAL in at.terminal_names(plan) else {}


def _goes_through(device: Device, role: Role) -> bool:
    if role is Role.NEUTRAL:
        return (device.neutral_through or device.through) == "device"
    return role is Role.HOT and device.through == "device"


def _through(
    maker: Maker,
    plan: Plan,
    wires: Sequence[str],
    terminals: Sequence[str],
    claimed: frozenset[str],
) -> list[Refusal]:
    """Puts two wires on the two screws of one device, or on its one screw."""
    device = plan.device
    if len(terminals) > 1 or len(wires) > _TWO_SIDES:
        found = f"{len(wires)} conductors and {len(terminals)} devices meet where"
        return [
            Refusal(
                device.place_of("through"),
                f"{found} conductors are to go on through {device.name}",
                "two conductors and one device",
                f'write "through: pigtail" at {device.name}, or make the box up joint by joint',
            )
        ]
    first = terminals[0]
    second = _second_screw(plan, first)
    if second is None or second in claimed:
        maker.land(first, wires)
        return []
    for terminal, wire in zip((first, second), sorted(wires), strict=True):
        maker.land(terminal, [wire])
    return []


def _second_screw(plan: Plan, first: str) -> str | None:
    """The screw that a tab joins with the first, if the device has one."""
    tied = (link for link in links_of(plan) if first in link.ends and link.kind is LinkKind.TAB)
    return next((each for link in tied for each in link.ends if each != first), None)
