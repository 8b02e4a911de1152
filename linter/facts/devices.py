"""Devices: what the job states of them, what ends on them, what hangs on them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.conductors import size_is_usual, size_of
from linter.facts.given import Given, unknown, word_of
from linter.facts.knowing import hanging_on, largest
from linter.facts.made import answer, complete, number, one, things
from linter.facts.panels import ARC_FAULT, GROUND_FAULT, breakers_of, go_off_together
from linter.facts.readings import put_trips
from linter.job.devices import Receptacle, Switch, WithCanopy
from linter.job.metals import ALUMINIUM
from linter.job.panel import BreakerRef
from linter.job.stated import CableId, PanelId
from linter.units import Unknown
from linter.vocabulary.model import value_of
from linter.vocabulary.shorthand import NOT_STATED

if TYPE_CHECKING:
    from collections.abc import Iterable

    from linter.facts.doubts import Doubts
    from linter.facts.knowing import YesNo
    from linter.facts.made import Made, Site, Values
    from linter.job.devices import Device
    from linter.trace.trace import BreakerPole
    from linter.vocabulary.model import Thing
    from linter.wiring.model import Terminal, WireEnd, Wiring

BOND_TERMINAL = "bond"
HOT_TERMINALS = frozenset({"hot", "hot 2", "line hot", "line hot 2"})
NEUTRAL_TERMINALS = frozenset({"neutral", "neutral 2", "line neutral"})
_ON_YOKE = frozenset({"receptacle", "switch"})
_ELECTRONIC = frozenset({"dimmer", "three-way dimmer", "timer"})
_WITH_CANOPY = frozenset({"luminaire", "fan"})


def device_of(site: Site, made: Made, device: Device) -> Thing:
    """The facts of a device that the job states."""
    given = Given("device", device.name, device, {})
    kind = kind_of(device)
    given.put("type", kind)
    given.put("box", made.thing("box", device.box))
    given.put("is_on_yoke", kind in _ON_YOKE)
    given.put("gangs", device.gangs if device.says("gangs") else 1, "gangs")
    for fact, protection in (("is_ground_fault", GROUND_FAULT), ("is_arc_fault", ARC_FAULT)):
        kinds = device.protection
        given.put(fact, None if kinds is None else protection in kinds, "protection")
    given.put("feeds_from_load_side", None if device.load is None else bool(device.load), "load")
    given.put("is_readily_accessible", _is_accessible(device), "readily_accessible")
    put_trips(site.job, given, outlet=device.name)
    _put_canopy(given, device, kind)
    _put_depth(given, device)
    _put_fitting(given, device)
    terminals = site.wiring.by_device.get(device.name, ())
    given.put("has_bond_terminal", any(each.name == BOND_TERMINAL for each in terminals))
    return given.thing(label_of(site, device))


def _put_depth(given: Given, device: Device) -> None:
    """How far it reaches back; nobody need measure what has no yoke, or is of the usual kind."""
    depth = device.depth if isinstance(device, Receptacle | Switch) else 0.0
    given.put("depth", depth, "depth")
    given.put("depth_is_stated", device.says("depth"), "depth")
    is_dimmer = isinstance(device, Switch) and device.type in _ELECTRONIC
    protected = None if device.protection is None else bool(device.protection)
    given.put("has_electronics", is_dimmer or protected, "protection")


def _is_accessible(device: Device) -> bool | None:
    """As stated; a receptacle in the space of an appliance is not, where nothing is said."""
    in_space = isinstance(device, Receptacle) and device.appliance_space is True
    return (
        False if in_space and not device.says("readily_accessible") else (device.readily_accessible)
    )


def _put_fitting(given: Given, device: Device) -> None:
    """How conductors are held on it; what has no yoke has leads, of which nothing is asked."""
    wired = device if isinstance(device, Receptacle | Switch) else None
    given.put("terminals", word_of(wired, "terminals") if wired else NOT_STATED, "terminals")
    says = wired is not None and wired.says("wires_under_screw")
    given.put("wires_under_screw", wired.wires_under_screw if wired and says else 1,
              "wires_under_screw")  # fmt: skip
    given.put("wires_under_screw_is_stated", says, "wires_under_screw")
    given.put("is_for_aluminium", wired.aluminium_rated if wired else None, "aluminium_rated")


def _put_canopy(given: Given, device: Device, kind: str) -> None:
    """The wires that come from a canopy; there are none where there is no canopy."""
    wires = device.fixture_wires if isinstance(device, WithCanopy) else None
    has_canopy = kind in _WITH_CANOPY
    count = wires.count if wires is not None else None if has_canopy else 0
    given.put("fixture_wires", count, "fixture_wires")
    given.put("fixture_wire_size", None if wires is None else wires.size, "fixture_wires")
    domed = device.domed_canopy if isinstance(device, WithCanopy) and has_canopy else False
    given.put("canopy_is_domed", domed, "domed_canopy")


def kind_of(device: Device) -> str:
    """What a device is: "receptacle", "switch", "luminaire" ..."""
    return device.kind


def label_of(site: Site, device: Device) -> str:
    """A device as a person calls it, with its room as the job calls that."""
    room = site.job.boxes[device.box].room
    return f"{kind_of(device)} {device.name}{f' in {room}' if room else ''}"


def link_devices(site: Site, made: Made, doubts: Doubts) -> None:
    """What ends on devices and reaches them, and what goes on only through them."""
    for device in made.all("device"):
        box = one(device, "box")
        terminals = site.wiring.by_device.get(device.ref, ())
        poles = poles_at(site, terminals)
        breakers = tuple(
            dict.fromkeys(BreakerRef(PanelId(each.panel), each.space) for each in poles)
        )
        circuits = circuits_of_poles(made, poles)
        own = unknown("device", device.ref, "hots_go_off_together")
        doubt = doubts.at(box.ref)
        # A bond that is armour ends on no terminal; a box of metal may pass it on.
        own_bond = unknown("device", device.ref, "is_bonded")
        by_armour = own_bond if box.ref in site.armoured else doubt
        links: Values = {
            "is_bonded": _is_bonded(site, terminals) or by_armour,
            "circuits": circuits,
            "hots_go_off_together": go_off_together(breakers_of(site.job, breakers), own),
            "breaker_count": float(len(poles)),
            "breaker_rating": largest((number(each, "rating") for each in circuits), 0.0),
            "has_aluminium": any(
                site.job.cables[CableId(wire.cable)].material in ALUMINIUM
                for wire in _wires_on(site.wiring, terminals)
            ),
            "multiwire_neutral_depends_on_it": (
                site.trace.multiwire_neutral_depends_on(device.ref) or doubt
            ),
            "is_fed_at_load_side": _fed_at_load_side(site, device, doubt),
            "bond_depends_on_it": bool(site.trace.bond_lost_without(device.ref)) or doubt,
        }
        complete(device, links)
        _put_largest_wire(site, made, device, terminals)


def _fed_at_load_side(site: Site, device: Thing, doubt: YesNo) -> YesNo:
    """Whether its load terminals are fed; open where it is open which cables are on them."""
    load = answer(device, "feeds_from_load_side")
    if isinstance(load, Unknown):
        return load
    return site.trace.is_fed_at_load_side(device.ref) or doubt


def poles_at(site: Site, terminals: Iterable[Terminal]) -> tuple[BreakerPole, ...]:
    """The breaker poles that reach the hot terminals; of a switch, any of its terminals."""
    listed = list(terminals)
    hot = [each for each in listed if each.name in HOT_TERMINALS]
    if not any(each.name in NEUTRAL_TERMINALS | HOT_TERMINALS for each in listed):
        hot = listed
    found = (pole for each in hot for pole in site.trace.hots_at(each.id))
    return tuple(sorted(dict.fromkeys(found)))


def circuits_of_poles(made: Made, poles: Iterable[BreakerPole]) -> tuple[Thing, ...]:
    """The circuits that begin at the breakers of those poles."""
    on = [made.by_ref("breaker")[f"{pole.panel} {pole.space}"] for pole in poles]
    return made.in_order(each for breaker in on for each in things(breaker, "circuits"))


def _put_largest_wire(site: Site, made: Made, device: Thing, terminals: Iterable[Terminal]) -> None:
    """The largest conductor on terminals other than that for the bond; 0 where there is none.

    A conductor in the box that is not known, or whose use is not, may be on them too.
    """
    wires = list(_wires_on(site.wiring, terminals))
    sizes = [size_of(wire.cable, wire.colour, wire.size) for wire in wires]
    size = largest(sizes, 0.0)
    not_known = _not_known(one(device, "box"))
    complete(device, {"largest_wire": hanging_on((size, *not_known)) if not_known else size})
    if any(size_is_usual(made, wire) for wire in wires):
        device.usual |= {"largest_wire"}


def _wires_on(wiring: Wiring, terminals: Iterable[Terminal]) -> Iterable[WireEnd]:
    """The conductors of cables on the terminals, straight or by a pigtail; bonds apart."""
    for terminal in terminals:
        landing = wiring.landings.get(terminal.id)
        if landing is None or terminal.name == BOND_TERMINAL:
            continue
        ends = list(landing.wire_ends)
        if landing.pigtail is not None:
            ends += wiring.joints[wiring.pigtails[landing.pigtail].joint].wire_ends
        yield from (wiring.wire_ends[each] for each in ends)


def _not_known(box: Thing) -> list[Unknown]:
    """What hides conductors in a box: sheaths not read, uses not told."""
    found = (value_of(box, fact) for fact in ("wire_ends", "bond_ends"))
    return [value for value in found if isinstance(value, Unknown)]


def _is_bonded(site: Site, terminals: Iterable[Terminal]) -> YesNo:
    return any(each.name == BOND_TERMINAL and site.trace.bond_at(each.id) for each in terminals)
