"""Published questions on voltage drop, from a job file to the finding: voltage_drop.yaml."""

import math
from typing import Any

import pytest
import yaml

from linter.units import is_known
from linter.vocabulary.model import value_of
from tests.outside.path import findings_at, table, thing_of

CASES = table("voltage_drop.yaml")["cases"]


def job_of(row: dict[str, Any]) -> str:
    """A job with one circuit from hot to hot, its cable and the load at its end."""
    job = {
        "precover": 1,
        "job": {"name": "Boathouse", "pack": "us-nec-2023", "stage": "made up"},
        "supplies": {"lines": {"kind": "single phase 230 V", "voltage": row["voltage"]}},
        "panel": {"room": "slip", "breakers": {"1": {"rating": "50 A"}}},
        "circuits": {"winch": {"breakers": [1], "use": "appliance"}},
        "rooms": {"slip": {"use": "boathouse"}},
        "boxes": {"there": {"room": "slip", "holds": "appliance outlet"}},
        "cables": {
            "k1": {"sheath": row["sheath"], "from": "panel", "to": "there", "circuit": "winch",
                   "material": "copper", "length": row["length"]},
        },
        "appliances": {
            "winch": {"outlets": ["there"], "voltage": row["voltage"], "current": row["current"]},
        },
    }  # fmt: skip
    return yaml.safe_dump(job, sort_keys=False)


@pytest.mark.parametrize("row", CASES, ids=lambda row: row["case"])
def test_the_wire_is_found_too_small_where_the_question_says_so(row: dict[str, Any]) -> None:
    found = findings_at(job_of(row), "voltage-holds-to-the-farthest-outlet", "winch")
    assert found == row["too small"]


@pytest.mark.parametrize(
    "row", [row for row in CASES if "share" in row], ids=lambda row: row["case"]
)
def test_the_share_lost_is_that_of_the_question(row: dict[str, Any]) -> None:
    lost = value_of(thing_of(job_of(row), "circuit", "winch"), "voltage_drop")
    assert is_known(lost)
    assert isinstance(lost, float)
    assert math.isclose(lost, row["share"], rel_tol=0.025)


@pytest.mark.parametrize("row", CASES, ids=lambda row: row["case"])
def test_what_differs_from_print_says_how(row: dict[str, Any]) -> None:
    assert row["source"]["title"]
    assert ("published" in row) == ("differs" in row) != ("arithmetic" in row)
