"""What a quantity measures: length, current, voltage, temperature, force, and their products.

The base units are metre, ampere, volt, kelvin and newton. Power is voltage times current, so watts
and volt-amperes are of one dimension; resistance is voltage over current.
"""

from collections.abc import Mapping
from typing import NamedTuple


class Dimension(NamedTuple):
    """A product of powers of length, current, voltage, temperature and force.

    >>> LENGTH * AREA == VOLUME, VOLTAGE / CURRENT == RESISTANCE, str(LENGTH ** 3)
    (True, True, 'volume')
    >>> str(POWER / AREA)
    'power per area'
    """

    length: int = 0
    current: int = 0
    voltage: int = 0
    temperature: int = 0
    force: int = 0

    # A product of dimensions is no repeated tuple, which is what the base class means by it.
    def __mul__(self, other: "Dimension") -> "Dimension":  # type: ignore[override]
        return Dimension(*(a + b for a, b in zip(self, other, strict=True)))

    def __truediv__(self, other: "Dimension") -> "Dimension":
        return self * other**-1

    def __pow__(self, power: int) -> "Dimension":
        return Dimension(*(each * power for each in self))

    def __str__(self) -> str:
        return NAMES_BY_DIMENSION.get(self) or _quotient(self) or _spelled_out(self)


NUMBER = Dimension()
LENGTH = Dimension(length=1)
AREA = Dimension(length=2)
VOLUME = Dimension(length=3)
CURRENT = Dimension(current=1)
VOLTAGE = Dimension(voltage=1)
POWER = Dimension(current=1, voltage=1)
RESISTANCE = Dimension(current=-1, voltage=1)
RESISTANCE_PER_LENGTH = Dimension(length=-1, current=-1, voltage=1)
TEMPERATURE = Dimension(temperature=1)
FORCE = Dimension(force=1)
TORQUE = Dimension(length=1, force=1)

DIMENSIONS_BY_NAME: Mapping[str, Dimension] = {
    "number": NUMBER,
    "length": LENGTH,
    "area": AREA,
    "volume": VOLUME,
    "current": CURRENT,
    "voltage": VOLTAGE,
    "power": POWER,
    "resistance": RESISTANCE,
    "resistance per length": RESISTANCE_PER_LENGTH,
    "temperature": TEMPERATURE,
    "force": FORCE,
    "torque": TORQUE,
}
NAMES_BY_DIMENSION: Mapping[Dimension, str] = {
    dimension: name for name, dimension in DIMENSIONS_BY_NAME.items()
}


def quotient_of(dimension: Dimension) -> tuple[Dimension, Dimension] | None:
    """The two named dimensions that `dimension` is the quotient of, if there are such."""
    for below in (LENGTH, AREA, VOLUME, CURRENT, VOLTAGE, TEMPERATURE, POWER, RESISTANCE):
        above = dimension * below
        if above in NAMES_BY_DIMENSION:
            return above, below
    return None


def _quotient(dimension: Dimension) -> str:
    parts = quotient_of(dimension)
    return f"{NAMES_BY_DIMENSION[parts[0]]} per {NAMES_BY_DIMENSION[parts[1]]}" if parts else ""


def _spelled_out(dimension: Dimension) -> str:
    powers = dimension._asdict().items()
    above = " times ".join(_power(name, each) for name, each in powers if each > 0)
    below = " and ".join(_power(name, -each) for name, each in powers if each < 0)
    return f"{above or 'number'} per {below}" if below else above


def _power(name: str, power: int) -> str:
    return name if power == 1 else f"{name} to the power {power}"
