"""Laws of the plan: no words on words or on symbols, no symbol on another, all of it inside."""

from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from linter.reports.drawing.plan import CircuitOn, Plan, RoomOn, RunOn, SpotOn
from linter.reports.drawing.plan_places import SYMBOL, Symbol, drawn

SYMBOLS = ("receptacle", "switch", "luminaire", "junction", "special outlet")
COORDINATE = st.floats(0, 20, allow_nan=False, width=16)


@st.composite
def plans(draw: st.DrawFn) -> Plan:
    """Plans of up to twenty boxes, some of them in one place, and rooms that may overlap."""
    rooms = tuple(
        RoomOn(
            draw(st.text("abc-W", min_size=1, max_size=30)),
            (draw(COORDINATE), draw(COORDINATE)),
            (draw(st.floats(0.5, 9, width=16)), draw(st.floats(0.5, 9, width=16))),
        )
        for _ in range(draw(st.integers(0, 5)))
    )
    spots = tuple(
        SpotOn(
            f"b{n}",
            str(n + 1),
            (draw(COORDINATE), draw(COORDINATE)),
            tuple(draw(st.lists(st.sampled_from(SYMBOLS), min_size=1, max_size=2))),
            draw(st.sampled_from(((), ("GFCI",)))),
        )
        for n in range(draw(st.integers(1, 20)))
    )
    names = [each.name for each in spots]
    runs = tuple(
        RunOn(
            (draw(st.integers(0, 2)),),
            draw(st.sampled_from(names)),
            draw(st.sampled_from([*names, "panel"])),
            is_home=draw(st.booleans()),
        )
        for _ in range(draw(st.integers(0, 20)))
    )
    runs = tuple(each for each in runs if each.to in names or each.is_home)
    circuits = tuple(CircuitOn(f"c{n}", str(n)) for n in range(3))
    return Plan("", rooms, spots, runs, circuits)


@settings(max_examples=60, deadline=None)
@given(plans())
def test_words_and_symbols_of_a_plan_keep_apart(plan: Plan) -> None:
    drawing = drawn(plan)
    rects = [(each.extent, each.text) for each in drawing.words]
    rects += [(_around(each), each.what) for each in drawing.symbols]
    for (one, this), (other, that) in combinations(rects, 2):
        meet = one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]
        assert not meet, f"{this} meets {that}"
    for (left, top, right, bottom), what in rects:
        assert min(left, top) >= 0, what
        assert right <= drawing.width, what
        assert bottom <= drawing.height, what
    named = {each.whole for each in drawing.words if each.style == "name"}
    assert named | set(drawing.nameless) == {each.name for each in plan.spots}


def _around(symbol: Symbol) -> tuple[float, float, float, float]:
    half = SYMBOL / 2 - 0.01
    return symbol.x - half, symbol.y - half, symbol.x + half, symbol.y + half
