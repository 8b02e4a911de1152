"""What a box holds: devices on yokes, and outlets where current is taken."""

from __future__ import annotations

from linter.units import AREA, CURRENT, LENGTH, NUMBER, RESISTANCE, VOLTAGE
from linter.vocabulary.model import Fact, Kind
from linter.vocabulary.shorthand import COUNT, NOT_STATED, TEXT, YES_NO, a, all_of, quantity, word

DEVICE_TYPES = ("receptacle", "switch", "luminaire", "fan", "alarm", "appliance outlet", "other")

RECEPTACLE_SERVES = (
    "general use", "counter", "island", "refrigerator", "range", "cooktop", "oven", "microwave",
    "dishwasher", "disposer", "hood", "basin", "laundry", "dryer", "workbench", "outdoor",
    "heating service", "sump", "freezer", "alarm", "kiln", "furnace", "car", "garage door", "other",
)  # fmt: skip

SWITCH_TYPES = (
    "single pole", "double pole", "three-way", "four-way", "dimmer", "three-way dimmer", "timer",
)  # fmt: skip

POLARITY_READINGS = (
    "not taken", "correct", "hot and neutral reversed", "hot and bond reversed", "no hot",
    "no neutral", "no bond",
)  # fmt: skip

TRIP_READINGS = ("not taken", "tripped", "did not trip")

RECEPTACLE_PLACES = (
    "in the wall", "in the floor", "in the counter", "in a cabinet", "on the ceiling",
    "in an appliance or luminaire",
)  # fmt: skip

SINK_PATHS = ("in the room", "through a doorway", "through a window")

SWITCH_CONTROLS = (
    "by hand", "occupancy sensor", "occupancy sensor with hand override", "automatic", "remote",
    "battery",
)  # fmt: skip

_BREAKER = "Read the rating on the breaker."
_LABELS = "Read the label of the device or breaker."
_FACE = "Look for the mark on the face."
_SHEATHS = "Read the sizes on the sheaths."
_SINK = "Measure from the outlet to the rim of the sink."
_TUB = "Measure from the outlet to the tub or shower."
_USES = "Say what the conductors in its box are used as."

_OUTLET_FACTS = (
    Fact("room", a("room"), "the room it is in", ""),
    Fact("box", a("box"), "the box it is in", ""),
    Fact("device", a("device"), "the outlet as a device: its size, bond and terminals", ""),
    Fact("circuits", all_of("circuit"), "circuits that reach its hot terminals; one, as a rule",
         "", _USES),
    Fact("switches", all_of("switch"), "switches that are said to control it", ""),
    Fact("is_on_a_circuit", YES_NO,
         "whether a breaker reaches it through joints and devices, switches being on", "yes",
         _USES),
    Fact("serves", word(*RECEPTACLE_SERVES),
         "what it is there for; general use, where the job says nothing of a receptacle in a room "
         "that is not known for appliances of its own", "counter",
         "Ask what is to be used at it."),
    Fact("polarity_reading", word(*POLARITY_READINGS),
         "what a tester showed at it; of several readings the last that the job lists",
         "correct", "Plug in a tester, and write down what it shows."),
    Fact("bond_resistance", quantity(RESISTANCE),
         "resistance of the way back by its bond, as a test of continuity between bond and earth "
         "or neutral showed; of several readings the last; 0 ohm where none was taken", "0.3 ohm",
         "Measure it again, the circuit being off and proved dead."),
    Fact("has_ground_fault_protection", YES_NO,
         "whether a ground-fault device for people stands before it on every way, or in it", "yes",
         _LABELS),
    Fact("has_arc_fault_protection", YES_NO,
         "whether an arc-fault breaker or device stands before it on every way, or in it", "yes",
         _LABELS),
    Fact("voltage", quantity(VOLTAGE),
         "highest voltage that its load gets, switches being on, of a split receptacle that of a "
         "half; 0 V where no breaker reaches it", "120 V", "Ask what supply is to feed the panel."),
    Fact("distance_to_sink", quantity(LENGTH),
         "shortest path of a cord to the edge of a sink, door openings counted as open", "4 ft",
         _SINK),
    Fact("distance_to_tub", quantity(LENGTH), "distance to the edge of a bathtub or shower stall",
         "5 ft", _TUB),
    Fact("room_has_sink", YES_NO, "whether its room has a sink", "yes",
         "Ask whether there is to be a sink."),
    Fact("room_has_tub", YES_NO, "whether its room has a bathtub or shower", "no",
         "Ask whether there is to be a bathtub or shower."),
    Fact("height", quantity(LENGTH),
         "height above the floor; that of its box where its own is not stated", "16 in",
         "Measure from the floor."),
)  # fmt: skip

