"""Circuits followed from the panel outward, as lines: each joint, terminal, outlet on the way."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import CAUTION, CLOSING, counted
from linter.reports.tracing_loads import (
    Loaded,
    at_outlet,
    breaker_in_words,
    conductor_in_words,
    in_cable,
    outlet_in_words,
    power_in_words,
)
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.trace.follow import Followed, Spot, Start, Stop, Taken
    from linter.wiring.model import Wiring

_NOTHING = "nothing from the panel reaches it"


def tracing(circuits: Iterable[Followed], wiring: Wiring, loaded: Loaded | None) -> Iterator[Line]:
    """The circuits, each with its stops in order; with what flows, where that was solved."""
    yield Line((Span("CAUTION", "caution", whole=True), Span(f"  {CAUTION}")), hang=2)
    if loaded is not None:
        yield EMPTY
        yield line(f"On: {join_words(loaded.loads) if loaded.loads else 'nothing'}.", hang=2)
        yield line(power_in_words(loaded), hang=2)
        if loaded.faults:
            yield line(f"Fault: {join_words(loaded.faults)}.", hang=2)
    for followed in circuits:
        yield EMPTY
        yield from circuit_lines(followed, wiring, loaded)
    yield EMPTY
    yield line(CLOSING)


def circuit_lines(followed: Followed, wiring: Wiring, loaded: Loaded | None) -> Iterator[Line]:
    """One circuit: its name, where it begins, its stops in order."""
    yield line(f"circuit {followed.circuit}", "room")
    for start in followed.starts:
        yield line(_start(start), indent=2, hang=2)
        if loaded is not None:
            yield line(breaker_in_words(loaded, start.pole), indent=6, hang=2)
    for stop in followed.stops:
        yield from _stop(stop, wiring, loaded)


def _start(start: Start) -> str:
    facts = [start.rating] if start.rating else []
    facts += [f"leg {start.leg}" if start.leg else "leg not told"] if start.leg is not None else []
    facts += start.protection
    on_it = join_words(start.conductors) if start.conductors else "nothing on it"
    return f"{start.breaker}, {', '.join(facts)}: {on_it}"


def _stop(stop: Stop, wiring: Wiring, loaded: Loaded | None) -> Iterator[Line]:
    yield EMPTY
    far = "not reached from the panel"
    if stop.distance is not None:
        far = f"{counted(stop.distance, 'cable', 'cables')} from the panel"
    yield Line((Span(stop.box, "box"), Span(f", {stop.room}, {far}", "quiet")), indent=2, hang=2)
    for joint in stop.joints:
        yield line(f"joint {joint.name}: {join_words(joint.conductors)}", indent=4, hang=4)
        yield line(_reached(joint), indent=8, hang=2)
    for terminal in stop.terminals:
        yield line(f"{terminal.name}: {join_words(terminal.conductors)}", indent=4, hang=4)
        yield line(_reached(terminal), indent=8, hang=2)
    for wire in stop.capped:
        yield line(f"{wire}: joined with nothing", indent=4, hang=4)
    for outlet in stop.outlets:
        yield from _outlet(outlet, loaded)
    if loaded is not None:
        yield from _flowing(stop, wiring, loaded)


def _reached(spot: Spot) -> str:
    if not spot.reached_by:
        return _NOTHING
    when = ", in some positions of its switches" if spot.sometimes else ""
    return f"{join_words(spot.reached_by)}{when}"


def _outlet(outlet: Taken, loaded: Loaded | None) -> Iterator[Line]:
    by = f"behind {join_words(outlet.protected_by)}" if outlet.protected_by else "behind no breaker"
    yield line(f"{outlet.kind} {outlet.device}: {by}", indent=4, hang=4)
    if outlet.switches:
        yield line(f"turned by {join_words(outlet.switches)}", indent=8, hang=2)
    for place in outlet.places:
        where = f"{join_words(place.terminals)}: " if len(outlet.places) > 1 else ""
        for position in place.positions:
            switches = ", ".join(f"{name} {word}" for name, word in position.switches)
            words = f"{switches}: {position.seen}" if switches else position.seen
            yield line(f"{where}{words}", indent=8, hang=2)
    if loaded is not None:
        for at in at_outlet(loaded, outlet.device):
            yield line(outlet_in_words(at), indent=8, hang=2)


def _flowing(stop: Stop, wiring: Wiring, loaded: Loaded) -> Iterator[Line]:
    for cable in stop.cables:
        found = [conductor_in_words(each) for each in in_cable(loaded, wiring, cable)]
        if found:
            yield line(f"flowing: {'; '.join(found)}", indent=4, hang=4)
