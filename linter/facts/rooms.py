"""Rooms, what is in them, and what they are used as."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.given import Given, unknown
from linter.facts.made import Grouped, answer, complete, one, things
from linter.facts.tubs import put_whirlpool
from linter.units import Unknown
from linter.vocabulary.model import Thing, value_of

if TYPE_CHECKING:
    from linter.facts.knowing import YesNo
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
    "length": "length",
    "storey": "storey",
}
GARAGE = "garage"
_PORCH = "porch"
# Facts that are asked of rooms of some uses and have one value in all others; by field.
_OF_SOME_USES: tuple[tuple[str, str, frozenset[str], object], ...] = (
    ("vehicle_bays", "vehicle_bays", frozenset({GARAGE}), 0),
    ("is_attached", "attached", frozenset({GARAGE, _PORCH}), False),
    ("is_reached_from_inside", "from_inside", frozenset({_PORCH}), False),
    ("distance_to_dwelling", "distance_to_dwelling", frozenset({_PORCH}), 0.0),
    (
        "is_for_storage", "storage",
        frozenset({"attic", "crawl space", "basement", "unfinished basement", "utility"}), False,
    ),
)  # fmt: skip
# The uses of rooms that may well have one, so that it must be asked where nothing is said of it.
_MAY_HAVE = {
    "sink": frozenset({"kitchen", "bathroom", "laundry", "utility"}),
    "tub": frozenset({"bathroom"}),
}


def room_of(room: Room) -> Thing:
    """The facts of a room that the job states."""
    given = Given("room", room.name, room, _ROOM_FIELDS)
    outdoors = _is_outdoors(room)
    given.put("is_outdoors", outdoors, "outdoors" if room.says("outdoors") else "use")
    given.put("has_sink", _fixture(room, "sink", room.sink), "sink")
    given.put("has_tub", _fixture(room, "tub", room.tub), "tub")
    put_whirlpool(given, room)
    for fact, field in (("is_damp", "damp"), ("is_wet", "wet")):
        stated: bool | None = getattr(room, field)
        value = stated if room.says(field) else _left_out(outdoors)
        given.put(fact, value, field)
    _put_of_some_uses(given, room)
    for fact, field, elsewhere in (
        ("side", "side", "other"),
        ("is_reached_from_grade", "from_grade", False),
    ):
        is_asked = room.says(field) or outdoors is True
        not_there = outdoors if isinstance(outdoors, Unknown) else elsewhere
        given.put(fact, getattr(room, field) if is_asked or outdoors is None else not_there, field)
    given.put("opens_to", None, "opens_to")
    given.put("has_counter", room.counter, "counter")
    return given.thing(room.name)


def _put_of_some_uses(given: Given, room: Room) -> None:
    for fact, field, uses, elsewhere in _OF_SOME_USES:
        if room.says(field) or room.use in uses:
            given.put(fact, getattr(room, field), field)
        elif room.use is None:
            given.put(fact, unknown("room", room.name, "use"))
        else:
            given.put(fact, elsewhere)
    if given.values["is_attached"] is True and not room.says("distance_to_dwelling"):
        given.put("distance_to_dwelling", 0.0)


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


def link_rooms(site: Site, made: Made) -> None:
    """What is in each room, and what of it the job has measured."""
    in_rooms = {
        fact: Grouped((one(each, "room").ref, each) for each in made.all(kind))
        for fact, kind in (
            ("boxes", "box"),
            ("outlets", "outlet"),
            ("receptacles", "receptacle"),
            ("switches", "switch"),
            ("luminaires", "luminaire"),
            ("alarms", "alarm"),
            ("runs", "run"),
            ("basins", "basin"),
            ("stairs", "stair"),
        )
    }
    for name, room in site.job.rooms.items():
        thing = made.thing("room", name)
        complete(thing, {fact: grouped.under(name) for fact, grouped in in_rooms.items()})
        _put_what_is_measured(thing, room)
        own = (each.ref for each in things(thing, "luminaires") if not answer(each, "is_fan"))
        complete(thing, {"lights": made.of("outlet", (*own, *room.lit_by))})
        if room.opens_to is not None:
            complete(thing, {"opens_to": made.thing("room", room.opens_to)})


def _put_what_is_measured(thing: Thing, room: Room) -> None:
    """Whether walls, counters and stairs are stated; what is not is asked for, never no."""
    whats = {value_of(run, "what") for run in things(thing, "runs")}
    counter = True if "counter" in whats else _counter(room)
    own = {fact: unknown("room", thing.ref, fact) for fact in _MEASURED}
    asked = True if counter is False else own["counters_are_measured"]
    complete(
        thing,
        {
            "has_counter": counter,
            "walls_are_measured": True if "wall" in whats else own["walls_are_measured"],
            "counters_are_measured": True if "counter" in whats else asked,
            "stairs_are_stated": True if things(thing, "stairs") else own["stairs_are_stated"],
        },
    )


_MEASURED = ("walls_are_measured", "counters_are_measured", "stairs_are_stated")


def _counter(room: Room) -> YesNo:
    """Whether a room has a counter of which no run is stated; a kitchen may have one."""
    if room.says("counter") and room.counter is not None:
        return room.counter
    if room.use is None:
        return unknown("room", room.name, "use")
    asks = room.use == "kitchen" or room.says("counter")
    return unknown("room", room.name, "has_counter") if asks else False


def is_split_phase(supply: Supply) -> YesNo:
    """Whether a supply has two legs and a neutral."""
    if supply.kind is None:
        return unknown(DWELLING, DWELLING, "is_split_phase")
    return supply.kind == SPLIT_PHASE


def is_used_as(thing: Thing, *uses: str, fact: str = "use") -> YesNo:
    """Whether the use of a room or circuit, or what a receptacle serves, is one of `uses`."""
    use = value_of(thing, fact)
    return use if isinstance(use, Unknown) else use in uses
