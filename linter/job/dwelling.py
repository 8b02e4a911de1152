"""Supplies, rooms, appliances; runs of wall and counter with the positions of their outlets."""

from typing import Literal

from linter.job.stated import ApplianceId, DeviceId, RoomId, Stated
from linter.job.tubs import Whirlpool
from linter.job.values import (
    Area,
    Count,
    Current,
    Length,
    OnPlan,
    Power,
    Temperature,
    Voltage,
    YesNo,
)


class Supply(Stated):
    """A supply that may feed the panel at some time; `is_usual` is the file's key `usual`."""

    name: str
    kind: str | None = None
    voltage: Voltage | None = None
    rating: Current | None = None
    earthing: str | None = None
    is_usual: bool = False
    note: str | None = None


class Basin(Stated):
    """A basin: the receptacle nearest to it, and how far that is from its outside edge."""

    outlet: DeviceId | None = None
    distance: Length | None = None
    below_top: Length | None = None


class Room(Stated):
    """A room or a place outdoors; `opens_to` is the room that its door leads to."""

    name: RoomId
    at: OnPlan | None = None
    size: OnPlan | None = None
    use: str | None = None
    area: Area | None = None
    length: Length | None = None
    storey: str | None = None
    opens_to: RoomId | None = None
    counter: YesNo | None = None
    basins: tuple[Basin, ...] | None = None
    vehicle_bays: Count | None = None
    side: str | None = None
    from_grade: YesNo | None = None
    from_inside: YesNo | None = None
    attached: YesNo | None = None
    distance_to_dwelling: Length | None = None
    storage: YesNo | None = None
    lit_by: tuple[DeviceId, ...] = ()
    sink: YesNo | None = None
    tub: YesNo | None = None
    whirlpool: Whirlpool | Literal[False] | None = False
    finished: YesNo | None = None
    damp: YesNo | None = None
    wet: YesNo | None = None
    outdoors: YesNo | None = None
    ambient: Temperature | None = None
    note: str | None = None


class Appliance(Stated):
    """An appliance or a fixed load; `outlets` are names of devices.

    `largest_breaker` is False where its nameplate gives no limit.
    """

    name: ApplianceId
    outlets: tuple[DeviceId, ...] | None = None
    load: Power | None = None
    voltage: Voltage | None = None
    current: Current | None = None
    continuous: YesNo | None = None
    largest_breaker: Current | Literal[False] | None = None
    fixed: YesNo | None = None
    cord_and_plug: YesNo | None = None
    own_circuit: YesNo | None = None
    type: str | None = None
    motor: YesNo | None = None
    neutral: YesNo | None = None
    existing: YesNo | None = False
    controls: Count | None = 1
    interlocked: YesNo | None = False
    smallest_ampacity: Current | None = None
    cord_length: Length | None = None
    distance_to_outlet: Length | None = None
    service_receptacle: Length | None = None
    note: str | None = None


class OutletAt(Stated):
    """An outlet, its distance from the beginning of the run, and one in the floor from the wall."""

    outlet: DeviceId
    at: Length | None = None
    from_wall: Length | None = None


class Break(Stated):
    """A door, fireplace, sink or range that interrupts a run; `behind`: the counter behind it."""

    what: str | None = None
    at: Length | None = None
    width: Length | None = None
    behind: Length | None = None


class Run(Stated):
    """A run of wall or counter, measured along its foot or its rear edge from one end.

    A peninsula is measured from the wall it is joined to. `height` is that of its surface.
    """

    name: str
    room: RoomId
    kind: str | None = "along the wall"
    length: Length | None = None
    depth: Length | None = None
    height: Length | None = None
    overhang: Length | None = None
    provision: YesNo | None = None
    outlets: tuple[OutletAt, ...] | None = None
    breaks: tuple[Break, ...] = ()
    note: str | None = None
