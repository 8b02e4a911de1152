"""Every case of tests/cases/trace/: a small job, what reaches its outlets, what protects them."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from linter.trace import Trace, trace
from linter.wiring import derive
from tests.cases.small_jobs import small_job

_FILES = sorted((Path(__file__).parent / "trace").glob("*.yaml"))


def _cases() -> list[Any]:
    found = []
    for path in _FILES:
        table = yaml.safe_load(path.read_text(encoding="utf-8"))
        found += [
            pytest.param(table["common"], case, id=f"{path.stem}: {case['case']}")
            for case in table["cases"]
        ]
    return found


def _reaching(found: Trace, name: str) -> dict[str, Any]:
    """What reaches an id, in the words of the tables; what does not reach it is left out."""
    hots = [f"{each.space}{' pole 2' if each.pole else ''}" for each in found.hots_at(name)]
    reaching = {
        "hot": hots,
        "neutral": list(found.neutral_circuits_at(name)),
        "bond": ["yes"] if found.bond_at(name) else [],
    }
    return {key: value for key, value in reaching.items() if value}


def _expected(stated: dict[str, Any]) -> dict[str, Any]:
    found = {}
    for key, value in stated.items():
        values = value if isinstance(value, list) else [value]
        found[key] = ["yes" if each is True else str(each) for each in values]
    return found


def _protecting(found: Trace, device: str) -> list[str]:
    return [
        each.device or f"breaker {each.breaker[1] if each.breaker else ''}"
        for each in found.protectors_of(device)
    ]


def _lost(found: Trace, device: str) -> dict[str, Any]:
    lost: dict[str, Any] = {
        "hot": sorted(found.hot_lost_without(device)),
        "neutral": sorted(found.neutral_lost_without(device)),
        "bond": sorted(found.bond_lost_without(device)),
    }
    lost = {key: value for key, value in lost.items() if value}
    return lost | ({"multiwire": True} if found.multiwire_neutral_depends_on(device) else {})


@pytest.mark.parametrize(("common", "case"), _cases())
def test_trace(common: dict[str, Any], case: dict[str, Any]) -> None:
    job = small_job(common, case)
    found = trace(job, derive(job))
    for name, stated in case.get("at", {}).items():
        assert _reaching(found, name) == _expected(stated), name
    assert list(found.dead_outlets) == case.get("dead", [])
    assert list(map(list, found.joined_neutrals)) == case.get("joined neutrals", [])
    for device, protectors in case.get("protected by", {}).items():
        assert _protecting(found, device) == protectors, device
    for device, lost in case.get("lost without", {}).items():
        assert _lost(found, device) == lost, device
    for name, cables in case.get("cables from the panel", {}).items():
        assert found.distance(name) == cables, name
    assert sorted(found.uncertain_boxes) == case.get("uncertain", [])
