"""Rooms, what is in them, and what they are used as."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.given import Given, unknown
from linter.facts.made import Grouped, complete, one
from linter.units import Unknown
from linter.vocabulary.model import Thing, value_of

if TYPE_CHECKING:
    from linter.facts.knowing import YesNo
    from linter.facts.made import Made
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


def is_split_phase(supply: Supply) -> YesNo:
    """Whether a supply has two legs and a neutral."""
    if supply.kind is None:
        return unknown(DWELLING, DWELLING, "is_split_phase")
    return supply.kind == SPLIT_PHASE


def is_used_as(thing: Thing, *uses: str, fact: str = "use") -> YesNo:
    """Whether the use of a room or circuit, or what a receptacle serves, is one of `uses`."""
    use = value_of(thing, fact)
    return use if isinstance(use, Unknown) else use in uses
