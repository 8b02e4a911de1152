"""What a box holds: devices on yokes, luminaires, alarms, outlets; told apart by `kind`."""

from typing import Annotated, Literal

from pydantic import Field

from linter.job.stated import BoxId, CableId, CircuitId, DeviceId, Stated
from linter.job.values import Area, Count, Current, Length, Weight, YesNo

_SWITCHED_HALF = "switched half of "


class Device(Stated):
    """What every device has.

    `through` is "pigtail" where conductors that go on are joined in the box, with a pigtail to the
    device, and "device" where they go on through its terminals; `neutral_through` says it of the
    neutral alone and follows `through` where it is left out.
    """

    kind: str
    name: DeviceId
    box: BoxId
    circuit: CircuitId | None = None
    gangs: Count | None = None
    serves: str | None = None
    height: Length | None = None
    distance_to_sink: Length | None = None
    distance_to_tub: Length | None = None
    height_over_tub: Length | None = None
    readily_accessible: YesNo | None = None
    protection: tuple[str, ...] | None = ()
    load: tuple[CableId, ...] | None = ()
    through: str | None = "pigtail"
    neutral_through: str | None = None
    note: str | None = None


class Receptacle(Device):
    """A receptacle; `split` is "two circuits" or "switched half of X"."""

    kind: Literal["receptacle"] = "receptacle"
    rating: Current | None = None
    depth: Length | None = None
    terminals: str | None = None
    wires_under_screw: Count | None = None
    aluminium_rated: YesNo | None = None
    single: YesNo | None = False
    tamper_resistant: YesNo | None = None
    weather_resistant: YesNo | None = None
    cover_in_use: YesNo | None = None
    appliance_space: YesNo | None = False
    mounted: str | None = "in the wall"
    path_to_sink: str | None = "in the room"
    from_grade: YesNo | None = None
    split: str | None = None

    @property
    def switched_half_of(self) -> str | None:
        """The X of "switched half of X": what its switch controls; None where no half is so."""
        _, found, name = (self.split or "").partition(_SWITCHED_HALF)
        return name if found else None


class Switch(Device):
    """A switch or dimmer; `common` says which conductor its common terminal has."""

    kind: Literal["switch"] = "switch"
    type: str = "single pole"
    controls: str | None = None
    rating: Current | None = None
    depth: Length | None = None
    terminals: str | None = None
    wires_under_screw: Count | None = None
    aluminium_rated: YesNo | None = None
    common: str | None = None
    neutral_can_be_added: YesNo | None = None
    other_location_has_neutral: YesNo | None = None
    in_tub_space: YesNo | None = None
    control: str | None = "by hand"
    at_entry: YesNo | None = None


class FixtureWires(Stated):
    """The wires that a luminaire brings into the box."""

    count: Count | None = None
    size: Area | None = None


class WithCanopy(Device):
    """What may bring wires of its own into the box."""

    fixture_wires: FixtureWires | None = None
    domed_canopy: YesNo | None = None


class Fixture(WithCanopy):
    """A luminaire, fan or alarm; `senses` belongs to alarms, what follows it to the others."""

    kind: Literal["luminaire", "fan", "alarm"]
    senses: tuple[str, ...] | None = None
    battery: YesNo | None = None
    interconnected: YesNo | None = None
    mounting: str | None = None
    lamp: str | None = None
    enclosed: YesNo | None = None
    for_storage_space: YesNo | None = None
    clear_of_storage: Length | None = None
    for_insulation: YesNo | None = None
    thermally_protected: YesNo | None = None
    in_insulation: YesNo | None = None
    clear_of_combustible: Length | None = None
    clear_of_insulation: Length | None = None
    weight: Weight | None = None
    held_by_building: YesNo | None = None
    marked_for: str | None = None
    asks_ground_fault: YesNo | None = None
    disconnect: YesNo | None = None
    in_place: YesNo | None = None


class OtherDevice(WithCanopy):
    """Another thing fixed to the box, such as a ground-fault device without a receptacle."""

    kind: Literal["other"] = "other"


class ApplianceOutlet(Device):
    """The outlet of an appliance that is wired in, without a plug."""

    kind: Literal["appliance outlet"] = "appliance outlet"


AnyDevice = Annotated[
    Receptacle | Switch | Fixture | ApplianceOutlet | OtherDevice, Field(discriminator="kind")
]
