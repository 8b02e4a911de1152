"""What a job takes, counted by hand for a small one."""

import pytest

from linter.jobfile import read_job
from linter.reports.takeoff import takeoff
from linter.wiring import derive

JOB = """
precover: 1
job: {name: Bell loft}
supplies: {service: {kind: split phase, voltage: 240 V}}
usual: {cable: {sheath: 12/2 NM-B, free_length: 8 in}, box: {material: nonmetallic}}
panel: {breakers: {1: {rating: 20 A, protection: [arc-fault]}, 3: {rating: 20 A, poles: 2}}}
circuits: {loft: {breakers: [1], use: general}}
rooms: {loft: {use: workshop}}
boxes:
  a: {room: loft, volume: 20 in3, holds: {receptacle: {rating: 15 A}}}
  b: {room: loft, volume: 20 in3, holds: {receptacle: {rating: 15 A, protection: ground-fault}}}
  c: {room: loft, form: round, volume: 16 in3, holds: luminaire}
  d: {room: loft, gangs: 2, volume: 30 in3, holds: [{switch: {controls: c}}, receptacle]}
  e: {room: loft, form: square, volume: 30 in3}
cables:
  k1: {from: panel, to: a, circuit: loft, length: 20 ft, at_to: {free_length: 10 in}}
  k2: {from: a, to: b, length: 10 ft 6 in}
  k3: {from: a, to: d}
  k4: {sheath: 12/3 NM-B, from: d, to: c, carries: feed and switched, for: c, length: 3 m}
  k5: {from: d, to: e, carries: spare}
"""

EXPECTED = {
    "Boxes": [
        ("1-gang device box, nonmetallic, 20 in3", 2, ""),
        ("2-gang device box, nonmetallic, 30 in3", 1, ""),
        ("round box, nonmetallic, 16 in3", 1, ""),
        ("square box, nonmetallic, 30 in3", 1, ""),
    ],
    "Devices": [
        ("duplex receptacle", 1, ""),
        ("duplex receptacle, 15 A", 1, ""),
        ("duplex receptacle, 15 A, ground-fault", 1, ""),
        ("luminaire", 1, ""),
        ("single pole switch", 1, ""),
    ],
    "Plates and covers": [
        ("1-gang: duplex", 1, ""),
        ("1-gang: rectangular", 1, ""),
        ("2-gang: toggle + duplex", 1, ""),
        ("blank cover, square box", 1, ""),
    ],
    "Breakers": [("20 A, 1 pole, arc-fault", 1, ""), ("20 A, 2 poles", 1, "")],
    "Cable": [("12/2 NM-B, 2 without a length", 4, "31 ft"), ("12/3 NM-B", 1, "10 ft")],
}


@pytest.mark.parametrize("heading", EXPECTED)
def test_a_part_is_counted(heading: str) -> None:
    job = read_job(JOB, "loft.yaml")
    parts = {each.heading: each for each in takeoff(job, derive(job), metric=False)}
    assert [tuple(row) for row in parts[heading].rows] == EXPECTED[heading]


def test_pigtails_are_counted_by_colour_and_as_long_as_the_longest_free_conductor() -> None:
    """Box a joins three cables to one receptacle: a pigtail of each colour, 10 in by k1.

    Box d joins k3 and k4 to a switch and a receptacle: two black, two bare, one white, 8 in.
    Caps: the two spares of k5 at both ends, and the hot of k4 that c has no use for.
    """
    job = read_job(JOB, "loft.yaml")
    parts = {each.heading: each for each in takeoff(job, derive(job), metric=False)}
    assert [tuple(row) for row in parts["Pigtails"].rows] == [
        ("bare, 12 AWG, 10 in each", 1, "1 ft"),
        ("bare, 12 AWG, 8 in each", 2, "2 ft"),
        ("black, 12 AWG, 10 in each", 1, "1 ft"),
        ("black, 12 AWG, 8 in each", 2, "2 ft"),
        ("white, 12 AWG, 10 in each", 1, "1 ft"),
        ("white, 12 AWG, 8 in each", 1, "1 ft"),
    ]
    caps = {row.what: row.number for row in parts["Connectors"].rows if row.what.startswith("cap")}
    assert caps == {"cap for 1 12 AWG": 5}
