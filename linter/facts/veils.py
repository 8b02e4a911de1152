"""What is left open because a sheath is not known, or what a conductor is used as.

The trace counts what it finds. Where a way may go on through conductors that are not known, "these
and no others" is more than it can say: such facts are made unknown, last of all.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.knowing import hanging_on
from linter.facts.made import complete, number, one, things
from linter.units import Unknown
from linter.vocabulary.model import value_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from linter.facts.doubts import Doubts
    from linter.facts.made import Made
    from linter.vocabulary.model import Thing

_OF_NO_BREAKER: Mapping[str, tuple[str, ...]] = {
    "device": ("circuits", "breaker_count", "hots_go_off_together"),
    "outlet": ("circuits",),
    "receptacle": ("circuits", "is_only_outlet", "is_only_one_on_circuit", "circuit_rating"),
    "switch": ("circuits",),
    "luminaire": ("circuits",),
    "alarm": ("circuits",),
}
_OF_ITS_OUTLETS = (
    "outlets", "receptacles", "switches", "rooms", "outlet_rooms", "outlet_count",
    "receptacle_count", "voltage", "appliances", "fixed_load", "continuous_load",
    "first_outlet_is_arc_fault", "first_receptacle_is_arc_fault", "first_outlet_is_marked",
    "first_outlet_is_next_to_panel",
)  # fmt: skip
# Facts that more outlets on a circuit can turn, unless they have this value.
_MAY_TURN = (
    ("receptacle", "is_only_outlet", False),
    ("receptacle", "is_only_one_on_circuit", False),
    ("conductor", "feeds_receptacles", True),
    ("cable", "feeds_receptacles", True),
)
_OF_ITS_WIRES = (
    "conductors", "cables", "boxes", "home_run_length", "home_run_size", "home_run_is_armoured",
    "first_outlet_is_next_to_panel",
)  # fmt: skip
_OF_WIRE_USE = ("circuits", "feeds_receptacles", "breaker_rating")


def veil(made: Made, doubts: Doubts) -> None:
    """Makes unknown what the things that are not known may change."""
    wires = list(_veil_wires(made))
    unreached = list(_veil_unreached(made, doubts))
    if unreached:
        _veil_circuits(made, doubts, unreached)
    if wires:
        _veil_joints(made)
        _veil_wires_of_circuits(made, doubts, wires)


def _tied_to(circuit: Thing, doubts: Doubts, unknowns: Iterable[Unknown]) -> list[Unknown]:
    """Those of the unknowns that may come into the boxes of a circuit."""
    return [each for each in unknowns if doubts.reach(circuit.ref, each.because)]


def _veil_unreached(made: Made, doubts: Doubts) -> Iterable[Unknown]:
    """The circuits of devices that no breaker is found to reach, in boxes that are in doubt."""
    for device in made.all("device"):
        doubt = doubts.at(one(device, "box").ref)
        if not isinstance(doubt, Unknown) or number(device, "breaker_count") != 0:
            continue
        for kind, facts in _OF_NO_BREAKER.items():
            thing = made.by_ref(kind).get(device.ref)
            if thing is not None:
                complete(thing, dict.fromkeys(facts, doubt))
        yield doubt


def _veil_circuits(made: Made, doubts: Doubts, unreached: list[Unknown]) -> None:
    """What circuits feed besides: the devices in doubt may be on them."""
    veiled: dict[str, Unknown] = {}
    for circuit in made.all("circuit"):
        tied = _tied_to(circuit, doubts, unreached)
        if tied:
            veiled[circuit.ref] = hanging_on(tied)
            complete(circuit, dict.fromkeys(_OF_ITS_OUTLETS, veiled[circuit.ref]))
    for kind, fact, decided in _MAY_TURN:
        for thing in made.all(kind):
            its = _doubts_of(thing, veiled)
            if its and value_of(thing, fact) is not decided:
                complete(thing, {fact: hanging_on(its)})
    for appliance in made.all("appliance"):
        outlets = things(appliance, "outlets")
        circuits = [value_of(each, "circuits") for each in outlets]
        if any(isinstance(each, Unknown) for each in circuits):
            complete(appliance, {"circuits": hanging_on(circuits)})


def _doubts_of(thing: Thing, veiled: Mapping[str, Unknown]) -> list[Unknown]:
    """What the circuits of a thing hang on; where they are not known, what any of them does."""
    circuits = value_of(thing, "circuits")
    if isinstance(circuits, Unknown):
        return [circuits, *veiled.values()]
    return [veiled[each.ref] for each in things(thing, "circuits") if each.ref in veiled]


def _veil_wires(made: Made) -> Iterable[Unknown]:
    """The circuits of conductors whose use is not known, their cables and what they end in."""
    for conductor in made.all("conductor"):
        use = value_of(conductor, "role")
        if isinstance(use, Unknown):
            complete(conductor, dict.fromkeys(_OF_WIRE_USE, use))
            ends = (*things(conductor, "ends"), *things(conductor, "panel_ends"))
            for thing in (one(conductor, "cable"), *ends):
                _add_doubt(thing, use)
            for end in things(conductor, "ends"):
                _add_doubt(one(end, "box"), use)
            yield use
    for cable in made.all("cable"):
        sheath = number(cable, "insulated_conductors")
        if isinstance(sheath, Unknown):
            _add_doubt(cable, sheath)
            for end in things(cable, "ends"):
                _add_doubt(one(end, "box"), sheath)
            yield sheath


def _veil_joints(made: Made) -> None:
    for joint in made.all("joint"):
        uses = [value_of(each, "role") for each in things(joint, "wire_ends")]
        if any(isinstance(use, Unknown) for use in uses):
            _add_doubt(joint, hanging_on(uses))


def _add_doubt(thing: Thing, doubt: Unknown) -> None:
    before = value_of(thing, "circuits")
    complete(thing, {"circuits": hanging_on((before, doubt))})


def _veil_wires_of_circuits(made: Made, doubts: Doubts, wires: list[Unknown]) -> None:
    """What circuits have besides: a conductor in doubt may be their neutral, or join it to one."""
    for circuit in made.all("circuit"):
        tied = _tied_to(circuit, doubts, wires)
        if not tied:
            continue
        doubt = hanging_on(tied)
        links: dict[str, object] = dict.fromkeys(_OF_ITS_WIRES, doubt)
        for fact, is_decided in (
            ("has_neutral", True),
            ("is_multiwire", True),
            ("neutral_is_its_own", False),
        ):
            if value_of(circuit, fact) is not is_decided:
                links[fact] = doubt
        if number(circuit, "hot_count") <= 1:
            del links["is_multiwire"]
        complete(circuit, links)
