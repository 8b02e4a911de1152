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

_POUND_FORCE = 4.4482216152605
_STANDARD_GRAVITY = 9.80665
_CIRCULAR_MIL = math.pi / 4  # of a square mil, 25.4e-6 m by 25.4e-6 m


class Unit(NamedTuple):
    """A unit: the base value is the number times `up`, over `down`, plus `zero` (for C and F).

    Two whole numbers instead of one factor: 6 in is 6 * 254 / 10000, to the last bit 152.4 mm.
    """

    name: str
    up: float
    down: float
    dimension: Dimension
    zero: float = 0.0

    def to_base(self, number: float) -> float:
        """The value in base units of a number of this unit."""
        return number * self.up / self.down + self.zero

    def from_base(self, value: float) -> float:
        """The number of this unit for a value in base units."""
        return (value - self.zero) * self.down / self.up


PLAIN = Unit("", 1, 1, NUMBER)

# Name, size in base units (up, down), other spellings. Spaces, full stops, hyphens and "^" are left
# out before a spelling is looked up; capitals do not matter where no other unit could be meant.
_Rows = tuple[tuple[str, float, float, str], ...]
_UNITS: tuple[tuple[Dimension, _Rows], ...] = (
    (
        LENGTH,
        (
            ("mm", 1, 1000, "millimetre millimetres millimeter millimeters"),
            ("cm", 1, 100, "centimetre centimetres centimeter centimeters"),
            ("m", 1, 1, "metre metres meter meters"),
            ("km", 1000, 1, "kilometre kilometres kilometer kilometers"),
            ("in", 254, 10**4, 'inch inches ins "'),
            ("ft", 3048, 10**4, "foot feet '"),
            ("kft", 3048, 10, "1000ft"),
            ("mil", 254, 10**7, "mils"),
        ),
    ),
    (
        AREA,
        (
            ("mm2", 1, 10**6, "sqmm squaremillimetre squaremillimetres squaremillimeters"),
            ("cm2", 1, 10**4, "sqcm"),
            ("m2", 1, 1, "sqm squaremetre squaremetres squaremeter squaremeters"),
            ("in2", 254**2, 10**8, "sqin squareinch squareinches"),
            ("ft2", 3048**2, 10**8, "sqft squarefoot squarefeet"),
            ("kcmil", 254**2 * _CIRCULAR_MIL, 10**11, "mcm kcmils"),
            ("cmil", 254**2 * _CIRCULAR_MIL, 10**14, "cmils circularmil circularmils"),
        ),
    ),
    (
        VOLUME,
        (
            ("mL", 1, 10**6, "ml cm3 cc millilitre millilitres milliliter milliliters"),
            ("L", 1, 1000, "l litre litres liter liters"),
            ("m3", 1, 1, "cubicmetre cubicmetres cubicmeter cubicmeters"),
            ("mm3", 1, 10**9, ""),
            ("in3", 254**3, 10**12, "cuin cubicinch cubicinches ci"),
            ("ft3", 3048**3, 10**12, "cuft cubicfoot cubicfeet"),
        ),
    ),
    (
        CURRENT,
        (
            ("A", 1, 1, "a amp amps ampere amperes"),
            ("mA", 1, 1000, "milliamp milliamps milliampere milliamperes"),
            ("kA", 1000, 1, "ka kiloamp kiloamps kiloampere kiloamperes"),
        ),
    ),
    (
        VOLTAGE,
        (
            ("V", 1, 1, "v volt volts"),
            ("mV", 1, 1000, "millivolt millivolts"),
            ("kV", 1000, 1, "kv kilovolt kilovolts"),
        ),
    ),
    (
        POWER,
        (
            ("W", 1, 1, "w watt watts"),
            ("VA", 1, 1, "va voltampere voltamperes voltamp voltamps"),
            ("kW", 1000, 1, "kw kilowatt kilowatts"),
            ("kVA", 1000, 1, "kva"),
            ("mW", 1, 1000, "milliwatt milliwatts"),
        ),
    ),
    (
        RESISTANCE,
        (
            ("ohm", 1, 1, "ohms"),
            ("mohm", 1, 1000, "milliohm milliohms"),
            ("kohm", 1000, 1, "kiloohm kilohm kilohms"),
            ("megohm", 10**6, 1, "megohms Mohm Mohms megaohm megaohms"),
        ),
    ),
    (
        TEMPERATURE,
        (
            ("C", 1, 1, "degC celsius degreesC degreesCelsius"),
            ("F", 5, 9, "degF fahrenheit degreesF degreesFahrenheit"),
            ("K", 1, 1, "kelvin"),
        ),
    ),
    (
        FORCE,
        (
            ("N", 1, 1, "n newton newtons"),
            ("lbf", _POUND_FORCE, 1, "lb lbs pound pounds poundforce"),
            # What hangs on a box is stated in kilograms and judged as the force of its weight.
            ("kg", _STANDARD_GRAVITY, 1, "kgf kilogram kilograms"),
        ),
    ),
    (
        TORQUE,
        (
            ("N m", 1, 1, "newtonmetre newtonmetres newtonmeter newtonmeters"),
            (
                "lbf in",
                _POUND_FORCE * 254,
                10**4,
                "inlbf lbin inlb inlbs lbsin inchpound inchpounds",
            ),
            (
                "lbf ft",
                _POUND_FORCE * 3048,
                10**4,
                "ftlbf lbft ftlb ftlbs lbsft footpound footpounds",
            ),
        ),
    ),
    (NUMBER, (("%", 1, 100, "percent"),)),
)
_ON_A_TAPE = {
    LENGTH: ("in", "ft", "ft in", "mm", "cm", "m"),
    VOLUME: ("in3", "mL"),
    AREA: ("AWG", "mm2", "kcmil", "ft2", "m2"),
    CURRENT: ("A", "mA"),
    VOLTAGE: ("V",),
    POWER: ("W", "kW", "VA", "kVA"),
    TEMPERATURE: ("F", "C"),
}
_ZEROS = {"C": 273.15, "F": 459.67 * 5 / 9}
# In small letters or in capitals these could mean another unit (milli or mega, kilo or kelvin).
_CAPITALS_MATTER = frozenset({"m", "k", "c", "f", "ma", "mv", "mw", "mohm", "mohms"})
_WIRE_SIZE = "AWG"
_LEFT_OUT = str.maketrans("", "", " .-^")


