"""Values in base units, written in a unit of the trade."""

from collections.abc import Mapping

from linter.text import write_number
from linter.units.dimensions import (
    AREA,
    CURRENT,
    FORCE,
    LENGTH,
    NUMBER,
    POWER,
    RESISTANCE,
    RESISTANCE_PER_LENGTH,
    TEMPERATURE,
    TORQUE,
    VOLTAGE,
    VOLUME,
    Dimension,
    quotient_of,
)
from linter.units.trade import unit_named
from linter.units.wire import LARGEST, awg_area, awg_name

UnitChoice = Mapping[Dimension, str]

METRIC: UnitChoice = {
    NUMBER: "",
    LENGTH: "mm",
    AREA: "mm2",
    VOLUME: "mL",
    CURRENT: "A",
    VOLTAGE: "V",
    POWER: "W",
    RESISTANCE: "ohm",
    RESISTANCE_PER_LENGTH: "ohm/km",
    TEMPERATURE: "C",
    FORCE: "N",
    TORQUE: "N m",
}
IMPERIAL: UnitChoice = {
    **METRIC,
    LENGTH: "in",
    AREA: "AWG",
    VOLUME: "in3",
    RESISTANCE_PER_LENGTH: "ohm/kft",
    TEMPERATURE: "F",
    FORCE: "lbf",
    TORQUE: "lbf in",
}
# One unit does not suit a wire and a floor, a setback and a run: from this size on, another.
_FROM = {LENGTH: 3.0, AREA: 0.01}
_LARGER = {"mm": "m", "in": "ft in"}
_INCHES_IN_A_FOOT = 12
_INCH = 0.0254


def write_quantity(value: float, dimension: Dimension, unit: str) -> str:
    """The value, given in base units, as a short decimal in `unit`.

    Raises `ValueError` where `unit` is no unit of the dimension.

    >>> write_quantity(0.1524, LENGTH, "in"), write_quantity(303.15, TEMPERATURE, "C")
    ('6 in', '30 C')
    >>> write_quantity(awg_area(12), AREA, "AWG"), write_quantity(2.5e-6, AREA, "AWG")
    ('12 AWG', '2.5 mm2')
    """
    if dimension == AREA and unit == "AWG":
        return _wire_size(value)
    if dimension == LENGTH and unit == "ft in":
        return _feet_and_inches(value)
    if dimension == NUMBER and not unit:
        return write_number(value)
    known = unit_named(unit)
    if known is None or known.dimension != dimension:
        raise ValueError(f'"{unit}" is no unit of {dimension}')
    return f"{write_number(known.from_base(value))} {unit}"


def write_in(value: float, dimension: Dimension, choice: UnitChoice = METRIC) -> str:
    """The value in the unit that `choice` has for its dimension, or in the larger one beside it.

    >>> write_in(0.02, LENGTH), write_in(18.0, LENGTH), write_in(18.0, LENGTH, IMPERIAL)
    ('20 mm', '18 m', '59 ft 0.661 in')
    >>> write_in(33.0, POWER / AREA), write_in(32.2917312, POWER / AREA, IMPERIAL)
    ('33 W/m2', '3 W/ft2')
    """
    unit = choice.get(dimension)
    if unit is None:
        unit = _quotient(dimension, choice)
        return write_quantity(value, dimension, unit) if unit else write_number(value)
    if dimension in _FROM and abs(value) >= _FROM[dimension]:
        unit = _floor(choice) if dimension == AREA else _LARGER.get(unit, unit)
    return write_quantity(value, dimension, unit)


def _floor(choice: UnitChoice) -> str:
    """The unit of floors, which goes with that of lengths: wire may be in AWG everywhere."""
    return "ft2" if choice.get(LENGTH) in ("in", "ft") else "m2"


def _wire_size(area: float) -> str:
    name = awg_name(area)
    if name is not None:
        return f"{name} AWG"
    return write_quantity(area, AREA, "kcmil" if area > awg_area(LARGEST) else "mm2")


def _feet_and_inches(length: float) -> str:
    sign, inches = ("-", -length) if length < 0 else ("", length)
    inches = round(inches / _INCH, 3)
    feet, left = divmod(inches, _INCHES_IN_A_FOOT)
    parts = [f"{write_number(feet)} ft"] if feet else []
    if left or not feet:
        parts.append(f"{write_number(left)} in")
    return sign + " ".join(parts)


def _quotient(dimension: Dimension, choice: UnitChoice) -> str:
    """The unit of one dimension per another: of floors rather than of wires, metric otherwise."""
    parts = quotient_of(dimension)
    if parts is None:
        return ""
    floor, power = _floor(choice), choice.get(POWER, "W")
    base = {**METRIC, LENGTH: "m", AREA: floor, POWER: power, VOLUME: "m3", TEMPERATURE: "K"}
    return f"{base[parts[0]]}/{base[parts[1]]}"
