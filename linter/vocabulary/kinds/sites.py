"""The site at large: what an inspector wants to find ready, and who does the work."""

from __future__ import annotations

from linter.vocabulary.model import Fact
from linter.vocabulary.shorthand import NOT_STATED, YES_NO, word

_SAID = word("yes", "no", NOT_STATED)
_ASK_OWNER = "Ask who does the work."

SITE_FACTS = (
    Fact("permit_posted", _SAID, "if the permit is posted on the site", "yes",
         "Look for the permit."),
    Fact("plans_on_site", _SAID, "if the plans of record lie on the site", "yes",
         "Look for the plans."),
    Fact("address_posted", _SAID, "if the address can be read from the road", "yes",
         "Look from the road."),
    Fact("dried_in", _SAID, "if roof, walls and windows keep the weather out", "yes",
         "Look at roof, walls and windows."),
    Fact("open_to_view", _SAID, "if all wiring can still be seen", "yes",
         "Walk through and look for covered wiring."),
    Fact("devices_fitted", _SAID, "if receptacles, switches or luminaires are fitted", "no",
         "Look into the boxes."),
    Fact("circuits_energised", _SAID, "if any of the new circuits is switched on", "no",
         "Look at the breakers, and test."),
    Fact("work_by", word("owner", "contractor", "others", NOT_STATED), "who does the work",
         "owner", _ASK_OWNER),
    Fact("owner_lives_there", _SAID, "if the owner lives there, or is to", "yes",
         "Ask the owner."),
    Fact("has_special_work", YES_NO,
         "whether the work takes in a service, pool, hot tub, solar plant, car charger, standby "
         "plant or hazardous place; no where the job does not say so", "no",
         "Ask what else the work takes in."),
    Fact("has_temporary_power", YES_NO,
         "whether there is power for the time of the work; no where the job does not say so", "no",
         "Ask where the tools are plugged in."),
    Fact("temporary_is_ground_fault", YES_NO,
         "whether all receptacles of that power have ground-fault protection", "yes",
         "Read the labels of its devices and breakers."),
    Fact("temporary_is_rainproof", YES_NO, "whether its enclosures keep rain out", "yes",
         "Look at its enclosures."),
    Fact("temporary_is_back_fed", YES_NO,
         "whether it feeds the permanent panel by a breaker or a cord of a circuit", "no",
         "Look how the panel is fed."),
)  # fmt: skip
