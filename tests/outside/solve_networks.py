"""Networks to solve: drawn as such, with meshes and islands, and from jobs with faults."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any, NamedTuple

from hypothesis import assume
from hypothesis import strategies as st

from linter.jobfile import read_job
from linter.solve import (
    Apart,
    Constant,
    Loose,
    Network,
    OnLeg,
    Open,
    Scenario,
    SupplyNeutralLost,
    TakenOut,
    Touching,
    network_of,
)
from linter.solve.network import Load, Wire
from linter.text import Refused
from linter.wiring import derive
from linter.wiring.model import Role
from tests.properties.test_wiring import COMMON, plain_jobs

if TYPE_CHECKING:
    from linter.job.jobs import Job
    from linter.solve.scenario import Fault
    from linter.wiring.model import Wiring

Plain = dict[str, Any]
# Ohms of conductors, of loose joints, of what touches.
OHMS = st.sampled_from([0.002, 0.013, 0.05, 0.081, 0.16, 0.4, 1.7, 9.0, 35.0, 220.0])
WATTS = st.sampled_from([7.0, 40.0, 100.0, 350.0, 1200.0, 1500.0, 2400.0])
CONSTANT = st.sampled_from([Constant.IMPEDANCE, Constant.IMPEDANCE, Constant.POWER])
SUPPLIES = {
    "service": {"kind": "split phase", "voltage": "240 V", "usual": "yes"},
    "cord": {"kind": "two-wire 120 V"},
    "harbour": {"kind": "single phase 230 V"},
}


@st.composite
def meshes(draw: st.DrawFn) -> Network:
    """A network of 5 to 24 nodes with more wires than a tree has, and sometimes an island."""
    size = draw(st.integers(5, 24))
    potentials = draw(
        st.sampled_from([(120.0, -120.0, 0.0), (120.0, 0.0), (230.0, 0.0), (120.0, -120.0)])
    )
    held = dict(enumerate(potentials[:size]))
    pairs = [(draw(st.integers(0, node - 1)), node) for node in range(1, size)]
    pairs += draw(st.lists(st.tuples(*[st.integers(0, size - 1)] * 2), min_size=1, max_size=size))
    if draw(st.integers(0, 4)) == 0:
        pairs = [pair for pair in pairs if pair != pairs[-1]]
    wires = [
        Wire(f"w{place}", one, other, draw(OHMS))
        for place, (one, other) in enumerate(pairs)
        if one != other
    ]
    loads = [draw(_load(f"a{place}", size)) for place in range(draw(st.integers(2, 7)))]
    nodes = {f"n{node}": node for node in range(size)}
    return Network(nodes, size, held, tuple(wires), tuple(each for each in loads if each))


@st.composite
def _load(draw: st.DrawFn, name: str, size: int) -> Load | None:
    one, other = draw(st.integers(0, size - 1)), draw(st.integers(0, size - 1))
    volts = draw(st.sampled_from([120.0, 230.0, 240.0]))
    load = Load(name, name, one, other, draw(WATTS), volts, draw(CONSTANT))
    return None if one == other else load


@st.composite
def multiwire_jobs(draw: st.DrawFn) -> Plain:
    """A job of one multiwire circuit that forks, and often has a ring; each outlet on one hot."""
    count = draw(st.integers(3, 7))
    names = [f"b{number}" for number in range(count)]
    ways = [("panel", names[0])]
    ways += [(names[draw(st.integers(0, n - 1))], names[n]) for n in range(1, count)]
    ways += draw(st.sampled_from([[], [(names[-1], "panel")], [(names[-1], names[0])]]))
    cables = {
        f"k{number}": {"from": one, "to": other, "circuit": "slip", "sheath": "12/3 NM-B"}
        for number, (one, other) in enumerate(ways)
    }
    boxes = {}
    for name in names:
        hot = draw(st.sampled_from(["black", "red"]))
        here = [each for each, cable in cables.items() if name in cable.values()]
        hots, neutrals = ([f"{each}.{colour}" for each in here] for colour in (hot, "white"))
        boxes[name] = {
            "room": "slip",
            "holds": {"receptacle": {"name": name}},
            "make_up": {
                "joints": [{"of": [f"{name}.hot", *hots]}, {"of": [f"{name}.neutral", *neutrals]}]
            },
        }
    return {**COMMON, "boxes": boxes, "cables": cables}


class Scene(NamedTuple):
    """A job that can be wired, in one state; shown as its file would be, which is short."""

    job: Job
    wiring: Wiring
    scenario: Scenario
    text: str

    def __repr__(self) -> str:
        return f"{self.text} in {self.scenario}"

    def network(self) -> Network:
        """The network of it."""
        return network_of(self.job, self.wiring, self.scenario)


@st.composite
def scenes(draw: st.DrawFn) -> Scene:
    """A job of the boathouse that can be wired, with loads, a supply and up to two faults."""
    plain: Plain = draw(st.one_of(plain_jobs(), multiwire_jobs(), multiwire_jobs()))
    outlets = [
        next(iter(device.values()))["name"]
        for box in plain["boxes"].values()
        for device in _listed(box["holds"])
        if "switch" not in device
    ]
    appliances = {
        f"a{number}": {"outlets": [outlet], "load": f"{draw(WATTS)} W"}
        for number, outlet in enumerate(outlets)
    }
    cables = {
        name: {**cable, "material": draw(st.sampled_from(["copper", "aluminium"])),
               "length": f"{draw(st.integers(1, 60))} ft"}
        for name, cable in plain["cables"].items()
    }  # fmt: skip
    panel = {**plain["panel"], "legs": "alternate by rows"}
    plain = {**plain, "panel": panel, "supplies": SUPPLIES, "cables": cables}
    plain["appliances"] = appliances
    text = json.dumps(plain)
    job = read_job(text, "boathouse.yaml")
    wiring = _derived(job)
    faults = draw(st.lists(_fault(wiring), min_size=draw(st.integers(0, 1)), max_size=2))
    supply = draw(st.sampled_from(["service", "service", "cord", "harbour"]))
    constant = draw(CONSTANT)
    scenario = Scenario(supply=supply, faults=tuple(faults), constant=constant)
    return Scene(job, wiring, scenario, text)


def networks_of_jobs() -> st.SearchStrategy[Network]:
    """The networks of such scenes."""
    return scenes().map(Scene.network)


def _listed(held: Any) -> list[Plain]:
    return held if isinstance(held, list) else [held]


def _derived(job: Job) -> Wiring:
    try:
        return derive(job)
    except Refused:
        assume(False)  # hypothesis draws another job
        raise


def _fault(wiring: Wiring) -> st.SearchStrategy[Fault]:
    ends = st.sampled_from(sorted(wiring.wire_ends))
    boxes = st.sampled_from(sorted(wiring.boxes))
    roles = st.sampled_from([Role.HOT, Role.NEUTRAL, Role.BOND])
    kinds: list[st.SearchStrategy[Any]] = [
        st.builds(Open, ends),
        st.builds(Open, boxes, roles),
        st.builds(Loose, ends, OHMS),
        st.builds(Loose, boxes, OHMS, roles),
        st.builds(Touching, ends, ends, OHMS),
        st.builds(OnLeg, st.just("panel"), st.just(3), st.just("A")),
        st.just(SupplyNeutralLost()),
    ]
    if wiring.by_device:
        kinds.append(st.builds(TakenOut, st.sampled_from(sorted(wiring.by_device))))
    if wiring.joints:
        kinds.append(st.builds(Apart, st.sampled_from(sorted(wiring.joints))))
    return st.one_of(kinds)
