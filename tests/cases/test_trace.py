"""Every case of tests/cases/trace/: a small job, what reaches its outlets, what protects them."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from linter.job.devices import Switch
from linter.job.jobs import Job
from linter.trace import Trace, trace
from linter.wiring import derive
from linter.wiring.model import Role
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
    sources = found.sources_at(name)
    hots = [f"{each.space}{' pole 2' if each.pole else ''}" for each in found.hots_at(name)]
    reaching = {
        "hot": hots,
        "neutral": sorted({each.circuit for each in sources if each.role is Role.NEUTRAL}),
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
        "neutral": sorted(found.neutral_lost_without(device)),
        "bond": sorted(found.bond_lost_without(device)),
    }
    lost = {key: value for key, value in lost.items() if value}
    return lost | ({"multiwire": True} if found.multiwire_neutral_depends_on(device) else {})


def _shown(found: Trace, device: str) -> Any:
    """What an outlet shows in each position of its switches, by terminal if it has two places."""
    shown = {
        _place(place.terminals, number): [each.value for each in place.seen]
        for number, place in enumerate(found.outlet(device).places)
    }
    return shown if len(shown) > 1 else next(iter(shown.values()), [])


def _place(terminals: tuple[str, str], number: int) -> str:
    first = terminals[0].rpartition(".")[2]
    return "between" if number == BETWEEN_HOTS else first


def _outlets(job: Job) -> list[str]:
    return [
        str(device.name)
        for box in job.boxes.values()
        for device in box.holds
        if not isinstance(device, Switch)
    ]


BETWEEN_HOTS = 2  # the third place of what is wired in on two hots and a neutral


@pytest.mark.parametrize(
    ("common", "case"), [each for each in _cases() if "tested" in str(each.id)]
)
def test_a_tester_shows(common: dict[str, Any], case: dict[str, Any]) -> None:
    job = small_job({**common, **_supplies(case)}, case)
    found = trace(job, derive(job))
    shows, shorted = case.get("shows", {}), case.get("shorted", [])
    assert sorted({*shows, *shorted}) == sorted(_outlets(job))
    for outlet, seen in shows.items():
        assert _shown(found, outlet) == seen, outlet
    assert [name for name in _outlets(job) if found.outlet(name).is_shorted] == shorted
    for outlet, switches in case.get("turned by", {}).items():
        assert sorted(found.outlet(outlet).switches) == switches, outlet
    assert {each.box: each.what.name for each in found.meetings} == case.get("meets", {})
    assert sorted(each.source.circuit for each in found.rings) == case.get("rings", [])
    borrowed = [name for name in _outlets(job) if found.outlet(name).neutral_is_borrowed]
    assert borrowed == case.get("borrowed", [])
    alone = [name for name in _outlets(job) if found.neutral_leaves_protection(name)]
    assert alone == case.get("one alone", [])
    for name, stated in case.get("at", {}).items():
        assert _reaching(found, name) == _expected(stated), name
    for device, protectors in case.get("protected by", {}).items():
        assert _protecting(found, device) == protectors, device


def _supplies(case: dict[str, Any]) -> dict[str, Any]:
    return {"supplies": case["supplies"]} if "supplies" in case else {}


@pytest.mark.parametrize(
    ("common", "case"), [each for each in _cases() if "tested" not in str(each.id)]
)
def test_trace(common: dict[str, Any], case: dict[str, Any]) -> None:
    job = small_job(common, case)
    found = trace(job, derive(job))
    for name, stated in case.get("at", {}).items():
        assert _reaching(found, name) == _expected(stated), name
    dead = [name for name in _outlets(job) if found.outlet(name).is_dead]
    assert dead == case.get("dead", [])
    turned = [each for each in _outlets(job) if found.outlet(each).has_hot_where_neutral_belongs]
    assert turned == case.get("reversed", [])
    assert list(map(list, found.joined_neutrals)) == case.get("joined neutrals", [])
    for device, protectors in case.get("protected by", {}).items():
        assert _protecting(found, device) == protectors, device
    for device, lost in case.get("lost without", {}).items():
        assert _lost(found, device) == lost, device
    for name, cables in case.get("cables from the panel", {}).items():
        assert found.distance(name) == cables, name
    assert sorted(found.uncertain_boxes) == case.get("uncertain", [])
