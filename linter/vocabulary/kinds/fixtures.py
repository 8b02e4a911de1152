"""Luminaires, fans and alarms: outlets with facts of their own."""

from __future__ import annotations

from linter.units import FORCE, LENGTH
from linter.vocabulary.model import Fact, Kind
from linter.vocabulary.shorthand import YES_NO, a, all_of, quantity, word

MOUNTINGS = ("surface", "recessed", "hanging", "track", "paddle fan")
LAMPS = ("incandescent", "LED", "fluorescent")
PLACES_MARKED = ("dry places", "damp places", "wet places")

_USES = "Say what the conductors in its box are used as."
_LABEL = "Read the label of the luminaire."
_TUB = "Measure from the luminaire to the tub or shower."

_OF_FIXTURES = (
    Fact("outlet", a("outlet"), "it as an outlet", ""),
    Fact("room", a("room"), "the room it is in", ""),
    Fact("box", a("box"), "the box it is in", ""),
    Fact("circuits", all_of("circuit"), "circuits that reach its hot terminals; one, as a rule",
         "", _USES),
    Fact("switches", all_of("switch"), "switches that are said to control it", ""),
    Fact("is_in_place", YES_NO, "whether it is mounted", "yes", "Look whether it is mounted."),
)  # fmt: skip

FIXTURE_KINDS = (
    Kind(
        "luminaire", "luminaires", "a luminaire or fan; it is an outlet too, with these facts", (
            *_OF_FIXTURES,
            Fact("is_fan", YES_NO, "whether it is a fan", "no"),
            Fact("mounting", word(*MOUNTINGS), "how it is mounted", "surface",
                 "Look how it is to be mounted."),
            Fact("lamp", word(*LAMPS), "the kind of its lamp", "LED", _LABEL),
            Fact("is_enclosed", YES_NO, "whether its lamp is completely enclosed", "yes", _LABEL),
            Fact("is_for_storage_space", YES_NO,
                 "whether it is identified for use within the storage space of a closet", "no",
                 _LABEL),
            Fact("clear_of_storage", quantity(LENGTH),
                 "least distance to the storage space of a closet", "12 in",
                 "Measure from the luminaire to the shelf, rod and hanging space."),
            Fact("is_for_insulation", YES_NO,
                 "whether it is of the recessed kind that insulation may touch", "yes", _LABEL),
            Fact("is_thermally_protected", YES_NO,
                 "whether it is marked as thermally protected", "yes", _LABEL),
            Fact("is_in_insulation", YES_NO, "whether insulation covers it, or comes to it", "no",
                 "Look where the insulation is to lie."),
            Fact("clear_of_combustible", quantity(LENGTH),
                 "least distance to anything that burns, but for its supports", "1/2 in",
                 "Measure from its housing to the nearest wood."),
            Fact("clear_of_insulation", quantity(LENGTH),
                 "least distance from it, its box or driver to insulation", "3 in",
                 "Measure from its housing to the insulation."),
            Fact("weight", quantity(FORCE), "its weight", "12 lb", _LABEL),
            Fact("is_held_by_building", YES_NO, "whether it hangs from the building, not its box",
                 "no", "Look what it hangs from."),
            Fact("marked_for", word(*PLACES_MARKED), "the places it is marked for", "damp places",
                 _LABEL),
            Fact("asks_ground_fault", YES_NO,
                 "whether its instructions ask for ground-fault protection over a tub or shower",
                 "no", "Read its instructions."),
            Fact("has_disconnect", YES_NO,
                 "whether, having double-ended lamps and a ballast, it has its disconnect", "yes",
                 "Look for the connector in its supply wires."),
            Fact("has_ground_fault_protection", YES_NO,
                 "whether a ground-fault device for people stands before it on every way", "yes",
                 "Read the label of the device or breaker."),
            Fact("room_has_tub", YES_NO, "whether its room has a bathtub or shower", "no",
                 "Ask whether there is to be a bathtub or shower."),
            Fact("distance_to_tub", quantity(LENGTH),
                 "horizontal distance to the edge of a bathtub or shower stall; 0 over it", "5 ft",
                 _TUB),
            Fact("height_over_tub", quantity(LENGTH),
                 "height above the rim of a bathtub or the threshold of a shower", "7 ft", _TUB),
        ),
    ),
    Kind(
        "alarm", "alarms", "an alarm; it is an outlet too, with these facts", (
            *_OF_FIXTURES,
            Fact("senses_smoke", YES_NO, "whether it senses smoke", "yes", "Read its label."),
            Fact("senses_carbon_monoxide", YES_NO, "whether it senses carbon monoxide", "no",
                 "Read its label."),
            Fact("has_battery", YES_NO, "whether it has a battery besides", "yes",
                 "Look for its battery."),
            Fact("is_interconnected", YES_NO,
                 "whether all alarms of the dwelling sound together: as stated, or by the signal "
                 "conductors between them; yes of a single one", "yes", _USES),
        ),
    ),
)  # fmt: skip
