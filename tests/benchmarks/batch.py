# ruff: noqa: T201  a benchmark prints what it measured
"""How many saved jobs are audited per second, and how the cost grows with the size of a job.

    python tests/benchmarks/batch.py examples/pottery-studio/put-right.yaml

Run by hand and recorded; never a test. A large job is the example many times over in one file: its
rooms, boxes, cables and circuits repeated under other names, each copy with a panel of its own.
"""

from __future__ import annotations

import gc
import json
import resource
import sys
import time
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from linter.audit.audit import audit  # noqa: E402
from linter.cli.shelf import Shelf  # noqa: E402
from linter.jobfile import read_job  # noqa: E402
from linter.text.yaml_places import read_places  # noqa: E402

JOBS = 200
WORKERS = 2
# What is repeated; the rest is of the dwelling as a whole.
_GROUPS = (
    "rooms", "boxes", "cables", "circuits", "appliances", "walls", "counters", "stairs", "doors",
)  # fmt: skip
# Keys whose values are words of ours, though a thing may have the same name.
_WORDS = ("use", "serves", "type", "kind")
_PACKS: dict[str, Shelf] = {}


def main() -> None:
    """Prints jobs per second on one and on two processes, then the cost of larger jobs."""
    path = Path(
        sys.argv[1] if len(sys.argv) > 1 else ROOT / "examples/pottery-studio/put-right.yaml"
    )
    text = path.read_text(encoding="utf-8")
    gc.disable()  # as the command does
    audited(text)
    began = time.perf_counter()
    for _ in range(JOBS // 4):
        audited(text)
    print(f"one process: {JOBS // 4 / (time.perf_counter() - began):.0f} jobs per second")
    with ProcessPoolExecutor(WORKERS) as pool:
        list(pool.map(audited, [text] * WORKERS * 2))
        began = time.perf_counter()
        list(pool.map(audited, [text] * JOBS, chunksize=20))
        print(f"{WORKERS} processes: {JOBS / (time.perf_counter() - began):.0f} jobs per second")
    grown(text)


def audited(text: str) -> int:
    """The number of checks of the job's audit."""
    shelf = _PACKS.setdefault("shelf", Shelf())
    job = read_job(text, "job.yaml")
    return audit(job, shelf.pack_of(job)).checks


def grown(text: str) -> None:
    """Prints time and memory for the job some tens and some hundreds of times over."""
    data: Any = read_places(text, "job.yaml").plain()
    boxes = len(data["boxes"])
    for wanted in (1_000, 10_000):
        copies = wanted // boxes
        large = json.dumps(_times(data, copies))
        began = time.perf_counter()
        checks = audited(large)
        seconds = time.perf_counter() - began
        memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
        print(f"{copies * boxes} boxes: {seconds:.2f} s, {checks} checks, {memory:.0f} MiB at most")


def _times(data: Any, copies: int) -> Any:
    """The job with all its things `copies` times, under other names.

    Cables that name a space of the panel are left out, for all panels have the same spaces.
    """
    named = [group for group in _GROUPS if group in data]
    names = {name for group in named for name in data[group]}
    large = {key: each for key, each in data.items() if key not in (*named, "panel")}
    large |= {group: {} for group in ("panels", *named)}
    for number in range(copies):
        large["panels"][f"panel-{number}"] = _renamed(data["panel"], names, number)
        for group in named:
            for name, value in data[group].items():
                changed = _renamed(value, names, number)
                if group == "circuits":
                    changed["panel"] = f"panel-{number}"
                if "leg_of" not in changed:
                    large[group][f"{name}-{number}"] = changed
    return large


def _renamed(value: Any, names: set[str], number: int) -> Any:
    if isinstance(value, dict):
        return {
            key: each if key in _WORDS else _renamed(each, names, number)
            for key, each in value.items()
        }
    if isinstance(value, list):
        return [_renamed(each, names, number) for each in value]
    return _name(value, names, number) if isinstance(value, str) else value


def _name(text: str, names: set[str], number: int) -> str:
    if text == "panel":
        return f"panel-{number}"
    words = text.split(" of ")
    if len(words) == 2 and words[1] in names:
        return f"{words[0]} of {words[1]}-{number}"
    first, dot, rest = text.partition(".")
    return f"{first}-{number}{dot}{rest}" if first in names else text


if __name__ == "__main__":
    main()
