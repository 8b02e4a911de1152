"""The loads and faults that `precover trace` is given, read from the words of its options."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from linter.cli.wrong_use import WrongUse
from linter.job.stated import PanelId
from linter.solve import (
    Apart,
    Draw,
    Loose,
    OnLeg,
    Open,
    Scenario,
    SupplyNeutralLost,
    TakenOut,
    Touching,
)
from linter.text import nearest
from linter.units import POWER, RESISTANCE, NotAQuantity, read_quantity
from linter.wiring.model import Role

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from linter.job.jobs import Job
    from linter.solve.scenario import Fault
    from linter.units import Dimension

EVERYTHING = "everything"
_ROLES = {"hot": Role.HOT, "neutral": Role.NEUTRAL, "bond": Role.BOND}
_TO_NEUTRAL = 120.0
_OPEN = re.compile(r"open (?:(hot|neutral|bond) )?at (\S+(?: \S+)?)")
_LOOSE = re.compile(r"loose (?:(hot|neutral|bond) )?at (\S+), (.+)")
_APART = re.compile(r"apart at (\S+)")
_TAKEN_OUT = re.compile(r"(\S+) taken out")
_ON_LEG = re.compile(r"breaker (\d+)(?: of (\S+))? on leg (A|B)")
_TOUCHING = re.compile(r"(.+?) touching (.+?)(?:, (.+))?")
_SUPPLY = "supply neutral lost"
_AT = re.compile(r"(.+) at (\S+)")
HARD = 0.01  # ohms, of a touch of which no resistance is said

FAULTS = (
    '"open neutral at X", "open hot at X", "open bond at X" (a joint, a box, a device), '
    '"loose neutral at X, 2 ohm", "apart at JOINT", "X taken out", "breaker 3 on leg A", '
    '"X touching Y", "supply neutral lost"'
)


def scenario_of(job: Job, loads: Sequence[str], faults: Sequence[str], supply: str) -> Scenario:
    """The scenario that the words describe, with its faults.

    Raises `WrongUse` for words that name no load, no fault or no supply of the job.
    """
    if supply and supply not in job.supplies:
        names = list(job.supplies)
        expected = f"one of: {', '.join(names)}"
        raise WrongUse(f'"{supply}" is not a supply of this job.', expected, nearest(supply, names))
    named = [each for each in loads if each != EVERYTHING]
    draws = tuple(draw for each in named if (draw := _draw(job, each)) is not None)
    appliances = frozenset(each for each in named if each in job.appliances)
    on = None if EVERYTHING in loads or not loads else appliances
    read = tuple(fault_of(job, each) for each in faults)
    return Scenario(supply=supply or None, on=on, also=draws, faults=read)


def _draw(job: Job, words: str) -> Draw | None:
    """A load of so many watts at an outlet; None for an appliance of the job."""
    if words in job.appliances:
        return None
    found = _AT.fullmatch(words)
    devices = [str(device.name) for box in job.boxes.values() for device in box.holds]
    if found is None or found[2] not in devices:
        names = [EVERYTHING, *map(str, job.appliances)]
        wanted = f'one of: {", ".join(names)}; or a load at an outlet, such as "1500 W at bench"'
        what = words if found is None else found[2]
        raise WrongUse(
            f'"{words}" is no load of this job.', wanted, nearest(what, devices or names)
        )
    return Draw(words, found[2], _read(found[1], POWER), _volts(job))


def _volts(job: Job) -> float:
    """The voltage from hot to neutral on the usual supply."""
    supply = job.usual_supply
    if supply.voltage is None:
        return _TO_NEUTRAL
    return supply.voltage.value / (2 if supply.kind == "split phase" else 1)


def _read(words: str, dimension: Dimension) -> float:
    try:
        return read_quantity(words, dimension).value
    except NotAQuantity as wrong:
        raise WrongUse(f'"{words}" is no quantity that is needed here.', str(wrong)) from wrong


def fault_of(job: Job, words: str) -> Fault:
    """The fault that the words name; places are looked up when the wiring is solved."""
    if words == _SUPPLY:
        return SupplyNeutralLost()
    for pattern, make in _PATTERNS:
        found = pattern.fullmatch(words)
        if found is not None:
            return make(job, found)
    raise WrongUse(f'"{words}" is not a fault.', f"one of: {FAULTS}")


def _open(_: Job, found: re.Match[str]) -> Fault:
    return Open(found[2], _ROLES.get(found[1] or ""))


def _loose(_: Job, found: re.Match[str]) -> Fault:
    return Loose(found[2], _read(found[3], RESISTANCE), _ROLES.get(found[1] or ""))


def _touching(_: Job, found: re.Match[str]) -> Fault:
    return Touching(found[1], found[2], _read(found[3], RESISTANCE) if found[3] else HARD)


def _on_leg(job: Job, found: re.Match[str]) -> Fault:
    panel, space = found[2] or str(next(iter(job.panels), "")), int(found[1])
    known = job.panels.get(PanelId(panel))
    if known is None or space not in known.breakers:
        spaces = "" if known is None else f"one of: {', '.join(map(str, known.breakers))}"
        raise WrongUse(f"No breaker of this job stands at {space} of {panel}.", spaces)
    return OnLeg(panel, space, found[3])


# In this order: the first that fits is meant.
_Reading = tuple[re.Pattern[str], "Callable[[Job, re.Match[str]], Fault]"]
_PATTERNS: tuple[_Reading, ...] = (
    (_OPEN, _open),
    (_LOOSE, _loose),
    (_APART, lambda _, found: Apart(found[1])),
    (_ON_LEG, _on_leg),
    (_TAKEN_OUT, lambda _, found: TakenOut(found[1])),
    (_TOUCHING, _touching),
)
