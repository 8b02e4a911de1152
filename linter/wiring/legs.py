"""The leg that each pole of a breaker is on."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from linter.job.panel import Breaker

LEGS = ("A", "B")


def leg_of_pole(breaker: Breaker, pole: int) -> str:
    """The leg a pole is on: spaces lie in rows of two, and the legs alternate from row to row.

    What the job states for a breaker holds for its first pole.
    """
    first = LEGS.index(breaker.leg) if breaker.leg in LEGS else (breaker.space - 1) // 2
    return LEGS[(first + pole) % 2]
