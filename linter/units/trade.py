"""The units of the trade, as they are written in job files and packs.

Each unit has one name, by which it is written back, and the spellings people use for it.
"""

import math
from functools import cache
from typing import NamedTuple

from linter.units.dimensions import (
    AREA,
    CURRENT,
    FORCE,
    LENGTH,
    NUMBER,
    POWER,
    RESISTANCE,
    TEMPERATURE,
    TORQUE,
    VOLTAGE,
    VOLUME,
    Dimension,
    quotient_of,
)

_INCH, _FOOT = 0.0254, 0.3048
_LITRE = 1e-3
_POUND_FORCE = 4.4482216152605
_STANDARD_GRAVITY = 9.80665
_CIRCULAR_MIL = math.pi / 4 * (_INCH / 1000) ** 2


class Unit(NamedTuple):
    """A unit: base value = number times `factor`, plus `zero` (not 0 for C and F alone)."""

    name: str
    factor: float
    dimension: Dimension
    zero: float = 0.0


# Name, size in base units, other spellings. Spaces, full stops, hyphens and "^" are left out of
# spellings before they are looked up, and capitals do not matter where no other unit is meant.
_UNITS: tuple[tuple[Dimension, tuple[tuple[str, float, str], ...]], ...] = (
    (
        LENGTH,
        (
            ("mm", 1e-3, "millimetre millimetres millimeter millimeters"),
            ("cm", 1e-2, "centimetre centimetres centimeter centimeters"),
            ("m", 1.0, "metre metres meter meters"),
            ("km", 1e3, "kilometre kilometres kilometer kilometers"),
            ("in", _INCH, 'inch inches ins "'),
            ("ft", _FOOT, "foot feet '"),
            ("kft", 1000 * _FOOT, "1000ft"),
            ("mil", _INCH / 1000, "mils"),
        ),
    ),
    (
        AREA,
        (
            ("mm2", 1e-6, "sqmm squaremillimetre squaremillimetres"),
            ("cm2", 1e-4, "sqcm"),
            ("m2", 1.0, "sqm squaremetre squaremetres squaremeter squaremeters"),
            ("in2", _INCH**2, "sqin squareinch squareinches"),
            ("ft2", _FOOT**2, "sqft squarefoot squarefeet"),
            ("kcmil", 1000 * _CIRCULAR_MIL, "mcm kcmils"),
            ("cmil", _CIRCULAR_MIL, "cmils circularmil circularmils"),
        ),
    ),
    (
        VOLUME,
        (
            ("mL", 1e-3 * _LITRE, "ml cm3 cc millilitre millilitres milliliter milliliters"),
            ("L", _LITRE, "l litre litres liter liters"),
            ("m3", 1.0, "cubicmetre cubicmetres cubicmeter cubicmeters"),
            ("mm3", 1e-9, ""),
            ("in3", _INCH**3, "cuin cubicinch cubicinches"),
            ("ft3", _FOOT**3, "cuft cubicfoot cubicfeet"),
        ),
    ),
    (
        CURRENT,
        (
            ("A", 1.0, "a amp amps ampere amperes"),
            ("mA", 1e-3, "milliamp milliamps milliampere milliamperes"),
            ("kA", 1e3, "ka kiloamp kiloamps kiloampere kiloamperes"),
        ),
    ),
    (
        VOLTAGE,
        (
            ("V", 1.0, "v volt volts"),
            ("mV", 1e-3, "millivolt millivolts"),
            ("kV", 1e3, "kv kilovolt kilovolts"),
        ),
    ),
    (
        POWER,
        (
            ("W", 1.0, "w watt watts"),
            ("VA", 1.0, "va voltampere voltamperes voltamp voltamps"),
            ("kW", 1e3, "kw kilowatt kilowatts"),
            ("kVA", 1e3, "kva"),
            ("mW", 1e-3, "milliwatt milliwatts"),
        ),
    ),
    (
        RESISTANCE,
        (
            ("ohm", 1.0, "ohms"),
            ("mohm", 1e-3, "milliohm milliohms"),
            ("kohm", 1e3, "kiloohm kilohm kilohms"),
            ("megohm", 1e6, "megohms Mohm Mohms megaohm megaohms"),
        ),
    ),
    (
        TEMPERATURE,
        (
            ("C", 1.0, "degC celsius degreesC degreesCelsius"),
            ("F", 5 / 9, "degF fahrenheit degreesF degreesFahrenheit"),
            ("K", 1.0, "kelvin"),
        ),
    ),
    (
        FORCE,
        (
            ("N", 1.0, "n newton newtons"),
            ("lbf", _POUND_FORCE, "lb lbs pound pounds poundforce"),
            # What hangs on a box is stated in kilograms and judged as the force of its weight.
            ("kg", _STANDARD_GRAVITY, "kgf kilogram kilograms"),
        ),
    ),
    (
        TORQUE,
        (
            ("N m", 1.0, "newtonmetre newtonmetres newtonmeter newtonmeters"),
            ("lbf in", _POUND_FORCE * _INCH, "inlbf lbin inlb inlbs lbsin inchpound inchpounds"),
            ("lbf ft", _POUND_FORCE * _FOOT, "ftlbf lbft ftlb ftlbs lbsft footpound footpounds"),
        ),
    ),
    (NUMBER, (("%", 0.01, "percent"),)),
)
_ZEROS = {"C": 273.15, "F": 459.67 * 5 / 9}
# In small letters or in capitals these could mean another unit (milli or mega, kilo or kelvin).
_CAPITALS_MATTER = frozenset({"m", "k", "c", "f", "ma", "mv", "mw", "mohm", "mohms"})
_WIRE_SIZE = "AWG"
_LEFT_OUT = str.maketrans("", "", " .-^")


