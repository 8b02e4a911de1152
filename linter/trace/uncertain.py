"""Boxes for which the trace may miss something, since a cable that leads on is not known."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.wiring.model import Role

if TYPE_CHECKING:
    from collections.abc import Iterable

    from linter.job.jobs import Job
    from linter.wiring.model import Wiring


def uncertain_boxes(job: Job, wiring: Wiring, not_followed: Iterable[str]) -> frozenset[str]:
    """The boxes that cables join with a cable of unknown sheath, or with a wire of unknown use.

    Or with one of `not_followed`: boxes of switches of which not every position was tried.

    What the trace finds there holds; that something does not reach there does not.
    """
    beside: dict[str, set[str]] = {}
    for cable in job.cables.values():
        ends = [end for end in (str(cable.from_), str(cable.to)) if end in wiring.boxes]
        for end in ends:
            beside.setdefault(end, set()).update(ends)
    waiting = [*_doubtful(job, wiring), *not_followed]
    found: set[str] = set()
    while waiting:
        box = waiting.pop()
        if box not in found:
            found.add(box)
            waiting += beside.get(box, ())
    return frozenset(found)


def _doubtful(job: Job, wiring: Wiring) -> list[str]:
    doubtful = {end.box for end in wiring.wire_ends.values() if end.use.role is Role.UNKNOWN}
    for name, cable in job.cables.items():
        if name in wiring.unknown_cables:
            doubtful |= {str(cable.from_), str(cable.to)}
    return sorted(doubtful & wiring.boxes.keys())
