"""The statuses that precover exits with, and which of several stands for all."""

from collections.abc import Iterable
from enum import IntEnum


class Status(IntEnum):
    """What a command came to; the last three are as in BSD `sysexits`."""

    NOTHING_OUTSTANDING = 0
    FINDINGS = 1
    CANNOT_TELL = 3
    WRONG_USE = 64
    REFUSED = 65
    OUR_FAULT = 70


# The worst first. A refused file outweighs a finding, since nothing in it was looked at.
WORST_FIRST = (
    Status.OUR_FAULT,
    Status.WRONG_USE,
    Status.REFUSED,
    Status.FINDINGS,
    Status.CANNOT_TELL,
    Status.NOTHING_OUTSTANDING,
)


def worst(statuses: Iterable[Status]) -> Status:
    """The status that stands for all of them.

    >>> worst([Status.CANNOT_TELL, Status.FINDINGS, Status.NOTHING_OUTSTANDING]).name
    'FINDINGS'
    """
    return min(statuses, key=WORST_FIRST.index, default=Status.NOTHING_OUTSTANDING)
