"""Strong Kleene reckoning with values that may be unknown.

A result is unknown only where the unknown parts could change it, and then it hangs on all of them:
all of them hold is false as soon as one does not, the sum of known and unknown is unknown.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeAlias

from linter.units import Unknown, is_known

if TYPE_CHECKING:
    from collections.abc import Iterable

YesNo: TypeAlias = "bool | Unknown"
Number: TypeAlias = "float | Unknown"


def known(values: Iterable[object]) -> bool:
    """Whether none of the values is unknown.

    >>> known([1, "hot"]), known([1, Unknown(["k1.size"])])
    (True, False)
    """
    return all(map(is_known, values))


def hanging_on(values: Iterable[object]) -> Unknown:
    """The unknown that hangs on all that the unknown ones among the values hang on.

    >>> sorted(hanging_on([Unknown(["a"]), 3, Unknown(["b"])]).because)
    ['a', 'b']
    """
    return Unknown(
        frozenset().union(*(value.because for value in values if isinstance(value, Unknown)))
    )


def all_hold(values: Iterable[YesNo]) -> YesNo:
    """Whether every one holds; one that does not decides it.

    >>> all_hold([True, Unknown(["a"]), False]), all_hold([True, Unknown(["a"])]), all_hold([])
    (False, Unknown(['a']), True)
    """
    listed = list(values)
    if any(value is False for value in listed):
        return False
    return True if known(listed) else hanging_on(listed)


def any_holds(values: Iterable[YesNo]) -> YesNo:
    """Whether one at least holds; one that does decides it.

    >>> any_holds([False, Unknown(["a"]), True]), any_holds([False, Unknown(["a"])])
    (True, Unknown(['a']))
    """
    listed = list(values)
    if any(value is True for value in listed):
        return True
    return False if known(listed) else hanging_on(listed)


def negated(value: YesNo) -> YesNo:
    """The opposite; of an unknown, the unknown itself."""
    return value if isinstance(value, Unknown) else not value


def total(values: Iterable[Number]) -> Number:
    """The sum, unknown as soon as one part is.

    >>> total([1.0, 2.0]), total([1.0, Unknown(["a"])])
    (3.0, Unknown(['a']))
    """
    listed = list(values)
    return float(sum(listed)) if known(listed) else hanging_on(listed)


def largest(values: Iterable[Number], if_none: Number) -> Number:
    """The largest, unknown as soon as one is; `if_none` where there is nothing to compare."""
    listed = list(values)
    if not listed:
        return if_none
    return max(listed) if known(listed) else hanging_on(listed)


def smallest(values: Iterable[Number], if_none: Number) -> Number:
    """The smallest, unknown as soon as one is; `if_none` where there is nothing to compare."""
    listed = list(values)
    if not listed:
        return if_none
    return min(listed) if known(listed) else hanging_on(listed)
