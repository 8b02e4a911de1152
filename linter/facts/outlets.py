"""Outlets, receptacles among them: what reaches them, protects them, controls them."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.facts.devices import (
    HOT_TERMINALS,
    NEUTRAL_TERMINALS,
    circuits_of_poles,
    kind_of,
    label_of,
    poles_at,
)
from linter.facts.given import Given, unknown
from linter.facts.knowing import all_hold, any_holds, hanging_on, largest
from linter.facts.loads import UnknownLoads
from linter.facts.made import Grouped, answer, complete, number, one, things
from linter.facts.panels import breakers_of, legs_are_known
from linter.facts.readings import put_readings_at_outlet
from linter.facts.rooms import DWELLING, is_split_phase, is_used_as
from linter.job.devices import Receptacle, Switch
from linter.job.panel import BreakerRef
from linter.job.stated import PanelId
from linter.units import Unknown
from linter.vocabulary.model import Thing, value_of
from linter.wiring.legs import leg_of_pole

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from linter.facts.doubts import Doubts
    from linter.facts.knowing import Number, YesNo
    from linter.facts.made import Made, Site, Values
    from linter.job.devices import Device
    from linter.trace.trace import BreakerPole
    from linter.trace.ways import Protector

_FIELDS = {
    "distance_to_sink": "distance_to_sink",
    "distance_to_tub": "distance_to_tub",
}
_RECEPTACLE_FIELDS = {
    "rating": "rating",
    "is_tamper_resistant": "tamper_resistant",
    "is_weather_resistant": "weather_resistant",
    "cover_closes_in_use": "cover_in_use",
    "is_in_appliance_space": "appliance_space",
    "mounting": "mounted",
    "path_to_sink": "path_to_sink",
    "height_over_tub": "height_over_tub",
}
_LEGS_OF_TWO = 2
_SWITCHED_HALF = "switched half of "


_COMMON = (
    "room", "box", "device", "height", "room_has_sink", "room_has_tub", "serves",
    "polarity_reading", "bond_resistance",
)  # fmt: skip
_GENERAL_USE = "general use"
# Rooms where a receptacle is likely to be there for one appliance, or for one kind of work.
_ROOMS_OF_APPLIANCES = (
    "kitchen", "dining", "bathroom", "laundry", "utility", "garage", "basement",
    "unfinished basement", "attic", "crawl space", "other",
)  # fmt: skip
_BEFORE_TRIM = frozenset({"pulled", "made up", "covered"})


def outlet_of(site: Site, made: Made, device: Device) -> Thing:
    """The facts of an outlet that the job states."""
    given = Given("outlet", device.name, device, _FIELDS)
    given.put("type", kind_of(device))
    box = made.thing("box", device.box)
    room = one(box, "room")
    given.put("room", room)
    given.put("box", box)
    given.put("device", made.thing("device", device.name))
    given.put("room_has_sink", value_of(room, "has_sink"))
    given.put("room_has_tub", value_of(room, "has_tub"))
    _take_over(given, room)
    given.put("serves", _serves(device, room), "serves")
    put_readings_at_outlet(site.job, given)
    given.put("height", device.height, "height")
    if not device.says("height") and not isinstance(number(box, "height"), Unknown):
        given.put("height", number(box, "height"))
        given.written |= {fact: text for fact, text in box.written.items() if fact == "height"}
        given.usual |= box.usual & {"height"}
    return given.thing(label_of(site, device))


def _take_over(given: Given, room: Thing) -> None:
    """What the sink and the tub of its room rest on, its outlet rests on as well."""
    for fact in ("has_sink", "has_tub"):
        given.usual |= {f"room_{fact}"} if fact in room.usual else set()
        given.assumed |= {f"room_{fact}": room.assumed[fact]} if fact in room.assumed else {}


def _serves(device: Device, room: Thing) -> str | Unknown | None:
    """What it is there for; left out, the use of its room tells whether that must be asked."""
    if device.says("serves") or not isinstance(device, Receptacle):
        return device.serves
    matters = is_used_as(room, *_ROOMS_OF_APPLIANCES)
    return _GENERAL_USE if matters is False else None


def receptacle_of(site: Site, made: Made, device: Receptacle) -> Thing:
    """The facts of a receptacle; what it shares with its outlet hangs on the outlet."""
    outlet = made.thing("outlet", device.name)
    given = Given("receptacle", device.name, device, _RECEPTACLE_FIELDS)
    given.values |= {fact: value_of(outlet, fact) for fact in (*_FIELDS, *_COMMON)}
    given.written |= outlet.written
    given.stated_at |= outlet.stated_at
    given.usual |= outlet.usual
    given.assumed |= outlet.assumed
    single = device.single
    given.put("places", None if single is None else 1 if single else 2, "single")
    given.put("is_split", device.split is not None, "split")
    given.put("is_wholly_switched", device.split is None and _is_switched(site, device))
    room = one(outlet, "room")
    reached = device.from_grade if device.says("from_grade") else _reached(room)
    given.put("is_reached_from_grade", reached, "from_grade")
    given.put("is_fitted", site.job.stage not in _BEFORE_TRIM)
    return given.thing(label_of(site, device))


def _is_switched(site: Site, device: Receptacle) -> bool:
    return any(site.groups.switches.get(group) for group in controls_of(device, site))


def _reached(room: Thing) -> YesNo:
    return answer(room, "is_reached_from_grade")


def link_outlets(site: Site, made: Made, doubts: Doubts) -> None:
    """The circuits of outlets, their voltage, their switches, and their ground-fault protection."""
    switches, loads = _switches_of_outlets(site, made), UnknownLoads(site, made)
    for outlet in made.all("outlet"):
        doubt = doubts.at(one(outlet, "box").ref)
        terminals = site.wiring.by_device.get(outlet.ref, ())
        poles = poles_at(site, terminals)
        at = _At(site, made, outlet, doubt, loads)
        links: Values = {
            "circuits": circuits_of_poles(made, poles),
            "switches": made.in_order(switches.under(outlet.ref)),
            "is_on_a_circuit": bool(poles) or doubt,
            "voltage": _voltage(site, outlet.ref, poles, doubt),
            "has_ground_fault_protection": _protected(at, "is_ground_fault"),
            "has_arc_fault_protection": _protected(at, "is_arc_fault"),
        }
        complete(outlet, links)


def link_receptacles(made: Made) -> None:
    """What receptacles share with their outlets, and whether they are alone on their circuits."""
    for receptacle in made.all("receptacle"):
        outlet = made.thing("outlet", receptacle.ref)
        circuits = things(outlet, "circuits")
        is_only = bool(circuits) and all(len(things(each, "outlets")) == 1 for each in circuits)
        places = number(receptacle, "places")
        is_single = places if isinstance(places, Unknown) else places == 1
        links = {fact: value_of(outlet, fact) for fact in _LINKED}
        links |= {
            "is_only_outlet": is_only,
            "is_only_one_on_circuit": all_hold((is_only, is_single)),
            "circuit_rating": largest((number(each, "rating") for each in circuits), 0.0),
        }
        complete(receptacle, links)


_LINKED = (
    "circuits",
    "switches",
    "is_on_a_circuit",
    "voltage",
    "has_ground_fault_protection",
    "has_arc_fault_protection",
)


def controls_of(device: Device, site: Site) -> tuple[str, ...]:
    """The control groups an outlet is in: by its name, its box, or the half that is switched."""
    groups = [str(device.name), str(device.box)]
    if isinstance(device, Receptacle) and (device.split or "").startswith(_SWITCHED_HALF):
        groups.append(site.groups.named((device.split or "").removeprefix(_SWITCHED_HALF)))
    return tuple(dict.fromkeys(groups))


def _switches_of_outlets(site: Site, made: Made) -> Grouped:
    by_ref = made.by_ref("switch")
    return Grouped(
        (device.name, by_ref[switch.name])
        for device in site.groups.devices.values()
        if not isinstance(device, Switch)
        for group in controls_of(device, site)
        for switch in site.groups.switches.get(group, ())
    )


def _voltage(site: Site, outlet: str, poles: Iterable[BreakerPole], doubt: YesNo) -> Number:
    """The highest voltage that a load at an outlet gets; no load lies between halves of a yoke."""
    listed = list(poles)
    legs = {_leg(site, pole) for pole in listed}
    if not legs:
        return doubt if isinstance(doubt, Unknown) else 0.0
    supply = site.job.usual_supply
    split = is_split_phase(supply)
    device = site.groups.devices[outlet]
    has_halves = isinstance(device, Receptacle) and device.split is not None
    hidden = _leg_unknown(site, listed)
    differ = len(legs) == _LEGS_OF_TWO if hidden is None else hidden
    between_legs = all_hold((differ, not has_halves, split))
    stated = supply.voltage
    full = unknown(DWELLING, DWELLING, "supply_voltage") if stated is None else stated.value
    if between_legs is True:
        return full
    to_neutral = doubt
    for each in site.wiring.by_device.get(outlet, ()):
        if each.name in NEUTRAL_TERMINALS and site.trace.neutral_at(each.id):
            to_neutral = True
    if isinstance(between_legs, Unknown) or isinstance(to_neutral, Unknown):
        return hanging_on((between_legs, to_neutral, full))
    return _to_neutral(full, split) if to_neutral else 0.0


def _to_neutral(full: Number, split: YesNo) -> Number:
    if isinstance(split, Unknown) or isinstance(full, Unknown):
        return hanging_on((split, full))
    return full / _LEGS_OF_TWO if split else full


def _leg_unknown(site: Site, poles: Iterable[BreakerPole]) -> Unknown | None:
    """What hides whether poles of several breakers are on one leg."""
    refs = list(dict.fromkeys(BreakerRef(PanelId(each.panel), each.space) for each in poles))
    breakers = breakers_of(site.job, refs)
    if legs_are_known(site.job, breakers):
        return None
    return hanging_on(unknown("breaker", str(ref), "leg") for ref in refs)


def _leg(site: Site, pole: BreakerPole) -> str:
    panel = site.job.panels[PanelId(pole.panel)]
    return leg_of_pole(panel.breakers[pole.space], pole.pole)


class _At(NamedTuple):
    """An outlet, and what hides from the trace what stands before it."""

    site: Site
    made: Made
    outlet: Thing
    doubt: YesNo
    loads: UnknownLoads


def _protected(at: _At, kind: str) -> YesNo:
    """Whether a device of a kind stands before every hot of an outlet, or the outlet is one."""

    def protects(thing: Thing) -> YesNo:
        return answer(thing, kind)

    own = protects(one(at.outlet, "device"))
    before = _before(at.site, at.made, at.outlet, protects, at.doubt)
    return any_holds((own, before, *at.loads.before(at.outlet.ref, protects)))


def _before(
    site: Site, made: Made, outlet: Thing, protects: Callable[[Thing], YesNo], doubt: YesNo
) -> YesNo:
    """Whether a breaker, or a device that `protects`, stands before every hot that comes there."""
    terminals = site.wiring.by_device.get(outlet.ref, ())
    hots = [each.id for each in terminals if each.name in HOT_TERMINALS]
    reached = [each for each in hots if site.trace.hots_at(each)]
    if not reached:
        return doubt
    return all_hold(
        any_holds(protects(_thing_of(made, each)) for each in site.trace.protectors_before(hot))
        for hot in reached
    )


def _thing_of(made: Made, protector: Protector) -> Thing:
    if protector.device is not None:
        return made.thing("device", protector.device)
    panel, space = protector.breaker or ("", 0)
    return made.thing("breaker", f"{panel} {space}")
