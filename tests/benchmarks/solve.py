# ruff: noqa: T201  a benchmark prints what it measured
"""How long the network of a building takes to build and to solve, for 1,000 and 10,000 boxes.

    python tests/benchmarks/solve.py

Run by hand and recorded; never a test. The building is generated, not random: circuits of ten
boxes, some a plain run, some a run that forks, some multiwire, with a load at every outlet; and as
a second, harder case the same with a ring closed on every circuit of one hot. Each figure is one
run in a fresh process right after the wiring was derived, as in an audit (a second run finds a
small job in the processor's cache, and a large one not); seconds of that process, the least of five
processes.

Recorded on two cores that other work kept busy (load 3 to 6), the least of five, four times over:
1,000 boxes, network 28 to 33 ms and solve 17 ms; 10,000 boxes, 351 to 395 ms and 176 to 195 ms:
11.7 to 12.4 times (with rings 11.1 to 11.4, and once, at load 6, 14.1), where at most 12 is wanted;
in instructions, which no cache changes, 10.0 times (instructions.py). What is above 10 is memory:
only to read the ids of all boxes once takes 12 times as long. The solve is a third of the whole, so
a numerical library could save little.
"""

from __future__ import annotations

import gc
import json
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from linter.jobfile import read_job  # noqa: E402
from linter.solve import Constant, Scenario, drops_of, network_of, solve  # noqa: E402
from linter.wiring import derive  # noqa: E402

SIZES = (1_000, 10_000)
A_CIRCUIT = 10
TIMES = 5
_SPACES = 40


def main() -> None:
    """Prints the seconds of each step for each size, and how the cost grows."""
    for rings in ("no", "yes"):
        print(f"rings: {rings}")
        costs = [_of_fresh_processes(boxes, rings) for boxes in SIZES]
        print(f"  grows {costs[1] / costs[0]:.1f} times for ten times the boxes")


def _of_fresh_processes(boxes: int, rings: str) -> float:
    """The least seconds of network and solve together; prints those of every step."""
    command = [sys.executable, __file__, str(boxes), rings]
    runs = [
        json.loads(subprocess.run(command, capture_output=True, check=True).stdout)  # noqa: S603
        for _ in range(TIMES)
    ]
    least = {step: min(run[step] for run in runs) for step in runs[0]}
    steps = ", ".join(f"{step} {seconds * 1000:.0f} ms" for step, seconds in least.items())
    print(f"  {boxes} boxes: {steps}")
    return least["network"] + least["solve"]


def measured(boxes: int, *, rings: bool) -> dict[str, float]:
    """The seconds of each step for a building of so many boxes."""
    gc.disable()  # as at the command line
    steps(building(100, rings=rings))
    return steps(building(boxes, rings=rings))


def steps(plain: dict[str, Any]) -> dict[str, float]:
    """The seconds of each step for one job."""
    job = read_job(json.dumps(plain), "building.yaml")
    wiring = derive(job)
    marks = [time.process_time()]
    network = network_of(job, wiring)
    marks.append(time.process_time())
    flows = solve(network)
    marks.append(time.process_time())
    drops_of(flows)
    marks.append(time.process_time())
    solve(network_of(job, wiring, Scenario(constant=Constant.POWER)))
    marks.append(time.process_time())
    names = ("network", "solve", "drops", "both again, of constant power")
    return {
        name: after - before for name, before, after in zip(names, marks, marks[1:], strict=False)
    }


def building(boxes: int, *, rings: bool) -> dict[str, Any]:
    """A job of circuits of ten boxes each, on panels of forty spaces, a load at each outlet."""
    job: dict[str, Any] = {
        "precover": 1,
        "job": {"name": "Rope works"},
        "supplies": {"service": {"kind": "split phase", "voltage": "240 V"}},
        "usual": {"cable": {"sheath": "12/2 NM-B", "material": "copper"}},
        "panels": {}, "circuits": {}, "rooms": {"loft": {"use": "workshop"}},
        "boxes": {}, "cables": {}, "appliances": {},
    }  # fmt: skip
    for number in range(boxes // A_CIRCUIT):
        _add_circuit(job, number, rings=rings)
    return job


def _add_circuit(job: dict[str, Any], number: int, *, rings: bool) -> None:
    panel, place = divmod(number, _SPACES // 4)
    first, multiwire = 4 * place + 1, number % 3 == 2
    breakers = job["panels"].setdefault(f"p{panel}", {"breakers": {}})["breakers"]
    spaces = (first, first + 2) if multiwire else (first,)
    for space in spaces:
        breakers[space] = {"rating": "20 A", "protection": "none"}
    circuit = f"c{number}"
    job["circuits"][circuit] = {"panel": f"p{panel}", "breakers": list(spaces)}
    names = [f"b{number}-{each}" for each in range(A_CIRCUIT)]
    for each, name in enumerate(names):
        job["boxes"][name] = {"room": "loft", "holds": {"receptacle": {"circuit": circuit}}}
        before = each - 2 if number % 3 == 1 and each % 3 == 0 and each > 2 else each - 1
        cable: dict[str, Any] = {"to": name, "circuit": circuit, "length": f"{8 + each} ft"}
        cable["from"] = names[before] if each else f"p{panel}"
        if multiwire:
            cable["sheath"] = "12/3 NM-B"
            here = [f"k{number}-{n}" for n in (each, each + 1) if n < A_CIRCUIT]
            wires = {"hot": ("black", "red")[each % 2], "neutral": "white"}
            joints = [
                {"of": [f"{name}.{end}", *(f"{one}.{colour}" for one in here)]}
                for end, colour in wires.items()
            ]
            job["boxes"][name]["make_up"] = {"joints": joints}
        job["cables"][f"k{number}-{each}"] = cable
        watts = 40 + 10 * (each + number % 7)
        job["appliances"][f"a{number}-{each}"] = {"outlets": [name], "load": f"{watts} W"}
    if rings and not multiwire:
        ring = {"from": names[-1], "to": f"p{panel}", "circuit": circuit, "length": "30 ft"}
        job["cables"][f"k{number}-ring"] = ring


if __name__ == "__main__":
    if len(sys.argv) > 1:
        print(json.dumps(measured(int(sys.argv[1]), rings=sys.argv[2] == "yes")))
    else:
        main()
