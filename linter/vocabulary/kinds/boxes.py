"""Boxes, and what stands in one besides devices and wire ends that stop there."""

from __future__ import annotations

from linter.units import AREA, FORCE, LENGTH, VOLUME
from linter.vocabulary.kinds.dwelling import STAGES
from linter.vocabulary.model import Fact, Kind
from linter.vocabulary.shorthand import COUNT, NOT_STATED, TEXT, YES_NO, a, all_of, quantity, word

_LOOK = "Look at the box."
_INSIDE = "Look in the box."
_MARKING = "Read the marking in the box."
_SHEATH = "Read the size on the sheath."
_SHEATHS = "Read the sizes on the sheaths."
_PACKAGE = "Read the package of the connector."
_USES = "Say what the conductor is used as."
_BOND_SCREW = "Look for the bond screw or clip."
_OPENING = "Measure the opening of the box."

# Each with the way that proves it, joint by joint; the text is empty where nothing is found.
_MEETING_FACTS = (
    Fact("has_short", YES_NO,
         "whether conductors go over here from a hot to a neutral, a bond or a hot of the other "
         "leg, in some position of the switches", "no", _USES),
    Fact("short_path", TEXT, "the way of that short, from one source to the other",
         "breaker 10, black of k1, a joint in attic, white of k1, the neutral bar"),
    Fact("joins_neutral_and_bond", YES_NO,
         "whether they go over here from a neutral to a bond; no where they are shorted", "no",
         _USES),
    Fact("neutral_bond_path", TEXT, "the way from the neutral bar to the bond bar",
         "the neutral bar, white of k1, a joint in attic, bare of k1, the bond bar"),
    Fact("joins_two_breakers", YES_NO,
         "whether they go over here from the hot of one breaker to that of another on its leg, or "
         "on a leg that is not known", "no", _USES),
    Fact("breakers_path", TEXT, "the way from one breaker to the other",
         "breaker 10, black of k1, a joint in desk, black of k2, breaker 14"),
    Fact("joins_two_neutrals", YES_NO,
         "whether they go over here from the neutral of one circuit to that of another", "no",
         _USES),
    Fact("neutrals_path", TEXT, "the way from one neutral to the other",
         "the neutral bar, white of k1, a joint in desk, white of k2, the neutral bar"),
    Fact("has_live_bond", YES_NO,
         "whether a hot reaches a bond in it that the panel's bond does not reach", "no", _USES),
    Fact("live_bond_path", TEXT, "the way of that hot to the bond",
         "breaker 10, black of k1, a joint in attic, bare of k2"),
)  # fmt: skip

_SETTING_FACTS = (
    Fact("depth_is_stated", YES_NO, "whether the job speaks of it, be it as unknown", "no"),
    Fact("is_in_ceiling", YES_NO, "whether it is set in a ceiling; no where nothing is said",
         "no", "Look where the box is set."),
    Fact("is_in_floor", YES_NO, "whether it is set in a floor; no where the job does not say so",
         "no", "Look where the box is set."),
    Fact("is_listed_for_floor", YES_NO, "whether it is made for floors", "no", _MARKING),
    Fact("fastening", word(NOT_STATED, "nails", "screws", "bracket", "bar hanger",
                           "old-work clamps", "raceway", "nothing"),
         "what holds it to the structure", "bracket", "Look how the box is fastened."),
    Fact("has_added_support", YES_NO,
         "whether, being of several gangs, it is held at its far end, too", "yes",
         "Look at the end of the box away from the stud."),
    Fact("marked_weight", quantity(FORCE), "the weight that the marking in it allows", "50 lbf",
         _MARKING),
    Fact("holds_low_voltage", YES_NO,
         "whether cables of data, bells or controls come into it, too; no where the job does not "
         "say so", "no", "Look which cables come into the box."),
    Fact("has_divider", YES_NO, "whether a divider parts those from the power", "no", _INSIDE),
    Fact("stage", word(*STAGES, NOT_STATED), "how far the job says that the work is", "made up"),
)  # fmt: skip