# What a tester finds between the terminals, in every position of the switches; where a short
# reaches an outlet, nothing of this is found.
_TESTED_FACTS = (
    Fact("is_dead", YES_NO,
         "whether a place of it has no voltage in any position of the switches, and no hot where "
         "its neutral belongs", "no", _USES),
    Fact("is_reversed", YES_NO,
         "whether a hot comes to a terminal for the neutral in some position", "no", _USES),
    Fact("returns_on_bond", YES_NO,
         "whether its current flows by the bond, no neutral being there, in some position", "no",
         _USES),
    Fact("is_live_when_off", YES_NO,
         "whether it can be turned off and still has a hot on a terminal then", "no", _USES),
    Fact("borrows_neutral", YES_NO,
         "whether its neutral is that of another circuit than its hot", "no", _USES),
    Fact("neutral_leaves_protection", YES_NO,
         "whether a ground-fault device stands in the way of its hot alone, or of its neutral "
         "alone", "no", _USES),
    Fact("turning_switches", all_of("switch"),
         "switches that turn it on or off in some position of the others", "", _USES),
    Fact("every_switch_turns_it", YES_NO,
         "whether each switch that is said to control it turns it on or off in every position of "
         "the others; yes where it has none", "yes", _USES),
    Fact("is_turned_by_another_switch", YES_NO,
         "whether a switch turns it on or off that is said to control something else", "no",
         "Say what each switch is to control."),
    Fact("is_thought_ground_fault_protected", YES_NO,
         "whether the job has its cable on the load side of a ground-fault device", "no", _USES),
    Fact("tested", TEXT,
         "what reaches its terminals and by which way, where one of these is wrong; empty where "
         "all is well",
         "breaker 10, black of k1, hot terminal of b; nothing reaches the neutral terminal of b"),
)  # fmt: skip

_FITTING_FACTS = (
    Fact("terminals", word(NOT_STATED, "screws", "clamp plates", "push-in", "leads"),
         "which of its terminals the conductors are on", "screws",
         "Look at the back and the sides of the device."),
    Fact("wires_under_screw", COUNT, "most conductors under one screw; 1 where the job states none",
         "1", "Look at the screws of the device."),
    Fact("wires_under_screw_is_stated", YES_NO,
         "whether the job speaks of that number, be it as unknown", "no"),
    Fact("has_aluminium", YES_NO,
         "whether a conductor that is said to be of aluminium, coated or not, ends on it",
         "no"),
    Fact("is_for_aluminium", YES_NO, "whether it is marked for conductors of aluminium", "no",
         "Read the marking on the yoke."),
    Fact("breaker_rating", quantity(CURRENT),
         "largest rating of the circuits that reach it; 0 A where none does", "20 A",
         "Read the rating on the breaker."),
)  # fmt: skip

TRIP_FACTS = (
    Fact("trip_current", quantity(CURRENT),
         "current of that test; 0 A where the reading does not state it", "6 mA",
         "Read on the tester what current it draws."),
    Fact("trip_time_ms", quantity(NUMBER),
         "milliseconds until it tripped in that test; 0 where the reading does not state them",
         "25", "Time it again."),
    Fact("arc_fault_trip_reading", word(*TRIP_READINGS),
         "what a test of arc-fault trip showed, by its button as a rule; of several readings the "
         "last", "tripped", "Press its test button."),
)  # fmt: skip

