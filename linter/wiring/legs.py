"""The leg that each pole of a breaker is on, and whether that is known."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from linter.job.jobs import Job
    from linter.job.panel import Breaker, Panel

LEGS = ("A", "B")
BY_ROWS = "alternate by rows"
_SPLIT = "split phase"


def has_one_leg(job: Job) -> bool:
    """Whether the usual supply is said to be of a kind that has but one leg."""
    kind = job.usual_supply.kind
    return kind is not None and kind != _SPLIT


def leg_of_pole(breaker: Breaker, pole: int) -> str:
    """The leg a pole is on: spaces lie in rows of two, and the legs alternate from row to row.

    What the job states for a breaker holds for its first pole.
    """
    first = LEGS.index(breaker.leg) if breaker.leg in LEGS else (breaker.space - 1) // 2
    return LEGS[(first + pole) % 2]


def leg_is_known(breaker: Breaker, panel: Panel) -> bool:
    """Whether the job says which leg a breaker is on: of it, or of its panel by rows of spaces."""
    return breaker.leg in LEGS or (panel.legs == BY_ROWS and not breaker.says("leg"))
