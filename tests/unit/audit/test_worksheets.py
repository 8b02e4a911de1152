"""Worksheets of the example pack, worked out for small jobs."""

import json
from typing import Any

from linter.audit.worksheets import Sheet, said_missing, worksheets_of
from linter.facts import facts_of
from linter.jobfile import read_job
from linter.packs.assemble import assemble
from linter.trace import trace
from linter.wiring import derive
from tests.cases.small_packs import BASE, edited, texts_of

CABLES = {"k1": {"sheath": "14/2 NM-B", "from": "oar", "to": "sail"}}


def sheets(boxes: dict[str, Any], **more: Any) -> dict[str, Sheet]:
    """The worksheets of the boxes of a boathouse, by name of the box."""
    told = {
        "precover": 1,
        "job": {"name": "Boathouse"},
        "supplies": {"shore": {"kind": "split phase", "voltage": "240 V"}},
        "rooms": {"slip": {"use": "boathouse"}},
        "boxes": {name: {"room": "slip", **box} for name, box in boxes.items()},
        "cables": CABLES,
        **more,
    }
    job = read_job(json.dumps(told), "boathouse.yaml")
    wiring = derive(job)
    pack = assemble(texts_of(edited({})), BASE)
    found = worksheets_of(facts_of(job, wiring, trace(job, wiring)), pack)
    return {each.ref: each for each in found}


def test_lines_have_values_arithmetic_clause_and_running_total() -> None:
    sheet = sheets({"oar": {"volume": "18 in3"}, "sail": {"volume": "18 in3"}})["oar"]
    taken, left = sheet.lines
    assert taken.said == "What the conductors of box oar take"
    # Two conductors and a bond of 14 AWG: 3 x 2.1 in3.
    assert (taken.written, taken.running) == ("103.2385 mL", "103.2385 mL")
    assert [each.name for each in taken.work][-1] == "fill"
    assert taken.reference.clause == "3-1"
    assert (left.running, left.result) == ("294.9672 mL", True)
    assert sheet.results == (left,)
    assert sheet.missing == ()


def test_a_measure_is_worked_in_the_first_line_that_uses_it() -> None:
    sheet = sheets({"oar": {"volume": "18 in3"}, "sail": {}})["oar"]
    assert [each.name for each in sheet.lines[1].work] == [""]


def test_what_is_missing_is_named_once_with_how_to_learn_it() -> None:
    sheet = sheets({"oar": {}, "sail": {"volume": "18 in3"}})["oar"]
    taken, left = sheet.lines
    assert taken.value is not None
    assert (left.value, left.running) == (None, "")
    assert [said_missing(each) for each in sheet.missing] == ["marked volume of box oar"]
    assert sheet.missing[0].ask == "Read the volume marked in the box."


def test_a_worksheet_is_left_out_where_it_is_not_for_the_thing() -> None:
    found = sheets({"oar": {"trade_size": "4 x 1-1/2 square"}, "sail": {"volume": "18 in3"}})
    assert set(found) == {"sail"}


def test_a_size_without_a_row_is_told_as_what_is_lacking() -> None:
    cables = {"k1": {"sheath": "10/2 NM-B", "from": "oar", "to": "sail"}}
    sheet = sheets({"oar": {"volume": "18 in3"}, "sail": {}}, cables=cables)["oar"]
    assert [said_missing(each) for each in sheet.missing] == ["a row in conductor volume"]
