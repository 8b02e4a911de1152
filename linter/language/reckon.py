"""The arithmetic of the language, the same for the compiled function and the careful evaluator.

Quantities are floats in base units; sizes within one part in 10^9 count as equal.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from linter.language.verdict import NoQuotient
from linter.units import NotKnown, same_value

if TYPE_CHECKING:
    from collections.abc import Callable


def at_least(a: float, b: float) -> bool:
    """Whether one size is at least the other; equal counts as met."""
    return a >= b or same_value(a, b)


def quotient(a: float, b: float) -> float:
    """One divided by the other; by nothing, it cannot be told."""
    if b == 0:
        raise NotKnown([NoQuotient(frozenset())])
    return a / b


def rounded_up(value: float, step: float) -> float:
    """The smallest multiple of `step` that is not below `value`.

    >>> rounded_up(7.2, 5.0), rounded_up(10.0 + 1e-12, 5.0)
    (10.0, 10.0)
    """
    return _whole(quotient(value, step), math.ceil) * step


def rounded_down(value: float, step: float) -> float:
    """The largest multiple of `step` that is not above `value`."""
    return _whole(quotient(value, step), math.floor) * step


def rounded_to(value: float, step: float) -> float:
    """The multiple of `step` nearest to `value`; from the middle, the one away from nothing.

    >>> rounded_to(7.5, 5.0), rounded_to(7.4, 5.0)
    (10.0, 5.0)
    """
    parts = quotient(value, step)
    return math.copysign(_whole(abs(parts) + 0.5, math.floor), parts) * step


def _whole(parts: float, way: Callable[[float], int]) -> float:
    if not math.isfinite(parts):
        return parts
    nearest = round(parts)
    return float(nearest if same_value(parts, nearest) else way(parts))
