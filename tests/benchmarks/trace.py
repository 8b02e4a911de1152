# ruff: noqa: T201  a benchmark prints what it measured
"""How long the trace of a building takes, and what is found by it, for 1,000 and 10,000 boxes.

    python tests/benchmarks/trace.py

Run by hand and recorded; never a test. The building is generated: circuits of ten boxes, each with
a ground-fault receptacle, a run behind it, a light between two three-way switches; as a second case
every tenth circuit has a neutral and a bond joined. Seconds of a fresh process, the least of three;
garbage is not looked for, as at the command line.

Recorded on two cores that other work kept busy (load 3), the least of three, three times over:
1,000 boxes 77 ms (trace 60, rings 11, outlets 5), wrong ones 3 ms more; 10,000 boxes 0.85 to 0.99 s
(700 to 813, 115 to 123, 52 to 57), wrong ones 25 ms more: 10.4 to 11.8 times the cost, where at
most 12 is wanted; in instructions, which no cache changes, 10.0 times (instructions.py). Before the
wiring was traced section by section it was 14.8 and, with faults, 16.4 times in the same hour: the
time of a look-up in dictionaries of all ids grew. All facts together: 0.54 s and 5.8 to 6.3 s.
"""

from __future__ import annotations

import gc
import itertools
import json
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from linter.facts import facts_of  # noqa: E402
from linter.jobfile import read_job  # noqa: E402
from linter.trace import trace  # noqa: E402
from linter.wiring import derive  # noqa: E402

SIZES = (1_000, 10_000)
A_CIRCUIT = 10
TIMES = 3
_SPACES = 40


def main() -> None:
    """Prints the seconds of each step for each size, and how the cost grows."""
    for faults in ("sound", "wrong"):
        print(faults)
        costs = [_of_fresh_processes(boxes, faults) for boxes in SIZES]
        print(f"  grows {costs[1] / costs[0]:.1f} times for ten times the boxes")


def _of_fresh_processes(boxes: int, faults: str) -> float:
    command = [sys.executable, __file__, str(boxes), faults]
    runs = [
        json.loads(subprocess.run(command, capture_output=True, check=True).stdout)  # noqa: S603
        for _ in range(TIMES)
    ]
    least = {step: min(run[step] for run in runs) for step in runs[0]}
    steps = ", ".join(f"{step} {seconds * 1000:.0f} ms" for step, seconds in least.items())
    print(f"  {boxes} boxes: {steps}")
    return least["trace"] + least["meetings"] + least["rings"] + least["outlets"]


def measured(boxes: int, *, wrong: bool) -> dict[str, float]:
    """The seconds of each step for a building of so many boxes."""
    gc.disable()
    job = read_job(json.dumps(building(boxes, wrong=wrong)), "building.yaml")
    wiring = derive(job)
    marks = [time.process_time()]
    found = trace(job, wiring)
    marks.append(time.process_time())
    assert len(found.meetings) == (boxes // A_CIRCUIT // 10 if wrong else 0)
    marks.append(time.process_time())
    assert not found.rings
    marks.append(time.process_time())
    names = [device.name for box in job.boxes.values() for device in box.holds]
    assert not any(found.outlet(name).is_dead for name in names if "lamp" in name)
    marks.append(time.process_time())
    facts_of(job, wiring, found)
    marks.append(time.process_time())
    steps = ("trace", "meetings", "rings", "outlets", "all facts")
    spans = itertools.pairwise(marks)
    return {name: after - before for name, (before, after) in zip(steps, spans, strict=True)}


def building(boxes: int, *, wrong: bool) -> dict[str, Any]:
    """A job of so many boxes, as plain data."""
    job: dict[str, Any] = {
        "precover": 1,
        "job": {"name": "Foundry", "stage": "made up"},
        "supplies": {"service": {"kind": "split phase", "voltage": "240 V"}},
        "usual": {"cable": {"sheath": "12/2 NM-B"}, "breaker": {"rating": "20 A"}},
        "rooms": {"hall": {"use": "workshop"}},
        "panels": {},
        "circuits": {},
        "boxes": {},
        "cables": {},
    }
    for number in range(boxes // A_CIRCUIT):
        panel = f"p{number // _SPACES}"
        space = number % _SPACES + 1
        job["panels"].setdefault(panel, {"breakers": {}})["breakers"][space] = {}
        job["circuits"][f"c{number}"] = {"panel": panel, "breakers": [space]}
        _add_circuit(job, number, panel, wrong=wrong and not number % 10)
    return job


def _add_circuit(job: dict[str, Any], number: int, panel: str, *, wrong: bool) -> None:
    """A ground-fault receptacle, five receptacles behind it, a light on two three-way switches."""
    at = [f"b{number}-{place}" for place in range(7)]
    low, top, lamp = f"low{number}", f"top{number}", f"lamp{number}"
    cable = f"k{number}-"
    first = {"protection": ["ground-fault"], "load": [f"{cable}1"]}
    job["boxes"][at[0]] = {"room": "hall", "holds": {"receptacle": first}}
    job["boxes"] |= {name: {"room": "hall", "holds": "receptacle"} for name in at[1:]}
    if wrong:
        ends = [f"{cable}6.white", f"{cable}6.bare", f"{at[6]}.neutral", f"{at[6]}.bond"]
        job["boxes"][at[6]]["make_up"] = {"joints": [{"of": ends}]}
    for name in (low, top):
        holds = {"switch": {"type": "three-way", "controls": lamp}}
        job["boxes"][name] = {"room": "hall", "holds": holds}
    job["boxes"][lamp] = {"room": "hall", "form": "round", "holds": "luminaire"}
    job["cables"][f"{cable}0"] = {"from": panel, "to": at[0], "circuit": f"c{number}"}
    for place in range(1, 7):
        job["cables"][f"{cable}{place}"] = {"from": at[place - 1], "to": at[place]}
    job["cables"][f"{cable}7"] = {"from": at[0], "to": low}
    travellers = {"sheath": "14/3 NM-B", "carries": "travellers", "for": lamp}
    job["cables"][f"{cable}8"] = {"from": low, "to": top, **travellers}
    job["cables"][f"{cable}9"] = {"from": top, "to": lamp, "carries": "switched", "for": lamp}


if __name__ == "__main__":
    if len(sys.argv) > 1:
        print(json.dumps(measured(int(sys.argv[1]), wrong=sys.argv[2] == "wrong")))
    else:
        main()
