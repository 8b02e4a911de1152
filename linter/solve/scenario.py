"""What is on, in which setting of the switches, on which supply, with which faults."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import Enum
from typing import TYPE_CHECKING, NamedTuple, TypeAlias

if TYPE_CHECKING:
    from linter.wiring.model import Role

# Kelvin; 75 C, what printed tables of the resistance of wires in use mostly take.
WARM = 348.15


class Constant(Enum):
    """What of a load stays as it is when its voltage changes."""

    IMPEDANCE = "impedance"
    POWER = "power"


class Draw(NamedTuple):
    """A load at an outlet: watts (or volt-amperes) at its rated volts.

    `between` names two terminals by id; left out, the outlet's hot and neutral, or its two hots
    where it has no neutral.
    """

    name: str
    outlet: str
    watts: float
    volts: float
    constant: Constant = Constant.IMPEDANCE
    between: tuple[str, str] | None = None


def draw_of_ohms(
    name: str, outlet: str, ohms: float, between: tuple[str, str] | None = None
) -> Draw:
    """A load of that resistance.

    >>> draw_of_ohms("lamp", "porch-light", 144.0).watts * 144
    1.0
    """
    return Draw(name, outlet, 1 / ohms, 1.0, Constant.IMPEDANCE, between)


class Open(NamedTuple):
    """A conductor is off at a wire end or pigtail; elsewhere, the conductors that feed the place.

    `at` names a wire end, pigtail, joint, terminal, box or device; a name of both is the box. What
    feeds a joint is what leads to the panel; the others stay joined, as when a neutral is lost
    upstream. `role` picks among the joints of a box or device; a hot may be a switched one or a
    traveller.
    """

    at: str
    role: Role | None = None


class Apart(NamedTuple):
    """All that a joint holds, or that ends on a terminal, comes apart."""

    at: str


class Loose(NamedTuple):
    """The conductors that `Open` would take off still touch, through a resistance in ohms."""

    at: str
    ohms: float
    role: Role | None = None


class TakenOut(NamedTuple):
    """A device is off its wires; what ended on a terminal of it ends apart."""

    device: str


class OnLeg(NamedTuple):
    """A breaker is on that leg ("A" or "B", its first pole), whatever its space says."""

    panel: str
    space: int
    leg: str


class Touching(NamedTuple):
    """Two places touch through a resistance in ohms, such as a hot and the case of an appliance."""

    one: str
    other: str
    ohms: float


class SupplyNeutralLost(NamedTuple):
    """The neutral of the supply is open before the panel; its earth electrode is left out."""


Fault: TypeAlias = Open | Apart | Loose | TakenOut | OnLeg | Touching | SupplyNeutralLost


@dataclass(frozen=True, slots=True)
class Scenario:
    """One state of the whole wiring.

    `supply` names one of the job, or is the usual one. `on` names the appliances that draw their
    load, all where it is None; `also` is drawn besides. `switches` gives positions by device ("on",
    "off", "throw 1", "throw 2"); the others are on, or in throw 1. `temperature`, in kelvin, is
    that of all conductors. `constant` is what appliances of the job keep.
    """

    supply: str | None = None
    on: frozenset[str] | None = None
    also: tuple[Draw, ...] = ()
    switches: tuple[tuple[str, str], ...] = ()
    faults: tuple[Fault, ...] = ()
    temperature: float = WARM
    constant: Constant = Constant.IMPEDANCE


EVERYTHING_ON = Scenario()


def with_fault(scenario: Scenario, *faults: Fault) -> Scenario:
    """The same scenario with these faults besides."""
    return replace(scenario, faults=(*scenario.faults, *faults))
