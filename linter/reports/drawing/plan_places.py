"""Where everything on a plan stands: symbols beside each other, no words on words or on symbols."""

from __future__ import annotations

from functools import cache
from math import hypot
from typing import TYPE_CHECKING, NamedTuple

from linter.reports.drawing.letters import fitted, width_of
from linter.reports.drawing.shapes import Words

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from linter.reports.drawing.plan import Plan, Point, RoomOn, RunOn, SpotOn

WIDTH = 400.0
SYMBOL = 18.0
_MARGIN, _SIZE, _GAP = 26.0, 10.0, 2.0
_STEP, _RINGS = 10.0, 9
_TALLEST = 900.0
_HOME = 24.0
_BEND = 0.1
_SQUARE = 40.0

Rect = tuple[float, float, float, float]


class Room(NamedTuple):
    """A room's walls."""

    x: float
    y: float
    width: float
    height: float


class Symbol(NamedTuple):
    """A symbol with its middle, and the spot that it belongs to."""

    what: str
    x: float
    y: float
    spot: str


class Run(NamedTuple):
    """A cable as a curve by three points, of a circuit by number; a home run has an arrow."""

    points: tuple[Point, Point, Point]
    circuit: int
    is_home: bool


class Drawn(NamedTuple):
    """A plan drawn: `nameless` are the spots whose number found no room."""

    width: float
    height: float
    rooms: tuple[Room, ...]
    runs: tuple[Run, ...]
    symbols: tuple[Symbol, ...]
    words: tuple[Words, ...]
    nameless: tuple[str, ...]


class _Scale:
    """Metres on the plan to units of the drawing."""

    def __init__(self, plan: Plan) -> None:
        corners = [spot.at for spot in plan.spots]
        for each in plan.rooms:
            corners += [each.at, (each.at[0] + each.size[0], each.at[1] + each.size[1])]
        self._left, self._top = min(x for x, _ in corners), min(y for _, y in corners)
        across = max(x for x, _ in corners) - self._left
        down = max(y for _, y in corners) - self._top
        room = WIDTH - 2 * _MARGIN
        self._by = min(room / max(across, 1e-3), (_TALLEST - 2 * _MARGIN) / max(down, 1e-3))
        self.height = down * self._by + 2 * _MARGIN

    def __call__(self, at: Point) -> Point:
        return (
            (at[0] - self._left) * self._by + _MARGIN,
            (at[1] - self._top) * self._by + _MARGIN,
        )


class _Taken:
    """The room that is taken, by squares of the plan, so that only neighbours are compared."""

    def __init__(self) -> None:
        self._by_square: dict[tuple[int, int], list[Rect]] = {}

    def add(self, rect: Rect) -> None:
        """Takes the room of a rectangle."""
        for square in _squares(rect):
            self._by_square.setdefault(square, []).append(rect)

    def meets(self, one: Rect) -> bool:
        """Whether any of the room of a rectangle is taken."""
        return any(
            one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]
            for square in _squares(one)
            for other in self._by_square.get(square, ())
        )


