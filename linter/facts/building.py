"""What the building has besides rooms: storeys, stairs, doors out of doors, basins."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.given import Given
from linter.facts.knowing import smallest
from linter.facts.made import complete, number, one, things
from linter.units import Unknown
from linter.vocabulary.model import FactRef, Thing, value_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.facts.made import Made, Site
    from linter.job.dwelling import Basin, Room
    from linter.job.passages import Door, Stair

_WITH_BASINS = "bathroom"


def make_building(site: Site, made: Made) -> None:
    """Storeys, stairs, doors and basins; rooms, outlets and receptacles are made by now."""
    made.add(_storeys(made))
    made.add(_stair_of(made, each) for each in site.job.stairs.values())
    made.add(_door_of(made, each) for each in site.job.doors.values())
    for room in site.job.rooms.values():
        made.add(_basins(made, room))


def _storeys(made: Made) -> Iterator[Thing]:
    by_name: dict[str, list[Thing]] = {}
    for room in made.all("room"):
        name = value_of(room, "storey")
        if isinstance(name, str):
            by_name.setdefault(name, []).append(room)
    for name, rooms in by_name.items():
        values: dict[str, object] = {"name": name, "rooms": tuple(rooms)}
        yield Thing("storey", name, rooms[0].place, values, label=f"storey {name}")


def _stair_of(made: Made, stair: Stair) -> Thing:
    given = Given("stair", stair.name, stair, {"risers": "risers"})
    given.put("room", made.thing("room", stair.room))
    given.put("is_lit_throughout", stair.lit_throughout, "lit_throughout")
    levels = stair.levels
    given.put("level_count", None if levels is None else len(levels), "levels")
    return given.thing(f"stair {stair.name}")


def _door_of(made: Made, door: Door) -> Thing:
    fields = {"is_reached_from_grade": "from_grade", "is_for_vehicles": "vehicles"}
    given = Given("door", door.name, door, fields)
    given.put("room", made.thing("room", door.room))
    return given.thing(f"door {door.name}")


def _basins(made: Made, room: Room) -> Iterator[Thing]:
    """The basins that a room states; else the one that a bathroom with a sink has."""
    if room.basins is not None:
        for at, basin in enumerate(room.basins, start=1):
            yield _basin_of(made, room, basin, at)
        return
    thing = made.thing("room", room.name)
    sink = value_of(thing, "has_sink")
    if room.use == _WITH_BASINS and sink is not False:
        label = f"basin of {room.name}"
        values: dict[str, object] = {"room": thing, "receptacle_below_top": 0.0}
        if isinstance(sink, Unknown):
            values |= dict.fromkeys(("has_receptacle", "distance_to_receptacle"), sink)
        yield Thing("basin", f"{room.name}/1", room.place, values, label=label)


def _basin_of(made: Made, room: Room, basin: Basin, at: int) -> Thing:
    given = Given("basin", f"{room.name}/{at}", basin, {})
    given.put("room", made.thing("room", room.name))
    given.put("has_receptacle", basin.outlet is not None or basin.distance is not None)
    given.put("distance_to_receptacle", basin.distance, "distance")
    below = basin.below_top if basin.says("below_top") else 0.0
    given.put("receptacle_below_top", below, "below_top")
    return given.thing(f"basin {at} of {room.name}")


def link_building(site: Site, made: Made) -> None:
    """What storeys hold, the lights of stairs and doors with their switches, basins' receptacles.

    Rooms know what is in them, and outlets their switches, by now.
    """
    for storey in made.all("storey"):
        for fact in ("outlets", "alarms"):
            rooms = things(storey, "rooms")
            complete(storey, {fact: tuple(each for room in rooms for each in things(room, fact))})
    for name, stair in site.job.stairs.items():
        _link_stair(made, made.thing("stair", name), stair)
    for name, door in site.job.doors.items():
        complete(made.thing("door", name), {"lights": _lights_of_door(made, door)})
    for basin in made.all("basin"):
        _link_basin(basin)


def _link_stair(made: Made, thing: Thing, stair: Stair) -> None:
    lights = (
        _named(made, stair.lights)
        if stair.lights is not None
        else things(one(thing, "room"), "lights")
    )
    turning = {switch.ref for light in lights for switch in things(light, "switches")}
    values: dict[str, object] = {"lights": lights}
    own = Unknown((FactRef("stair", thing.ref, "switched_level_count"),))
    levels = None if stair.levels is None else list(stair.levels.values())
    is_told = levels is not None and None not in levels
    count = float(sum(each in turning for each in levels or ()))
    if levels is None:
        values["switched_level_count"] = value_of(thing, "level_count")
    else:
        values["switched_level_count"] = count if is_told else own
    complete(thing, values)


def _named(made: Made, names: Iterable[str]) -> tuple[Thing, ...]:
    return made.of("outlet", names)


def _lights_of_door(made: Made, door: Door) -> tuple[Thing, ...] | Unknown:
    if door.lights is not None:
        return _named(made, door.lights)
    if door.to is None:
        return Unknown((FactRef("door", door.name, "lights"),))
    return things(made.thing("room", door.to), "lights")


def _link_basin(basin: Thing) -> None:
    """The receptacle nearest to the one basin of a room, by the distances of its receptacles."""
    if "has_receptacle" in basin.__dict__:
        return
    near = things(one(basin, "room"), "receptacles")
    own = Unknown((FactRef("basin", basin.ref, "distance_to_receptacle"),))
    least = smallest((number(each, "distance_to_sink") for each in near), own)
    complete(basin, {"has_receptacle": bool(near), "distance_to_receptacle": least})
