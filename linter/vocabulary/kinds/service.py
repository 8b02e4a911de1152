"""Floors of the dwelling; the service, its electrodes, and the piping that is bonded to it."""

from __future__ import annotations

from linter.units import AREA, CURRENT, LENGTH, RESISTANCE, TEMPERATURE
from linter.vocabulary.model import Fact, Kind
from linter.vocabulary.shorthand import COUNT, YES_NO, a, all_of, quantity, word

METALS = ("copper", "aluminium", "copper-clad aluminium")
LEVELS = ("basement", "ground", "upper")
PLACES = ("outdoors", "indoors nearest the entry", "indoors farther in")
SURGE_PROTECTORS = ("none", "type 1", "type 2", "type 3")
ELECTRODES = (
    "rod", "pipe", "plate", "concrete-encased", "ring", "water pipe", "building steel", "other",
)  # fmt: skip

_WIRE, _METAL = quantity(AREA), word(*METALS)
_PRINT = "Read the marking on the conductor."
_LOOK = "Look at the service equipment."
_DIG = "Look at the electrodes before they are buried."
_PIPES = "Look at the piping and its clamps."
_TAPE = "Measure it, from well away of the conductors."

SERVICE_KINDS = (
    Kind(
        "floor", "floors", "a floor of the dwelling", (
            Fact("level", word(*LEVELS), "which floor it is", "ground", "Ask which floor it is."),
            Fact("area", quantity(AREA), "its area by the outside dimensions of the building",
                 "750 ft2", "Measure the outside of the building."),
            Fact("inside_area", quantity(AREA), "its area by inside dimensions", "66 m2",
                 "Measure the rooms of the floor."),
            Fact("is_left_out", YES_NO,
                 "whether it is an open porch, or unfinished and can never be lived in", "no",
                 "Ask whether it can ever be lived in."),
        ),
    ),
    Kind(
        "service", "services", "the service, where the job has to do with it", (
            Fact("conductor_size", _WIRE, "size of its hot conductors", "4 AWG", _PRINT),
            Fact("conductor_material", _METAL, "metal of its conductors", "copper", _PRINT),
            Fact("neutral_size", _WIRE, "size of its neutral", "4 AWG", _PRINT),
            Fact("terminal_temperature", quantity(TEMPERATURE),
                 "temperature rating of its conductors and terminals, the lower of the two", "75 C",
                 "Read the marking at the terminals and on the conductors."),
            Fact("disconnect_count", COUNT, "how many disconnects shut it off", "1", _LOOK),
            Fact("disconnects_are_grouped", YES_NO, "whether they stand together", "yes", _LOOK),
            Fact("disconnects_are_apart", YES_NO,
                 "whether each of several is in an enclosure of its own, or behind a barrier",
                 "yes", _LOOK),
            Fact("disconnect_place", word(*PLACES), "where they are", "outdoors", _LOOK),
            Fact("disconnect_room", a("room"), "the room they are in", "",
                 "Say in which room the disconnect is."),
            Fact("disconnect_is_reachable", YES_NO, "whether one gets to them at once", "yes",
                 _LOOK),
            Fact("inside_length", quantity(LENGTH),
                 "length of conductors without overcurrent protection inside the building", "2 ft",
                 _TAPE),
            Fact("has_emergency_disconnect", YES_NO,
                 "whether a disconnect outdoors that can be reached at once shuts off all of it",
                 "yes", _LOOK),
            Fact("emergency_disconnect_is_marked", YES_NO,
                 "whether that is marked as the emergency disconnect", "yes", _LOOK),
            Fact("surge_protector", word(*SURGE_PROTECTORS),
                 "the surge protector in or next to its equipment", "type 2",
                 "Read the marking on the surge protector."),
            Fact("surge_current", quantity(CURRENT),
                 "nominal discharge current marked on the surge protector", "10 kA",
                 "Read the marking on the surge protector."),
            Fact("has_main_bonding_jumper", YES_NO,
                 "whether its neutral is joined to the enclosure and the bonds there", "yes",
                 _LOOK),
            Fact("electrode_conductor_size", _WIRE,
                 "size of the conductor to the electrodes, where it carries for the whole system",
                 "6 AWG", _PRINT),
            Fact("electrode_conductor_material", _METAL, "its metal", "copper", _PRINT),
            Fact("electrode_conductor_is_unbroken", YES_NO,
                 "whether it runs without a splice, or with splices that cannot be undone", "yes",
                 _LOOK),
            Fact("electrode_conductor_is_in_metal", YES_NO,
                 "whether it runs in a metal raceway", "no", _LOOK),
            Fact("raceway_is_bonded_at_both_ends", YES_NO,
                 "whether that raceway is bonded to it at both ends", "yes", _LOOK),
            Fact("has_ringed_knockouts", YES_NO,
                 "whether a metal raceway of its conductors enters by a knockout with rings left "
                 "in place, or by a reducing washer", "no", _LOOK),
            Fact("has_bonding_bushings", YES_NO,
                 "whether bushings with bonding jumpers bridge those", "yes", _LOOK),
            Fact("bonding_terminals", COUNT,
                 "terminals for bonds of telephone, aerial and the like, outside the equipment",
                 "3", _LOOK),
            Fact("has_footing_steel", YES_NO,
                 "whether a footing holds steel or bare copper that can serve as an electrode and "
                 "can be reached", "no", "Look at the footing before it is poured."),
            Fact("service_count", COUNT, "how many services the building has", "1",
                 "Ask how many services the building has."),
            Fact("drop_over_ground", quantity(LENGTH),
                 "least height of an overhead drop above ground one walks on", "12 ft", _TAPE),
            Fact("has_overhead_drop", YES_NO,
                 "whether the job states a height of an overhead drop", "no"),
            Fact("drop_over_drive", quantity(LENGTH), "least height of the drop above a drive",
                 "12 ft", _TAPE),
            Fact("crosses_a_drive", YES_NO, "whether the job states that height", "no"),
            Fact("drop_over_roof", quantity(LENGTH),
                 "least height of the drop above a roof it crosses", "3 ft", _TAPE),
            Fact("crosses_a_roof", YES_NO, "whether the job states that height", "no"),
            Fact("attachment_height", quantity(LENGTH),
                 "height of the point of attachment above ground", "12 ft", _TAPE),
            Fact("electrodes", all_of("electrode"), "its electrodes", ""),
            Fact("pipes", all_of("pipe"), "the piping of the building that the job states", ""),
            Fact("panels", all_of("panel"), "the panels it feeds, and those fed from them", ""),
            Fact("dwellings", all_of("dwelling"), "the dwelling", ""),
        ),
    ),
    Kind(
        "electrode", "electrodes", "an electrode of the grounding electrode system", (
            Fact("type", word(*ELECTRODES), "what it is", "rod", _DIG),
            Fact("length", quantity(LENGTH),
                 "its length; of steel or copper in a footing, the length in concrete", "8 ft",
                 _DIG),
            Fact("in_earth", quantity(LENGTH), "length of it in contact with earth", "8 ft", _DIG),
            Fact("is_flush", YES_NO, "whether its upper end is flush with the ground or below",
                 "yes", _DIG),
            Fact("distance_to_next", quantity(LENGTH), "distance to the nearest other electrode",
                 "6 ft", _DIG),
            Fact("is_joined", YES_NO, "whether it is joined to the other electrodes", "yes", _DIG),
            Fact("conductor_size", _WIRE, "size of the conductor or jumper that joins it", "6 AWG",
                 _PRINT),
            Fact("conductor_material", _METAL, "metal of that conductor", "copper", _PRINT),
            Fact("clamp_is_listed", YES_NO,
                 "whether its clamp is listed for the electrode, and for earth or concrete where "
                 "it lies in that", "yes", "Read the marking on the clamp."),
            Fact("resistance", quantity(RESISTANCE), "its resistance to earth", "18 ohm",
                 "Measure the resistance to earth of one rod by itself."),
            Fact("distance_inside", quantity(LENGTH),
                 "of a water pipe, how far inside the building it is connected", "3 ft", _PIPES),
            Fact("others", all_of("electrode"), "all other electrodes", ""),
        ),
    ),
    Kind(
        "pipe", "pipes", "a system of piping that may have to be bonded", (
            Fact("carries", word("water", "gas", "other"), "what it carries", "water", _PIPES),
            Fact("material", word("metal", "corrugated tubing", "plastic"),
                 "what it is made of, for the most part", "metal", _PIPES),
            Fact("is_bonded", YES_NO, "whether it is bonded", "yes", _PIPES),
            Fact("bond_size", _WIRE, "size of the conductor that bonds it", "4 AWG", _PRINT),
            Fact("bond_material", _METAL, "metal of that conductor", "copper", _PRINT),
            Fact("bond_can_be_reached", YES_NO, "whether the clamp of the bond can be reached",
                 "yes", _PIPES),
            Fact("is_bridged", YES_NO,
                 "whether a jumper bridges the meter, filters and couplings that insulate", "yes",
                 _PIPES),
            Fact("metal_in_earth", quantity(LENGTH), "length of metal pipe in contact with earth",
                 "0 ft", "Ask how far the metal pipe runs in the ground."),
            Fact("electrodes", all_of("electrode"), "the electrodes that the job states", ""),
            Fact("services", all_of("service"), "the service of the job, if it has one", ""),
        ),
    ),
)  # fmt: skip
