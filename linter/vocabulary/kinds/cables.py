"""Cables between boxes, their ends, and how they are held and protected on the way."""

from __future__ import annotations

from linter.units import AREA, CURRENT, LENGTH, TEMPERATURE
from linter.vocabulary.kinds.lays import LAY_FACTS
from linter.vocabulary.model import Fact, Kind
from linter.vocabulary.shorthand import COUNT, TEXT, YES_NO, a, all_of, quantity, word

METALS = ("copper", "aluminium", "copper-clad aluminium")
ROLES = ("hot", "neutral", "bond", "switched hot", "traveller", "spare", "signal")

_SHEATH = "Read the sheath."
_BREAKER = "Read the rating on the breaker."
_TOGETHER = "Count the cables that run together, without gaps, and how far."
_FACES = "Look at the faces of the receptacles."
_USES = "Say what the conductor is used as."
_INSULATION = "Read the sheath for the temperature rating."
_TERMINALS = "Read the marking at the terminals."
_AMBIENT = "Estimate the highest temperature along the cable."

CABLE_KINDS = (
    Kind(
        "cable", "cables", "a cable, from one box or panel to another", (
            Fact("type", TEXT, "its type, as printed on the sheath", "NM-B", _SHEATH),
            Fact("size", quantity(AREA), "size of its insulated conductors", "12 AWG", _SHEATH),
            Fact("bond_size", quantity(AREA),
                 "size of its bond: as stated, or as such cables are made",
                 "12 AWG", "Look at the bare conductor."),
            Fact("has_bond", YES_NO,
                 "whether it has a conductor made to be a bond, or armour that is one", "yes",
                 _SHEATH),
            Fact("insulated_conductors", COUNT, "number of its insulated conductors", "2",
                 _SHEATH),
            Fact("material", word(*METALS), "metal of its conductors", "copper", _SHEATH),
            Fact("material_is_stated", YES_NO,
                 "whether the job speaks of that metal, be it as unknown", "no"),
            Fact("insulation_temperature", quantity(TEMPERATURE),
                 "temperature rating of the insulation of its conductors", "90 C", _INSULATION),
            Fact("insulation_temperature_is_stated", YES_NO,
                 "whether the job speaks of that rating, be it as unknown", "no"),
            Fact("terminal_temperature", quantity(TEMPERATURE),
                 "lowest temperature rating of what its conductors end on, if marked", "60 C",
                 _TERMINALS),
            Fact("terminal_temperature_is_marked", YES_NO,
                 "whether there is such a marking; no where the job states none", "no",
                 _TERMINALS),
            Fact("conductors", all_of("conductor"), "its conductors", "", _SHEATH),
            Fact("ends", all_of("cable_end"), "its ends in boxes: two, or one of a home run", ""),
            Fact("circuits", all_of("circuit"), "circuits whose conductors it holds", "", _USES),
            Fact("feeds_whole_dwelling", YES_NO,
                 "whether it is the feeder of a panel, from a panel that has no other circuit",
                 "no"),
            Fact("is_on_a_breaker", YES_NO, "whether a breaker reaches any of its conductors",
                 "yes", _USES),
            Fact("breaker_rating", quantity(CURRENT),
                 "rating of the breaker it is on; largest, if several; 0 A where none reaches it",
                 "20 A", _BREAKER),
            Fact("feeds_receptacles", YES_NO,
                 "whether a circuit of it has more than one place to plug in", "yes", _FACES),
            Fact("length", quantity(LENGTH), "its length", "24 ft", "Measure or reckon the cable."),
            Fact("support_spacing", quantity(LENGTH), "longest distance between its supports",
                 "4 ft", "Measure the longest distance between staples or other supports."),
            Fact("is_fished", YES_NO, "whether it is fished through a finished hollow", "no",
                 "Say whether the cable was fished."),
            Fact("bend_radius", quantity(LENGTH), "radius of its tightest bend, at the inner edge",
                 "2 in", "Measure the tightest bend."),
            Fact("width", quantity(LENGTH), "its largest outside dimension", "0.41 in",
                 "Measure the width of the sheath."),
            Fact("runs_along_framing", YES_NO,
                 "whether it is fastened along a stud, joist or rafter", "yes",
                 "Look how the cable runs."),
            Fact("distance_to_face", quantity(LENGTH),
                 "least distance to the face of the framing it runs along", "1-1/4 in",
                 "Measure from the cable to the face of the stud or joist."),
            Fact("is_plated_along_framing", YES_NO,
                 "whether steel plate or sleeve covers it where it runs too near the face", "no",
                 "Look for plates."),
            Fact("bored_holes", all_of("bored_hole"), "bored holes and notches it runs through, as "
                 "far as the job states them", ""),
            Fact("bored_holes_are_stated", YES_NO,
                 "whether the job states its bored holes, or that it has none", "yes",
                 "Follow the cable and measure at each bored hole."),
            Fact("is_outdoors", YES_NO,
                 "whether any part of it lies outdoors, buried, or in a damp or wet room; a usual "
                 "value says nothing of a cable that ends in such a place", "no",
                 "Say whether any of it lies outdoors, buried, or in the damp or wet room."),
            Fact("ambient", quantity(TEMPERATURE),
                 "highest temperature around it; where none is stated, that of the warmest room it "
                 "ends in", "30 C", _AMBIENT),
            Fact("bundled_conductors", COUNT,
                 "current-carrying conductors side by side in its worst stretch, its own too: as "
                 "stated; where it runs alone, its own insulated ones that are not spare or bond",
                 "6", _TOGETHER),
            Fact("bundled_switched_neutrals", COUNT,
                 "neutrals among them that return a hot and a switched hot of one leg in a cable; "
                 "none where the job does not say so", "1", _TOGETHER),
            Fact("bundle_length", quantity(LENGTH),
                 "length of that stretch; 0 where it runs alone", "18 in",
                 "Measure how far the cables run together."),
            Fact("bundle_is_in_sealed_hole", YES_NO,
                 "whether the cables share a hole that is filled or run in contact with "
                 "insulation; no where it runs alone", "no",
                 "Look whether the shared hole is to be foamed or caulked."),
            Fact("bundled_cables", COUNT, "cables in that stretch; 1 where it runs alone", "3",
                 "Count the cables that run together."),
            Fact("cables_under_staple", COUNT, "most cables under one staple", "1",
                 "Look for the staple that holds most cables."),
            Fact("staple_most_cables", COUNT,
                 "most cables that one staple may hold, as its package lists for this size; of "
                 "several staples, the fewest", "2", "Read the package of the staple."),
            Fact("has_splice_outside_box", YES_NO, "whether it is joined anywhere outside a box",
                 "no", "Follow the cable and look for joints outside boxes."),
            *LAY_FACTS,
            Fact("is_home_run", YES_NO, "whether one of its ends is in a panel", "yes"),
            Fact("leads_nowhere", YES_NO,
                 "whether at one of its ends in boxes all its conductors but bonds and spares are "
                 "capped, since nothing is there to join them to; what the job states as capped "
                 "does not count", "no", _USES),
        ),
    ),
    Kind(
        "cable_end", "cable ends", "a cable where it enters a box; ends in panels are not among "
        "them", (
            Fact("cable", a("cable"), "the cable", ""),
            Fact("box", a("box"), "the box", ""),
            Fact("free_length", quantity(LENGTH),
                 "from where its conductors leave the sheath in the box to their ends, the "
                 "shortest", "8 in", "Measure the conductors from the end of the sheath."),
            Fact("length_outside", quantity(LENGTH),
                 "how far its conductors reach out of the opening of the box, the shortest",
                 "4 in",
                 "Pull the conductors straight and measure what stands outside the box."),
            Fact("is_stripped", YES_NO,
                 "whether its sheath is taken off there; yes where the job does not say otherwise",
                 "yes", "Look in the box."),
            Fact("sheath_inside", quantity(LENGTH), "how far the sheath reaches into the box",
                 "1/2 in", "Measure the sheath inside the box."),
            Fact("fastened_at", quantity(LENGTH),
                 "straight distance from the box to its first support", "7 in",
                 "Measure straight from the box to the first staple."),
            Fact("cable_to_support", quantity(LENGTH),
                 "length of cable between the box and that support; where the job states none, "
                 "the cable lies straight and it is that distance", "7 in",
                 "Measure along the cable from the box to the first staple."),
            Fact("is_clamped", YES_NO, "whether a clamp or fitting of the box holds it", "yes",
                 "Look whether a clamp holds the cable."),
            Fact("shares_clamp_with", COUNT,
                 "other cables under the same clamp; 0 where the job states none", "0",
                 "Look at the clamp."),
            Fact("wire_ends", all_of("wire_end"), "the ends of its conductors there", "", _SHEATH),
        ),
    ),
    Kind(
        "bored_hole", "bored holes", "a hole or notch in framing that a cable runs through", (
            Fact("cable", a("cable"), "the cable", ""),
            Fact("distance_to_edge", quantity(LENGTH),
                 "least distance from the edge of the hole to the nearest face of the framing",
                 "1-1/4 in", "Measure from the edge of the hole to the face of the stud or joist."),
            Fact("is_plated", YES_NO, "whether a steel plate protects the cable there", "yes",
                 "Look for the plate."),
            Fact("is_notch", YES_NO, "whether it is a notch", "no", "Look at the framing."),
            Fact("is_in_metal", YES_NO, "whether the framing is of metal", "no",
                 "Look at the framing."),
            Fact("has_bushing", YES_NO, "whether a bushing lines it", "no",
                 "Look for the bushing."),
            Fact("cables", COUNT, "cables that share it, this one too", "1",
                 "Count the cables in the hole."),
        ),
    ),
    Kind(
        "conductor", "conductors", "one conductor of a cable, from end to end", (
            Fact("cable", a("cable"), "the cable", ""),
            Fact("colour", TEXT, "colour of its insulation; bare if it has none", "black"),
            Fact("size", quantity(AREA), "its size", "12 AWG", _SHEATH),
            Fact("material", word(*METALS), "its metal", "copper", _SHEATH),
            Fact("is_insulated", YES_NO, "whether it is insulated", "yes"),
            Fact("role", word(*ROLES), "what it is used as", "hot", _USES),
            Fact("insulation_temperature", quantity(TEMPERATURE),
                 "temperature rating of its insulation", "90 C", _INSULATION),
            Fact("terminal_temperature", quantity(TEMPERATURE),
                 "lowest temperature rating of what it ends on, if marked", "60 C", _TERMINALS),
            Fact("terminal_temperature_is_marked", YES_NO,
                 "whether there is such a marking; no where the job states none", "no",
                 _TERMINALS),
            Fact("ambient", quantity(TEMPERATURE),
                 "highest temperature around its cable; where none is stated, that of the warmest "
                 "room it ends in", "30 C", _AMBIENT),
            Fact("bundled_conductors", COUNT,
                 "current-carrying conductors side by side with it, itself too, as for its cable",
                 "6", _TOGETHER),
            Fact("circuits", all_of("circuit"), "the circuit it belongs to; one, as a rule", "",
                 _USES),
            Fact("breaker_rating", quantity(CURRENT),
                 "rating of the breaker it is on; largest, if several; 0 A where none reaches it",
                 "20 A", _BREAKER),
            Fact("is_on_a_breaker", YES_NO,
                 "whether a breaker reaches it, or the circuit it is the neutral of has one",
                 "yes", _USES),
            Fact("feeds_receptacles", YES_NO,
                 "whether a circuit of it has more than one place to plug in", "yes", _FACES),
            Fact("other_conductors_are_in_cable", YES_NO,
                 "whether what carries its current back (neutral, other hot, switched hot or "
                 "traveller of its circuit) runs with it in one cable; yes for bonds and spares",
                 "yes", _USES),
            Fact("is_used_against_its_role", YES_NO,
                 "whether the trace finds another thing on it than what it is used as: a neutral "
                 "or bond of the panel on a hot, a hot on a neutral; no where a short reaches it, "
                 "or an outlet that is dead or reversed", "no", _USES),
            Fact("role_path", TEXT, "the way of what is found on it; empty where all is well",
                 "breaker 10, black of k1, a joint in attic, white of k2"),
            Fact("ends", all_of("wire_end"), "its ends in boxes: two, or one of a home run", ""),
            Fact("panel_ends", all_of("panel_end"), "its ends in panels", ""),
        ),
    ),
)  # fmt: skip
