"""Ends of conductors in boxes: what is joined, marked, measured there."""

from __future__ import annotations

from linter.units import AREA, LENGTH
from linter.vocabulary.model import Fact, Kind
from linter.vocabulary.shorthand import TEXT, YES_NO, a, all_of, quantity, word

WIRE_KINDS = (
    Kind(
        "wire_end", "wire ends", "the end of one conductor of a cable in a box", (
            Fact("box", a("box"), "the box", ""),
            Fact("cable_end", a("cable_end"), "the end of the cable it comes from", ""),
            Fact("conductor", a("conductor"), "the conductor", ""),
            Fact("colour", TEXT, "colour of its insulation; bare if it has none", "white"),
            Fact("marked_as", word("not marked", "white", "black", "red", "blue", "green", "other hot colour"),
                 "the colour it is re-marked with here", "not marked", "Look for tape or paint at this end."),
            Fact("is_marked_as_hot", YES_NO, "whether it is re-marked here with a colour for hots", "yes",
                 "Look for tape or paint at this end."),
            Fact("size", quantity(AREA), "its size", "12 AWG", "Read the sheath."),
            Fact("is_insulated", YES_NO, "whether it is insulated", "yes"),
            Fact("is_bond", YES_NO, "whether it is used as a bond", "no"),
            Fact("role", word("hot", "neutral", "bond", "switched hot", "traveller", "spare"),
                 "what it is used as", "hot", "Say what the conductor is used as."),
            Fact("supplies_switch", YES_NO, "whether, being hot, it carries the supply to a switch", "yes"),
            Fact("comes_from_switch", YES_NO, "whether it carries the switched hot back from a switch", "no"),
            Fact("free_length", quantity(LENGTH),
                 "from where the conductor leaves its sheath in the box to its end", "8 in",
                 "Measure the conductor from the end of its sheath."),
            Fact("length_outside", quantity(LENGTH), "how far it reaches out of the opening of the box", "4 in",
                 "Pull the conductor straight and measure what stands outside the box."),
            Fact("is_connected", YES_NO, "whether it is joined or ends on a terminal", "yes"),
            Fact("is_capped", YES_NO, "whether, joined to nothing, it is capped", "yes",
                 "Look whether the unused end is capped."),
            Fact("circuits", all_of("circuit"), "the circuit it belongs to; one, as a rule", ""),
        ),
    ),
)  # fmt: skip
