"""Where the trace may miss something, and what that hangs on.

What the trace finds to reach a place does reach it. That something does not reach a box is only
known if every cable which leads on from there is known, and what its conductors are used as.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.given import unknown
from linter.units import Unknown
from linter.wiring.carries import hots_named
from linter.wiring.model import Role

if TYPE_CHECKING:
    from collections.abc import Iterable

    from linter.facts.knowing import YesNo
    from linter.facts.made import Site
    from linter.job.cables import Cable

Reasons = dict[str, set[object]]


class Doubts:
    """For each box that the trace is uncertain of, the unknown that hangs on what makes it so."""

    __slots__ = ("_box_of", "_of_box", "_of_circuit")

    def __init__(self, site: Site) -> None:
        self._of_box: dict[str, Unknown] = {}
        self._of_circuit: dict[str, set[frozenset[object]]] = {}
        self._box_of = site.wiring.wire_ends
        if site.trace.uncertain_boxes:
            self._gather(site)
            self._gather_circuits(site)

    def at(self, box: str) -> YesNo:
        """No, of what the trace does not find in a box, or the unknown that this answer is."""
        return self._of_box.get(box, False)

    def reach(self, circuit: str, because: frozenset[object]) -> bool:
        """Whether what is not known lies where cables tie it to a circuit.

        What lies in no box, such as a cable between panels, may be tied to any.
        """
        boxes = self._of_box.values()
        if not any(because <= each.because for each in boxes):
            return True
        return any(because <= tied for tied in self._of_circuit.get(circuit, ()))

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

    def _gather_circuits(self, site: Site) -> None:
        for circuit, box in _circuits_in_boxes(site):
            doubt = self._of_box.get(box)
            if doubt is not None:
                self._of_circuit.setdefault(circuit, set()).add(doubt.because)


def _circuits_in_boxes(site: Site) -> Iterable[tuple[str, str]]:
    """Each circuit with each box that it is known or said to come into, by any way."""
    job, circuits_on = site.job, _circuits_on_breakers(site)
    for end in site.wiring.wire_ends.values():
        if end.use.circuit is not None:
            yield end.use.circuit, end.box
        for pole in site.trace.hots_at(end.id):
            yield from ((each, end.box) for each in circuits_on.get(pole[:2], ()))
    for cable in job.cables.values():
        if cable.circuit is not None:
            yield from ((cable.circuit, str(box)) for box in (cable.from_, cable.to))
        for space in _spaces_named(cable):
            on = [each for spot, each in circuits_on.items() if spot[1] == space]
            yield from (
                (name, str(box))
                for names in on
                for name in names
                for box in (cable.from_, cable.to)
            )
    for box in job.boxes.values():
        yield from ((each.circuit, box.name) for each in box.holds if each.circuit is not None)


def _circuits_on_breakers(site: Site) -> dict[tuple[str, int], list[str]]:
    found: dict[tuple[str, int], list[str]] = {}
    for circuit in site.job.circuits.values():
        for panel, space in circuit.breakers:
            for each in site.job.panels[panel].breakers[space].spaces:
                found.setdefault((panel, each), []).append(circuit.name)
    return found


def _spaces_named(cable: Cable) -> Iterable[int]:
    """The spaces whose hot a cable of unknown sheath is said to carry."""
    if cable.leg_of is not None:
        yield cable.leg_of
    yield from hots_named(cable.carries)


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