@cache
def _by_spelling() -> dict[str, Unit]:
    units: dict[str, Unit] = {}
    for dimension, rows in _UNITS:
        for name, factor, spellings in rows:
            unit = Unit(name, factor, dimension, _ZEROS.get(name, 0.0))
            for each in (_key(name), *spellings.split()):
                units[each] = unit
    for spelling, unit in tuple(units.items()):
        units.setdefault(spelling.lower(), unit) if spelling.lower() not in _CAPITALS_MATTER else 0
    return units


@cache
def unit_named(spelling: str) -> Unit | None:
    """The unit that is written so, as a unit of its own or as one unit per another.

    >>> unit_named("cu. in.").name, unit_named("ohm/kft").factor == 1 / 304.8
    ('in3', True)
    """
    above, slash, below = spelling.replace(" per ", "/").partition("/")
    if not slash:
        return _one_unit(above)
    top = _one_unit(above) if above.strip() else Unit("", 1.0, NUMBER)
    bottom = unit_named(below)
    if top is None or bottom is None:
        return None
    name = f"{top.name}/{bottom.name}"
    return Unit(name, top.factor / bottom.factor, top.dimension / bottom.dimension)


def unit_names(dimension: Dimension) -> tuple[str, ...]:
    """The names of the units of a dimension, the ones that `write_quantity` takes.

    >>> unit_names(VOLTAGE)
    ('V', 'mV', 'kV')
    """
    named = [name for each, rows in _UNITS if each == dimension for name, _, _ in rows]
    if dimension == AREA:
        return (*named, _WIRE_SIZE)
    if dimension == LENGTH:
        return (*named, "ft in")
    parts = None if named else quotient_of(dimension)
    if parts is None:
        return tuple(named)
    return tuple(f"{a}/{b}" for a in unit_names(parts[0]) for b in unit_names(parts[1]))


def spellings(dimension: Dimension | None = None) -> tuple[str, ...]:
    """Every spelling known, or those of one dimension: what a misspelt unit is compared with."""
    known = _by_spelling().items()
    found = [each for each, unit in known if dimension in (None, unit.dimension)]
    return (*found, _WIRE_SIZE) if dimension in (None, AREA) else tuple(found)


def _one_unit(spelling: str) -> Unit | None:
    key, units = _key(spelling), _by_spelling()
    lower = key.lower()
    return units.get(key) or (None if lower in _CAPITALS_MATTER else units.get(lower))


def _key(spelling: str) -> str:
    return spelling.translate(_LEFT_OUT)
