"""Types of the values of a job: quantities of one dimension, yes/no, openings.

Each takes the text of a job file or a value already read. Text that cannot be read raises
`NotAQuantity`; `linter.jobfile` has refused such text before a model is made.
"""

from typing import Annotated, NamedTuple

from linter.job.stated import ReadAs
from linter.units import (
    AREA,
    CURRENT,
    FORCE,
    LENGTH,
    POWER,
    RESISTANCE,
    TEMPERATURE,
    VOLTAGE,
    VOLUME,
    Dimension,
    NotAQuantity,
    Quantity,
    read_quantity,
)

DIMENSIONS_OF_FORMATS = {
    "length": LENGTH,
    "floor area": AREA,
    "wire size": AREA,
    "volume": VOLUME,
    "current": CURRENT,
    "voltage": VOLTAGE,
    "power": POWER,
    "resistance": RESISTANCE,
    "temperature": TEMPERATURE,
    "weight": FORCE,
}
"""The kinds of quantity that the published schema tells apart by a format of ours."""

MAY_BE_NOUGHT = frozenset({LENGTH, VOLUME, POWER, RESISTANCE})


class Opening(NamedTuple):
    """The opening of a box: its two dimensions, and how they are written."""

    smallest: Quantity
    largest: Quantity
    written: str

    def __str__(self) -> str:
        return self.written


def read_measure(text: str, dimension: Dimension) -> Quantity:
    """The quantity that `text` states, if a thing of a job can have it: not below nought.

    Nor nought itself, for sizes, currents, voltages and absolute temperatures.
    Raises `NotAQuantity`.

    >>> str(read_measure("0 in", LENGTH))
    '0 in'
    """
    quantity = read_quantity(text, dimension)
    if quantity.value < 0 or (quantity.value == 0 and dimension not in MAY_BE_NOUGHT):
        least = "of 0 or more" if dimension in MAY_BE_NOUGHT else "of more than 0"
        if dimension == TEMPERATURE:
            least = "above the lowest there is"
        raise NotAQuantity(
            f'"{text}" is too small for what is measured here.',
            f"a {dimension} {least}",
            'count the signs and digits again, or write "unknown"',
        )
    return quantity


def read_opening(text: str) -> Opening:
    """The two dimensions of an opening such as `2-1/4 in x 4 in`, smallest first.

    Raises `NotAQuantity`.

    >>> str(read_opening("4 in x 2-1/4 in").smallest)
    '2-1/4 in'
    """
    parts = text.replace("\u00d7", " x ").split(" x ")
    if len(parts) != 2:  # noqa: PLR2004  an opening has two dimensions
        raise NotAQuantity(
            f'"{text}" does not give two dimensions.',
            "the two dimensions of the opening, such as 2-1/4 in x 4 in",
            'write both with an "x" between them, spaces around it',
        )
    one, other = sorted((read_measure(part, LENGTH) for part in parts), key=lambda each: each.value)
    return Opening(one, other, text.strip())


def _quantity(dimension: Dimension) -> ReadAs:
    def read(value: object) -> Quantity:
        quantity = read_measure(value, dimension) if isinstance(value, str) else value
        if isinstance(quantity, Quantity) and quantity.dimension == dimension:
            return quantity
        raise ValueError(f"{value!r} is no {dimension}")

    return ReadAs(read)


def _opening(value: object) -> Opening:
    opening = read_opening(value) if isinstance(value, str) else value
    if isinstance(opening, Opening):
        return opening
    raise ValueError(f"{value!r} is no opening")


def whole(value: object) -> int:
    """The whole number that the value is, be it written 2 or 2.0; `ValueError` if it is none."""
    if isinstance(value, int) and not isinstance(value, bool):
        return value
    if isinstance(value, float) and value.is_integer():
        return int(value)
    raise ValueError(f"{value!r} is no whole number")


def _count(value: object) -> int:
    number = whole(value)
    if number < 0:
        raise ValueError(f"{value!r} is no count")
    return number


def _yes_no(value: object) -> bool:
    if isinstance(value, bool):
        return value
    if value in ("yes", "no"):
        return value == "yes"
    raise ValueError(f"{value!r} is neither yes nor no")


def _on_plan(value: object) -> tuple[Quantity, Quantity] | None:
    """Two lengths; None where either is unknown, since a place is known in full or not at all."""
    if not isinstance(value, list | tuple) or len(value) != 2:  # noqa: PLR2004  a place on a plane
        raise ValueError(f"{value!r} is no place on a plan")
    across, down = value
    if across in (None, "unknown") or down in (None, "unknown"):
        return None
    read = _quantity(LENGTH).read
    return read(across), read(down)  # type: ignore[return-value]  # it reads quantities or raises


Length = Annotated[Quantity, _quantity(LENGTH)]
Area = Annotated[Quantity, _quantity(AREA)]
Volume = Annotated[Quantity, _quantity(VOLUME)]
Current = Annotated[Quantity, _quantity(CURRENT)]
Voltage = Annotated[Quantity, _quantity(VOLTAGE)]
Power = Annotated[Quantity, _quantity(POWER)]
Resistance = Annotated[Quantity, _quantity(RESISTANCE)]
Temperature = Annotated[Quantity, _quantity(TEMPERATURE)]
Weight = Annotated[Quantity, _quantity(FORCE)]
OnPlan = Annotated[tuple[Quantity, Quantity], ReadAs(_on_plan)]
OpeningSize = Annotated[Opening, ReadAs(_opening)]
Count = Annotated[int, ReadAs(_count)]
YesNo = Annotated[bool, ReadAs(_yes_no)]
