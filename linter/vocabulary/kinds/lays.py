"""Where a cable runs that asks for more care: attics, joists, air, the open, the ground."""

from __future__ import annotations

from linter.units import LENGTH
from linter.vocabulary.model import Fact
from linter.vocabulary.shorthand import YES_NO, quantity, word

_FOLLOW = "Follow the cable."
_TRENCH = "Ask whether the trench was shown before it was filled."

LAY_FACTS = (
    Fact("runs_over_attic", YES_NO,
         "whether it runs over the joists of an attic or across its rafters; no where the job does "
         "not say so", "no", _FOLLOW),
    Fact("attic_is_reached_by", word("stairs", "hatch"),
         "how one gets up there: by fixed stairs or a fixed ladder, or only through a hatch",
         "hatch", "Look how one gets into the attic."),
    Fact("distance_to_hatch", quantity(LENGTH), "shortest distance to the edge of the hatch",
         "5 ft", "Measure from the hatch to the cable."),
    Fact("has_guard_strips", YES_NO, "whether strips at least as high guard it there", "yes",
         "Look for strips along the cable."),
    Fact("runs_under_joists", YES_NO,
         "whether it is fastened to the underside of joists in a basement or crawl space that is "
         "not finished; no where the job does not say so", "no", _FOLLOW),
    Fact("is_on_running_board", YES_NO, "whether it lies on a running board there", "yes",
         "Look what the cable is fastened to."),
    Fact("is_exposed", YES_NO,
         "whether it runs in the open where blows may reach it; no where the job does not say so",
         "no", _FOLLOW),
    Fact("is_guarded", YES_NO, "whether conduit, boards or strips keep blows away from it", "yes",
         "Look what guards the cable."),
    Fact("runs_in_return_air", YES_NO,
         "whether it runs in a stud or joist space that carries return air; no where the job does "
         "not say so", "no", _FOLLOW),
    Fact("only_crosses_return_air", YES_NO,
         "whether it only crosses that space, at right angles to its length", "yes", _FOLLOW),
    Fact("runs_under_roof", YES_NO,
         "whether it runs close below the deck of a roof; no where the job does not say so", "no",
         _FOLLOW),
    Fact("distance_to_deck", quantity(LENGTH), "least distance from its top to that deck",
         "1-1/2 in", "Measure from the lowest part of the deck to the cable."),
    Fact("deck_is_metal", YES_NO,
         "whether that deck is of corrugated sheet metal; no under a roof, where the job does not "
         "say otherwise", "no", "Look at the deck from below."),
    Fact("is_underground", YES_NO,
         "whether it runs in the ground; no where the job does not say so", "no", _FOLLOW),
    Fact("burial", word("direct burial", "plastic conduit", "metal conduit"),
         "how it lies in the ground", "direct burial", "Look in the trench."),
    Fact("cover", quantity(LENGTH), "least distance from its top to the finished ground", "24 in",
         "Measure in the trench."),
    Fact("lies_under",
         word("yard", "concrete in trench", "building", "slab", "driveway", "street"),
         "what lies above it there", "yard", "Ask what is to lie above the trench."),
    Fact("is_backfilled", YES_NO, "whether the trench is filled", "no", _TRENCH),
    Fact("trench_was_seen", YES_NO, "whether the inspector has seen the open trench", "yes",
         _TRENCH),
    Fact("rises_in_the_open", YES_NO,
         "whether it comes up out of the ground in the open; yes in the ground, where the job does "
         "not say otherwise", "yes", _FOLLOW),
    Fact("guarded_up_to", quantity(LENGTH), "how far above the ground it is guarded there", "8 ft",
         "Measure the guard above the ground."),
    Fact("guarded_down_to", quantity(LENGTH), "how far below the ground it is guarded there",
         "18 in", "Measure the guard in the trench."),
)  # fmt: skip
