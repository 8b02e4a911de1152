"""Panels, their breakers, and the circuits that begin at them."""

from typing import NamedTuple

from pydantic import Field

from linter.job.boxes import MakeUp
from linter.job.stated import CircuitId, PanelId, RoomId, Stated
from linter.job.values import Count, Current, Length, OnPlan, YesNo


class BreakerRef(NamedTuple):
    """A breaker, by its panel and its (first) space."""

    panel: PanelId
    space: int

    def __str__(self) -> str:
        return f"{self.panel} {self.space}"


class Breaker(Stated):
    """A breaker of one pole or of several; `leg` is stated only where the space does not tell it.

    `protection` holds "ground-fault", "arc-fault", both or neither; None is unknown.
    """

    panel: PanelId
    space: Count
    rating: Current | None = None
    poles: Count = 1
    protection: tuple[str, ...] | None = None
    serves: str | None = None
    tied_to: tuple[int, ...] | None = ()
    common_trip: YesNo | None = None
    leg: str | None = None
    listed: YesNo | None = None
    arc_fault_type: str | None = None
    note: str | None = None

    @property
    def spaces(self) -> tuple[int, ...]:
        """The spaces it takes, first pole first: spaces of one side are numbered by twos."""
        return tuple(self.space + 2 * pole for pole in range(self.poles))


class Panel(Stated):
    """A panel; `breakers` by their first space, in file order.

    `legs` is "alternate by rows" where two spaces that face each other are on one leg, and the next
    two on the other.
    """

    name: PanelId
    room: RoomId | None = None
    at: OnPlan | None = None
    main: Current | None = None
    spaces: Count | None = None
    directory: YesNo | None = None
    legs: str | None = None
    working_width: Length | None = None
    working_depth: Length | None = None
    role: str | None = None
    neutral_bonded: YesNo | None = None
    handle_height: Length | None = None
    working_height: Length | None = None
    clear: YesNo | None = None
    lit: YesNo | None = None
    reachable: YesNo | None = None
    main_backfed: YesNo | None = None
    main_held: YesNo | None = None
    surge_protector: YesNo | None = None
    weathertight_entries: YesNo | None = None
    in_fire_separation: YesNo | None = None
    torque_recorded: YesNo | None = None
    neutrals_single: YesNo | None = None
    make_up: MakeUp | None = None
    breakers: dict[int, Breaker] = Field(default_factory=dict)
    note: str | None = None


class Circuit(Stated):
    """A branch circuit: the breakers it begins at, and its use.

    `existing` says that it stood before this job; the two fields after it what the job adds.
    """

    name: CircuitId
    breakers: tuple[BreakerRef, ...]
    use: str | None = None
    existing: YesNo | None = False
    added_length: Length | None = None
    adds_outlets: YesNo | None = None
    note: str | None = None
