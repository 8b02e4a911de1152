"""Where everything in the drawing of a box stands, so that no words meet and wires cross little.

Cables come in at the side where they enter and run down (or up) the left margin; their conductors
leave to the right, each on a row of its own with its colour above it. Devices stand at the right,
their pins on rows halfway between those, so that no two wires lie on one line. In the channel
between, each joint or straight wire has a column of its own.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.reports.drawing.contents import SIDES
from linter.reports.drawing.faces import FaceAt, face_width, faces_down
from linter.reports.drawing.order import Ordered, Ties, crossings, least_crossing

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from linter.reports.drawing.contents import Block, Contents, Row
    from linter.reports.drawing.order import Groups

PITCH = 18.0
HALF = PITCH / 2
WALL = 5.0  # from the edge of the drawing to the wall of the box, where no cable enters
MOUTH = 20.0  # the same where cables enter
LANE = 10.0
_HEADING = 2 * PITCH
_FIRST_ROW = _HEADING + 12.0
_PIN_GRID = 3.0  # where pins stand on the grid of rows: half a pitch off them
_WIDTH = 360.0
_LEAST_COLUMN, _MOST_COLUMN = 14.0, 26.0
_LEAST_LEFT, _LEAST_FACE, _MOST_FACE = 104.0, 104.0, 156.0
_SHARE_OF_LEFT = 0.5
_DOWN = (0.5, 0.0, 1.0)  # where devices are tried: the middle first, which reads best


class BlockAt(NamedTuple):
    """A cable with its place: its lane in the margin, its top, the heights of its conductors."""

    block: Block
    side: str
    lane: float
    top: float
    rows: tuple[tuple[Row, float], ...]


class Columns(NamedTuple):
    """The widths across a drawing: where words begin and end, the channel, the devices."""

    words: float
    channel: float
    pitch: float
    faces: float
    face_width: float
    width: float

    def of(self, number: int) -> float:
        """The middle of a column of the channel."""
        return self.channel + self.pitch * (number + 0.5) + 4.0


class Placed(NamedTuple):
    """A whole drawing, placed; `at` has the height of each row and pin, `order` what is where."""

    across: Columns
    height: float
    blocks: tuple[BlockAt, ...]
    faces: tuple[FaceAt, ...]
    order: Ordered
    at: Mapping[str, float]
    crossings: int


def placed(contents: Contents) -> Placed:
    """The places of all that a box holds, wires crossing each other as little as the order can do.

    The devices stand where that leaves the fewest crossings: at the middle, the top or the bottom.
    """
    groups = [[block for block in contents.blocks if block.side == side] for side in SIDES]
    across = _across(groups, contents)
    top = MOUTH + LANE * len(groups[0])
    faces = faces_down(contents.faces, across.faces, across.face_width, top + _PIN_GRID)
    tall = top + sum(map(_height, contents.blocks))
    bottom = max(tall, faces[-1].bottom if faces else 0.0)
    best: Placed | None = None
    for part in _DOWN:
        found = _with_faces(contents, groups, across, _moved(faces, tall, part), (top, bottom))
        if best is None or found.crossings < best.crossings:
            best = found
        if not best.crossings or best.faces == faces:
            break
    assert best is not None  # noqa: S101  there is a first place to try
    return best


def _with_faces(
    contents: Contents,
    groups: Sequence[Sequence[Block]],
    across: Columns,
    faces: tuple[FaceAt, ...],
    reach: tuple[float, float],
) -> Placed:
    """The best order with the devices where they are, between the top and the bottom of a box."""
    pins = {pin.key: y for face in faces for pin, y in face.pins}

    def heights(order: Groups) -> Mapping[str, float]:
        found = dict(pins)
        for _, _, keys, y in _tops(order, reach):
            for number, key in enumerate(keys):
                found[key] = y + _FIRST_ROW + PITCH * number
        return found

    ties = [Ties(net.rows, net.pins) for net in contents.nets]
    order = least_crossing(_groups(groups), ties, heights)
    at = heights(order.groups)
    by_key = {block.cable: block for block in contents.blocks}
    blocks = _stacked(order.groups, by_key, reach)
    crossed = crossings(order.columns, ties, at)
    return Placed(across, reach[1] + 8.0, blocks, faces, order, at, crossed)


def _groups(groups: Sequence[Sequence[Block]]) -> Groups:
    """The keys of conductors by side and cable; a cable without any is told by its name."""
    return tuple(
        tuple(tuple(row.key for row in block.rows) or (block.cable,) for block in group)
        for group in groups
    )


def _across(groups: Sequence[Sequence[Block]], contents: Contents) -> Columns:
    """The widths: as much for words at the devices as they ask, what is over to the left."""
    nets = len(contents.nets)
    words = WALL + LANE * _lanes(groups) + 12.0
    right = 14.0 if contents.faces else WALL + 6.0
    face = min(max(face_width(contents.faces), _LEAST_FACE), _MOST_FACE) if contents.faces else 0.0
    least = words + _LEAST_LEFT + _LEAST_COLUMN * nets + 12.0 + face + right
    width = max(_WIDTH, least)
    over = width - least
    left = _LEAST_LEFT + over * _SHARE_OF_LEFT
    channel = words + left
    pitch = min((width - right - face - 12.0 - channel) / max(nets, 1), _MOST_COLUMN)
    return Columns(words, channel, pitch, width - right - face, face, width)


def _lanes(groups: Sequence[Sequence[object]]) -> int:
    """The lanes in the left margin: cables from above and from below lie beside each other."""
    return max(1, len(groups[0]) + len(groups[1]), len(groups[-1]))


def _height(block: Block) -> float:
    return _HEADING + PITCH * max(1, len(block.rows))


def _moved(faces: tuple[FaceAt, ...], bottom: float, part: float) -> tuple[FaceAt, ...]:
    """The faces moved down, by whole rows, by a part of the room that taller cables leave."""
    down = part * max(0.0, bottom - faces[-1].bottom) if faces else 0.0
    return tuple(each.moved(down - down % PITCH) for each in faces)


def _tops(
    groups: Groups, reach: tuple[float, float]
) -> Iterator[tuple[str, int, tuple[str, ...], float]]:
    """Each cable with its side, its number there, its conductors, and where it begins.

    From the top down in that order; those that enter below stand at the bottom, by whole rows.
    """
    y, bottom = reach
    for side, group in zip(SIDES, groups, strict=True):
        if side == "bottom":
            room = bottom - sum(_HEADING + PITCH * len(keys) for keys in group) - y
            y += room - room % PITCH
        for number, keys in enumerate(group):
            yield side, number, keys, y
            y += _HEADING + PITCH * len(keys)


def _stacked(
    groups: Groups, by_key: Mapping[str, Block], reach: tuple[float, float]
) -> tuple[BlockAt, ...]:
    """The cables placed in that order."""
    by_row = {row.key: block for block in by_key.values() for row in block.rows}
    found: list[BlockAt] = []
    for side, number, keys, y in _tops(groups, reach):
        block = by_row.get(keys[0]) or by_key[keys[0]]
        lane = _lane(side, len(found), number, groups)
        found.append(_block_at(block, side, keys, y, lane))
    return tuple(found)


def _lane(side: str, above: int, number: int, groups: Groups) -> float:
    """The lane in the left margin: the cable that ends first has the one nearest to the words.

    `above` counts the cables above it, `number` those of its side.
    """
    from_right = {"bottom": len(groups[-1]) - 1 - number, "left": 0, "back": 0}.get(side, above)
    return WALL + 9.0 + LANE * (_lanes(groups) - 1 - from_right)


def _block_at(block: Block, side: str, keys: Sequence[str], y: float, lane: float) -> BlockAt:
    by_key = {row.key: row for row in block.rows}
    rows = [by_key[each] for each in keys if each in by_key]
    at = tuple((row, y + _FIRST_ROW + PITCH * n) for n, row in enumerate(rows))
    return BlockAt(block, side, lane, y, at)
