"""Where conductors end in a panel: as stated, else hots on breakers, the rest on their bars."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.job.stated import PanelId
from linter.text import Place, Refusal
from linter.wiring.circuits import Pole, poles_of
from linter.wiring.model import UNKNOWN, Joint, PanelLanding, Role, Spot, WireEnd

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from linter.job.boxes import MakeUp
    from linter.job.jobs import Job

_GROUND_FAULT = "ground-fault"
_BARS = {
    "bar.neutral": (Spot.NEUTRAL_BAR, None),
    "bar.bond": (Spot.BOND_BAR, None),
    "feed.hot": (Spot.FEED, 0),
    "feed.hot 2": (Spot.FEED, 1),
}
_OF_BREAKER = {
    "hot": (Spot.BREAKER, 0),
    "hot 2": (Spot.BREAKER, 1),
    "neutral": (Spot.BREAKER_NEUTRAL, None),
}


class InPanels(NamedTuple):
    """Where wire ends are landed in panels, those spliced there, and names that cannot be read."""

    landings: dict[str, PanelLanding]
    joints: tuple[Joint, ...]
    refusals: tuple[Refusal, ...]


def in_panels(job: Job, ends: Sequence[WireEnd]) -> InPanels:
    """What is made up in panels; a wire end left out of all of it stays open.

    What a panel's make-up names is as stated. Of the rest, a neutral goes to the breaker itself
    where that is of the ground-fault kind, else to the bar.
    """
    poles = {str(name): poles_of(job, circuit) for name, circuit in job.circuits.items()}
    landings: dict[str, PanelLanding] = {}
    joints: list[Joint] = []
    claimed: set[str] = set()
    refusals: list[Refusal] = []
    for panel in job.panels.values():
        if panel.make_up is not None:
            here = {end.name: end for end in ends if end.box == panel.name}
            stated = _Stated(panel.name, here, panel.make_up)
            landings |= stated.landings
            joints += stated.joints
            claimed |= stated.claimed
            refusals += stated.refusals
    for end in ends:
        landing = _landing(job, end, poles.get(end.use.circuit or "", ()))
        if landing is not None and end.id not in claimed:
            landings[end.id] = landing
    return InPanels(landings, tuple(joints), tuple(refusals))


class _Stated:
    """What the make-up of one panel states: landings, splices, and all the wires it speaks of."""

    def __init__(self, panel: str, here: dict[str, WireEnd], make_up: MakeUp) -> None:
        self._panel, self._here = panel, here
        self.landings: dict[str, PanelLanding] = {}
        self.joints: list[Joint] = []
        self.refusals: list[Refusal] = []
        for joint in make_up.joints:
            spots = [name for name in joint.of if _is_terminal(name)]
            wires = self._ids(name for name in joint.of if name not in spots)
            if len(spots) > 1:
                self.refusals.append(_two_spots(joint.place_of("of"), spots))
            elif spots:
                self.landings |= dict.fromkeys(wires, self._landing(spots[0]))
            elif wires:
                self._splice(wires, joint.connector)
        for landing in make_up.landings:
            where = self._landing(landing.terminal)
            self.landings |= dict.fromkeys(self._ids(landing.wires), where)
        spliced = [wire for joint in self.joints for wire in joint.wire_ends]
        idle = self._ids((*make_up.capped, *make_up.left_open))
        self.claimed = {*self.landings, *spliced, *idle}

    def _ids(self, names: Iterable[str]) -> list[str]:
        """The wire ends of those names; a cable of unknown sheath has none."""
        return [self._here[name].id for name in names if name in self._here]

    def _landing(self, name: str) -> PanelLanding:
        if name in _BARS:
            spot, pole = _BARS[name]
            return PanelLanding(self._panel, spot, None, pole)
        space, _, terminal = name.rpartition(".")
        spot, pole = _OF_BREAKER[terminal]
        return PanelLanding(self._panel, spot, int(space), pole)

    def _splice(self, wires: Sequence[str], connector: str | None) -> None:
        uses = {end.use for end in self._here.values() if end.id in wires}
        use = uses.pop() if len(uses) == 1 else UNKNOWN
        name = f"{self._panel}/{len(self.joints) + 1}"
        self.joints.append(Joint(name, self._panel, tuple(wires), (), use, connector, stated=True))


def _is_terminal(name: str) -> bool:
    space, _, terminal = name.rpartition(".")
    return name in _BARS or (space.isdecimal() and terminal in _OF_BREAKER)


def _two_spots(place: Place, spots: Sequence[str]) -> Refusal:
    return Refusal(
        place,
        f"A joint in a panel goes to {len(spots)} places: {', '.join(spots)}",
        "one breaker or bar, or none",
        "write one joint for each breaker or bar, with the conductors on it",
    )


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
