"""The shapes of the drawing of a box, from what it holds."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.reports.drawing.faces import SIZE
from linter.reports.drawing.letters import fitted, width_of
from linter.reports.drawing.places import LANE, MOUTH, WALL, Placed, placed
from linter.reports.drawing.shapes import (
    Bar,
    Drawing,
    Mark,
    Outline,
    Plate,
    Shape,
    Sheath,
    Wire,
    Words,
)

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.reports.drawing.contents import Contents, Net, Row
    from linter.reports.drawing.faces import FaceAt
    from linter.reports.drawing.places import BlockAt

_ABOVE = 5.0  # from a wire up to the foot of the words on it
_ENDS = {"capped": "cap", "left open": "open", "lacking": "lacking", "uncut": "uncut"}
_SAID = {"capped": "capped", "left open": "left open", "lacking": "alone", "uncut": "uncut"}


def box_drawing(contents: Contents, *, is_metal: bool = False) -> Drawing:
    """The drawing of a box, as one stands before it."""
    at = placed(contents)
    wall = MOUTH - 2.0
    below = MOUTH if any(each.side == "bottom" for each in at.blocks) else WALL
    outline = Outline(WALL, wall, at.across.width - 2 * WALL, at.height - wall, is_metal)
    shapes: list[Shape] = [outline]
    shapes += [Plate(f.x, f.top, f.width, f.bottom - f.top) for f in at.faces]
    shapes += _sheaths(at)
    shapes += _bars(contents.nets, at)
    shapes += _wires(contents, at)
    shapes += _marks(contents.nets, at)
    for block in at.blocks:
        shapes += _words(block, at)
    shapes += [words for face in at.faces for words in face.words]
    return Drawing(at.across.width, at.height + below, tuple(shapes), at.crossings)


def _sheaths(at: Placed) -> Iterator[Sheath]:
    rights = sum(each.side == "right" for each in at.blocks)
    for number, block in enumerate(at.blocks):
        end = block.rows[-1][1] if block.rows else block.top + 20.0
        first = block.rows[0][1] if block.rows else block.top + 20.0
        x, heading = block.lane, block.top + 16.0
        match block.side:
            case "right":
                y = MOUTH + 8.0 + LANE * (rights - 1 - number)
                yield Sheath(((at.across.width, y), (x, y), (x, end)))
            case "top":
                yield Sheath(((x, 2.0), (x, end)))
            case "bottom":
                yield Sheath(((x, at.height + MOUTH - 2.0), (x, first)))
            case "left":
                yield Sheath(((0.0, heading), (x, heading), (x, end)))
            case _:
                yield Sheath(((x, heading), (x, end)))


def _bars(nets: Iterable[Net], at: Placed) -> Iterator[Bar]:
    for net, x in _by_column(nets, at):
        heights = [at.at[each] for each in (*net.rows, *net.pins)]
        if net.joint:
            yield Bar(x, min(heights), max(heights))


def _by_column(nets: Iterable[Net], at: Placed) -> Iterator[tuple[Net, float]]:
    listed = list(nets)
    for column, number in enumerate(at.order.columns):
        yield listed[number], at.across.of(column)


def _wires(contents: Contents, at: Placed) -> Iterator[Wire]:
    rows = {row.key: (row, block.lane) for block in at.blocks for row, _ in block.rows}
    colours = {pin.key: pin.colour for face in at.faces for pin, _ in face.pins}
    joined = {key for net in contents.nets for key in net.rows}
    for key, (row, lane) in rows.items():
        if key not in joined:
            yield Wire(((lane, at.at[key]), (at.across.channel - 6.0, at.at[key])), row.colour)
    for number, (net, x) in enumerate(_by_column(contents.nets, at)):
        if not net.joint:
            (row_key,), (pin,) = net.rows, net.pins
            row, lane = rows[row_key]
            y, to = at.at[row_key], at.at[pin]
            points = ((lane, y), (x, y), (x, to), (at.across.faces, to))
            yield Wire(points, row.colour, number)
            continue
        for each in net.rows:
            row, lane = rows[each]
            yield Wire(((lane, at.at[each]), (x, at.at[each])), row.colour, number)
        for each in net.pins:
            y = at.at[each]
            yield Wire(((x, y), (at.across.faces, y)), colours[each], number)


def _marks(nets: Iterable[Net], at: Placed) -> Iterator[Mark]:
    for net, x in _by_column(nets, at):
        if net.joint:
            heights = sorted(at.at[each] for each in (*net.rows, *net.pins))
            yield from (Mark("dot", x, y) for y in heights[1:])
            yield Mark("connector", x, heights[0], text=net.joint)
    for block in at.blocks:
        yield from _marks_of(block, at.across.channel)
    for face in at.faces:
        yield from _screws(face)


def _marks_of(block: BlockAt, channel: float) -> Iterator[Mark]:
    for row, y in block.rows:
        if row.mark:
            yield Mark("tape", channel - 16.0, y, row.mark)
        if row.end:
            yield Mark(_ENDS[row.end], channel - 6.0, y, row.colour)
    if block.side == "back":
        yield Mark("hole", block.lane, block.top + 16.0)


def _screws(face: FaceAt) -> Iterator[Mark]:
    for pin, y in face.pins:
        yield Mark("lead" if pin.is_lead else "screw", face.x, y, pin.metal)


def _words(block: BlockAt, at: Placed) -> Iterator[Words]:
    x, room = at.across.words, at.across.channel - at.across.words - 2.0
    name, sheath = block.block.cable, block.block.sheath
    whole = f"{name}, {sheath}, {block.block.where}"
    shown = fitted(name, SIZE, room, bold=True)
    yield Words(shown, x, block.top + 14.0, SIZE, "name", whole)
    after = width_of(shown, SIZE, bold=True) + 5.0
    if width_of(sheath, SIZE) <= room - after:
        yield Words(sheath, x + after, block.top + 14.0, SIZE, "sheath", sheath)
    where = fitted(block.block.where, SIZE, room)
    yield Words(where, x, block.top + 27.0, SIZE, "where", whole)
    if not block.rows:
        unknown = fitted("conductors unknown", SIZE, room)
        yield Words(unknown, x, block.top + 43.0, SIZE, "quiet", "conductors unknown")
    for row, y in block.rows:
        said = _said(row)
        yield Words(fitted(said, SIZE, room), x, y - _ABOVE, SIZE, "colour", f"{said}: {row.use}")


def _said(row: Row) -> str:
    taped = f", {row.mark} tape" if row.mark else ""
    becomes = f", {_SAID[row.end]}" if row.end else ""
    return f"{row.colour}{taped}{becomes}"
