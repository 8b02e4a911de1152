"""Panels, their breakers, and the circuits that begin at them."""

from __future__ import annotations

from linter.units import AREA, CURRENT, LENGTH, NUMBER, POWER, RESISTANCE, VOLTAGE
from linter.vocabulary.kinds.devices import TRIP_FACTS, TRIP_READINGS
from linter.vocabulary.model import Fact, Kind
from linter.vocabulary.shorthand import COUNT, NOT_STATED, TEXT, YES_NO, a, all_of, quantity, word

CIRCUIT_USES = (
    "general", "lighting", "small appliance", "bathroom", "laundry", "garage", "appliance", "range",
    "dryer", "water heater", "heating", "cooling", "kiln", "workshop", "outdoor", "alarm",
    "temporary", "feeder", "other",
)  # fmt: skip

ARC_FAULT_TYPES = (
    "none", "combination", "branch feeder", "supplementary", "with the outlet device",
)  # fmt: skip

_BREAKER = "Read the rating on the breaker."
_LABEL = "Read the breaker's label."
_SUPPLY = "Ask what supply is to feed the panel."
_BARS = "Look which bus bars its breakers grip."
_USES = "Say what the conductors are used as."
_PANEL = "Look at the panel."
_TIE = "Look for a handle tie or a common handle."

