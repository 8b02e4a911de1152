"""What a box holds: devices on yokes, and outlets where current is taken."""

from __future__ import annotations

from linter.units import AREA, CURRENT, LENGTH, VOLTAGE
from linter.vocabulary.model import Fact, Kind
from linter.vocabulary.shorthand import COUNT, TEXT, YES_NO, a, all_of, quantity, word

DEVICE_TYPES = ("receptacle", "switch", "luminaire", "fan", "alarm", "appliance outlet", "other")

RECEPTACLE_SERVES = (
    "general use", "counter", "island", "refrigerator", "range", "cooktop", "oven", "microwave",
    "dishwasher", "disposer", "hood", "basin", "laundry", "dryer", "workbench", "outdoor",
    "heating service", "sump", "freezer", "alarm", "kiln", "furnace", "car", "garage door", "other",
)  # fmt: skip

SWITCH_TYPES = ("single pole", "double pole", "three-way", "four-way", "dimmer", "three-way dimmer", "timer")

_OUTLET_FACTS = (
    Fact("room", a("room"), "the room it is in", ""),
    Fact("box", a("box"), "the box it is in", ""),
    Fact("circuits", all_of("circuit"), "circuits that reach its hot terminals; one, as a rule", ""),
    Fact("is_on_a_circuit", YES_NO, "whether a breaker reaches it through joints and devices", "yes"),
    Fact("serves", word(*RECEPTACLE_SERVES), "what it is there for", "counter",
         "Ask what is to be used at it."),
    Fact("has_ground_fault_protection", YES_NO,
         "whether a ground-fault device for people stands before it or in it", "yes",
         "Read the label of the device or breaker."),
    Fact("has_arc_fault_protection", YES_NO, "whether an arc-fault device covers its whole circuit", "yes",
         "Read the label of the breaker."),
    Fact("voltage", quantity(VOLTAGE), "voltage between its conductors, the highest", "120 V",
         "Ask what supply is to feed the panel."),
    Fact("distance_to_sink", quantity(LENGTH),
         "shortest path of a cord to the edge of a sink in the same room", "4 ft",
         "Measure from the outlet to the rim of the sink."),
    Fact("distance_to_tub", quantity(LENGTH), "distance to the edge of a bathtub or shower stall", "5 ft",
         "Measure from the outlet to the tub or shower."),
    Fact("room_has_sink", YES_NO, "whether its room has a sink", "yes"),
    Fact("room_has_tub", YES_NO, "whether its room has a bathtub or shower", "no"),
    Fact("height", quantity(LENGTH), "height above the floor", "16 in", "Measure from the floor."),
)  # fmt: skip

