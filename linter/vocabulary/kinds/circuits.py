"""Breakers of the panel and the circuits they begin."""

from __future__ import annotations

from linter.units import CURRENT, LENGTH, POWER, VOLTAGE
from linter.vocabulary.model import Fact, Kind
from linter.vocabulary.shorthand import COUNT, TEXT, YES_NO, a, all_of, quantity, word

CIRCUIT_USES = (
    "general", "lighting", "small appliance", "bathroom", "laundry", "garage", "appliance", "range",
    "dryer", "water heater", "heating", "cooling", "kiln", "workshop", "outdoor", "alarm", "feeder", "other",
)  # fmt: skip

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
            Fact("has_directory", YES_NO, "whether a directory is on its door", "yes",
                 "Look for the circuit directory on the door."),
            Fact("working_width", quantity(LENGTH), "width of the clear space before it", "30 in",
                 "Measure the clear width before the panel."),
            Fact("working_depth", quantity(LENGTH), "depth of the clear space before it", "36 in",
                 "Measure the clear depth before the panel."),
        ),
    ),
    Kind(
        "breaker", "breakers", "a breaker, of one pole or of several with one handle", (
            Fact("panel", a("panel"), "the panel it is in", ""),
            Fact("rating", quantity(CURRENT), "its rating", "20 A", "Read the rating on the handle."),
            Fact("poles", COUNT, "its poles", "1"),
            Fact("leg", word("A", "B", "both"), "the leg, or legs, it is on", "A",
                 "Look which bus bar the breaker grips."),
            Fact("is_ground_fault", YES_NO, "whether it is of the ground-fault kind for people", "yes",
                 "Read the breaker's label."),
            Fact("is_arc_fault", YES_NO, "whether it is of the arc-fault kind", "yes",
                 "Read the breaker's label."),
            Fact("serves", TEXT, "its line in the circuit directory", "Kitchenette counter",
                 "Write what the breaker serves in the directory."),
            Fact("has_directory_entry", YES_NO, "whether the directory says what it serves", "yes"),
            Fact("is_spare", YES_NO, "whether no circuit is on it", "no"),
            Fact("circuits", all_of("circuit"), "the circuits on it; one, as a rule", ""),
            Fact("hot_wires", all_of("conductor"), "hot conductors that begin at it", ""),
        ),
    ),
    Kind(
        "circuit", "circuits", "a branch circuit: what one breaker, or breakers that share a neutral, feed", (
            Fact("breakers", all_of("breaker"), "the breakers it begins at", ""),
            Fact("rating", quantity(CURRENT), "the rating of its breaker, the largest if they differ", "20 A",
                 "Read the rating on the breaker."),
            Fact("use", word(*CIRCUIT_USES), "what the job says it is for", "small appliance",
                 "Ask what the circuit is for."),
            Fact("hot_count", COUNT, "number of its hot conductors at the panel", "2"),
            Fact("has_neutral", YES_NO, "whether it has a neutral", "yes"),
            Fact("is_multiwire", YES_NO,
                 "whether two or more hots of different breaker poles share its neutral", "yes"),
            Fact("hots_are_on_different_legs", YES_NO, "whether no two of its hots are on one leg", "yes",
                 "Look which bus bars its breakers grip."),
            Fact("hots_go_off_together", YES_NO,
                 "whether one movement opens all its hots: one handle, or handles tied", "yes",
                 "Look for a handle tie or a common handle."),
            Fact("voltage", quantity(VOLTAGE), "voltage at its outlets, the highest", "240 V",
                 "Ask what supply is to feed the panel."),
            Fact("outlets", all_of("outlet"), "its outlets", ""),
            Fact("receptacles", all_of("receptacle"), "its receptacles", ""),
            Fact("conductors", all_of("conductor"), "the conductors of its cables that can be hot or neutral",
                 ""),
            Fact("cables", all_of("cable"), "its cables", ""),
            Fact("boxes", all_of("box"), "the boxes it runs through", ""),
            Fact("appliances", all_of("appliance"), "the appliances it feeds", ""),
            Fact("outlet_count", COUNT, "number of its outlets", "6"),
            Fact("receptacle_count", COUNT,
                 "number of places to plug in: a duplex receptacle has two", "8"),
            Fact("is_ground_fault_at_panel", YES_NO, "whether its breaker is of the ground-fault kind", "no",
                 "Read the breaker's label."),
            Fact("is_arc_fault_at_panel", YES_NO, "whether its breaker is of the arc-fault kind", "yes",
                 "Read the breaker's label."),
            Fact("fixed_load", quantity(POWER), "load of the fixed appliances on it", "1200 W",
                 "Read the nameplates."),
            Fact("continuous_load", quantity(POWER), "load of those that run three hours or more", "7200 W",
                 "Read the nameplates and ask how long they run."),
            Fact("neutral_is_its_own", YES_NO,
                 "whether its neutral is joined to no other circuit's neutral", "yes"),
        ),
    ),
)  # fmt: skip
