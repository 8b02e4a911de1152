"""What the job states of the site at large, as facts of the dwelling."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.given import Given, word_of
from linter.vocabulary.shorthand import NOT_STATED

if TYPE_CHECKING:
    from linter.job.jobs import Job

_WORDS = {
    "permit_posted": "permit_posted",
    "plans_on_site": "plans_on_site",
    "address_posted": "address_posted",
    "dried_in": "dried_in",
    "open_to_view": "open_to_view",
    "devices_fitted": "devices_fitted",
    "circuits_energised": "energised",
    "work_by": "work_by",
    "owner_lives_there": "owner_lives_there",
}
_TEMPORARY = {
    "temporary_is_ground_fault": "ground_fault",
    "temporary_is_rainproof": "rainproof",
    "temporary_is_back_fed": "back_fed",
}


def site_of(job: Job, kind: str) -> Given:
    """The facts of the site, as gathered for the one thing of that kind."""
    site = job.site
    given = Given(kind, kind, site, {})
    for fact, field in _WORDS.items():
        given.put(fact, word_of(site, field), field)
    given.put("stage", job.stage or NOT_STATED)
    given.put(
        "has_special_work", None if site.includes is None else bool(site.includes), "includes"
    )
    power = site.temporary_power
    given.put("has_temporary_power", power if power is None else power is not False,
              "temporary_power")  # fmt: skip
    for fact, key in _TEMPORARY.items():
        given.put(fact, getattr(power, key) if power else None, "temporary_power")
    return given
