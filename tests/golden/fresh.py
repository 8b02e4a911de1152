"""Runs precover in a fresh process, from the root of the repository."""

import os
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

ROOT = Path(__file__).resolve().parents[2]


class Fresh(NamedTuple):
    """What a fresh process gave: its status, and the bytes it wrote."""

    status: int
    out: bytes
    err: bytes


def run_fresh(
    words: Sequence[str], cache: Path, *, hash_seed: str = "0", zone: str = "UTC", **more: str
) -> Fresh:
    """What precover gives for a command line, with a cache folder, hash seed and time zone."""
    environment = {
        **os.environ,
        "PYTHONPATH": str(ROOT),
        "PYTHONHASHSEED": hash_seed,
        "TZ": zone,
        "XDG_CACHE_HOME": str(cache),
        **more,
    }
    command = [sys.executable, "-m", "linter", *words]
    done = subprocess.run(  # noqa: S603  our own program
        command, cwd=ROOT, env=environment, capture_output=True, check=False, timeout=60
    )
    return Fresh(done.returncode, done.stdout, done.stderr)
