"""What the building has besides rooms: storeys, stairs, doors out of doors, basins."""

from __future__ import annotations

from linter.units import LENGTH
from linter.vocabulary.model import Fact, Kind
from linter.vocabulary.shorthand import COUNT, TEXT, YES_NO, a, all_of, quantity

_LIGHTS = "Say which luminaires light it."

BUILDING_KINDS = (
    Kind(
        "storey", "storeys", "a floor level, with all rooms that are said to be on it", (
            Fact("name", TEXT, "its name", "ground"),
            Fact("rooms", all_of("room"), "its rooms", ""),
            Fact("outlets", all_of("outlet"), "outlets in those rooms", ""),
            Fact("alarms", all_of("alarm"), "alarms in those rooms", ""),
        ),
    ),
    Kind(
        "stair", "stairs", "a stair", (
            Fact("room", a("room"), "the room it is in", ""),
            Fact("risers", COUNT, "number of its risers", "13", "Count the risers."),
            Fact("level_count", COUNT,
                 "floor levels, and landings with a door, that it serves", "2",
                 "Say which floor levels and landings the stair serves."),
            Fact("switched_level_count", COUNT,
                 "those of them where a switch stands that controls a light of it", "2",
                 "Say which switch stands at each level of the stair."),
            Fact("lights", all_of("outlet"),
                 "the luminaires that light it: as stated, or those in its room", ""),
            Fact("is_lit_throughout", YES_NO, "whether their light reaches the whole of it", "yes",
                 "Look how far the light reaches along the stair."),
        ),
    ),
    Kind(
        "door", "doors", "a door that leads out of doors", (
            Fact("room", a("room"), "the room it leads from", ""),
            Fact("is_reached_from_grade", YES_NO, "whether one comes to it from the ground", "yes",
                 "Look whether one comes to the door from the ground."),
            Fact("is_for_vehicles", YES_NO,
                 "whether it is a door for vehicles; no where the job does not say so", "no",
                 "Look what the door is for."),
            Fact("lights", all_of("outlet"),
                 "the luminaires on its outer side: as stated, or those in the place it leads to",
                 "", _LIGHTS),
        ),
    ),
    Kind(
        "basin", "basins", "a basin in a room that has one or more", (
            Fact("room", a("room"), "the room it is in", ""),
            Fact("has_receptacle", YES_NO,
                 "whether a receptacle is named for it, or stands in its room", "yes",
                 "Ask whether there is to be a sink."),
            Fact("distance_to_receptacle", quantity(LENGTH),
                 "from its outside edge to the nearest receptacle: as stated, or, where its room "
                 "states no basins, the shortest that a receptacle of the room has to its sink",
                 "1 ft", "Measure from the outside edge of the basin to the nearest receptacle."),
            Fact("receptacle_below_top", quantity(LENGTH),
                 "how far that receptacle is below the top of the basin or counter; 0 where the "
                 "job does not say so", "0 in", "Measure from the top of the basin down to it."),
        ),
    ),
)  # fmt: skip
