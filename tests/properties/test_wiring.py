"""Laws of the derived wiring, on generated jobs: trees of cables of one to three circuits."""

import json
from collections import Counter
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from linter.job.jobs import Job
from linter.jobfile import read_job
from linter.text import Refused
from linter.trace import trace
from linter.wiring import Wiring, derive
from linter.wiring.model import Role

CIRCUITS = {"pier": [2], "shed": [4], "slip": [1, 3]}
COMMON = {
    "precover": 1,
    "job": {"name": "Boathouse"},
    "supplies": {"shore": {"kind": "split phase", "voltage": "240 V"}},
    "usual": {"cable": {"sheath": "12/2 NM-B"}},
    "panel": {"breakers": {n: {"rating": "20 A"} for n in (1, 2, 3, 4)}},
    "circuits": {name: {"breakers": spaces} for name, spaces in CIRCUITS.items()},
    "rooms": {"slip": {"use": "boathouse"}},
}
Plain = dict[str, Any]


@st.composite
def plain_jobs(draw: st.DrawFn) -> Plain:
    """Boxes and cables of a job: for each circuit a tree of boxes, some of them shared."""
    names = [f"b{n}" for n in range(draw(st.integers(1, 6)))]
    runs: list[tuple[str, str, str]] = []
    circuits_in: dict[str, list[str]] = {name: [] for name in names}
    for circuit in draw(st.lists(st.sampled_from(sorted(CIRCUITS)), min_size=1, unique=True)):
        reached: list[str] = []
        for box in draw(st.lists(st.sampled_from(names), min_size=1, unique=True)):
            runs.append((draw(st.sampled_from(reached)) if reached else "panel", box, circuit))
            circuits_in[box].append(circuit)
            reached.append(box)
    cables: Plain = {}
    onward: dict[str, list[str]] = {name: [] for name in (*names, "panel")}
    for parent, box, circuit in runs:
        meeting = {*circuits_in[box], *circuits_in.get(parent, ["the panel"])}
        name = f"k{len(cables)}"
        cables[name] = draw(_cable(parent, box, circuit, must_say=len(meeting) > 1))
        onward[parent].append(name)
    boxes = {
        name: {"room": "slip", "holds": draw(_holds(name, circuits_in[name], onward[name]))}
        for name in names
    }
    return {**COMMON, "boxes": boxes, "cables": cables}


@st.composite
def _cable(draw: st.DrawFn, parent: str, box: str, circuit: str, *, must_say: bool) -> Plain:
    """A cable that says its circuit where it must, and seldom does not say which hot it has."""
    cable: Plain = {"from": parent, "to": box}
    if must_say or draw(st.booleans()):
        cable["circuit"] = circuit
    legs: list[Plain] = [{"sheath": "12/3 NM-B"}, {"leg_of": 1}, {"leg_of": 3}]
    others: list[Plain] = [{}, {}, {"sheath": "12/3 NM-B"}, {"carries": "spare"}]
    cable |= draw(st.sampled_from(legs if circuit == "slip" else others))
    if circuit == "slip" and draw(st.integers(0, 9)) == 0:
        cable.pop("leg_of", None)
    return cable if draw(st.booleans()) else cable | {"from": cable["to"], "to": cable["from"]}


@st.composite
def _holds(draw: st.DrawFn, box: str, circuits: list[str], onward: list[str]) -> list[Plain]:
    held = []
    left = list(onward)
    kinds = ["receptacle", "switch", "luminaire", "ground-fault"]
    for n in range(draw(st.integers(0, 3))):
        values: Plain = {"name": f"{box}-{n}"}
        if len(circuits) > 1 or (circuits and draw(st.booleans())):
            values["circuit"] = draw(st.sampled_from(circuits))
        kind = draw(st.sampled_from([*kinds, "split"] if len(circuits) == 2 else kinds))
        if kind == "switch":
            values["controls"] = f"{box}-0"
        if kind == "ground-fault":
            values["protection"] = "ground-fault"
            values["load"] = draw(st.lists(st.sampled_from(left), unique=True)) if left else []
            left = [each for each in left if each not in values["load"]]
        if kind == "split":
            values.pop("circuit")
            values["split"] = "two circuits"
        if kind == "receptacle" and draw(st.booleans()):
            values["through"] = "device"
        held.append({kind if kind in ("switch", "luminaire") else "receptacle": values})
    return held


