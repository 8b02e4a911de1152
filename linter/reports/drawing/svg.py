"""Shapes as SVG. Colours stand in the style sheet of the page; here are classes and places."""

from __future__ import annotations

from typing import TYPE_CHECKING, assert_never

from linter.reports.drawing.shapes import (
    Bar,
    Drawing,
    Mark,
    Outline,
    Plate,
    Point,
    Shape,
    Sheath,
    Wire,
    Words,
)
from linter.reports.page.elements import Element, Node, el

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

_LAYERS = (Outline, Plate, Bar, Wire, Sheath, Mark, Words)
_CORNER = 7.0


def svg_of(drawing: Drawing, title: str, told: str) -> Element:
    """The drawing with its name, and in words what it shows, for those who cannot see it."""
    ordered = sorted(drawing.shapes, key=lambda each: _LAYERS.index(type(each)))
    return el(
        "svg",
        el("title", f"{title}. {told}"),
        *(node for shape in ordered for node in _shape(shape)),
        class_="drawing",
        view_box=f"0 0 {_number(drawing.width)} {_number(drawing.height)}",
        role="img",
    )


def rounded_path(points: Sequence[Point], radius: float = 4.0) -> str:
    """A line through the points with its corners rounded, as the `d` of a path.

    >>> rounded_path([(0.0, 0.0), (10.0, 0.0), (10.0, 20.0)])
    'M0 0L6 0Q10 0 10 4L10 20'
    """
    parts = [f"M{_pair(points[0])}"]
    for before, at, after in zip(points, points[1:], points[2:], strict=False):
        into, out = _towards(at, before, radius), _towards(at, after, radius)
        parts.append(f"L{_pair(into)}Q{_pair(at)} {_pair(out)}")
    return "".join([*parts, f"L{_pair(points[-1])}"])


def _towards(point: Point, other: Point, by: float) -> Point:
    """A point on the way to another, at most halfway."""
    length = ((point[0] - other[0]) ** 2 + (point[1] - other[1]) ** 2) ** 0.5
    part = min(by, length / 2) / length if length else 0.0
    return point[0] + (other[0] - point[0]) * part, point[1] + (other[1] - point[1]) * part


def _shape(shape: Shape) -> Iterator[Node]:
    match shape:
        case Wire():
            yield from _wire(shape)
        case Words():
            yield _words(shape)
        case Mark():
            yield from _MARKS[shape.what](shape)
        case Sheath(points):
            yield el("path", d=rounded_path(points, 6.0), class_="jacket")
        case Bar(x, top, bottom):
            yield el("path", d=f"M{_pair((x, top))}L{_pair((x, bottom))}", class_="bar")
        case Plate(x, y, width, height):
            yield _rect((x, y), (width, height), 6.0, "plate")
        case Outline(x, y, width, height, is_metal):
            yield _rect((x, y), (width, height), _CORNER, "wall metal" if is_metal else "wall")
        case _:
            assert_never(shape)


def _wire(wire: Wire) -> Iterator[Node]:
    """A gap in what it crosses, an edge that shows on any ground, the insulation itself."""
    path = rounded_path(wire.points)
    yield el("path", d=path, class_="gap")
    yield el("path", d=path, class_="edge")
    for each in wire_classes(wire.colour):
        yield el("path", d=path, class_=each)


def wire_classes(colour: str) -> tuple[str, ...]:
    """The classes of the strokes that show an insulation: its colour, and over it its stripes.

    >>> wire_classes("white-red"), wire_classes("bare"), wire_classes("")
    (('core white', 'core stripe red'), ('core bare', 'core strands'), ('core unknown',))
    """
    base, _, stripe = colour.partition("-")
    if colour == "bare":
        return "core bare", "core strands"
    first = f"core {base or 'unknown'}"
    return (first, f"core stripe {stripe}") if stripe else (first,)


def _words(words: Words) -> Node:
    whole = el("title", words.whole) if words.whole and words.whole != words.text else None
    return el(
        "text", words.text, whole, x=words.x, y=words.y, font_size=words.size,
        class_=f"words {words.style}".rstrip(),
    )  # fmt: skip


def _dot(mark: Mark) -> Iterator[Node]:
    yield el("circle", cx=mark.x, cy=mark.y, r=3.6, class_="dot")


def _connector(mark: Mark) -> Iterator[Node]:
    """A connector pushed over the conductors, seen from the side, with the number of its joint."""
    x, y = mark.x, mark.y
    path = f"M{_pair((x - 5.5, y - 7.0))}L{_pair((x + 5.5, y - 7.0))}L{_pair((x + 7.5, y + 6.5))}"
    yield el("path", d=f"{path}L{_pair((x - 7.5, y + 6.5))}Z", class_="connector")
    yield el("text", mark.text, x=x, y=y + 3.6, font_size=9.0, class_="number")


def _tape(mark: Mark) -> Iterator[Node]:
    yield _rect((mark.x - 4.5, mark.y - 4.5), (9.0, 9.0), 1.0, "tape-edge")
    yield _rect(
        (mark.x - 3.5, mark.y - 3.5), (7.0, 7.0), 0.5, f"fill {mark.colour.partition('-')[0]}"
    )


def _cap(mark: Mark) -> Iterator[Node]:
    x, y = mark.x, mark.y
    path = f"M{_pair((x - 4.0, y - 5.0))}L{_pair((x + 5.0, y - 3.0))}L{_pair((x + 5.0, y + 3.0))}"
    yield el("path", d=f"{path}L{_pair((x - 4.0, y + 5.0))}Z", class_="connector")


def _open(mark: Mark) -> Iterator[Node]:
    yield el("circle", cx=mark.x, cy=mark.y, r=4.0, class_="ring")


def _lacking(mark: Mark) -> Iterator[Node]:
    yield el("circle", cx=mark.x, cy=mark.y, r=5.0, class_="alarm")
    yield el("text", "!", x=mark.x, y=mark.y + 3.4, font_size=9.0, class_="number")


def _uncut(mark: Mark) -> Iterator[Node]:
    x, y = mark.x, mark.y
    bend = f"Q{_pair((x + 7.0, y))} {_pair((x - 4.0, y + 5.0))}"
    yield el("path", d=f"M{_pair((x - 4.0, y - 5.0))}{bend}", class_="loop")


def _screw(mark: Mark) -> Iterator[Node]:
    yield el("circle", cx=mark.x, cy=mark.y, r=5.0, class_=f"screw {mark.colour}")
    yield el("path", d=f"M{_pair((mark.x - 3.0, mark.y))}L{_pair((mark.x + 3.0, mark.y))}",
             class_="slot")  # fmt: skip


def _lead(mark: Mark) -> Iterator[Node]:
    yield _rect((mark.x - 3.0, mark.y - 3.0), (6.0, 6.0), 1.0, "lead")


def _hole(mark: Mark) -> Iterator[Node]:
    yield el("circle", cx=mark.x, cy=mark.y, r=6.0, class_="ring")


_MARKS = {
    "dot": _dot, "connector": _connector, "tape": _tape, "cap": _cap, "open": _open,
    "lacking": _lacking, "uncut": _uncut, "screw": _screw, "lead": _lead, "hole": _hole,
}  # fmt: skip


def _rect(at: Point, size: Point, radius: float, name: str) -> Element:
    return el(
        "rect", x=at[0], y=at[1], width=size[0], height=size[1], rx=radius, class_=name
    )  # fmt: skip


def _pair(point: Point) -> str:
    return f"{_number(point[0])} {_number(point[1])}"


def _number(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")
