"""Dimensions, quantities and unknowns; the trade's units, read and written.

Text as people write it comes in; a float in base units with its dimension goes out, and back.

>>> read_quantity("18 ft 6 in", LENGTH).value
5.6388
>>> write_quantity(5.6388, LENGTH, "ft in")
'18 ft 6 in'
"""

from linter.units.dimensions import (
    AREA,
    CURRENT,
    DIMENSIONS_BY_NAME,
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
)
from linter.units.quantities import TOLERANCE, Quantity, UnlikeDimensions, same_value
from linter.units.reading import NotAQuantity, read_quantity
from linter.units.trade import unit_names
from linter.units.unknowns import NotKnown, Unknown, is_known
from linter.units.wire import awg_area, awg_diameter
from linter.units.writing import IMPERIAL, METRIC, UnitChoice, write_in, write_quantity

__all__ = [
    "AREA",
    "CURRENT",
    "DIMENSIONS_BY_NAME",
    "FORCE",
    "IMPERIAL",
    "LENGTH",
    "METRIC",
    "NUMBER",
    "POWER",
    "RESISTANCE",
    "RESISTANCE_PER_LENGTH",
    "TEMPERATURE",
    "TOLERANCE",
    "TORQUE",
    "VOLTAGE",
    "VOLUME",
    "Dimension",
    "NotAQuantity",
    "NotKnown",
    "Quantity",
    "UnitChoice",
    "Unknown",
    "UnlikeDimensions",
    "awg_area",
    "awg_diameter",
    "is_known",
    "read_quantity",
    "same_value",
    "unit_names",
    "write_in",
    "write_quantity",
]