CIRCUIT_KINDS = (
    Kind(
        "panel", "panels", "a panel with its breakers", (
            Fact("room", a("room"), "where it stands", "", "Say in which room the panel stands."),
            Fact("main_rating", quantity(CURRENT), "rating of its main breaker", "100 A",
                 "Read the main breaker."),
            Fact("spaces", COUNT, "number of spaces", "20", "Count the spaces."),
            Fact("spaces_used", COUNT, "number of spaces that breakers take", "14"),
            Fact("breakers", all_of("breaker"), "its breakers", ""),
            Fact("circuits", all_of("circuit"), "the circuits that begin in it", ""),
            Fact("panel_ends", all_of("panel_end"), "ends of the conductors of cables, in it", ""),
            Fact("has_directory", YES_NO, "whether a directory is on its door", "yes",
                 "Look for the circuit directory on the door."),
            Fact("working_width", quantity(LENGTH), "width of the clear space before it", "30 in",
                 "Measure the clear width before the panel."),
            Fact("working_depth", quantity(LENGTH), "depth of the clear space before it", "36 in",
                 "Measure the clear depth before the panel."),
            Fact("working_height", quantity(LENGTH), "height of the clear space before it",
                 "6 ft 8 in", "Measure the clear height before the panel."),
            Fact("space_is_clear", YES_NO, "whether nothing is stored in that space", "yes",
                 _PANEL),
            Fact("has_light", YES_NO,
                 "whether a light is provided there; yes where a luminaire is in its room", "yes",
                 _PANEL),
            Fact("is_reachable", YES_NO, "whether one gets to it at once", "yes", _PANEL),
            Fact("handle_height", quantity(LENGTH),
                 "height of the highest handle of a breaker above the floor", "66 in",
                 "Measure from the floor to the highest handle."),
            Fact("is_sub_panel", YES_NO,
                 "whether it is fed from another panel or disconnect; where the job does not say, "
                 "whether a cable of a circuit of another panel comes in as its feed", "no",
                 "Ask where the first disconnect is."),
            Fact("neutral_is_bonded", YES_NO,
                 "whether its neutral is joined to its bonds and its enclosure", "yes",
                 "Look for the bonding screw or strap."),
            Fact("feeder_conductors", all_of("conductor"),
                 "all conductors of the cables that feed it from another panel", ""),
            Fact("has_feeder", YES_NO, "whether the job has such a cable", "no"),
            Fact("main_is_backfed", YES_NO,
                 "whether its main is a plug-in breaker fed from behind", "no", _PANEL),
            Fact("main_is_held", YES_NO, "whether a fastener holds that breaker", "yes", _PANEL),
            Fact("has_surge_protector", YES_NO,
                 "whether a surge protector is fitted in it or next to it", "yes", _PANEL),
            Fact("torque_recorded", word("yes", "no", NOT_STATED),
                 "if the torque of its terminals was measured and written down", "yes",
                 "Look for the record, or measure."),
            Fact("neutrals_single", word("yes", "no", NOT_STATED),
                 "if each neutral has a hole of its own on the bar", "yes", "Look at the bar."),
            Fact("entries_are_weathertight", YES_NO,
                 "whether hubs and seals keep water out where raceways and cables enter it "
                 "outdoors", "yes", _PANEL),
            Fact("is_in_fire_separation", YES_NO,
                 "whether it stands in the wall that separates a garage from the dwelling; no "
                 "where there is no garage", "no",
                 "Look whether it stands in the wall between garage and dwelling."),
        ),
    ),
    Kind(
        "breaker", "breakers", "a breaker, of one pole or of several with one handle", (
            Fact("panel", a("panel"), "the panel it is in", ""),
            Fact("rating", quantity(CURRENT), "its rating", "20 A",
                 "Read the rating on the handle."),
            Fact("poles", COUNT, "its poles", "1"),
            Fact("leg", word("A", "B", "both"),
                 "the leg, or legs, it is on: as stated, or by its space in a panel of which the "
                 "job says how the legs lie", "A", _BARS),
            Fact("is_ground_fault", YES_NO, "whether it is of the ground-fault kind for people",
                 "yes", _LABEL),
            Fact("is_arc_fault", YES_NO, "whether it is of the arc-fault kind", "yes", _LABEL),
            Fact("arc_fault_type", word(*ARC_FAULT_TYPES),
                 "type of its arc-fault protection; combination, where an arc-fault breaker does "
                 "not say; the last is one listed together with a device at the first outlet",
                 "combination", _LABEL),
            Fact("serves", TEXT, "its line in the circuit directory", "Kitchenette counter",
                 "Write what the breaker serves in the directory."),
            Fact("has_directory_entry", YES_NO, "whether the job states that line", "yes"),
            Fact("is_listed", YES_NO,
                 "whether the label of the panel lists its type for the panel", "yes",
                 "Compare the breaker with the label inside the panel's door."),
            Fact("is_spare", YES_NO, "whether no circuit is on it", "no"),
            Fact("circuits", all_of("circuit"), "the circuits on it; one, as a rule", ""),
            Fact("hot_wires", all_of("conductor"), "conductors of cables that end on its poles",
                 ""),
            Fact("load_current", quantity(CURRENT),
                 "current of all appliances that its poles feed, on the pole that has most", "12 A",
                 "Read the nameplates."),
            Fact("continuous_current", quantity(CURRENT),
                 "the part of it that runs three hours or more", "0 A",
                 "Read the nameplates and ask how long they run."),
        ),
    ),
    Kind(
        "circuit", "circuits",
        "a branch circuit: what one breaker, or breakers that share a neutral, feed", (
            Fact("breakers", all_of("breaker"), "the breakers it begins at", ""),
            Fact("rating", quantity(CURRENT),
                 "the rating of its breaker, the largest if they differ", "20 A", _BREAKER),
            Fact("use", word(*CIRCUIT_USES), "what the job says it is for", "small appliance",
                 "Ask what the circuit is for."),
            Fact("hot_count", COUNT, "number of its hots at the panel: the poles of its breakers",
                 "2"),
            Fact("has_neutral", YES_NO, "whether a conductor of its cables is its neutral", "yes",
                 _USES),
            Fact("is_multiwire", YES_NO, "whether two or more of its hots share its neutral",
                 "yes", _USES),
            Fact("hots_are_on_different_legs", YES_NO, "whether no two of its hots are on one leg",
                 "yes", _BARS),
            Fact("hots_go_off_together", YES_NO,
                 "whether one movement opens all its hots: one handle, or handles tied", "yes",
                 _TIE),
            Fact("voltage", quantity(VOLTAGE),
                 "the highest voltage at its outlets; where it has none, from hot to neutral, or "
                 "between hots that share no neutral", "240 V", _SUPPLY),
            Fact("outlets", all_of("outlet"), "its outlets, receptacles among them", "", _USES),
            Fact("receptacles", all_of("receptacle"), "its receptacles", "", _USES),
            Fact("switches", all_of("switch"), "the switches it reaches", "", _USES),
            Fact("conductors", all_of("conductor"),
                 "the conductors of cables that belong to it; bonds and spares belong to none", "",
                 _USES),
            Fact("cables", all_of("cable"), "the cables of those conductors", "", _USES),
            Fact("boxes", all_of("box"), "the boxes they come into", "", _USES),
            Fact("rooms", all_of("room"), "rooms with outlets or switches of it, each once", "",
                 _USES),
            Fact("outlet_rooms", all_of("room"), "rooms with outlets of it, each once", "", _USES),
            Fact("appliances", all_of("appliance"), "the appliances it feeds", "", _USES),
            Fact("outlet_count", COUNT, "number of its outlets", "6", _USES),
            Fact("receptacle_count", COUNT,
                 "number of places to plug in: a duplex receptacle has two", "8",
                 "Look at the face of the receptacle."),
            Fact("is_ground_fault_at_panel", YES_NO,
                 "whether all its breakers are of the ground-fault kind", "no", _LABEL),
            Fact("is_arc_fault_at_panel", YES_NO,
                 "whether all its breakers are of the arc-fault kind", "yes", _LABEL),
            Fact("first_outlet_is_arc_fault", YES_NO,
                 "whether each outlet that is as near to the panel as any, by number of cables, is "
                 "an arc-fault device", "no", "Read the label of the first outlet's device."),
            Fact("first_outlet_is_marked", YES_NO, "whether the boxes of those outlets are marked "
                 "as first outlet", "yes", "Look for the mark on the box of the first outlet."),
            Fact("first_outlet_is_next_to_panel", YES_NO,
                 "whether each of its cables from the panel ends in the box of such an outlet",
                 "yes", _USES),
            Fact("home_run_length", quantity(LENGTH),
                 "length of its longest cable from the panel; 0 where it has none", "40 ft",
                 "Measure the cable from the panel to its first box."),
            Fact("home_run_size", quantity(AREA),
                 "size of the smallest of its cables from the panel", "12 AWG",
                 "Read the sheath."),
            Fact("home_run_is_armoured", YES_NO,
                 "whether the sheath of each of its cables from the panel is of metal", "no",
                 "Read the sheath."),
            Fact("is_existing", YES_NO,
                 "whether it stood before this job; no where the job does not say so", "no",
                 "Ask whether the circuit stood before this job."),
            Fact("added_length", quantity(LENGTH),
                 "length of cable that the job adds to an existing circuit, outside boxes", "4 ft",
                 "Measure the cable that is added, outside boxes and cabinets."),
            Fact("adds_outlets", YES_NO,
                 "whether the job adds outlets or devices to an existing circuit", "no",
                 "Ask whether outlets or devices are added."),
            Fact("first_receptacle_is_arc_fault", YES_NO,
                 "whether each receptacle that is as near to the panel as any of its receptacles "
                 "is an arc-fault device", "no", "Read the label of the first receptacle."),
            Fact("trip_reading", word(*TRIP_READINGS),
                 "what its test of ground-fault trip at the breaker showed; of several readings "
                 "the last", "tripped", "Press the test button of the breaker."),
            *TRIP_FACTS,
            Fact("insulation_readings", COUNT,
                 "how many pairs of its conductors were tested for insulation", "3"),
            Fact("insulation_resistance", quantity(RESISTANCE),
                 "lowest resistance of its insulation, of each pair as read last; 0 ohm where none "
                 "was read", "200 megohm",
                 "Measure it again, the circuit being dead and nothing plugged in."),
            Fact("fixed_load", quantity(POWER), "load of the fixed appliances on it, summed",
                 "1200 W", "Read the nameplates."),
            Fact("continuous_load", quantity(POWER),
                 "load of its appliances that run three hours or more, summed", "7200 W",
                 "Read the nameplates and ask how long they run."),
            Fact("is_in_parallel", YES_NO,
                 "whether its hots or its neutral come to a place by two ways from the panel",
                 "no", _USES),
            Fact("parallel_path", TEXT, "the way round by those two ways; empty where there is one",
                 "black of k1, a joint in bench, black of k2"),
            Fact("largest_neutral_current", quantity(CURRENT),
                 "the most that its breakers let flow in its neutral on any supply that the job "
                 "declares: hots of one leg add, and a supply of one leg feeds both from it; 0 A "
                 "without a neutral", "20 A", "Ask of what kind each supply is."),
            Fact("worst_supply", TEXT, "the supply on which that is so", "service",
                 "Ask of what kind each supply is."),
            Fact("lengths_are_stated", YES_NO, "whether the length of each of its cables is stated",
                 "yes", _USES),
            Fact("voltage_drop", quantity(NUMBER),
                 "the largest share of its voltage that an outlet of it loses with all stated "
                 "loads on; reckoned from above, as if all current went through all cables, where "
                 "that stays below 0.01", "0.02",
                 "Measure the lengths of the cables and read the nameplates."),
            Fact("voltage_drop_at", TEXT, "the outlet that loses most; empty where none loses any",
                 "kiln-box"),
            Fact("neutral_is_its_own", YES_NO,
                 "whether its neutral is joined to no other circuit's neutral after the panel",
                 "yes", _USES),
        ),
    ),
)  # fmt: skip
