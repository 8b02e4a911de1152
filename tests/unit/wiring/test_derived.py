"""What wire ends, pigtails and joints carry besides what they join: sizes, colours, marks."""

from linter.jobfile import read_job
from linter.wiring import Wiring, derive

JOB = """
precover: 1
job: {name: Boathouse}
supplies: {shore: {kind: split phase, voltage: 240 V}}
usual: {cable: {sheath: 12/2 NM-B}}
panel: {breakers: {2: {rating: 20 A}, 4: {rating: 40 A, poles: 2}, 8: {rating: 40 A, poles: 2}}}
circuits: {slip: {breakers: [2]}, hoist: {breakers: [4]}, saw: {breakers: [8]}}
rooms: {slip: {use: boathouse}}
products: {connectors: {tan: {combinations: [{least: 2, most: 3, size: 12 AWG}]}}}
boxes:
  bow:
    room: slip
    holds: receptacle
    make_up: {joints: [{of: [k1.bare, k2.bare, bow.bond], connector: tan}]}
  stern: {room: slip, holds: receptacle}
  hoist: {room: slip, holds: appliance outlet}
  saw: {room: slip, holds: appliance outlet}
  attic: {room: slip}
cables:
  k1: {from: panel, to: bow, circuit: slip, through: [{box: attic, loop: 14 in}]}
  k2: {sheath: 14/2 NM-B, from: bow, to: stern}
  k3: {sheath: 8/2 NM-B, from: panel, to: hoist, circuit: hoist, at_to: {marks: {white: red}}}
  k4: {sheath: 8/2 NM-B, bond: 10 AWG, from: panel, to: saw, circuit: saw}
"""


def _wiring() -> Wiring:
    return derive(read_job(JOB, "boathouse.yaml"))


def test_a_pigtail_is_as_large_as_the_largest_wire_in_its_joint() -> None:
    sizes = {each.terminal: str(each.size) for each in _wiring().pigtails.values()}
    assert sizes == {"bow.hot": "12 AWG", "bow.neutral": "12 AWG", "bow.bond": "12 AWG"}


def test_a_pigtail_has_the_colour_of_what_it_is_joined_to() -> None:
    colours = {each.terminal: each.colour for each in _wiring().pigtails.values()}
    assert colours == {"bow.hot": "black", "bow.neutral": "white", "bow.bond": "bare"}


def test_a_bond_is_as_large_as_the_hots_up_to_10_awg_and_unknown_above() -> None:
    wiring = _wiring()
    assert str(wiring.wire_ends["k1.bare@bow"].size) == "12 AWG"
    assert wiring.wire_ends["k3.bare@hoist"].size is None
    assert str(wiring.wire_ends["k4.bare@saw"].size) == "10 AWG"


def test_a_mark_stands_at_the_end_where_it_is_stated() -> None:
    wiring = _wiring()
    assert wiring.wire_ends["k3.white@hoist"].marked == "red"
    assert wiring.wire_ends["k3.white@panel"].marked is None


def test_a_stated_joint_keeps_its_connector() -> None:
    joints = _wiring().boxes["bow"].joints
    assert [(each.connector, each.stated) for each in joints] == [
        ("tan", True),
        (None, False),
        (None, False),
    ]


def test_conductors_that_pass_uncut_have_the_length_of_their_loop() -> None:
    passing = _wiring().passing
    assert [each.colour for each in passing] == ["black", "white", "bare"]
    assert {str(each.loop) for each in passing} == {"14 in"}
    assert [each.bond for each in passing] == [False, False, True]


def test_what_ends_where_can_be_asked_of_every_wire_and_pigtail() -> None:
    wiring = _wiring()
    assert wiring.ended_in["k2.black@stern"] == "stern.hot"
    joint = wiring.joints[wiring.ended_in["k2.black@bow"]]
    assert wiring.ended_in[joint.pigtails[0]] == "bow.hot"
