"""A value with its dimension, and the words in which it was written."""

from dataclasses import dataclass

from linter.units.dimensions import NUMBER, Dimension
from linter.units.writing import write_in

TOLERANCE = 1e-9


class UnlikeDimensions(TypeError):
    """Two quantities were to be added or compared that do not measure the same."""

    def __init__(self, doing: str, one: Dimension, other: Dimension) -> None:
        self.one, self.other = one, other
        super().__init__(f"{doing} needs two of one kind, not {one} and {other}")


def same_value(a: float, b: float) -> bool:
    """True where two values in base units differ by at most `TOLERANCE` of the larger.

    >>> same_value(0.1 + 0.2, 0.3), same_value(0.0, 1e-12)
    (True, False)
    """
    return a == b or abs(a - b) <= TOLERANCE * max(abs(a), abs(b))


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Quantity:
    """A value in base units with its dimension; `written` is how the job writes it, or empty.

    Quantities of one dimension are equal within `TOLERANCE`, however they were written; those of
    two dimensions are unequal, and to order, add or subtract them raises `UnlikeDimensions`.
    A bare number counts as a quantity of dimension number.

    >>> length = Quantity(0.1524, Dimension(length=1), "6 in")
    >>> str(length), str(length * 2), length < length * 2
    ('6 in', '304.8 mm', True)
    """

    value: float
    dimension: Dimension
    written: str = ""

    def __str__(self) -> str:
        return self.written or write_in(self.value, self.dimension)

    def __repr__(self) -> str:
        return f"Quantity({self.value!r}, {self.dimension}, {self.written!r})"

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Quantity):
            return NotImplemented
        return self.dimension == other.dimension and same_value(self.value, other.value)

    def __hash__(self) -> int:
        # Values within the tolerance are equal, so only the dimension may count here.
        return hash(self.dimension)

    def __lt__(self, other: "Quantity") -> bool:
        self._like(other, "comparing")
        return self.value < other.value and not same_value(self.value, other.value)

    def __le__(self, other: "Quantity") -> bool:
        self._like(other, "comparing")
        return self.value < other.value or same_value(self.value, other.value)

    def __gt__(self, other: "Quantity") -> bool:
        return other < self

    def __ge__(self, other: "Quantity") -> bool:
        return other <= self

    def __add__(self, other: "Quantity") -> "Quantity":
        self._like(other, "adding")
        return Quantity(self.value + other.value, self.dimension)

    def __sub__(self, other: "Quantity") -> "Quantity":
        self._like(other, "subtracting")
        return Quantity(self.value - other.value, self.dimension)

    def __mul__(self, other: "Quantity | float") -> "Quantity":
        by = _as_quantity(other)
        return Quantity(self.value * by.value, self.dimension * by.dimension)

    def __rmul__(self, other: float) -> "Quantity":
        return self * other

    def __truediv__(self, other: "Quantity | float") -> "Quantity":
        by = _as_quantity(other)
        return Quantity(self.value / by.value, self.dimension / by.dimension)

    def __neg__(self) -> "Quantity":
        return Quantity(-self.value, self.dimension)

    def __abs__(self) -> "Quantity":
        return Quantity(abs(self.value), self.dimension)

    def _like(self, other: "Quantity", doing: str) -> None:
        if self.dimension != other.dimension:
            raise UnlikeDimensions(doing, self.dimension, other.dimension)


def _as_quantity(x: Quantity | float) -> Quantity:
    return x if isinstance(x, Quantity) else Quantity(float(x), NUMBER)
