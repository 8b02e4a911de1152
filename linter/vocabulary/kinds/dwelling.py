"""The dwelling as a whole, its rooms, and the appliances fixed in it."""

from __future__ import annotations

from linter.units import AREA, CURRENT, LENGTH, POWER, TEMPERATURE, VOLTAGE
from linter.vocabulary.model import Fact, Kind
from linter.vocabulary.shorthand import COUNT, YES_NO, all_of, quantity, word

ROOM_USES = (
    "kitchen", "dining", "living", "bedroom", "bathroom", "laundry", "hall", "stairs", "foyer",
    "closet", "utility", "workshop", "sunroom", "garage", "carport", "basement",
    "unfinished basement", "attic", "crawl space", "accessory building", "boathouse", "outdoor",
    "porch", "other",
)  # fmt: skip

STAGES = ("pulled", "made up", "covered", "trimmed", "energised")

APPLIANCE_TYPES = (
    "range", "oven", "cooktop", "microwave", "hood", "dishwasher", "disposer", "compactor",
    "refrigerator", "freezer", "washer", "dryer", "water heater", "tankless water heater",
    "space heating", "central heating", "storage heating", "heat pump", "supplementary heating",
    "air conditioner", "fan", "pump", "sauna", "hot tub", "pool heater", "steam shower",
    "car charger", "kiln", "tool", "lighting", "other",
)  # fmt: skip
DWELLING_TYPES = ("one-family", "two-family", "multifamily", "accessory", "mobile home", "other")
MEASURED_OVER = ("a year", "30 days", "less")

_USES_OF_ROOMS = "Ask what the rooms are for."
_NAMEPLATE = "Read the nameplate."
_SUPPLY = "Ask what supply is to feed the panel."