def _squares(rect: Rect) -> Iterator[tuple[int, int]]:
    for x in range(int(rect[0] // _SQUARE), int(rect[2] // _SQUARE) + 1):
        for y in range(int(rect[1] // _SQUARE), int(rect[3] // _SQUARE) + 1):
            yield x, y


def drawn(plan: Plan) -> Drawn:
    """The plan with everything in its place."""
    scale = _Scale(plan)
    rooms = [(each, _room(each, scale)) for each in plan.rooms]
    taken = _Taken()
    middles = {each.name: _place(each, scale, taken) for each in plan.spots}
    height = max(scale.height, *(y + SYMBOL for _, y in middles.values()))
    words = [each for pair in rooms for each in _room_name(*pair, taken)]
    runs = [_run(each, middles) for each in plan.runs]
    numbers, nameless = _numbers(plan.spots, middles, (WIDTH, height), taken)
    words += numbers
    words += _spaces(plan, runs, (WIDTH, height), taken)
    return Drawn(
        WIDTH, height, tuple(room for _, room in rooms), tuple(runs),
        tuple(symbol for spot in plan.spots for symbol in _symbols(spot, middles)),
        tuple(words), nameless,
    )  # fmt: skip


def _room(room: RoomOn, scale: _Scale) -> Room:
    left, top = scale(room.at)
    right, bottom = scale((room.at[0] + room.size[0], room.at[1] + room.size[1]))
    return Room(left, top, right - left, bottom - top)


def _room_name(named: RoomOn, room: Room, taken: _Taken) -> Iterator[Words]:
    """The name of a room in its upper left corner, or lower down where that is taken."""
    text = fitted(named.name, _SIZE, room.width - 8.0)
    y = room.y + 13.0
    while text and y < room.y + room.height - 3.0:
        words = Words(text, room.x + 4.0, y, _SIZE, "room", named.name)
        if not taken.meets(words.extent):
            taken.add(words.extent)
            yield words
            return
        y += _STEP


def _place(spot: SpotOn, scale: _Scale, taken: _Taken) -> Point:
    """Where a spot is, or the nearest place to it where its symbols lie on no others."""
    x, y = scale(spot.at)
    half = SYMBOL * max(1, len(spot.symbols)) / 2
    for dx, dy in _around():
        rect = (x + dx - half, y + dy - SYMBOL / 2, x + dx + half, y + dy + SYMBOL / 2)
        if not taken.meets(rect) and rect[0] >= 0 and rect[2] <= WIDTH and rect[1] >= 0:
            break
    else:
        dx = dy = 0.0
        rect = (x - half, y - SYMBOL / 2, x + half, y + SYMBOL / 2)
    taken.add(rect)
    return x + dx, y + dy


@cache
def _around() -> tuple[Point, ...]:
    """Steps away from a place, the nearest first."""
    steps = range(-_RINGS, _RINGS + 1)
    places = [(dx * _STEP, dy * _STEP) for dx in steps for dy in steps]
    return tuple(sorted(places, key=lambda each: (hypot(*each), each)))


def _symbols(spot: SpotOn, middles: Mapping[str, Point]) -> Iterator[Symbol]:
    x, y = middles[spot.name]
    left = x - SYMBOL * (len(spot.symbols) - 1) / 2
    for number, what in enumerate(spot.symbols):
        yield Symbol(what, left + SYMBOL * number, y, spot.name)


def _run(run: RunOn, middles: Mapping[str, Point]) -> Run:
    """A gentle curve from box to box; towards the panel, an arrow that only begins the way."""
    (x, y), (to_x, to_y) = middles[run.box], middles.get(run.to, (middles[run.box][0], 0.0))
    length = hypot(to_x - x, to_y - y) or 1.0
    along = ((to_x - x) / length, (to_y - y) / length)
    start, end = SYMBOL / 2, max(length - SYMBOL / 2, SYMBOL / 2)
    if run.is_home:
        end = min(start + _HOME, end)
    first = (x + along[0] * start, y + along[1] * start)
    last = (x + along[0] * end, y + along[1] * end)
    bend = 0.0 if run.is_home else _BEND * (end - start)
    middle = (
        (first[0] + last[0]) / 2 - along[1] * bend,
        (first[1] + last[1]) / 2 + along[0] * bend,
    )
    return Run((first, middle, last), run.circuits[0], run.is_home)


def _numbers(
    spots: Sequence[SpotOn], middles: Mapping[str, Point], size: Point, taken: _Taken
) -> tuple[list[Words], tuple[str, ...]]:
    """The number of each box beside its symbols, with its letters where these have room too."""
    found: list[Words] = []
    nameless = []
    for spot in spots:
        label = spot.number or spot.name
        fuller = " ".join([label, *spot.tags])
        half = SYMBOL * max(1, len(spot.symbols)) / 2
        for text in dict.fromkeys((fuller, label)):
            words = _beside(fitted(text, _SIZE, 90.0), middles[spot.name], half, size, taken)
            if words is not None:
                found.append(words._replace(style="name", whole=spot.name))
                break
        else:
            nameless.append(spot.name)
    return found, tuple(nameless)


def _spaces(plan: Plan, runs: Sequence[Run], size: Point, taken: _Taken) -> Iterator[Words]:
    """The space of the breaker beside the arrow of each home run."""
    for on, run in zip(plan.runs, runs, strict=True):
        if run.is_home:
            text = "#" + "+".join(plan.circuits[each].spaces for each in on.circuits)
            words = _beside(text, run.points[2], 4.0, size, taken)
            if words is not None:
                yield words._replace(style=f"space c{run.circuit % 8}", whole=_named(plan, on))


def _named(plan: Plan, run: RunOn) -> str:
    return ", ".join(plan.circuits[each].name for each in run.circuits)


def _beside(text: str, at: Point, half: float, size: Point, taken: _Taken) -> Words | None:
    """Words beside a place, where they meet nothing; None where there is no room."""
    width = width_of(text, _SIZE, bold=True)
    x, y = at
    for away in (half + _GAP, half + _GAP + 8.0, half + _GAP + 18.0):
        places = (
            (x + away, y + 3.5), (x - away - width, y + 3.5), (x - width / 2, y - away - 1.0),
            (x - width / 2, y + away + 8.5), (x + away, y - 7.0), (x + away, y + 14.0),
            (x - away - width, y - 7.0), (x - away - width, y + 14.0),
        )  # fmt: skip
        for left, base in places:
            words = Words(text, left, base, _SIZE, "name")
            rect = words.extent
            is_in = rect[0] >= 0 and rect[1] >= 0 and rect[2] <= size[0] and rect[3] <= size[1]
            if is_in and not taken.meets(rect):
                taken.add(rect)
                return words
    return None
