"""Laws of the drawings of boxes: no words meet, all is inside, wires cross as little as can be."""

from itertools import combinations, pairwise, permutations, product
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from linter.jobfile import read_job
from linter.reports.drawing.box import box_drawing
from linter.reports.drawing.contents import (
    SIDES,
    Block,
    Contents,
    Face,
    Net,
    Pin,
    Row,
    Side,
    contents_of,
)
from linter.reports.drawing.order import Ties, crossings, least_crossing
from linter.reports.drawing.places import placed
from linter.reports.drawing.shapes import Bar, Drawing, Mark, Outline, Plate, Sheath, Wire, Words
from linter.wiring import derive

ROOT = Path(__file__).resolve().parents[2]
JOBS = sorted((ROOT / "examples").glob("*/*.yaml"))
COLOURS = ("black", "white", "red", "blue", "white-red", "bare", "green-yellow")
NAMES = st.text("abcdefgh-. \u00e9\u4e2dWM0", min_size=1, max_size=40).filter(str.strip)


@st.composite
def boxes(draw: st.DrawFn) -> Contents:
    """Boxes from one cable up to six, with any devices and any joints between what is in them."""
    blocks = tuple(draw(_block(number)) for number in range(draw(st.integers(1, 6))))
    faces = tuple(draw(_face(number)) for number in range(draw(st.integers(0, 3))))
    rows = [row.key for block in blocks for row in block.rows if not row.end]
    pins = [pin.key for face in faces for pin in face.pins if pin.colour]
    count = draw(st.integers(1, 6))
    in_net = [draw(st.integers(0, count - 1)) for _ in (*rows, *pins)]
    nets = []
    for number in range(count):
        of = [key for key, net in zip((*rows, *pins), in_net, strict=True) if net == number]
        ours = tuple(key for key in of if key in rows)
        theirs = tuple(key for key in of if key in pins)
        if ours:
            straight = len(ours) == len(theirs) == 1 and draw(st.booleans())
            nets.append(Net(ours, theirs, "" if straight else str(number + 1)))
    return Contents("box", blocks, faces, tuple(nets))


@st.composite
def _block(draw: st.DrawFn, number: int) -> Block:
    colours = draw(st.lists(st.sampled_from(COLOURS), max_size=5, unique=True))
    ends = st.sampled_from(("", "", "", "", "capped", "left open", "lacking"))
    rows = tuple(
        Row(f"k{number}.{colour}", colour, draw(st.sampled_from(("", "", "black"))), "", draw(ends))
        for colour in colours
    )
    sheath = draw(st.sampled_from(("12/2 NM-B", "12/2 NM-B without ground")))
    side = draw(st.sampled_from(SIDES))
    return Block(f"k{number}", sheath, f"to {draw(NAMES)}", side, is_stated=True, rows=rows)


@st.composite
def _face(draw: st.DrawFn, number: int) -> Face:
    labels = draw(st.lists(NAMES, min_size=1, max_size=7))
    pins = tuple(
        Pin(f"d{number}.{n}", label, "brass", draw(st.sampled_from(("", "red"))))
        for n, label in enumerate(labels)
    )
    at = draw(st.integers(0, len(pins)))
    sides = tuple(Side(h, p) for h, p in (("LINE", pins[:at]), ("LOAD", pins[at:])) if p)
    remarks = tuple(draw(st.lists(NAMES, max_size=2)))
    return Face(draw(NAMES), draw(NAMES), sides, remarks)


def _hold_to_the_rules(drawing: Drawing) -> None:
    words = [each for each in drawing.shapes if isinstance(each, Words)]
    for one, other in combinations(words, 2):
        assert not _meet(one.extent, other.extent), f"{one.text!r} meets {other.text!r}"
    for each in words:
        left, top, right, bottom = each.extent
        assert min(left, top) >= 0, each
        assert (right, bottom) <= (drawing.width, drawing.height), each
        assert bottom <= drawing.height, each
    for x, y in _points(drawing):
        assert -0.01 <= x <= drawing.width + 0.01
        assert -0.01 <= y <= drawing.height + 0.01
    _hold_wires_off_words(drawing, words)


