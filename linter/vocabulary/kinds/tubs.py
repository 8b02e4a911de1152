"""Tubs with a pump, as facts of their room."""

from __future__ import annotations

from linter.units import AREA, LENGTH
from linter.vocabulary.model import Fact
from linter.vocabulary.shorthand import YES_NO, quantity

_BEHIND = "Look behind the opening of the tub."

WHIRLPOOL_FACTS = (
    Fact("has_whirlpool", YES_NO,
         "whether it has a bathtub with a pump; no where the job does not say so", "no",
         "Ask whether the tub is to have a pump."),
    Fact("whirlpool_bond", quantity(AREA), "size of the conductor that bonds the pump", "8 AWG",
         _BEHIND),
    Fact("whirlpool_is_double_insulated", YES_NO,
         "whether that pump is double insulated; no where the job does not say so", "no",
         "Read the label of the pump."),
    Fact("whirlpool_can_be_reached", YES_NO,
         "whether that pump can be reached without damage to the building", "yes",
         "Look for the opening."),
    Fact("whirlpool_has_cord", YES_NO,
         "whether that pump has a cord and a plug; no where the job does not say so", "no",
         _BEHIND),
    Fact("whirlpool_receptacle_distance", quantity(LENGTH),
         "distance from the opening to the receptacle of that pump", "10 in", _BEHIND),
    Fact("whirlpool_receptacle_faces", YES_NO, "whether that receptacle faces the opening", "yes",
         _BEHIND),
)  # fmt: skip
