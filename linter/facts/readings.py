"""What was read with a tester, a meter or a test button: of several readings the last counts.

Once the job is energised, a reading that anyone would take then is unknown where it was not taken:
what a tester shows at a receptacle, and whether a protective device trips.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from linter.facts.given import Given
    from linter.job.jobs import Job
    from linter.job.records import Reading
    from linter.units import Quantity, Unknown

POLARITY, CONTINUITY = "polarity", "continuity"
GROUND_FAULT_TRIP, ARC_FAULT_TRIP = "ground-fault trip", "arc-fault trip"
INSULATION = "insulation resistance"

_NOT_TAKEN, _TRIPPED = "not taken", "tripped"
_ENERGISED = "energised"
_BOND = "bond"
_PLUGGED_INTO = "receptacle"
# What a bond is measured against, for its way back to the panel.
_BACK = frozenset({"earth", "neutral"})


def put_readings_at_outlet(job: Job, given: Given) -> None:
    """What a tester showed at an outlet, and the resistance of its bond back to the panel."""
    taken = _taken(job, POLARITY, outlet=given.ref)
    is_due = given.values["type"] == _PLUGGED_INTO
    given.put("polarity_reading", _result(job, given, "polarity_reading", taken, is_due=is_due))
    bonds = [each for each in _taken(job, CONTINUITY, outlet=given.ref) if is_of_bond(each)]
    given.put("bond_resistance", bonds[-1].resistance if bonds else 0.0)


def put_trips(
    job: Job, given: Given, *, outlet: str | None = None, circuit: str | None = None
) -> None:
    """Whether the protection of a device, or of a circuit at its breaker, trips when tested.

    Whether it has any is given by now.
    """
    at = "_at_panel" if circuit is not None else ""
    for fact, test, protects in (
        ("trip_reading", GROUND_FAULT_TRIP, "is_ground_fault"),
        ("arc_fault_trip_reading", ARC_FAULT_TRIP, "is_arc_fault"),
    ):
        taken = _taken(job, test, outlet=outlet, circuit=circuit)
        is_due = given.values[f"{protects}{at}"] is not False
        given.put(fact, _result(job, given, fact, taken, is_due=is_due))
    trips = _taken(job, GROUND_FAULT_TRIP, outlet=outlet, circuit=circuit)
    given.put("trip_current", _stated(trips, "current"))
    given.put("trip_time_ms", _stated(trips, "time_ms"))


def put_insulation(job: Job, given: Given) -> None:
    """The lowest resistance of the insulation of a circuit: of each two, what was read last."""
    last = {
        frozenset(each.between or ()): each for each in _taken(job, INSULATION, circuit=given.ref)
    }
    given.put("insulation_readings", len(last))
    given.put("insulation_resistance", _lowest(last.values()))


def is_of_bond(reading: Reading) -> bool:
    """Whether a test of continuity was of a bond: between it and the earth or the neutral."""
    between = set(reading.between or ())
    return _BOND in between and not between.isdisjoint(_BACK)


def _taken(
    job: Job, test: str, *, outlet: str | None = None, circuit: str | None = None
) -> list[Reading]:
    return [
        each
        for each in job.readings
        if each.test == test
        and each.outlet == outlet
        and (outlet is not None or each.circuit == circuit)
    ]


def _result(
    job: Job, given: Given, fact: str, taken: Sequence[Reading], *, is_due: bool
) -> str | Unknown:
    """The word of the last reading; without one it is not taken, or unknown once it is due.

    What took a time to trip has tripped.
    """
    if taken:
        last = taken[-1]
        trip = _TRIPPED if last.time_ms is not None else None
        return last.result or trip or given.own_unknown(fact)
    return given.own_unknown(fact) if is_due and job.stage == _ENERGISED else _NOT_TAKEN


def _stated(taken: Sequence[Reading], field: str) -> Quantity | float | None:
    """What the last reading states of a field; nothing of it where it states none."""
    if not taken or not taken[-1].says(field):
        return 0.0
    value: Quantity | float | None = getattr(taken[-1], field)
    return value


def _lowest(readings: Iterable[Reading]) -> Quantity | float | None:
    values = [each.resistance for each in readings]
    known = [each for each in values if each is not None]
    if len(known) < len(values):
        return None
    return min(known, key=lambda each: each.value, default=0.0)  # none was read
