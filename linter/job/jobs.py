"""The whole of a job."""

from pydantic import Field

from linter.job.boxes import Box
from linter.job.cables import Cable
from linter.job.dwelling import Appliance, Room, Run, Supply
from linter.job.panel import Circuit, Panel
from linter.job.passages import Door, Stair
from linter.job.products import Products
from linter.job.raceways import Raceway
from linter.job.records import LookedAt, Reading
from linter.job.service import Electrode, Pipe, Service, WholeDwelling
from linter.job.site import Site
from linter.job.stated import ApplianceId, BoxId, CableId, CircuitId, PanelId, RoomId, Stated


class Job(Stated):
    """A job as its file states it, every mapping in file order."""

    name: str
    pack: str | None = None
    layers: tuple[str, ...] = ()
    stage: str | None = None
    permit_date: str | None = None
    locality: str | None = None
    notes: str | None = None
    supplies: dict[str, Supply]
    dwelling: WholeDwelling
    service: Service | None = None
    electrodes: dict[str, Electrode] = Field(default_factory=dict)
    pipes: dict[str, Pipe] = Field(default_factory=dict)
    site: Site
    raceways: dict[str, Raceway] = Field(default_factory=dict)
    panels: dict[PanelId, Panel] = Field(default_factory=dict)
    circuits: dict[CircuitId, Circuit] = Field(default_factory=dict)
    rooms: dict[RoomId, Room] = Field(default_factory=dict)
    boxes: dict[BoxId, Box] = Field(default_factory=dict)
    cables: dict[CableId, Cable] = Field(default_factory=dict)
    appliances: dict[ApplianceId, Appliance] = Field(default_factory=dict)
    walls: dict[str, Run] = Field(default_factory=dict)
    counters: dict[str, Run] = Field(default_factory=dict)
    stairs: dict[str, Stair] = Field(default_factory=dict)
    doors: dict[str, Door] = Field(default_factory=dict)
    products: Products
    readings: tuple[Reading, ...] = ()
    looked_at: tuple[LookedAt, ...] = ()

    @property
    def usual_supply(self) -> Supply:
        """The supply that is said to be the usual one, or the first."""
        supplies = list(self.supplies.values())
        return next((each for each in supplies if each.is_usual), supplies[0])
