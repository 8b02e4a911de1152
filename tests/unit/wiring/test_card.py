"""The make-up of a box as a value for reports."""

from functools import partial

from linter.jobfile import read_job
from linter.trace import trace
from linter.trace.needed import needed_by
from linter.wiring import derive
from linter.wiring.card import (
    CableIn,
    JointIn,
    Lacking,
    MakeUp,
    OnTerminal,
    PigtailsToCut,
    Tab,
    make_up_of,
)

JOB = """
precover: 1
job: {name: Boathouse}
supplies: {shore: {kind: split phase, voltage: 240 V}}
usual: {cable: {sheath: 12/2 NM-B}}
panel: {legs: alternate by rows, breakers: {2: {rating: 20 A}}}
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
    wires = (
        ("black", "hot of space 2, leg A (slip)"),
        ("white", "neutral (slip)"),
        ("bare", "bond"),
    )
    assert card.cables[0] == CableIn("k1", "12/2 NM-B", "panel", wires)


def test_joints_tell_number_and_sizes_of_conductors() -> None:
    hot = _card("winch").joints[0]
    assert hot == JointIn(
        use="hot of space 2, leg A (slip)",
        wires=("k1.black", "k3.black"),
        pigtails=("receptacle winch, line hot",),
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
    assert OnTerminal("receptacle winch", "load hot", ("k2.black",), ()) in terminals
    assert OnTerminal("receptacle winch", "line hot", (), ("k1.black", "k3.black")) in terminals


def test_the_second_screw_of_a_wired_side_is_not_called_empty() -> None:
    assert _card("bow").empty == ()


def test_a_luminaires_own_wires_are_no_pigtails_to_cut() -> None:
    card = _card("lamp")
    assert card.pigtails == ()
    assert [each.leads for each in card.joints] == [
        ("luminaire lamp, hot lead",),
        ("luminaire lamp, neutral lead",),
        ("luminaire lamp, bond lead",),
    ]
    assert card.joints[0].sizes == (("14 AWG", 1), ("18 AWG", 1))  # as the job states it


TWO_HOTS = """
precover: 1
job: {name: Boathouse}
supplies: {shore: {kind: split phase, voltage: 240 V}}
usual: {cable: {sheath: 12/2 NM-B}}
panel:
  legs: alternate by rows
  breakers: {1: {rating: 20 A, tied_to: [3]}, 3: {rating: 20 A}, 4: {rating: 15 A}}
circuits: {slip: {breakers: [1, 3]}, lights: {breakers: [4]}}
rooms: {slip: {use: boathouse}}
boxes:
  bench: {room: slip, holds: {receptacle: {split: two circuits}}}
  door:
    room: slip
    gangs: 2
    holds: [{switch: {controls: lamp}}, {switch: {type: dimmer, controls: fan}}]
  lamp: {room: slip, holds: luminaire}
  fan: {room: slip, holds: fan}
  half: {room: slip, holds: {receptacle: {split: switched half of half, circuit: lights}}}
  hall: {room: slip, holds: {switch: {controls: half}}}
cables:
  k1: {sheath: 12/3 NM-B, from: panel, to: bench, circuit: slip}
  k2: {from: panel, to: door, circuit: lights}
  k3: {from: door, to: lamp, carries: switched, for: lamp}
  k4: {from: door, to: fan, carries: switched, for: fan}
  k5: {from: door, to: hall}
  k6: {sheath: 12/3 NM-B, from: hall, to: half, carries: feed and switched, for: half}
"""


def _card_of_two_hots(box: str) -> MakeUp:
    job = read_job(TWO_HOTS, "boathouse.yaml")
    return make_up_of(derive(job), job, box, {"bond": "ground"})


def test_each_hot_is_called_by_its_space_and_leg() -> None:
    (cable,) = _card_of_two_hots("bench").cables
    assert [use for _, use in cable.wires] == [
        "hot of space 1, leg A (slip)",
        "hot of space 3, leg B (slip)",
        "neutral (slip)",
        "ground",
    ]


def test_the_tab_on_the_hot_side_is_broken_where_the_halves_have_hots_of_their_own() -> None:
    assert _card_of_two_hots("bench").tabs == (Tab("receptacle bench", keeps_neutral=True),)
    assert _card_of_two_hots("half").tabs == (Tab("receptacle half", keeps_neutral=True),)
    assert _card("bow").tabs == ()


def test_switches_and_dimmers_are_told_apart_and_have_no_common_of_one_pole() -> None:
    terminals = {(each.device, each.terminal) for each in _card_of_two_hots("door").terminals}
    assert {
        ("single pole switch door.1", "hot in"),
        ("single pole switch door.1", "switched out"),
        ("dimmer door.2", "hot in"),
        ("dimmer door.2", "ground"),
    } <= terminals


def test_a_wire_on_a_luminaire_is_joined_with_its_lead_whether_the_job_counts_them_or_not() -> None:
    card = _card_of_two_hots("lamp")
    assert card.pigtails == ()
    assert all(each.is_lead for each in card.terminals)


LOOP = """
precover: 1
job: {name: Boathouse}
supplies: {shore: {kind: split phase, voltage: 240 V}}
usual: {cable: {sheath: 14/2 NM-B}}
panel: {legs: alternate by rows, breakers: {2: {rating: 15 A}}}
circuits: {slip: {breakers: [2]}}
rooms: {slip: {use: boathouse}}
boxes:
  lamp: {room: slip, holds: luminaire}
  door: {room: slip, holds: {switch: {controls: lamp}}}
  bow: {room: slip, holds: receptacle}
  stern: {room: slip, holds: []}
cables:
  k1: {from: panel, to: lamp, circuit: slip}
  k2: {from: lamp, to: door, carries: switch loop, for: lamp}
  k3: {from: door, to: bow}
  k4: {sheath: 14/3 NM-B, from: lamp, to: stern}
"""


def test_a_wire_that_others_hang_on_is_not_one_to_cap() -> None:
    job = read_job(LOOP, "boathouse.yaml")
    wiring = derive(job)
    needed = partial(needed_by, trace(job, wiring), wiring)
    door = make_up_of(wiring, job, "door", needed=needed)
    assert door.lacking == (Lacking("k3.white", "neutral (slip)", ("receptacle bow",)),)
    assert door.capped == ()
    stern = make_up_of(wiring, job, "stern", needed=needed)
    assert "k4.white" in stern.capped
    assert stern.lacking == ()


def test_devices_are_called_as_the_pack_calls_them() -> None:
    job = read_job(JOB, "boathouse.yaml")
    words = {"receptacle": "socket", "bond": "earth wire"}
    bow = make_up_of(derive(job), job, "bow", words)
    assert {(each.device, each.terminal) for each in bow.terminals} == {
        ("socket bow", "hot"),
        ("socket bow", "neutral"),
        ("socket bow", "earth wire"),
    }
