"""The dwelling as a whole with its floors; the service, its electrodes, the piping bonded to it."""

from pydantic import Field

from linter.job.stated import RoomId, Stated
from linter.job.values import Area, Count, Current, Length, Power, Resistance, Temperature, YesNo


class Floor(Stated):
    """A floor: its area by outside and by inside dimensions."""

    name: str
    level: str | None = None
    area: Area | None = None
    inside_area: Area | None = None
    left_out: YesNo | None = None
    note: str | None = None


class WholeDwelling(Stated):
    """The dwelling as a whole; `measured_demand` is the highest load that was measured."""

    type: str | None = None
    outside_area: Area | None = None
    inside_area: Area | None = None
    floors: dict[str, Floor] = Field(default_factory=dict)
    existing: YesNo | None = None
    fuel_burning: YesNo | None = None
    measured_demand: Power | None = None
    measured_over: str | None = None
    note: str | None = None


class Service(Stated):
    """The service: conductors, disconnects, bonds and protection; its rating is the supply's."""

    in_job: YesNo | None = None
    conductor: Area | None = None
    material: str | None = None
    neutral: Area | None = None
    terminal_temperature: Temperature | None = None
    disconnects: Count | None = None
    grouped: YesNo | None = None
    own_enclosures: YesNo | None = None
    disconnect_place: str | None = None
    disconnect_room: RoomId | None = None
    disconnect_reachable: YesNo | None = None
    inside_length: Length | None = None
    emergency_disconnect: YesNo | None = None
    emergency_marked: YesNo | None = None
    surge_protector: str | None = None
    surge_current: Current | None = None
    main_bonding_jumper: YesNo | None = None
    electrode_conductor: Area | None = None
    electrode_conductor_material: str | None = None
    electrode_conductor_unbroken: YesNo | None = None
    electrode_conductor_in_metal: YesNo | None = None
    raceway_bonded: YesNo | None = None
    ringed_knockouts: YesNo | None = None
    bonding_bushings: YesNo | None = None
    bonding_terminals: Count | None = None
    footing_steel: YesNo | None = None
    services: Count | None = None
    drop_over_ground: Length | None = None
    drop_over_drive: Length | None = None
    drop_over_roof: Length | None = None
    attachment_height: Length | None = None
    note: str | None = None


class Electrode(Stated):
    """An electrode, and the conductor that joins it to the others."""

    name: str
    type: str | None = None
    length: Length | None = None
    in_earth: Length | None = None
    flush: YesNo | None = None
    distance_to_next: Length | None = None
    joined: YesNo | None = None
    conductor: Area | None = None
    material: str | None = None
    clamp_listed: YesNo | None = None
    resistance: Resistance | None = None
    distance_inside: Length | None = None
    note: str | None = None


class Pipe(Stated):
    """A system of piping, and the conductor that bonds it."""

    name: str
    carries: str | None = None
    material: str | None = None
    bonded: YesNo | None = None
    bond: Area | None = None
    bond_material: str | None = None
    bond_can_be_reached: YesNo | None = None
    bridged: YesNo | None = None
    metal_in_earth: Length | None = None
    note: str | None = None
