# ruff: noqa: T201  a benchmark prints what it measured
"""How many instructions of Python trace and solve take, for 1,000 and 10,000 boxes.

    python tests/benchmarks/instructions.py

Run by hand and recorded; never a test. The buildings are those of trace.py and solve.py. What is
counted hangs on no cache, no memory and no neighbour: it tells the growth of the work from that of
the time a look-up takes.

Recorded: trace 10.4 and 103.7 million, 10.00 times (wrong ones 10.6 and 106.4, 10.00 times);
network and solve 4.5 and 45.0 million, 10.01 times (with rings 4.9 and 48.8, 10.00 times).
"""

from __future__ import annotations

import gc
import json
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(Path(__file__).parent)]

import trace as tracing  # noqa: E402

import solve as solving  # noqa: E402

from linter.jobfile import read_job  # noqa: E402
from linter.solve import network_of, solve  # noqa: E402
from linter.trace import trace  # noqa: E402
from linter.wiring import derive  # noqa: E402

if TYPE_CHECKING:
    from collections.abc import Callable

SIZES = (1_000, 10_000)


def main() -> None:
    """Prints the millions of instructions for each size, and how they grow."""
    gc.disable()
    for hard in (False, True):
        cases = {
            "trace": (lambda size, hard=hard: tracing.building(size, wrong=hard), traced),
            "solve": (lambda size, hard=hard: solving.building(size, rings=hard), solved),
        }
        for name, (building, run) in cases.items():
            counts = [counted(building(size), run) for size in SIZES]
            millions = ", ".join(f"{each / 1e6:.1f}" for each in counts)
            kind = "hard" if hard else "plain"
            print(f"{name}, {kind}: {millions} million, {counts[1] / counts[0]:.2f} times")


def traced(job: Any, wiring: Any) -> None:
    """All that the trace benchmark times."""
    found = trace(job, wiring)
    assert not found.rings
    assert found.meetings is not None
    for box in job.boxes.values():
        for device in box.holds:
            found.outlet(device.name)


def solved(job: Any, wiring: Any) -> None:
    """All that the solve benchmark times."""
    solve(network_of(job, wiring))


def counted(plain: dict[str, Any], run: Callable[[Any, Any], None]) -> int:
    """The instructions of a run on one job."""
    job = read_job(json.dumps(plain), "building.yaml")
    wiring = derive(job)
    count = 0

    def look(frame: Any, event: str, _: Any) -> Any:
        nonlocal count
        frame.f_trace_opcodes, frame.f_trace_lines = True, False
        count += event == "opcode"
        return look

    sys.settrace(look)
    run(job, wiring)
    sys.settrace(None)
    return count


if __name__ == "__main__":
    main()
