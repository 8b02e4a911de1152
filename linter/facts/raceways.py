"""Raceways, as the job states them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.given import Given

if TYPE_CHECKING:
    from linter.job.raceways import Raceway
    from linter.vocabulary.model import Thing

_FIELDS = {
    "type": "kind",
    "size": "size",
    "fastened_at": "fastened_at",
    "support_spacing": "support_spacing",
    "largest_conductor": "largest_conductor",
    "is_bushed": "bushed",
}
_PLACES = {
    "lies_in_ground": "ground",
    "lies_in_concrete": "concrete",
    "lies_in_wet_place": "wet place",
    "lies_in_sunlight": "sunlight",
    "lies_under_blows": "blows",
}


def raceway_of(raceway: Raceway) -> Thing:
    """The facts of a raceway; where no place is listed, it lies in a dry room."""
    given = Given("raceway", raceway.name, raceway, _FIELDS)
    places = raceway.lies_in
    for fact, place in _PLACES.items():
        given.put(fact, None if places is None else place in places, "lies_in")
    return given.thing(f"raceway {raceway.name}")
