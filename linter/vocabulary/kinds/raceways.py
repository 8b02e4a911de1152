"""Raceways: conduit and tubing."""

from __future__ import annotations

from linter.units import AREA, LENGTH
from linter.vocabulary.model import Fact, Kind
from linter.vocabulary.shorthand import YES_NO, quantity, word

_WHERE = "Follow the raceway."

RACEWAY_KINDS = (
    Kind(
        "raceway", "raceways", "a conduit or tubing, from fitting to fitting", (
            Fact("type", word("EMT", "IMC", "RMC", "PVC", "ENT", "FMC", "LFMC", "LFNC"),
                 "its kind, by the letters of the trade: electrical metallic tubing, intermediate "
                 "and rigid metal conduit, rigid plastic conduit, electrical nonmetallic tubing, "
                 "flexible metal conduit, liquidtight flexible conduit of metal or not", "EMT",
                 "Look at the raceway."),
            Fact("size", quantity(LENGTH), "its trade size", "1/2 in", "Read its marking."),
            Fact("fastened_at", quantity(LENGTH),
                 "largest distance from a box, cabinet or fitting to its first strap", "3 ft",
                 "Measure from the box to the first strap."),
            Fact("support_spacing", quantity(LENGTH), "longest distance between its straps", "8 ft",
                 "Measure between the straps."),
            Fact("lies_in_ground", YES_NO, "whether it lies in the ground", "no", _WHERE),
            Fact("lies_in_concrete", YES_NO, "whether it lies in concrete", "no", _WHERE),
            Fact("lies_in_wet_place", YES_NO, "whether water can strike it, or it lies outdoors",
                 "no", _WHERE),
            Fact("lies_in_sunlight", YES_NO, "whether the sun shines on it", "no", _WHERE),
            Fact("lies_under_blows", YES_NO, "whether heavy blows may reach it", "no", _WHERE),
            Fact("largest_conductor", quantity(AREA), "size of the largest conductor in it",
                 "4 AWG", "Read the conductors."),
            Fact("is_bushed", YES_NO,
                 "whether an insulating bushing or smooth insulated fitting is at its ends", "yes",
                 "Look at its ends."),
        ),
    ),
)  # fmt: skip