@cache
def _by_spelling() -> dict[str, Unit]:
    units: dict[str, Unit] = {}
    for dimension, rows in _UNITS:
        for name, up, down, others in rows:
            unit = Unit(name, up, down, dimension, _ZEROS.get(name, 0.0))
            units.update((each, unit) for each in (_key(name), *others.split()))
    small = {each.lower(): unit for each, unit in units.items()}
    return {each: small[each] for each in small if each not in _CAPITALS_MATTER} | units


@cache
def unit_named(spelling: str) -> Unit | None:
    """The unit that is written so, as a unit of its own or as one unit per another.

    >>> unit_named("cu. in.").name, unit_named("ohm/kft").to_base(304.8)
    ('in3', 1.0)
    """
    above, slash, below = spelling.replace(" per ", "/").partition("/")
    if not slash:
        return _one_unit(above)
    top = _one_unit(above) if above.strip() else PLAIN
    bottom = unit_named(below)
    if top is None or bottom is None:
        return None
    name = f"{top.name}/{bottom.name}"
    dimension = top.dimension / bottom.dimension
    return Unit(name, top.up * bottom.down, top.down * bottom.up, dimension)


def unit_names(dimension: Dimension) -> tuple[str, ...]:
    """The names of the units of a dimension, the ones that `write_quantity` takes.

    >>> unit_names(VOLTAGE)
    ('V', 'mV', 'kV')
    """
    if dimension == AREA:
        return (*_names(AREA), _WIRE_SIZE)
    if dimension == LENGTH:
        return (*_names(LENGTH), "ft in")
    parts = None if _names(dimension) else quotient_of(dimension)
    if parts is None:
        return _names(dimension)
    return tuple(f"{above}/{below}" for above in _names(parts[0]) for below in _names(parts[1]))


def units_on_a_tape(dimension: Dimension) -> tuple[str, ...]:
    """The units that a person is told to write, those of a tape or a marking first.

    >>> units_on_a_tape(LENGTH)
    ('in', 'ft', 'ft in', 'mm', 'cm', 'm')
    """
    return _ON_A_TAPE.get(dimension) or unit_names(dimension)


def spellings(dimension: Dimension | None = None) -> tuple[str, ...]:
    """Every spelling known, or those of one dimension: what a misspelt unit is compared with."""
    known = _by_spelling().items()
    found = [each for each, unit in known if dimension in (None, unit.dimension)]
    return (*found, _WIRE_SIZE) if dimension in (None, AREA) else tuple(found)


def _names(dimension: Dimension) -> tuple[str, ...]:
    return tuple(row[0] for each, rows in _UNITS if each == dimension for row in rows)


def _one_unit(spelling: str) -> Unit | None:
    key, units = _key(spelling), _by_spelling()
    lower = key.lower()
    return units.get(key) or (None if lower in _CAPITALS_MATTER else units.get(lower))


def _key(spelling: str) -> str:
    return spelling.translate(_LEFT_OUT)
