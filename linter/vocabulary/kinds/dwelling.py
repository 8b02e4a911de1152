"""The dwelling as a whole, its rooms, and the appliances fixed in it."""

from __future__ import annotations

from linter.units import AREA, CURRENT, LENGTH, POWER, TEMPERATURE, VOLTAGE
from linter.vocabulary.model import Fact, Kind
from linter.vocabulary.shorthand import COUNT, YES_NO, all_of, quantity, word

ROOM_USES = (
    "kitchen", "dining", "living", "bedroom", "bathroom", "laundry", "hall", "stairs", "foyer", "closet",
    "utility", "workshop", "sunroom", "garage", "carport", "basement", "unfinished basement", "attic",
    "crawl space", "accessory building", "boathouse", "outdoor", "porch", "other",
)  # fmt: skip

STAGES = ("pulled", "made up", "covered", "trimmed", "energised")

DWELLING_KINDS = (
    Kind(
        "dwelling", "dwellings", "the whole of the job", (
            Fact("rooms", all_of("room"), "its rooms", ""),
            Fact("boxes", all_of("box"), "all its boxes", ""),
            Fact("cables", all_of("cable"), "all its cables", ""),
            Fact("circuits", all_of("circuit"), "all circuits of its panels", ""),
            Fact("breakers", all_of("breaker"), "all breakers of its panels", ""),
            Fact("outlets", all_of("outlet"), "all outlets", ""),
            Fact("appliances", all_of("appliance"), "all appliances and fixed loads", ""),
            Fact("floor_area", quantity(AREA), "floor area reckoned for lighting", "40 m2",
                 "Measure the outside dimensions of the dwelling."),
            Fact("has_kitchen", YES_NO, "whether a room is used as a kitchen", "yes"),
            Fact("has_bathroom", YES_NO, "whether a room is a bathroom", "yes"),
            Fact("has_laundry", YES_NO, "whether a room or an appliance place is for laundry", "no"),
            Fact("service_rating", quantity(CURRENT), "rating of the service or main breaker", "100 A",
                 "Read the rating on the main breaker."),
            Fact("supply_voltage", quantity(VOLTAGE), "voltage between the legs of the usual supply", "240 V",
                 "Ask what supply is to feed the panel."),
            Fact("is_split_phase", YES_NO, "whether the usual supply has two legs and a neutral", "yes",
                 "Ask what supply is to feed the panel."),
        ),
    ),
    Kind(
        "room", "rooms", "a room or a place outdoors", (
            Fact("use", word(*ROOM_USES), "what the room is for", "kitchen", "Ask what the room is for."),
            Fact("area", quantity(AREA), "floor area", "9 m2", "Measure the room."),
            Fact("is_finished", YES_NO, "whether it is finished as a habitable space", "yes",
                 "Ask whether the space is to be finished."),
            Fact("is_outdoors", YES_NO, "whether it lies outdoors", "no"),
            Fact("is_damp", YES_NO, "whether it is a damp place", "no", "Look whether moisture reaches it."),
            Fact("is_wet", YES_NO, "whether water can strike what is in it", "no",
                 "Look whether water can strike it."),
            Fact("ambient", quantity(TEMPERATURE), "highest temperature around its wiring", "30 C",
                 "Reckon the highest temperature in the space."),
            Fact("boxes", all_of("box"), "boxes in the room", ""),
            Fact("outlets", all_of("outlet"), "outlets in the room", ""),
            Fact("has_sink", YES_NO, "whether it has a sink", "yes"),
        ),
    ),
    Kind(
        "appliance", "appliances", "an appliance or a fixed load", (
            Fact("load", quantity(POWER), "power it draws at its rated voltage", "7.2 kW",
                 "Read the nameplate."),
            Fact("voltage", quantity(VOLTAGE), "its rated voltage", "240 V", "Read the nameplate."),
            Fact("current", quantity(CURRENT), "current at its rated voltage", "30 A", "Read the nameplate."),
            Fact("is_continuous", YES_NO, "whether it runs at full load for three hours or more", "yes",
                 "Ask how long it runs at full load."),
            Fact("largest_breaker", quantity(CURRENT), "largest breaker its nameplate allows", "40 A",
                 "Read the nameplate."),
            Fact("has_largest_breaker", YES_NO, "whether its nameplate limits the breaker", "yes"),
            Fact("is_fixed", YES_NO, "whether it is fastened in place", "yes", "Look how it is mounted."),
            Fact("is_cord_and_plug", YES_NO, "whether it has a cord and a plug", "no",
                 "Look how it is connected."),
            Fact("needs_own_circuit", YES_NO, "whether its instructions ask for a circuit of its own", "yes",
                 "Read its instructions."),
            Fact("outlets", all_of("outlet"), "the outlets that feed it; one, as a rule", ""),
            Fact("circuits", all_of("circuit"), "the circuits that feed it; one, as a rule", ""),
            Fact("cord_length", quantity(LENGTH), "length of its cord", "4 ft", "Measure the cord."),
            Fact("outlet_count", COUNT, "number of outlets that feed it", "1"),
        ),
    ),
)  # fmt: skip