BOX_KINDS = (
    Kind(
        "box", "boxes", "an outlet, switch or junction box", (
            Fact("room", a("room"), "the room it is in", ""),
            Fact("gangs", COUNT, "its gangs", "1"),
            Fact("form", word("device", "square", "octagon", "round", "masonry", "pan", "other"),
                 "its form", "device", _LOOK),
            Fact("is_metal", YES_NO, "whether it is of metal", "no", _LOOK),
            Fact("volume_is_marked", YES_NO,
                 "whether its volume is to be read in it; no where the job states its trade size "
                 "and no volume", "yes"),
            Fact("marked_volume", quantity(VOLUME), "the volume marked in it", "22.5 in3",
                 "Read the volume marked in the box."),
            Fact("trade_size", TEXT, "its trade size, as tables of volumes list it",
                 "4 x 1-1/2 square", "Measure the box and name its trade size."),
            Fact("added_volume", quantity(VOLUME),
                 "volume marked on rings, extensions and domed covers fixed to it", "0 in3",
                 "Read the volume marked on the ring or extension."),
            Fact("internal_clamps", COUNT,
                 "cable clamps inside it: as counted, or one for each cable that enters", "2",
                 "Count the clamps inside the box."),
            Fact("has_cable_clamps", YES_NO,
                 "whether it grips its cables itself, by clamps inside or fittings in its wall",
                 "yes", "Look how the box holds its cables."),
            Fact("fixture_studs", COUNT, "luminaire studs inside it", "0", _INSIDE),
            Fact("hickeys", COUNT, "hickeys inside it", "0", _INSIDE),
            Fact("terminal_blocks", COUNT, "terminal blocks inside it", "0", _INSIDE),
            Fact("depth", quantity(LENGTH), "its depth inside", "2-3/4 in",
                 "Measure the depth of the box."),
            Fact("smallest_opening", quantity(LENGTH), "the smallest dimension of its opening",
                 "2-1/4 in", _OPENING),
            Fact("largest_opening", quantity(LENGTH), "the largest dimension of its opening",
                 "4 in", _OPENING),
            Fact("set_back", quantity(LENGTH),
                 "how far its front edge stands behind the finished face", "1/8 in",
                 "Measure from the finished face to the edge of the box."),
            Fact("surface_burns", YES_NO, "whether the surface around it is combustible", "no",
                 "Look what the wall is faced with."),
            Fact("height", quantity(LENGTH), "height of its centre above the floor", "16 in",
                 "Measure from the floor."),
            Fact("open_holes", COUNT, "openings that no cable uses and nothing closes", "0",
                 "Look for knockouts left open."),
            Fact("can_be_reached", YES_NO,
                 "whether it can be reached without damage to the building", "yes",
                 "Look whether finishes will cover the box."),
            Fact("has_cover", YES_NO, "whether a cover, plate or canopy closes it", "yes", _LOOK),
            Fact("is_bonded", YES_NO, "whether, being of metal, it is joined to the bonds in it",
                 "yes", _BOND_SCREW),
            Fact("is_made_up", YES_NO, "whether its joints are made", "yes", _INSIDE),
            Fact("is_listed_for_fan", YES_NO, "whether it is marked for a ceiling fan", "no",
                 _MARKING),
            Fact("is_listed_for_luminaire", YES_NO, "whether it is made to hold a luminaire",
                 "yes", _MARKING),
            Fact("is_for_wet_place", YES_NO, "whether it is of the weatherproof kind", "no",
                 "Read the marking of the box."),
            Fact("is_marked_first_outlet", YES_NO,
                 "whether it is marked as the first outlet of its circuit", "no",
                 "Look for the mark in the box."),
            Fact("is_in_fire_separation", YES_NO,
                 "whether it stands in the wall or ceiling that separates a garage from the "
                 "dwelling; asked of a box in a garage, no elsewhere", "no",
                 "Look whether it stands in the wall between garage and dwelling."),
            Fact("is_fire_rated", YES_NO, "whether it is marked for walls of a fire rating", "no",
                 "Read the marking of the box."),
            *_SETTING_FACTS,
            Fact("cable_ends", all_of("cable_end"), "cables that end in it", ""),
            Fact("wire_ends", all_of("wire_end"), "ends of the conductors of those cables, in it",
                 "", "Read the sheath."),
            Fact("bond_ends", all_of("wire_end"), "those of them that are bonds", "", _USES),
            Fact("passing_wires", all_of("passing_wire"),
                 "conductors that run through it uncut", ""),
            Fact("devices", all_of("device"), "devices and outlets it holds", ""),
            Fact("joints", all_of("joint"), "joints made in it", ""),
            Fact("circuits", all_of("circuit"), "circuits of which it holds conductors", "", _USES),
            Fact("has_splice", YES_NO,
                 "whether two conductors of its cables are joined in it, under a connector or on "
                 "one terminal", "yes", _USES),
            Fact("bonds_are_joined", YES_NO,
                 "whether all bonds that end in it are joined with each other; yes where there is "
                 "none or one", "yes", _USES),
            Fact("needs_device_bond", YES_NO, "whether a device in it has a bond terminal", "yes"),
            *_MEETING_FACTS,
        ),
    ),
    Kind(
        "passing_wire", "passing wires", "a conductor that runs through a box uncut", (
            Fact("box", a("box"), "the box", ""),
            Fact("conductor", a("conductor"), "the conductor", ""),
            Fact("size", quantity(AREA), "its size", "12 AWG", _SHEATH),
            Fact("is_insulated", YES_NO, "whether it is insulated", "yes"),
            Fact("is_bond", YES_NO, "whether it is a bond", "no", _USES),
            Fact("loop_length", quantity(LENGTH), "its length inside the box", "14 in",
                 "Measure the loop that stands in the box."),
        ),
    ),
    Kind(
        "joint", "joints", "conductors spliced together in a box", (
            Fact("box", a("box"), "the box", ""),
            Fact("wire_ends", all_of("wire_end"), "wire ends of cables in it", ""),
            Fact("wire_count", COUNT, "conductors in it, pigtails and leads of devices too", "4"),
            Fact("pigtail_count", COUNT, "pigtails in it, leads of devices too", "1"),
            Fact("largest_size", quantity(AREA), "size of the largest conductor of a cable in it",
                 "12 AWG", _SHEATHS),
            Fact("smallest_size", quantity(AREA),
                 "size of the smallest conductor of a cable in it", "14 AWG", _SHEATHS),
            Fact("is_bond", YES_NO, "whether all conductors of cables in it are bonds", "no",
                 _USES),
            Fact("has_bond", YES_NO, "whether any conductor of a cable in it is a bond", "no",
                 _USES),
            Fact("has_other_than_bond", YES_NO,
                 "whether any conductor of a cable in it is not a bond", "yes", _USES),
            Fact("is_neutral", YES_NO, "whether all conductors of cables in it are neutrals",
                 "yes", _USES),
            Fact("circuits", all_of("circuit"), "circuits whose conductors it joins", "", _USES),
            Fact("mixes_metals", YES_NO,
                 "whether it joins aluminium, coated or not, to copper: as the job states the "
                 "metals; where it states only one of them, the rest is not known", "no",
                 "Read the sheaths of the cables."),
            Fact("connector_joins_metals", YES_NO,
                 "whether its connector is listed to join aluminium and copper", "no", _PACKAGE),
            Fact("has_connector", YES_NO, "whether the job says by which connector it is made",
                 "yes"),
            Fact("connector_least_wires", COUNT,
                 "fewest conductors of these sizes that the connector's package lists; 0 where it "
                 "lists no joint of these sizes", "2", _PACKAGE),
            Fact("connector_most_wires", COUNT,
                 "most conductors of these sizes that the connector's package lists; 0 where it "
                 "lists no joint of these sizes", "5", _PACKAGE),
        ),
    ),
)  # fmt: skip
