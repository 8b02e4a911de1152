"""The make-up of a box as a value for reports."""

from linter.jobfile import read_job
from linter.wiring import derive
from linter.wiring.card import CableIn, JointIn, MakeUp, OnTerminal, PigtailsToCut, make_up_of

JOB = """
precover: 1
job: {name: Boathouse}
supplies: {shore: {kind: split phase, voltage: 240 V}}
usual: {cable: {sheath: 12/2 NM-B}}
panel: {breakers: {2: {rating: 20 A}}}
circuits: {slip: {breakers: [2]}}
rooms: {slip: {use: boathouse}}
boxes:
  winch: {room: slip, holds: {receptacle: {protection: ground-fault, load: [k2]}}}
  bow: {room: slip, holds: receptacle}
  lamp: {room: slip, holds: {luminaire: {fixture_wires: {count: 3, size: 18 AWG}}}}
cables:
  k1: {from: panel, to: winch, circuit: slip}
  k2: {from: winch, to: bow}
  k3: {sheath: 14/2 NM-B, from: winch, to: lamp}
"""


def _card(box: str) -> MakeUp:
    job = read_job(JOB, "boathouse.yaml")
    return make_up_of(derive(job), job, box)


def test_cables_are_named_with_where_they_go_and_what_their_wires_are() -> None:
    card = _card("winch")
    assert [each.other_end for each in card.cables] == ["panel", "bow", "lamp"]
    wires = (("black", "hot (slip)"), ("white", "neutral (slip)"), ("bare", "bond"))
    assert card.cables[0] == CableIn("k1", "12/2 NM-B", "panel", wires)


def test_joints_tell_number_and_sizes_of_conductors() -> None:
    hot = _card("winch").joints[0]
    assert hot == JointIn(
        use="hot (slip)",
        wires=("k1.black", "k3.black"),
        pigtails=("winch.line hot",),
        leads=(),
        number=3,
        sizes=(("12 AWG", 2), ("14 AWG", 1)),
        connector=None,
        is_stated=False,
    )


def test_pigtails_to_cut_are_counted_by_colour_and_size() -> None:
    assert set(_card("winch").pigtails) == {
        PigtailsToCut("black", "12 AWG", 1),
        PigtailsToCut("white", "12 AWG", 1),
        PigtailsToCut("bare", "12 AWG", 1),
    }


def test_terminals_tell_what_is_on_them() -> None:
    terminals = _card("winch").terminals
    assert OnTerminal("winch", "load hot", ("k2.black",), ()) in terminals
    assert OnTerminal("winch", "line hot", (), ("k1.black", "k3.black")) in terminals


def test_the_second_screw_of_a_wired_side_is_not_called_empty() -> None:
    assert _card("bow").empty == ()


def test_a_luminaires_own_wires_are_no_pigtails_to_cut() -> None:
    card = _card("lamp")
    assert card.pigtails == ()
    assert [each.leads for each in card.joints] == [
        ("lamp.hot",),
        ("lamp.neutral",),
        ("lamp.bond",),
    ]
    assert card.joints[0].sizes == (("14 AWG", 1), ("size unknown", 1))
