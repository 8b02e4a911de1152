"""Where conductors end in a panel: hots on breakers, neutrals and bonds on their bars."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.job.stated import PanelId
from linter.wiring.circuits import Pole, poles_of
from linter.wiring.model import PanelLanding, Role, Spot, WireEnd

if TYPE_CHECKING:
    from collections.abc import Iterable

    from linter.job.jobs import Job

_GROUND_FAULT = "ground-fault"


def panel_landings_of(job: Job, ends: Iterable[WireEnd]) -> dict[str, PanelLanding]:
    """Where each wire end in a panel is landed; those left out stay open.

    A neutral goes to the breaker itself where that is of the ground-fault kind, else to the bar.
    """
    poles = {str(name): poles_of(job, circuit) for name, circuit in job.circuits.items()}
    landings = {}
    for end in ends:
        landing = _landing(job, end, poles.get(end.use.circuit or "", ()))
        if landing is not None:
            landings[end.id] = landing
    return landings


def _landing(job: Job, end: WireEnd, poles: tuple[Pole, ...]) -> PanelLanding | None:
    panel = end.box
    here = [pole for pole in poles if pole.panel == panel]
    match end.use.role:
        case Role.BOND:
            return PanelLanding(panel, Spot.BOND_BAR)
        case Role.NEUTRAL if poles:
            protecting = [pole for pole in here if _is_ground_fault(job, pole)]
            if protecting:
                return PanelLanding(panel, Spot.BREAKER_NEUTRAL, protecting[0].space)
            return PanelLanding(panel, Spot.NEUTRAL_BAR)
        case Role.HOT if poles and not here:
            return PanelLanding(panel, Spot.FEED, None, end.use.pole)
        case Role.HOT if end.use.pole is not None and end.use.pole < len(poles):
            pole = poles[end.use.pole]
            return PanelLanding(panel, Spot.BREAKER, pole.space, pole.pole)
        case _:
            return None


def _is_ground_fault(job: Job, pole: Pole) -> bool:
    breaker = job.panels[PanelId(pole.panel)].breakers[pole.space]
    return _GROUND_FAULT in (breaker.protection or ())
