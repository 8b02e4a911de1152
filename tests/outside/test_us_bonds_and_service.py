"""Published sizes of grounds and service conductors will do, and one size less will not."""

import copy
import json
from functools import cache
from typing import Any

import pytest

from linter.audit.audit import audit
from linter.cli.shelf import Shelf
from linter.jobfile import read_job
from tests.outside.path import table

CASES = table("us_bonds_and_service.yaml")["cases"]
COMMON: dict[str, Any] = {
    "precover": 1,
    "job": {"name": "Example", "pack": "us-nec-2023", "stage": "pulled"},
    "supplies": {"service": {"kind": "split phase", "voltage": "240 V", "rating": "100 A"}},
    "panel": {"breakers": {"1": {"rating": "20 A"}}},
    "circuits": {"bench": {"breakers": [1], "use": "workshop"}},
    "rooms": {"shed": {"use": "workshop"}},
    "boxes": {"bench": {"room": "shed", "holds": "receptacle"}},
    "usual": {"cable": {"material": "copper"}},
}


@cache
def shelf() -> Shelf:
    return Shelf()


def broken(case: Any, sizes: dict[str, str]) -> set[str]:
    told = copy.deepcopy({**COMMON, **case["job"]})
    for at, size in sizes.items():
        *path, last = at.split(".")
        value = told
        for step in path:
            value = value[step]
        value[last] = size
    job = read_job(json.dumps(told), "example.yaml")
    return {each.rule for each in audit(job, shelf().pack_of(job)).findings}


@pytest.mark.parametrize("case", CASES, ids=[case["case"] for case in CASES])
def test_the_published_size_will_do_and_one_less_will_not(case: Any) -> None:
    assert case["source"]
    assert case["rule"] not in broken(case, case["holds at"])
    assert case["rule"] in broken(case, case["breaks at"])
