# ruff: noqa: T201  a benchmark prints what it measured
"""How long a cold audit takes as a whole process, and which step takes how much of it.

    python tests/benchmarks/cold_start.py examples/pottery-studio/put-right.yaml

Run by hand and recorded; never a test. The cache of packs is warmed first, in a folder of its own.
Steps are measured inside one fresh process each time; every figure is the median; beside it the
middle half, and the least, which other work on the machine disturbs least.
"""

from __future__ import annotations

import json
import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
TIMES = 21

# What no audit does without: the packages that read, judge and hold a job file.
PACKAGES = "import yaml, jsonschema, pydantic; jsonschema.Draft202012Validator; pydantic.BaseModel"

# What one fresh process does, step by step; the same calls as `precover audit` makes.
STEPS = """
import time, json, sys, gc
gc.disable()
marks = [("start", time.perf_counter())]
def mark(name): marks.append((name, time.perf_counter()))
from pathlib import Path
text = Path(sys.argv[1]).read_text(encoding="utf-8")
from linter.jobfile import read_job
mark("import the reader of jobs")
job = read_job(text, sys.argv[1])
mark("read and judge the job file")
from linter.cli.shelf import Shelf
import linter.packs.cache
mark("import the cache of packs")
pack = Shelf().pack_of(job)
mark("fetch the pack")
import linter.audit.audit as auditing
mark("import the audit")
wiring = auditing.derive(job)
mark("derive the wiring")
traced = auditing.trace(job, wiring)
mark("trace")
facts = auditing.facts_of(job, wiring, traced)
mark("facts")
rules = auditing.in_force(pack.rules, job.stage)
judged = auditing.judge_all(facts.things, rules, pack.library)
mark("judge, with compiling")
audit = auditing._told(job, pack, facts, judged).audit
mark("findings and questions")
from linter.reports.layout import plain
from linter.reports.outcomes import Audited
from linter.reports.terminal import report
mark("import the report")
out = plain(report([Audited(sys.argv[1], audit)]))
mark("write the report")
print(json.dumps([(name, after - before) for (_, before), (name, after) in zip(marks, marks[1:])]))
"""


def main() -> None:
    """Prints the table of steps for the job file named, or for the example."""
    job = sys.argv[1] if len(sys.argv) > 1 else "examples/pottery-studio/put-right.yaml"
    with tempfile.TemporaryDirectory() as cache:
        environment = {
            **os.environ,
            "XDG_CACHE_HOME": cache,
            "PYTHONPATH": str(ROOT),
            "PYTHONPYCACHEPREFIX": cache,
            "PYTHONDONTWRITEBYTECODE": "",  # compiled modules are kept, as once installed
            "PYDANTIC_DISABLE_PLUGINS": "__all__",
        }
        whole = [sys.executable, "-m", "linter", "audit", job]
        for command in (whole, [sys.executable, "-c", STEPS, job]):
            _seconds(command, environment)  # fills the caches
        walls = [_seconds(whole, environment) for _ in range(TIMES)]
        bare = [_seconds([sys.executable, "-c", "pass"], environment) for _ in range(TIMES)]
        packages = [_seconds([sys.executable, "-c", PACKAGES], environment) for _ in range(TIMES)]
        steps = [_steps(job, environment) for _ in range(TIMES)]
    _tell("whole process, precover audit", walls)
    _tell("bare interpreter", bare)
    _tell("it and the published packages", packages)
    for name in steps[0]:
        _tell(f"  {name}", [each[name] for each in steps])


def _seconds(command: list[str], environment: dict[str, str]) -> float:
    began = time.perf_counter()
    subprocess.run(command, cwd=ROOT, env=environment, capture_output=True, check=False)  # noqa: S603
    return time.perf_counter() - began


def _steps(job: str, environment: dict[str, str]) -> dict[str, float]:
    command = [sys.executable, "-c", STEPS, job]
    done = subprocess.run(command, cwd=ROOT, env=environment, capture_output=True, check=True)  # noqa: S603
    return dict(json.loads(done.stdout))


def _tell(name: str, seconds: list[float]) -> None:
    low, middle, high = (each * 1000 for each in statistics.quantiles(seconds, n=4))
    least = min(seconds) * 1000
    print(f"{name:<34} {middle:7.1f} ms   {low:.1f} to {high:.1f}, least {least:.1f}")


if __name__ == "__main__":
    main()
