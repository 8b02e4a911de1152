"""The way from the panel, and what stands on it, for one small run."""

from linter.jobfile import read_job
from linter.trace import Trace, trace
from linter.trace.ways import Protector
from linter.wiring import derive

JOB = """
precover: 1
job: {name: Boathouse}
supplies: {shore: {kind: split phase, voltage: 240 V}}
usual: {cable: {sheath: 12/2 NM-B}}
panel: {breakers: {2: {rating: 20 A, protection: [arc-fault]}}}
circuits: {slip: {breakers: [2]}}
rooms: {slip: {use: boathouse}}
boxes:
  winch: {room: slip, holds: {receptacle: {protection: ground-fault, load: [k2]}}}
  bow: {room: slip, holds: receptacle}
  float: {room: slip, holds: receptacle}
cables:
  k1: {from: panel, to: winch, circuit: slip}
  k2: {from: winch, to: bow}
"""
BREAKER, WINCH = Protector(None, ("panel", 2)), Protector("winch", None)


def _trace() -> Trace:
    job = read_job(JOB, "boathouse.yaml")
    return trace(job, derive(job))


def test_the_path_goes_from_the_panel_wire_by_wire_through_the_device() -> None:
    assert _trace().path_to("bow.hot") == (
        "k1.black@panel",
        "k1.black@winch",
        "winch.line hot",
        "winch.load hot",
        "k2.black@winch",
        "k2.black@bow",
        "bow.hot",
    )


def test_what_nothing_reaches_has_no_path_and_no_distance() -> None:
    found = _trace()
    assert found.path_to("float.hot") == ()
    assert found.distance("float.hot") is None
    assert found.protectors_of("float") == ()
    assert found.outlet("float").is_dead


def test_a_device_protects_what_is_behind_it_and_not_itself() -> None:
    found = _trace()
    assert found.protectors_before("bow.hot") == (BREAKER, WINCH)
    assert found.protectors_before("winch.line hot") == (BREAKER,)


def test_a_neutral_goes_through_the_same_device() -> None:
    assert _trace().protectors_before("bow.neutral") == (WINCH,)


def test_a_hot_is_told_by_panel_space_and_pole() -> None:
    assert _trace().hots_at("bow.hot") == (("panel", 2, 0),)