DEVICE_KINDS = (
    Kind(
        "device", "devices", "anything that a box holds and that conductors end on", (
            Fact("box", a("box"), "the box it is in", ""),
            Fact("type", word(*DEVICE_TYPES), "what it is", "switch"),
            Fact("is_on_yoke", YES_NO,
                 "whether it is mounted on a yoke in the box: a receptacle or a switch", "yes"),
            Fact("gangs", COUNT, "gangs that its width needs; 1 where the job states none", "1",
                 "Measure the width of the device."),
            Fact("depth", quantity(LENGTH),
                 "how far it reaches back from its yoke; 0 for what has none", "35 mm",
                 "Measure the device behind its yoke."),
            Fact("depth_is_stated", YES_NO,
                 "whether the job speaks of that depth, be it as unknown", "no"),
            Fact("has_electronics", YES_NO,
                 "whether it is a dimmer or timer, or has protection of its own, and so may reach "
                 "far back", "no", "Read the label of the device."),
            Fact("largest_wire", quantity(AREA),
                 "largest conductor that ends on it; a pigtail is as large as the largest "
                 "conductor of its joint", "12 AWG", _SHEATHS),
            Fact("fixture_wires", COUNT,
                 "conductors that come into the box from a luminaire's canopy; 0 for what is no "
                 "luminaire or fan", "3", "Count the luminaire's own wires."),
            Fact("fixture_wire_size", quantity(AREA), "size of those conductors", "16 AWG",
                 "Read the size on the luminaire's wires."),
            Fact("canopy_is_domed", YES_NO, "whether the canopy over them is domed", "yes",
                 "Look at the canopy."),
            *_FITTING_FACTS,
            Fact("is_bonded", YES_NO,
                 "whether its bond terminal is joined to a bond that comes from the panel", "yes",
                 "Look for the pigtail on the bond screw."),
            Fact("has_bond_terminal", YES_NO, "whether it has a bond terminal", "yes"),
            Fact("is_ground_fault", YES_NO,
                 "whether it is itself a ground-fault device for people", "no",
                 "Read the label of the device."),
            Fact("is_arc_fault", YES_NO, "whether it is itself an arc-fault device", "no",
                 "Read the label of the device."),
            Fact("is_readily_accessible", YES_NO,
                 "whether it is reached at once, without tools, ladder, or moving what stands "
                 "before it; no in the space of an appliance", "yes",
                 "Look whether it is reached at once when all stands in its place."),
            Fact("trip_reading", word(*TRIP_READINGS),
                 "what its own test of ground-fault trip showed; of several readings the last",
                 "tripped", "Press its test button, or better test it with a tester beyond it."),
            *TRIP_FACTS,
            Fact("feeds_from_load_side", YES_NO,
                 "whether cables go on from its load terminals, so that it protects what they feed",
                 "yes", "Look which cables are on its load terminals, and say so under load."),
            Fact("is_fed_at_load_side", YES_NO,
                 "whether a hot from the panel comes to its load terminals without going through "
                 "it, as where line and load are exchanged", "no",
                 "Look which cable brings the supply, and on which terminals it is."),
            Fact("circuits", all_of("circuit"), "circuits that reach its hot terminals", "", _USES),
            Fact("hots_go_off_together", YES_NO,
                 "whether one movement opens all breakers that reach its hot terminals", "yes",
                 "Look for a handle tie or a common handle."),
            Fact("breaker_count", COUNT, "breaker poles that reach its hot terminals", "1", _USES),
            Fact("multiwire_neutral_depends_on_it", YES_NO,
                 "whether a neutral that two hots share goes on only through its terminals", "no",
                 _USES),
            Fact("bond_depends_on_it", YES_NO, "whether a bond goes on only through its terminals",
                 "no", _USES),
        ),
    ),
    Kind(
        "outlet", "outlets",
        "a point where current is taken: a receptacle, a luminaire, an alarm, a wired appliance", (
            Fact("type", word(*DEVICE_TYPES), "what it is", "receptacle"),
            *_OUTLET_FACTS,
            Fact("appliances", all_of("appliance"), "the appliances that it is said to feed", ""),
            *_TESTED_FACTS,
        ),
    ),
    Kind(
        "receptacle", "receptacles", "a receptacle outlet; it is an outlet too, with these facts", (
            *_OUTLET_FACTS,
            Fact("appliances", all_of("appliance"), "the appliances said to be fed by it", ""),
            Fact("rating", quantity(CURRENT), "its rating", "15 A",
                 "Read the face of the receptacle."),
            Fact("places", COUNT, "places to plug in: 1 single, 2 duplex", "2",
                 "Look at the face of the receptacle."),
            Fact("is_only_one_on_circuit", YES_NO,
                 "whether its circuit has no other outlet and it has one place to plug in", "no",
                 "Look at the face of the receptacle."),
            Fact("is_only_outlet", YES_NO, "whether its circuit has no other outlet", "no", _USES),
            Fact("is_tamper_resistant", YES_NO, "whether it is of the tamper-resistant kind",
                 "yes", _FACE),
            Fact("is_weather_resistant", YES_NO, "whether it is of the weather-resistant kind",
                 "yes", _FACE),
            Fact("cover_closes_in_use", YES_NO,
                 "whether its cover keeps weather out while a plug is in", "yes",
                 "Look at the cover."),
            Fact("is_in_appliance_space", YES_NO,
                 "whether it is in the space of one appliance that is not easily moved; no where "
                 "the job does not say so", "no", "Ask what is to stand before it."),
            Fact("mounting", word(*RECEPTACLE_PLACES),
                 "where it is mounted; in the wall, where the job does not say", "in the floor",
                 "Look where it is mounted."),
            Fact("path_to_sink", word(*SINK_PATHS),
                 "the way of the cord to that sink; in the room, where the job does not say",
                 "through a doorway", "Look where a cord would lead from it to the sink."),
            Fact("is_reached_from_grade", YES_NO,
                 "whether, outdoors, it is readily reached from the ground: as stated, or as its "
                 "place is; no indoors", "yes", "Look whether it is reached from the ground."),
            Fact("height_over_tub", quantity(LENGTH),
                 "height above the rim of a bathtub or the threshold of a shower", "5 ft", _TUB),
            Fact("is_wholly_switched", YES_NO,
                 "whether a switch turns off all its places; of a split receptacle one half stays",
                 "no"),
            Fact("is_split", YES_NO, "whether the tab between its hot screws is broken", "no"),
            Fact("is_fitted", YES_NO,
                 "whether the stage of the job says that devices are in: trimmed, energised, or "
                 "none stated", "no"),
            Fact("circuit_rating", quantity(CURRENT),
                 "rating of its circuit, the largest of several", "20 A", _BREAKER),
        ),
    ),
    Kind(
        "switch", "switches", "a switch or dimmer that controls an outlet", (
            Fact("box", a("box"), "the box it is in", ""),
            Fact("room", a("room"), "the room it is in", ""),
            Fact("device", a("device"), "the switch as a device: its size, bond and terminals", ""),
            Fact("type", word(*SWITCH_TYPES), "what it is", "three-way"),
            Fact("controls", TEXT, "what it controls: an outlet or a box, by name", "loft-light",
                 "Say what the switch is to control."),
            Fact("controlled", all_of("outlet"), "the outlets of that name, or in the box of it",
                 ""),
            Fact("controls_lighting", YES_NO, "whether one of them is a luminaire", "yes",
                 "Say what the switch is to control."),
            Fact("controls_receptacle", YES_NO, "whether one of them is a receptacle", "no",
                 "Say what the switch is to control."),
            Fact("circuits", all_of("circuit"), "circuits that reach its terminals", "", _USES),
            Fact("has_neutral_in_box", YES_NO,
                 "whether a neutral of a circuit that reaches it comes into its box; where none "
                 "does, of the circuit it is meant for", "yes", _USES),
            Fact("neutral_can_be_added", YES_NO,
                 "whether a neutral can be added later without opening finishes", "no",
                 "Look whether the box is fed by a raceway or stays open to view."),
            Fact("other_location_has_neutral", YES_NO,
                 "whether another switch of the same lights has the neutral and all are seen from "
                 "it", "no", "Look whether the whole lit floor is seen from the other switch."),
            Fact("distance_to_tub", quantity(LENGTH),
                 "distance to the edge of a bathtub or shower stall", "5 ft",
                 "Measure from the switch to the tub or shower."),
            Fact("is_in_tub_space", YES_NO,
                 "whether it stands within a bathtub or shower space; no where its room has none",
                 "no", "Look where the tub or shower ends."),
            Fact("control", word(*SWITCH_CONTROLS),
                 "how it is worked; by hand, where the job does not say", "by hand",
                 "Look how it is worked."),
            Fact("is_at_entry", YES_NO,
                 "whether it stands at the usual point of entry to the space it lights", "yes",
                 "Look whether the switch stands where one enters."),
            Fact("rating", quantity(CURRENT), "its rating", "15 A", "Read the rating on the yoke."),
            Fact("switches_neutral", YES_NO,
                 "whether a neutral ends on its terminals, by its use or coming from the panel",
                 "no", _USES),
            Fact("is_followed", YES_NO,
                 "whether every position of it, and of the switches it acts together with, was "
                 "tried; more than 4096 are not", "yes",
                 "Test with a meter: too many switches act together to try every position."),
        ),
    ),
)  # fmt: skip
