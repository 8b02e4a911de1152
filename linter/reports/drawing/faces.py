"""Devices placed one below the other at the right of a drawing, their pins on a grid of rows."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.reports.drawing.letters import fitted, folded, width_of
from linter.reports.drawing.shapes import Words

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.reports.drawing.contents import Face, Pin

SIZE = 10.5
_PITCH, _LINE, _PAD, _GAP = 18.0, 12.5, 13.0, 12.0
_INDENT = 8.0
_LABEL_INDENT = 12.0


class FaceAt(NamedTuple):
    """A device with its place: its plate, the height of each pin, and the words on it."""

    x: float
    top: float
    width: float
    bottom: float
    pins: tuple[tuple[Pin, float], ...]
    words: tuple[Words, ...]

    def moved(self, down: float) -> FaceAt:
        """The same, further down."""
        return self._replace(
            top=self.top + down,
            bottom=self.bottom + down,
            pins=tuple((pin, y + down) for pin, y in self.pins),
            words=tuple(each._replace(y=each.y + down) for each in self.words),
        )


def faces_down(faces: Sequence[Face], x: float, width: float, grid: float) -> tuple[FaceAt, ...]:
    """The devices from the top down; pins stand at `grid`, and at whole rows below it."""
    found: list[FaceAt] = []
    y = grid
    for face in faces:
        found.append(_face_at(face, x, y, width, grid))
        y = found[-1].bottom + _GAP
    return tuple(found)


def face_width(faces: Sequence[Face]) -> float:
    """The width that the longest name of a terminal asks for."""
    labels = [pin.label for face in faces for pin in face.pins]
    return max((width_of(each, SIZE) for each in labels), default=0.0) + _LABEL_INDENT + 6.0


def _face_at(face: Face, x: float, top: float, width: float, grid: float) -> FaceAt:
    room = width - _INDENT - 4.0
    words: list[Words] = []
    pins: list[tuple[Pin, float]] = []
    y = top + _PAD
    for text, style in ((face.kind, "kind"), (face.name, "name")):
        lines = folded(text, SIZE, room, 2, bold=style == "name")
        for line in lines:
            words.append(Words(line, x + _INDENT, y, SIZE, style, face.name))
            y += _LINE
    y = _next_row(y, grid)
    for side in face.sides:
        if side.heading:
            words.append(Words(side.heading, x + _LABEL_INDENT, y + 4.0, SIZE, "heading"))
            y += _PITCH
        for pin in side.pins:
            line = fitted(pin.label, SIZE, width - _LABEL_INDENT - 4.0)
            style = "pin" if pin.colour else "quiet"
            words += (
                [Words(line, x + _LABEL_INDENT, y + 4.0, SIZE, style, pin.label)] if line else []
            )
            pins.append((pin, y))
            y += _PITCH
    y += 2.0
    for remark in face.remarks:
        for line in folded(remark, SIZE, room, 2):
            words.append(Words(line, x + _INDENT, y, SIZE, "remark", remark))
            y += _LINE
    return FaceAt(x, top, width, y - 4.0, tuple(pins), tuple(words))


def _next_row(y: float, grid: float) -> float:
    over = (y - grid) % _PITCH
    return y if not over else y - over + _PITCH
