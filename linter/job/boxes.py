"""Boxes, what they are and hold, and their make-up where it is stated joint by joint."""

from linter.job.devices import AnyDevice
from linter.job.stated import BoxId, ProductId, RoomId, Stated
from linter.job.values import Count, Length, OnPlan, OpeningSize, Volume, Weight, YesNo
from linter.units import VOLUME, Quantity


class StatedJoint(Stated):
    """Wires and terminals joined together: `k1.black`, `sink-left.hot`, `sink-left.bond`.

    The last full stop parts the cable from the colour, the device from its terminal. In a panel:
    `5.hot`, `5.hot 2`, `5.neutral` of the breaker at space 5, `bar.neutral`, `bar.bond`, and
    `feed.hot`, `feed.hot 2` where a feeder comes in.
    """

    of: tuple[str, ...]
    connector: ProductId | None = None


class StatedLanding(Stated):
    """Wires put straight on a terminal."""

    terminal: str
    wires: tuple[str, ...]


class MakeUp(Stated):
    """How the conductors in a box or panel are joined, where it is stated joint by joint."""

    joints: tuple[StatedJoint, ...] = ()
    landings: tuple[StatedLanding, ...] = ()
    capped: tuple[str, ...] = ()
    left_open: tuple[str, ...] = ()


class Box(Stated):
    """A box; what is rare (studs, hickeys, terminal blocks, added volume) is nought where left out.

    `clamps` is a number of internal clamps (0 where the file says none), "internal" (one for each
    cable that enters) or "external".
    """

    name: BoxId
    room: RoomId
    at: OnPlan | None = None
    form: str | None = "device"
    gangs: Count = 1
    material: str | None = None
    volume: Volume | None = None
    trade_size: str | None = None
    added_volume: Volume | None = Quantity(0.0, VOLUME)
    clamps: int | str | None = None
    depth: Length | None = None
    opening: OpeningSize | None = None
    set_back: Length | None = None
    surface: str | None = None
    height: Length | None = None
    open_holes: Count | None = None
    can_be_reached: YesNo | None = None
    cover: YesNo | None = None
    bond_screw: YesNo | None = None
    made_up: YesNo | None = None
    fan_rated: YesNo | None = None
    luminaire_rated: YesNo | None = None
    wet_rated: YesNo | None = None
    first_outlet_mark: YesNo | None = None
    in_fire_separation: YesNo | None = None
    fire_rated: YesNo | None = None
    mounted: str | None = "wall"
    floor_rated: YesNo | None = None
    fastened_by: str | None = None
    added_support: YesNo | None = None
    holds_up_to: Weight | None = None
    low_voltage: YesNo | None = False
    divider: YesNo | None = None
    fixture_studs: Count | None = 0
    hickeys: Count | None = 0
    terminal_blocks: Count | None = 0
    holds: tuple[AnyDevice, ...] = ()
    make_up: MakeUp | None = None
    connector: ProductId | None = None
    note: str | None = None
