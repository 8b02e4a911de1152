"""Tubs with a pump, as facts of their room."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from linter.facts.given import Given
    from linter.job.dwelling import Room

_FIELDS = {
    "whirlpool_bond": "bond",
    "whirlpool_is_double_insulated": "double_insulated",
    "whirlpool_can_be_reached": "reachable",
    "whirlpool_has_cord": "cord",
    "whirlpool_receptacle_distance": "receptacle_distance",
    "whirlpool_receptacle_faces": "receptacle_faces",
}


def put_whirlpool(given: Given, room: Room) -> None:
    """Whether there is one, and what is stated of it; where there is none, nothing is known."""
    tub = room.whirlpool
    given.put("has_whirlpool", tub if tub is None else tub is not False, "whirlpool")
    for fact, field in _FIELDS.items():
        given.put(fact, getattr(tub, field) if tub else None, "whirlpool")
