"""What was tested and looked at: by whom, when, with which result."""

from linter.job.stated import CircuitId, DeviceId, Stated
from linter.job.values import Current, Resistance, Voltage

OUTCOMES = ("as it should be", "to be put right", "not applicable")
AS_IT_SHOULD_BE, TO_BE_PUT_RIGHT, NOT_APPLICABLE = OUTCOMES


class Reading(Stated):
    """A test reading at an outlet or of a circuit; `test` says which of the results it has.

    polarity: `result`; continuity: `between`, `resistance`; ground-fault trip: `current`,
    `time_ms`, `result`; arc-fault trip: `result`;
    insulation resistance: `between`, `resistance`, `voltage`; voltage: `between`, `voltage`.
    """

    test: str
    outlet: DeviceId | None = None
    circuit: CircuitId | None = None
    result: str | None = None
    between: tuple[str, ...] | None = None
    resistance: Resistance | None = None
    voltage: Voltage | None = None
    current: Current | None = None
    time_ms: float | None = None
    by: str | None = None
    on: str | None = None
    note: str | None = None


class LookedAt(Stated):
    """What someone looked at, that only an eye can tell.

    `item` names an item of the walk-through of the rules; `at` a thing, a box or a room, or it
    holds for all things that the item is about. `outcome` is one of `OUTCOMES`, `found` says more.
    """

    item: str
    at: str | None = None
    outcome: str | None = None
    by: str | None = None
    on: str | None = None
    found: str | None = None