DWELLING_KINDS = (
    Kind(
        "dwelling", "dwellings", "the whole of the job; there is one", (
            Fact("rooms", all_of("room"), "its rooms", ""),
            Fact("panels", all_of("panel"), "its panels", ""),
            Fact("boxes", all_of("box"), "all its boxes", ""),
            Fact("cables", all_of("cable"), "all its cables", ""),
            Fact("circuits", all_of("circuit"), "all circuits of its panels", ""),
            Fact("breakers", all_of("breaker"), "all breakers of its panels", ""),
            Fact("outlets", all_of("outlet"), "all outlets, receptacles among them", ""),
            Fact("receptacles", all_of("receptacle"), "all receptacles", ""),
            Fact("switches", all_of("switch"), "all switches", ""),
            Fact("appliances", all_of("appliance"), "all appliances and fixed loads", ""),
            Fact("floor_area", quantity(AREA),
                 "floor area of all its finished rooms indoors, summed", "40 m2",
                 "Measure the rooms."),
            Fact("floors", all_of("floor"), "its floors, as far as the job states them", ""),
            Fact("outside_area", quantity(AREA),
                 "floor area by the outside dimensions of the building, without what is left out",
                 "1500 ft2", "Measure the outside of the building, floor by floor."),
            Fact("inside_area", quantity(AREA), "floor area of its floors by inside dimensions",
                 "132 m2", "Measure each floor between its walls."),
            Fact("type", word(*DWELLING_TYPES), "what kind of building it is, or is a part of",
                 "one-family", "Ask what kind of building it is."),
            Fact("is_existing", YES_NO,
                 "whether the job adds to a dwelling that has its service already", "no",
                 "Ask whether the service is there already."),
            Fact("has_measured_demand", YES_NO, "whether the job states a measured load", "no"),
            Fact("measured_demand", quantity(POWER), "highest load that was measured", "6 kW",
                 "Ask the utility for the highest load, or record it."),
            Fact("measured_over", word(*MEASURED_OVER), "how long that was measured", "a year",
                 "Ask how long the load was recorded."),
            Fact("services", all_of("service"),
                 "its service, where it is part of the job", ""),
            Fact("service_is_described", YES_NO,
                 "whether the job describes the service, or says that it is no part of the job",
                 "yes", "Describe the service under service, or write in_job: no there."),
            Fact("electrodes", all_of("electrode"), "its electrodes", ""),
            Fact("pipes", all_of("pipe"), "its systems of piping, as far as stated", ""),
            Fact("has_kitchen", YES_NO, "whether a room is used as a kitchen", "yes",
                 _USES_OF_ROOMS),
            Fact("has_bathroom", YES_NO, "whether a room is used as a bathroom", "yes",
                 _USES_OF_ROOMS),
            Fact("has_laundry", YES_NO,
                 "whether a room is used as a laundry, or a receptacle or circuit is said to be",
                 "no", _USES_OF_ROOMS),
            Fact("service_rating", quantity(CURRENT),
                 "rating of the usual supply; where none is stated, of the largest main breaker",
                 "100 A", "Read the rating on the main breaker."),
            Fact("supply_voltage", quantity(VOLTAGE),
                 "voltage of the usual supply: between its legs where there are two", "240 V",
                 _SUPPLY),
            Fact("is_split_phase", YES_NO, "whether the usual supply has two legs and a neutral",
                 "yes", _SUPPLY),
        ),
    ),
    Kind(
        "room", "rooms", "a room, or a place outdoors", (
            Fact("use", word(*ROOM_USES), "what it is for", "kitchen", "Ask what the room is for."),
            Fact("area", quantity(AREA), "its floor area", "9 m2", "Measure the room."),
            Fact("is_finished", YES_NO, "whether it is finished as a space to live in", "yes",
                 "Ask whether the space is to be finished."),
            Fact("is_outdoors", YES_NO,
                 "whether it lies outdoors; a porch and what is used as outdoor do", "no",
                 "Ask what the room is for."),
            Fact("is_damp", YES_NO,
                 "whether it is a damp place; no for a room indoors that does not say so", "no",
                 "Look whether moisture reaches it."),
            Fact("is_wet", YES_NO,
                 "whether water can strike it; no for a room indoors that does not say so", "no",
                 "Look whether water can strike it."),
            Fact("ambient", quantity(TEMPERATURE), "highest temperature around its wiring", "30 C",
                 "Reckon the highest temperature in the space."),
            Fact("boxes", all_of("box"), "boxes in it", ""),
            Fact("outlets", all_of("outlet"), "outlets in it, receptacles among them", ""),
            Fact("receptacles", all_of("receptacle"), "receptacles in it", ""),
            Fact("switches", all_of("switch"), "switches in it", ""),
            Fact("has_sink", YES_NO,
                 "whether it has a sink; where none is stated, no, except in a room that may well "
                 "have one", "yes", "Ask whether there is to be a sink."),
            Fact("has_tub", YES_NO,
                 "whether it has a bathtub or shower; where none is stated, no, except in a "
                 "bathroom", "no", "Ask whether there is to be a bathtub or shower."),
        ),
    ),
    Kind(
        "appliance", "appliances", "an appliance or a fixed load", (
            Fact("load", quantity(POWER),
                 "power at its rated voltage; reckoned where voltage and current are stated",
                 "7.2 kW", _NAMEPLATE),
            Fact("voltage", quantity(VOLTAGE), "its rated voltage", "240 V", _NAMEPLATE),
            Fact("current", quantity(CURRENT),
                 "current at its rated voltage; reckoned where load and voltage are stated", "30 A",
                 _NAMEPLATE),
            Fact("is_continuous", YES_NO, "whether it runs at full load for three hours or more",
                 "yes", "Ask how long it runs at full load."),
            Fact("largest_breaker", quantity(CURRENT), "largest breaker its nameplate allows",
                 "40 A", _NAMEPLATE),
            Fact("has_largest_breaker", YES_NO,
                 "whether its nameplate limits the breaker; no where the job states nothing of it",
                 "yes"),
            Fact("is_fixed", YES_NO, "whether it is fastened in place", "yes",
                 "Look how it is mounted."),
            Fact("is_cord_and_plug", YES_NO, "whether it has a cord and a plug", "no",
                 "Look how it is connected."),
            Fact("needs_own_circuit", YES_NO,
                 "whether its instructions ask for a circuit of its own", "yes",
                 "Read its instructions."),
            Fact("type", word(*APPLIANCE_TYPES), "what it is", "range", "Say what it is."),
            Fact("is_motor", YES_NO,
                 "whether its load is that of a motor, for the most part; by its type where the "
                 "job does not say", "no", _NAMEPLATE),
            Fact("loads_neutral", YES_NO,
                 "whether its current loads the neutral; by voltage and type where the job does "
                 "not say", "yes", _NAMEPLATE),
            Fact("leg", word("A", "B", "both"),
                 "the leg, or legs, it draws from; of one at the voltage from leg to neutral, that "
                 "of its breaker", "A", "Look which bus bar its breaker grips."),
            Fact("is_existing", YES_NO, "whether it was there before the job", "no",
                 "Ask whether it was there before."),
            Fact("control_count", COUNT, "how many controls of their own parts of it have", "1",
                 "Count the thermostats."),
            Fact("is_interlocked", YES_NO,
                 "whether a heat pump or its supplementary heating is held off while the other "
                 "runs", "no", "Read the wiring diagram of the heat pump."),
            Fact("smallest_ampacity", quantity(CURRENT),
                 "least ampacity of its circuit, as marked on it", "18 A", _NAMEPLATE),
            Fact("has_smallest_ampacity", YES_NO, "whether the job states that", "no"),
            Fact("outlets", all_of("outlet"), "the outlets said to feed it; one, as a rule", ""),
            Fact("circuits", all_of("circuit"), "the circuits of those outlets; one, as a rule", "",
                 "Say what the conductors to its outlets are used as."),
            Fact("cord_length", quantity(LENGTH), "length of its cord", "4 ft",
                 "Measure the cord."),
            Fact("outlet_count", COUNT, "number of those outlets", "1"),
        ),
    ),
)  # fmt: skip
