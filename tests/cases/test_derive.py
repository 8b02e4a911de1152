"""Every case of tests/cases/derive/: a small job, one box, how it is made up."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from linter.text import Refused
from linter.wiring import Wiring, derive
from tests.cases.small_jobs import small_job

_FILES = sorted((Path(__file__).parent / "derive").glob("*.yaml"))


def _cases() -> list[Any]:
    found = []
    for path in _FILES:
        table = yaml.safe_load(path.read_text(encoding="utf-8"))
        found += [
            pytest.param(table["common"], case, id=f"{path.stem}: {case['case']}")
            for case in table["cases"]
        ]
    return found


def _made_up(wiring: Wiring, box: str) -> dict[str, Any]:
    """A box's make-up in the words of the tables; what is empty is left out."""
    here = wiring.boxes[box]
    names = {end.id: end.name for end in here.wire_ends}
    for each in here.pigtails:
        names[each.id] = f"{'lead' if each.is_lead else 'pigtail'} {each.terminal}"
    joints = [{names[e] for e in (*joint.wire_ends, *joint.pigtails)} for joint in here.joints]
    straight = [each for each in here.landings if each.pigtail is None]
    made_up = {
        "joints": sorted(map(sorted, joints)),
        "landings": {each.terminal: sorted(names[w] for w in each.wire_ends) for each in straight},
        "capped": sorted(names[each.wire_end] for each in here.capped),
        "open": sorted(names[each] for each in here.open_ends),
    }
    return {key: value for key, value in made_up.items() if value}


def _expected(case: dict[str, Any]) -> dict[str, Any]:
    landings = {
        terminal: sorted([wires] if isinstance(wires, str) else wires)
        for terminal, wires in case.get("landings", {}).items()
    }
    expected = {
        "joints": sorted(map(sorted, case.get("joints", []))),
        "landings": landings,
        "capped": sorted(case.get("capped", [])),
        "open": sorted(case.get("open", [])),
    }
    return {key: value for key, value in expected.items() if value}


@pytest.mark.parametrize(("common", "case"), _cases())
def test_box_is_made_up(common: dict[str, Any], case: dict[str, Any]) -> None:
    job = small_job(common, case)
    if "refused" in case:
        with pytest.raises(Refused) as caught:
            derive(job)
        message = str(caught.value)
        assert len(caught.value.refusals) == case.get("refusals", 1), message
        for words in case["refused"]:
            assert words in message
        return
    wiring = derive(job)
    for box, expected in case.get("made up", {}).items():
        assert _made_up(wiring, box) == _expected(expected), box
    for joint, name in case.get("connectors", {}).items():
        assert wiring.joints[joint].connector == name, joint
    for wire, words in case.get("lands", {}).items():
        assert _spot(wiring, wire if "@" in wire else f"{wire}@panel") == words, wire


def _spot(wiring: Wiring, wire: str) -> str:
    landing = wiring.panel_landings.get(wire)
    if landing is None:
        return "open"
    space = "" if landing.space is None else f" {landing.space}"
    pole = f" pole {landing.pole + 1}" if landing.pole else ""
    return f"{landing.spot.value}{space}{pole}"
