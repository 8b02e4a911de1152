"""Where the trace may miss something, and what that hangs on.

What the trace finds to reach a place does reach it. That something does not reach a box is only
known if every cable which leads on from there is known, and what its conductors are used as.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.given import unknown
from linter.units import Unknown
from linter.wiring.model import Role

if TYPE_CHECKING:
    from collections.abc import Iterable

    from linter.facts.knowing import YesNo
    from linter.facts.made import Site

Reasons = dict[str, set[object]]


class Doubts:
    """For each box that the trace is uncertain of, the unknown that hangs on what makes it so."""

    __slots__ = ("_box_of", "_of_box")

    def __init__(self, site: Site) -> None:
        self._of_box: dict[str, Unknown] = {}
        self._box_of = site.wiring.wire_ends
        if site.trace.uncertain_boxes:
            self._gather(site)

    def at(self, box: str) -> YesNo:
        """No, of what the trace does not find in a box, or the unknown that this answer is."""
        return self._of_box.get(box, False)

    def at_ends(self, wire_ends: Iterable[str]) -> YesNo:
        """The same, of a conductor with these ends."""
        for end in wire_ends:
            doubt = self.at(self._box_of[end].box)
            if doubt is not False:
                return doubt
        return False

    def _gather(self, site: Site) -> None:
        reasons = _reasons(site)
        beside = _beside(site)
        for first in site.job.boxes:
            if first not in site.trace.uncertain_boxes or first in self._of_box:
                continue
            together, waiting = {str(first)}, [str(first)]
            while waiting:
                fresh = beside.get(waiting.pop(), set()) - together
                together |= fresh
                waiting += fresh
            because = frozenset().union(*(reasons.get(box, ()) for box in together))
            self._of_box |= dict.fromkeys(together, Unknown(because))


def _reasons(site: Site) -> Reasons:
    """What is not known at each box: sheaths, uses of conductors, positions of switches."""
    reasons: Reasons = {}
    for name in site.wiring.unknown_cables:
        cable = site.job.cables[name]  # type: ignore[index]  # the wiring names cables by plain text
        for box in (cable.from_, cable.to):
            sheath = unknown("cable", name, "insulated_conductors")
            reasons.setdefault(box, set()).update(sheath.because)
    for end in site.wiring.wire_ends.values():
        if end.use.role is Role.UNKNOWN:
            use = unknown("conductor", end.name, "role")
            reasons.setdefault(end.box, set()).update(use.because)
    for switch in site.trace.not_followed:
        at = str(site.groups.devices[switch].box)
        reasons.setdefault(at, set()).update(unknown("switch", switch, "is_followed").because)
    return reasons


def _beside(site: Site) -> dict[str, set[str]]:
    """The boxes that cables tie to each box; a panel ties no boxes together."""
    beside: dict[str, set[str]] = {}
    for cable in site.job.cables.values():
        ends = {str(end) for end in (cable.from_, cable.to)} - site.job.panels.keys()
        for end in ends:
            beside.setdefault(end, set()).update(ends)
    return beside