DEVICE_KINDS = (
    Kind(
        "device", "devices", "anything that a box holds and that conductors end on", (
            Fact("box", a("box"), "the box it is in", ""),
            Fact("type", word(*DEVICE_TYPES), "what it is", "switch"),
            Fact("is_on_yoke", YES_NO, "whether it is mounted on a yoke in the box", "yes"),
            Fact("gangs", COUNT, "gangs that its width needs", "1"),
            Fact("largest_wire", quantity(AREA), "largest conductor on its terminals", "12 AWG",
                 "Read the sizes on the sheaths."),
            Fact("fixture_wires", COUNT, "conductors that come into the box from a luminaire's canopy", "3",
                 "Count the luminaire's own wires."),
            Fact("fixture_wire_size", quantity(AREA), "size of those conductors", "16 AWG",
                 "Read the size on the luminaire's wires."),
            Fact("canopy_is_domed", YES_NO, "whether the canopy over them is domed", "yes",
                 "Look at the canopy."),
            Fact("is_bonded", YES_NO, "whether its bond terminal is joined to the bonds in the box", "yes",
                 "Look for the pigtail on the bond screw."),
            Fact("has_bond_terminal", YES_NO, "whether it has a bond terminal", "yes"),
            Fact("circuits", all_of("circuit"), "circuits that reach its hot terminals", ""),
            Fact("hots_go_off_together", YES_NO,
                 "whether one movement opens all breakers that reach its hot terminals", "yes",
                 "Look for a handle tie or a common handle."),
            Fact("breaker_count", COUNT, "breaker poles that reach its hot terminals", "1"),
            Fact("multiwire_neutral_depends_on_it", YES_NO,
                 "whether a neutral that two hots share goes on only through its terminals", "no"),
            Fact("bond_depends_on_it", YES_NO, "whether a bond goes on only through its terminals", "no"),
        ),
    ),
    Kind(
        "outlet", "outlets",
        "a point where current is taken: a receptacle, a luminaire, an alarm, a wired appliance",
        (Fact("type", word(*DEVICE_TYPES), "what it is", "receptacle"), *_OUTLET_FACTS),
    ),
    Kind(
        "receptacle", "receptacles", "a receptacle outlet", (
            *_OUTLET_FACTS,
            Fact("rating", quantity(CURRENT), "its rating", "15 A", "Read the face of the receptacle."),
            Fact("places", COUNT, "places to plug in: 1 single, 2 duplex", "2"),
            Fact("is_only_one_on_circuit", YES_NO,
                 "whether its circuit has no other outlet and it has one place to plug in", "no"),
            Fact("is_only_outlet", YES_NO, "whether its circuit has no other outlet", "no"),
            Fact("is_tamper_resistant", YES_NO, "whether it is of the tamper-resistant kind", "yes",
                 "Look for the mark on the face."),
            Fact("is_weather_resistant", YES_NO, "whether it is of the weather-resistant kind", "yes",
                 "Look for the mark on the face."),
            Fact("cover_closes_in_use", YES_NO,
                 "whether its cover keeps weather out while a plug is in", "yes", "Look at the cover."),
            Fact("is_in_appliance_space", YES_NO,
                 "whether it is in the space of one appliance that is not easily moved", "no"),
            Fact("is_split", YES_NO, "whether its hot tab is broken", "no"),
            Fact("circuit_rating", quantity(CURRENT), "rating of its circuit", "20 A",
                 "Read the rating on the breaker."),
        ),
    ),
    Kind(
        "switch", "switches", "a switch or dimmer that controls an outlet", (
            Fact("box", a("box"), "the box it is in", ""),
            Fact("room", a("room"), "the room it is in", ""),
            Fact("type", word(*SWITCH_TYPES), "what it is", "three-way"),
            Fact("controls", TEXT, "what it controls", "loft-light"),
            Fact("controls_lighting", YES_NO, "whether it controls a luminaire", "yes"),
            Fact("controls_receptacle", YES_NO, "whether it controls a receptacle", "no"),
            Fact("circuits", all_of("circuit"), "circuits that reach it", ""),
            Fact("has_neutral_in_box", YES_NO, "whether a neutral of its circuit stands in its box", "yes"),
            Fact("neutral_can_be_added", YES_NO,
                 "whether a neutral can be added later without opening finishes", "no",
                 "Look whether the box is fed by a raceway or stays open to view."),
            Fact("other_location_has_neutral", YES_NO,
                 "whether another switch of the same lights has the neutral and all are seen from it", "no",
                 "Look whether the whole lit floor is seen from the other switch."),
            Fact("distance_to_tub", quantity(LENGTH), "distance to the edge of a bathtub or shower stall",
                 "5 ft", "Measure from the switch to the tub or shower."),
            Fact("is_in_tub_space", YES_NO, "whether it stands within a bathtub or shower space", "no",
                 "Look where the tub or shower ends."),
            Fact("rating", quantity(CURRENT), "its rating", "15 A", "Read the rating on the yoke."),
            Fact("switches_neutral", YES_NO, "whether it opens a neutral", "no"),
        ),
    ),
)  # fmt: skip
