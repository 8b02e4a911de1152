"""What a drawing is made of: shapes with their places, in units of the drawing, y downward."""

from __future__ import annotations

from typing import NamedTuple

from linter.reports.drawing.letters import width_of

_ASCENT, _DESCENT = 0.8, 0.24

Point = tuple[float, float]


class Words(NamedTuple):
    """Words at the left end of their baseline; `whole` is what was meant where they are cut off."""

    text: str
    x: float
    y: float
    size: float
    style: str = ""
    whole: str = ""

    @property
    def bold(self) -> bool:
        """Whether they are set bold."""
        return self.style in ("name", "heading")

    @property
    def extent(self) -> tuple[float, float, float, float]:
        """The most room they take: left, top, right, bottom."""
        right = self.x + width_of(self.text, self.size, bold=self.bold)
        return self.x, self.y - self.size * _ASCENT, right, self.y + self.size * _DESCENT


class Wire(NamedTuple):
    """A conductor along points, in its insulation colour; `net` numbers what it is part of."""

    points: tuple[Point, ...]
    colour: str
    net: int = -1


class Sheath(NamedTuple):
    """The sheath of a cable along points."""

    points: tuple[Point, ...]


class Bar(NamedTuple):
    """The joint of a net: all that touches it between two heights is joined."""

    x: float
    top: float
    bottom: float


class Plate(NamedTuple):
    """A device, seen from the front."""

    x: float
    y: float
    width: float
    height: float


class Mark(NamedTuple):
    """A small sign at a point: dot, connector, cap, open end, screw, lead; of a colour or metal."""

    what: str
    x: float
    y: float
    colour: str = ""
    text: str = ""


class Outline(NamedTuple):
    """The walls of the box."""

    x: float
    y: float
    width: float
    height: float
    is_metal: bool


Shape = Words | Wire | Sheath | Bar | Plate | Mark | Outline


class Drawing(NamedTuple):
    """A drawing: its size, and its shapes from the back to the front."""

    width: float
    height: float
    shapes: tuple[Shape, ...]
    crossings: int = 0
