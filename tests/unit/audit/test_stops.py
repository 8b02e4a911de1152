from linter.audit.stops import Walk
from linter.units import Unknown
from tests.unit.audit.made import thing

SLIP, LOFT = thing("room", "slip", 3), thing("room", "loft", 4)
TOP = thing("box", "top", 8, room=LOFT)
BENCH = thing("box", "bench", 9, room=SLIP)
WIRE = thing("wire_end", "k1.black@bench", 20, box=BENCH)
CABLE = thing("cable", "k1", 20, ends=(thing("cable_end", "k1@bench", 20, box=BENCH),))
CONDUCTOR = thing("conductor", "k1.black", 20, cable=CABLE)
PANEL = thing("panel", "main", 5, room=LOFT)
BREAKER = thing("breaker", "1", 6, panel=PANEL)
CIRCUIT = thing("circuit", "winch", 7, breakers=(BREAKER,))
DWELLING = thing("dwelling", "dwelling", 1)
WALK = Walk(
    {"room": (SLIP, LOFT), "box": (TOP, BENCH), "cable": (CABLE,), "panel": (PANEL,),
     "circuit": (CIRCUIT,), "breaker": (BREAKER,)}
)  # fmt: skip


def test_a_wire_end_is_looked_at_where_its_box_is() -> None:
    stop = WALK.stop_of(WIRE)
    assert (stop.room, stop.box, stop.heading, stop.place.line) == ("slip", "bench", "bench", 9)


def test_a_conductor_is_looked_at_along_its_cable_in_the_room_of_its_last_box() -> None:
    stop = WALK.stop_of(CONDUCTOR)
    assert (stop.room, stop.box, stop.heading) == ("slip", "", "k1")


def test_a_circuit_belongs_to_the_room_of_its_panel_and_names_itself() -> None:
    stop = WALK.stop_of(CIRCUIT)
    assert (stop.room, stop.box, stop.circuit) == ("loft", "", "winch")


def test_rooms_follow_the_file_and_in_a_room_boxes_come_before_cables_and_panels() -> None:
    walked = sorted([CIRCUIT, PANEL, CABLE, TOP, WIRE], key=lambda each: WALK.stop_of(each).order)
    assert [each.ref for each in walked] == ["k1.black@bench", "k1", "top", "main", "winch"]


def test_what_has_no_room_comes_last() -> None:
    nowhere = thing("panel", "second", 5, room=Unknown(["panel.room"]))
    assert WALK.stop_of(DWELLING).order > WALK.stop_of(CIRCUIT).order
    assert WALK.stop_of(nowhere).room == ""
