"""Small jobs for tables of cases: a case gives boxes and cables, the file what they share."""

import json
from collections.abc import Mapping
from typing import Any

from linter.job.jobs import Job
from linter.jobfile import read_job

ROOM = "workshop"


def small_job(common: Mapping[str, Any], case: Mapping[str, Any]) -> Job:
    """The job of a case, read as any job file is; every box stands in one room."""
    boxes = {name: {"room": ROOM, **(box or {})} for name, box in case["boxes"].items()}
    job = {
        "precover": 1,
        "job": {"name": "Bell foundry"},
        **common,
        "rooms": {ROOM: {"use": "workshop"}},
        **{key: case[key] for key in ("circuits", "panel", "panels", "usual") if key in case},
        "boxes": boxes,
        "cables": case.get("cables", {}),
    }
    for panel, make_up in case.get("in panels", {}).items():
        job["panels"] = {**job["panels"], panel: {**job["panels"][panel], "make_up": make_up}}
    stated = {key: value for key, value in job.items() if value is not None}
    return read_job(json.dumps(stated), "bell-foundry.yaml")
