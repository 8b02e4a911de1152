"""Where a cable runs that asks for more care: attics, joists, air, the open, the ground."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.facts.given import Given
    from linter.job.cables import Cable

# The fact that says whether a cable runs so, by its field, and what is stated of it there.
_RUNS: Mapping[str, tuple[str, Mapping[str, str]]] = {
    "over_attic": ("runs_over_attic", {
        "attic_is_reached_by": "reached_by",
        "distance_to_hatch": "distance_to_hatch",
        "has_guard_strips": "guarded",
    }),
    "under_joists": ("runs_under_joists", {"is_on_running_board": "board"}),
    "exposed": ("is_exposed", {"is_guarded": "guarded"}),
    "return_air": ("runs_in_return_air", {"only_crosses_return_air": "crosses"}),
    "under_roof": ("runs_under_roof", {"distance_to_deck": "distance", "deck_is_metal": "metal"}),
    "underground": ("is_underground", {
        "burial": "method",
        "cover": "cover",
        "lies_under": "under",
        "is_backfilled": "backfilled",
        "trench_was_seen": "seen",
        "rises_in_the_open": "rises",
        "guarded_up_to": "guarded_up_to",
        "guarded_down_to": "guarded_down_to",
    }),
}  # fmt: skip


def put_lays(given: Given, cable: Cable) -> None:
    """Each way of running, and what is stated of it; where a cable does not run so, unknown."""
    for field, (fact, stated) in _RUNS.items():
        run = getattr(cable, field)
        given.put(fact, run if run is None else run is not False, field)
        for name, key in stated.items():
            given.put(name, getattr(run, key) if run else None, field)