def _wiring(plain: Plain) -> Wiring | frozenset[str]:
    """The wiring of a job, or what is said where it is refused; every generated job can be read."""
    job = _read(plain)
    try:
        return derive(job)
    except Refused as refused:
        return frozenset(each.found for each in refused.refusals)


def _read(plain: Plain) -> Job:
    return read_job(json.dumps(plain), "boathouse.yaml")


def _without_names(wiring: Wiring) -> Plain:
    """A wiring with joints and pigtails told by what they join."""
    ends_on = {each.id: each.terminal for each in wiring.pigtails.values()}
    looks = {each.id: (each.colour, str(each.size)) for each in wiring.pigtails.values()}
    return {
        name: {
            "joints": {
                (
                    frozenset(joint.wire_ends),
                    frozenset((ends_on[each], looks[each]) for each in joint.pigtails),
                    joint.use,
                )
                for joint in box.joints
            },
            "landings": {(each.terminal, frozenset(each.wire_ends)) for each in box.landings},
            "capped": set(box.capped),
            "open": set(box.open_ends),
            "links": set(box.links),
        }
        for name, box in wiring.boxes.items()
    } | {"panel": dict(wiring.panel_landings)}


@settings(max_examples=150, deadline=None)
@given(plain_jobs())
def test_every_wire_end_is_in_one_place(plain: Plain) -> None:
    wiring = _wiring(plain)
    if not isinstance(wiring, Wiring):
        return
    places = [each for joint in wiring.joints.values() for each in joint.wire_ends]
    places += [each for landing in wiring.landings.values() for each in landing.wire_ends]
    places += [each.wire_end for each in wiring.capped]
    places += [*wiring.open_ends, *wiring.panel_landings]
    assert Counter(places) == Counter(list(wiring.wire_ends))


@settings(max_examples=150, deadline=None)
@given(plain_jobs())
def test_every_pigtail_ends_on_one_terminal_and_no_terminal_takes_two(plain: Plain) -> None:
    wiring = _wiring(plain)
    if not isinstance(wiring, Wiring):
        return
    landings = [each for box in wiring.boxes.values() for each in box.landings]
    assert Counter(each.pigtail for each in landings if each.pigtail) == Counter(
        list(wiring.pigtails)
    )
    assert len({each.terminal for each in landings}) == len(landings)
    joined = Counter(each for joint in wiring.joints.values() for each in joint.pigtails)
    assert joined == Counter(list(wiring.pigtails))


@settings(max_examples=150, deadline=None)
@given(plain_jobs())
def test_like_is_joined_to_like_only(plain: Plain) -> None:
    wiring = _wiring(plain)
    if not isinstance(wiring, Wiring):
        return
    for joint in wiring.joints.values():
        uses = [wiring.wire_ends[each].use for each in joint.wire_ends]
        assert len({use.role is Role.BOND for use in uses}) <= 1
        assert len({use.circuit for use in uses if use.role is Role.NEUTRAL}) <= 1
        assert all(use == joint.use for use in uses)


@settings(max_examples=150, deadline=None)
@given(plain_jobs(), st.randoms(use_true_random=False))
def test_the_order_of_boxes_and_cables_changes_only_names(plain: Plain, chance: Any) -> None:
    boxes, cables = list(plain["boxes"].items()), list(plain["cables"].items())
    chance.shuffle(boxes)
    chance.shuffle(cables)
    one = _wiring(plain)
    other = _wiring({**plain, "boxes": dict(boxes), "cables": dict(cables)})
    if isinstance(one, Wiring) and isinstance(other, Wiring):
        assert _without_names(one) == _without_names(other)
    else:
        assert one == other


@settings(max_examples=100, deadline=None)
@given(plain_jobs())
def test_what_is_derived_lets_no_circuit_reach_another(plain: Plain) -> None:
    job, wiring = _read(plain), _wiring(plain)
    if not isinstance(wiring, Wiring):
        return
    found = trace(job, wiring)
    assert found.joined_neutrals == ()
    for name, end in wiring.wire_ends.items():
        spaces = {each.space for each in found.hots_at(name)}
        assert spaces <= set(CIRCUITS.get(end.use.circuit or "", ()))
        assert end.use.role in (Role.HOT, Role.SWITCHED_HOT) or not spaces
        assert found.bond_at(name) <= end.bond
        assert found.neutral_at(name) <= (end.use.role is Role.NEUTRAL)
