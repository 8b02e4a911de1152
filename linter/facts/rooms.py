"""Rooms, and the dwelling as a whole."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.given import Given, unknown
from linter.facts.knowing import YesNo, all_hold, any_holds, hanging_on, largest, negated, total
from linter.facts.made import Grouped, answer, complete, number, one
from linter.units import Unknown
from linter.vocabulary.model import Thing, value_of

if TYPE_CHECKING:
    from linter.facts.knowing import Number
    from linter.facts.made import Made, Site
    from linter.job.dwelling import Room, Supply

DWELLING = "dwelling"  # there is one, so its kind is name enough
SPLIT_PHASE = "split phase"
_USES_OUTDOORS = frozenset({"outdoor", "porch"})
_ROOM_FIELDS = {
    "use": "use",
    "area": "area",
    "is_finished": "finished",
    "ambient": "ambient",
}
# The uses of rooms that may well have one, so that it must be asked where nothing is said of it.
_MAY_HAVE = {
    "sink": frozenset({"kitchen", "bathroom", "laundry", "utility"}),
    "tub": frozenset({"bathroom"}),
}
_ALL_OF_KIND = {
    "rooms": "room",
    "panels": "panel",
    "boxes": "box",
    "cables": "cable",
    "circuits": "circuit",
    "breakers": "breaker",
    "outlets": "outlet",
    "receptacles": "receptacle",
    "switches": "switch",
    "appliances": "appliance",
}


def room_of(room: Room) -> Thing:
    """The facts of a room that the job states."""
    given = Given("room", room.name, room, _ROOM_FIELDS)
    outdoors = _is_outdoors(room)
    given.put("is_outdoors", outdoors, "outdoors" if room.says("outdoors") else "use")
    given.put("has_sink", _fixture(room, "sink", room.sink), "sink")
    given.put("has_tub", _fixture(room, "tub", room.tub), "tub")
    for fact, field in (("is_damp", "damp"), ("is_wet", "wet")):
        stated: bool | None = getattr(room, field)
        value = stated if room.says(field) else _left_out(outdoors)
        given.put(fact, value, field)
    return given.thing(room.name)


def _fixture(room: Room, field: str, stated: bool | None) -> bool | None:
    """Whether it has a sink or a tub; left out, none, unless a room of its use may well have it."""
    if room.says(field):
        return stated
    return None if room.use is None or room.use in _MAY_HAVE[field] else False


def _is_outdoors(room: Room) -> YesNo | None:
    if room.says("outdoors"):
        return room.outdoors
    if room.use is None:
        return unknown("room", room.name, "use")
    return room.use in _USES_OUTDOORS


def _left_out(outdoors: YesNo | None) -> YesNo | None:
    """Whether a room is damp or wet that does not say so: not indoors; outdoors, to be told."""
    if outdoors is None or outdoors is True:
        return None
    return outdoors


def link_rooms(made: Made) -> None:
    """What is in each room."""
    in_rooms = {
        fact: Grouped((one(each, "room").ref, each) for each in made.all(kind))
        for fact, kind in (
            ("boxes", "box"),
            ("outlets", "outlet"),
            ("receptacles", "receptacle"),
            ("switches", "switch"),
        )
    }
    for room in made.all("room"):
        complete(room, {fact: grouped.under(room.ref) for fact, grouped in in_rooms.items()})


def dwelling_of(site: Site, made: Made) -> Thing:
    """The dwelling: all that is in it, and its usual supply."""
    job, supply = site.job, site.job.usual_supply
    given = Given(DWELLING, DWELLING, supply, {"supply_voltage": "voltage"})
    given.put("is_split_phase", is_split_phase(supply), "kind")
    given.put("service_rating", _service_rating(supply, made), "rating")
    for fact, kind in _ALL_OF_KIND.items():
        given.put(fact, made.all(kind))
    rooms = made.all("room")
    given.put("floor_area", total(map(_area_to_live_in, rooms)))
    given.put("has_kitchen", any_holds(is_used_as(room, "kitchen") for room in rooms))
    given.put("has_bathroom", any_holds(is_used_as(room, "bathroom") for room in rooms))
    given.put("has_laundry", _has_laundry(made))
    thing = given.thing(job.name)
    thing.place = job.place
    return thing


def is_split_phase(supply: Supply) -> YesNo:
    """Whether a supply has two legs and a neutral."""
    if supply.kind is None:
        return unknown(DWELLING, DWELLING, "is_split_phase")
    return supply.kind == SPLIT_PHASE


def is_used_as(thing: Thing, *uses: str, fact: str = "use") -> YesNo:
    """Whether the use of a room or circuit, or what a receptacle serves, is one of `uses`."""
    use = value_of(thing, fact)
    return use if isinstance(use, Unknown) else use in uses


def _has_laundry(made: Made) -> YesNo:
    """Whether anything is said to be for laundry; what a job leaves out is not, unknown is open."""
    said = [
        *(_is_for_laundry(each, "serves") for each in made.all("receptacle")),
        *(_is_for_laundry(each, "use") for each in made.all("circuit")),
    ]
    return any_holds((*said, *(is_used_as(room, "laundry") for room in made.all("room"))))


def _is_for_laundry(thing: Thing, fact: str) -> YesNo:
    found = is_used_as(thing, "laundry", fact=fact)
    return found if fact in thing.stated_at else found is True


def _service_rating(supply: Supply, made: Made) -> Number:
    if supply.rating is not None:
        return supply.rating.value
    own = unknown(DWELLING, DWELLING, "service_rating")
    mains = [number(panel, "main_rating") for panel in made.all("panel")]
    return largest(mains, own)


def _area_to_live_in(room: Thing) -> Number:
    counts = all_hold((answer(room, "is_finished"), negated(answer(room, "is_outdoors"))))
    area = number(room, "area")
    if counts is False:
        return 0.0
    return area if counts is True else hanging_on((counts, area))
