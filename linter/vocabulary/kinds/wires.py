"""Ends of conductors in boxes and panels: what is joined, marked, measured there."""

from __future__ import annotations

from linter.units import AREA, LENGTH
from linter.vocabulary.kinds.cables import ROLES
from linter.vocabulary.model import Fact, Kind
from linter.vocabulary.shorthand import TEXT, YES_NO, a, all_of, quantity, word

MARKINGS = (
    "not marked", "white", "grey", "green", "black", "red", "blue", "other colour",
)  # fmt: skip

_SHEATH = "Read the sheath."
_USES = "Say what the conductor is used as."
_TAPE = "Look for tape or paint at this end."

_END_FACTS = (
    Fact("conductor", a("conductor"), "the conductor", ""),
    Fact("colour", TEXT, "colour of its insulation; bare if it has none", "white"),
    Fact("marked_as", word(*MARKINGS), "the colour it is re-marked with here", "not marked",
         _TAPE),
    Fact("size", quantity(AREA), "its size", "12 AWG", _SHEATH),
    Fact("is_insulated", YES_NO, "whether it is insulated", "yes"),
    Fact("is_bond", YES_NO, "whether it is used as a bond", "no", _USES),
    Fact("role", word(*ROLES), "what it is used as", "hot", _USES),
    Fact("supplies_switch", YES_NO,
         "whether, being hot, it carries the supply to a switch that sends a switched hot or "
         "travellers back in the same cable", "yes", _USES),
    Fact("comes_from_switch", YES_NO, "whether it carries a switched hot, from a switch", "no",
         _USES),
    Fact("is_connected", YES_NO, "whether it is joined or ends on a terminal", "yes", _USES),
)  # fmt: skip

WIRE_KINDS = (
    Kind(
        "wire_end", "wire ends", "the end of one conductor of a cable in a box; ends in panels are "
        "panel ends", (
            Fact("box", a("box"), "the box", ""),
            Fact("cable_end", a("cable_end"), "the end of the cable it comes from", ""),
            *_END_FACTS,
            Fact("free_length", quantity(LENGTH),
                 "from where the conductor leaves its sheath in the box to its end", "8 in",
                 "Measure the conductor from the end of its sheath."),
            Fact("length_outside", quantity(LENGTH),
                 "how far it reaches out of the opening of the box", "4 in",
                 "Pull the conductor straight and measure what stands outside the box."),
            Fact("is_capped", YES_NO,
                 "whether, joined to nothing, it is capped; no for an end that is joined", "yes",
                 "Look whether the unused end is capped."),
            Fact("circuits", all_of("circuit"), "the circuit it belongs to; one, as a rule", "",
                 _USES),
        ),
    ),
    Kind(
        "panel_end", "panel ends", "the end of one conductor of a cable in a panel", (
            Fact("panel", a("panel"), "the panel", ""),
            Fact("cable", a("cable"), "the cable", ""),
            *_END_FACTS,
            Fact("breakers", all_of("breaker"), "the breaker it ends on; none for a bar", ""),
            Fact("is_on_its_breaker", YES_NO,
                 "whether the breaker it ends on is one of its circuit; yes for a bar", "yes"),
            Fact("neutral_ends_as_its_breaker_asks", YES_NO,
                 "whether, a neutral, it ends on the ground-fault breaker of its circuit, or, "
                 "where there is none, on no breaker of another circuit; yes for all else",
                 "yes", _USES),
            Fact("is_bond_on_neutral", YES_NO,
                 "whether it is a bond that ends with the neutrals, where the panel keeps those "
                 "apart from the bonds", "no"),
            Fact("circuits", all_of("circuit"), "the circuit it belongs to; one, as a rule", "",
                 _USES),
        ),
    ),
)  # fmt: skip
