"""Luminaires, fans and alarms: what the job states of them, and whether alarms sound together."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.devices import kind_of, label_of
from linter.facts.given import Given
from linter.facts.made import complete, one
from linter.job.devices import Fixture
from linter.units import Unknown
from linter.vocabulary.model import Thing, value_of

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.facts.doubts import Doubts
    from linter.facts.knowing import YesNo
    from linter.facts.made import Made, Site
    from linter.trace.trace import Piece

ALARM = "alarm"
_LUMINAIRE_TYPES = frozenset({"luminaire", "fan"})
_LUMINAIRE_FIELDS = {
    "is_in_place": "in_place",
    "mounting": "mounting",
    "lamp": "lamp",
    "is_enclosed": "enclosed",
    "is_for_storage_space": "for_storage_space",
    "clear_of_storage": "clear_of_storage",
    "is_for_insulation": "for_insulation",
    "is_thermally_protected": "thermally_protected",
    "is_in_insulation": "in_insulation",
    "clear_of_combustible": "clear_of_combustible",
    "clear_of_insulation": "clear_of_insulation",
    "weight": "weight",
    "is_held_by_building": "held_by_building",
    "marked_for": "marked_for",
    "asks_ground_fault": "asks_ground_fault",
    "has_disconnect": "disconnect",
    "height_over_tub": "height_over_tub",
}
_FIRST_ASKED: Mapping[str, tuple[str, ...]] = {
    "mounting": (
        "is_for_insulation", "is_in_insulation", "clear_of_combustible", "clear_of_insulation",
        "is_thermally_protected",
    ),
    "lamp": ("has_disconnect",),
    "weight": ("is_held_by_building",),
}  # fmt: skip
_ALARM_FIELDS = {"is_in_place": "in_place", "has_battery": "battery"}
_SIGNAL_TERMINAL = "signal"
_LINKED = ("circuits", "switches")


def fixtures_of(site: Site, made: Made) -> tuple[list[Thing], list[Thing]]:
    """The luminaires with the fans, and the alarms, as the job states them."""
    luminaires, alarms = [], []
    for box in site.job.boxes.values():
        for device in box.holds:
            if isinstance(device, Fixture) and kind_of(device) in _LUMINAIRE_TYPES:
                luminaires.append(_luminaire_of(site, made, device))
            elif isinstance(device, Fixture) and kind_of(device) == ALARM:
                alarms.append(_alarm_of(site, made, device))
    return luminaires, alarms


def _luminaire_of(site: Site, made: Made, device: Fixture) -> Thing:
    given = Given("luminaire", device.name, device, _LUMINAIRE_FIELDS)
    _ask_first_things_first(given, device)
    outlet = _put_outlet(given, made, device)
    given.put("is_fan", kind_of(device) == "fan")
    given.put("room_has_tub", value_of(outlet, "room_has_tub"))
    given.put("distance_to_tub", value_of(outlet, "distance_to_tub"))
    for fact in outlet.stated_at.keys() & {"distance_to_tub"}:
        given.stated_at[fact] = outlet.stated_at[fact]
    for fact in outlet.written.keys() & {"distance_to_tub"}:
        given.written[fact] = outlet.written[fact]
    return given.thing(label_of(site, device))


def _ask_first_things_first(given: Given, device: Fixture) -> None:
    """What matters of some luminaires alone hangs on what tells whether this is one of them."""
    for first, then in _FIRST_ASKED.items():
        if isinstance(given.values[first], Unknown):
            for fact in then:
                if not device.says(_LUMINAIRE_FIELDS[fact]):
                    given.put(fact, given.values[first])


def _alarm_of(site: Site, made: Made, device: Fixture) -> Thing:
    given = Given("alarm", device.name, device, _ALARM_FIELDS)
    _put_outlet(given, made, device)
    for fact, what in (("senses_smoke", "smoke"), ("senses_carbon_monoxide", "carbon monoxide")):
        given.put(fact, None if device.senses is None else what in device.senses, "senses")
    given.put("is_interconnected", device.interconnected, "interconnected")
    return given.thing(label_of(site, device))


def _put_outlet(given: Given, made: Made, device: Fixture) -> Thing:
    outlet = made.thing("outlet", device.name)
    given.put("outlet", outlet)
    for fact in ("room", "box"):
        given.put(fact, value_of(outlet, fact))
    return outlet


def link_fixtures(site: Site, made: Made, doubts: Doubts) -> None:
    """What luminaires and alarms share with their outlets, and the signals between alarms."""
    for each in (*made.all("luminaire"), *made.all("alarm")):
        outlet = made.thing("outlet", each.ref)
        complete(each, {fact: value_of(outlet, fact) for fact in _LINKED})
    for each in made.all("luminaire"):
        outlet = made.thing("outlet", each.ref)
        protected = value_of(outlet, "has_ground_fault_protection")
        complete(each, {"has_ground_fault_protection": protected})
    _link_signals(site, made, doubts)


def _link_signals(site: Site, made: Made, doubts: Doubts) -> None:
    """Whether alarms sound together: as stated, else by the conductors between them."""
    alarms = made.all("alarm")
    pieces = {each.ref: _signal_piece(site, each.ref) for each in alarms}
    together = len(alarms) == 1 or (None not in pieces.values() and len(set(pieces.values())) == 1)
    for each in alarms:
        if "is_interconnected" not in each.stated_at:
            doubt = doubts.at(one(each, "box").ref)
            complete(each, {"is_interconnected": _told(doubt, together=together)})


def _told(doubt: YesNo, *, together: bool) -> YesNo:
    return doubt if isinstance(doubt, Unknown) and not together else together


def _signal_piece(site: Site, alarm: str) -> Piece | None:
    """The piece of metal that an alarm's signal terminal is part of; None where it has none."""
    for terminal in site.wiring.by_device.get(alarm, ()):
        if terminal.name == _SIGNAL_TERMINAL:
            return site.trace.piece_of(terminal.id)
    return None