def _meet(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def _points(drawing: Drawing) -> list[tuple[float, float]]:
    found: list[tuple[float, float]] = []
    for shape in drawing.shapes:
        match shape:
            case Wire(points, _, _) | Sheath(points):
                found += points
            case Bar(x, top, bottom):
                found += [(x, top), (x, bottom)]
            case Plate(x, y, width, height) | Outline(x, y, width, height, _):
                found += [(x, y), (x + width, y + height)]
            case Mark():
                found += [(shape.x - 5, shape.y - 5), (shape.x + 5, shape.y + 5)]
            case Words():
                pass
    return found


def _hold_wires_off_words(drawing: Drawing, words: list[Words]) -> None:
    """No wire runs through words, and no two wires of different nets lie on one another."""
    wires = [each for each in drawing.shapes if isinstance(each, Wire)]
    bars = [
        ((each.x, each.top), (each.x, each.bottom))
        for each in drawing.shapes
        if isinstance(each, Bar)
    ]
    pieces = [(*pair, wire.net) for wire in wires for pair in _pairs(wire)]
    for (ax, ay), (bx, by), _ in [*pieces, *((*bar, -2) for bar in bars)]:
        run = (min(ax, bx) + 0.1, min(ay, by) + 0.1, max(ax, bx) - 0.1, max(ay, by) - 0.1)
        thick = (run[0], run[1] - 1.5, run[2], run[3] + 1.5)
        for each in words:
            assert not (thick[0] < thick[2] and _meet(thick, each.extent)), each
    level = [piece for piece in pieces if piece[0][1] == piece[1][1] and piece[0][0] != piece[1][0]]
    for one, other in combinations(level, 2):
        apart = one[2] == other[2] != -1 or abs(one[0][1] - other[0][1]) >= 8
        beside = max(one[0][0], one[1][0]) <= min(other[0][0], other[1][0])
        beside = beside or max(other[0][0], other[1][0]) <= min(one[0][0], one[1][0])
        assert apart or beside, (one, other)


def _pairs(wire: Wire) -> list[tuple[tuple[float, float], tuple[float, float]]]:
    return list(pairwise(wire.points))


@settings(max_examples=60, deadline=None)
@given(boxes())
def test_any_box_is_drawn_without_words_meeting(contents: Contents) -> None:
    _hold_to_the_rules(box_drawing(contents))


@pytest.mark.parametrize("file", JOBS, ids=lambda file: f"{file.parent.name}/{file.stem}")
def test_the_boxes_of_all_examples_are_drawn_without_words_meeting(file: Path) -> None:
    job = read_job(file.read_text(encoding="utf-8"), file.name)
    wiring = derive(job)
    for box in job.boxes:
        contents = contents_of(wiring, job, box, {}, frozenset())
        drawing = box_drawing(contents)
        _hold_to_the_rules(drawing)
        every = [row.key for block in contents.blocks for row in block.rows]
        assert sum(isinstance(each, Wire) for each in drawing.shapes) >= len(every), box


@settings(max_examples=40, deadline=None)
@given(boxes())
def test_no_swap_of_neighbours_makes_wires_cross_less(contents: Contents) -> None:
    at = placed(contents)
    nets = [Ties(net.rows, net.pins) for net in contents.nets]
    order = list(at.order.columns)
    best = crossings(order, nets, at.at)
    assert best == at.crossings
    for n in range(len(order) - 1):
        swapped = [*order[:n], order[n + 1], order[n], *order[n + 2 :]]
        assert crossings(swapped, nets, at.at) >= best
    for group in at.order.groups:
        for block in group:
            for one, other in pairwise(block):
                if one in at.at and other in at.at:
                    heights = {**at.at, one: at.at[other], other: at.at[one]}
                    assert crossings(order, nets, heights) >= best


@settings(max_examples=40, deadline=None)
@given(st.data())
def test_small_boxes_have_the_fewest_crossings_there_are(data: st.DataObject) -> None:
    """Two cables of three conductors, three nets, a device: every order there is, tried."""
    keys = [[f"{cable}{n}" for n in range(3)] for cable in "ab"]
    pins = ["x", "y", "z"]
    nets = []
    left = [*keys[0], *keys[1], *pins]
    for _ in range(3):
        of = data.draw(st.lists(st.sampled_from(left), min_size=1, max_size=4, unique=True))
        left = [each for each in left if each not in of]
        nets.append(Ties(tuple(e for e in of if e not in pins), tuple(e for e in of if e in pins)))
        if not left:
            break

    def heights(groups: object) -> dict[str, float]:
        assert isinstance(groups, tuple)
        rows = [key for group in groups for block in group for key in block]
        at = {key: 2.0 * n for n, key in enumerate(rows)}
        return at | {"x": 3.0, "y": 5.0, "z": 7.0}

    found = least_crossing((tuple(map(tuple, keys)),), nets, heights)
    least = min(
        crossings(columns, nets, heights(((one, other),)))
        for a, b, columns in product(
            permutations(keys[0]), permutations(keys[1]), permutations(range(len(nets)))
        )
        for one, other in ((a, b), (b, a))
    )
    assert crossings(found.columns, nets, heights(found.groups)) == least
