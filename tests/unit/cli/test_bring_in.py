import json
from pathlib import Path

import pytest

from tests.unit.cli.running import BOATHOUSE, Runner

ANSWERS = [
    {"way": ["boxes", "top", "volume"], "value": "20.5 in3", "was": "unknown"},
    {"way": ["cables", "k3", "at_to", "free_length"], "value": "7 in", "was": "unknown"},
]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "jobs"


def sheet(folder: Path, *answers: object, job: str = "Boathouse") -> str:
    saved = {"precover_field_sheet": 1, "job": job, "answers": answers}
    (folder / "sheet.json").write_text(json.dumps(saved), encoding="utf-8")
    return "sheet.json"


def test_answers_are_written_into_the_job_file(precover: Runner, folder: Path) -> None:
    ran = precover("bring-in", "boathouse.yaml", sheet(folder, *ANSWERS))
    assert (ran.status, ran.err) == (0, "")
    assert "volume of top: was unknown, now 20.5 in3 (line 24)" in ran.out
    written = (folder / "boathouse.yaml").read_text(encoding="utf-8")
    asked = BOATHOUSE.replace("volume: unknown", "volume: 20.5 in3")
    assert written == asked.replace("at_to: {free_length: unknown}", "at_to: {free_length: 7 in}")


def test_bringing_in_twice_changes_nothing_more(precover: Runner, folder: Path) -> None:
    name = sheet(folder, *ANSWERS)
    precover("bring-in", "boathouse.yaml", name)
    once = (folder / "boathouse.yaml").read_bytes()
    ran = precover("bring-in", "boathouse.yaml", name)
    assert (ran.status, ran.out) == (0, "boathouse.yaml: 0 values brought in.\n")
    assert (folder / "boathouse.yaml").read_bytes() == once


def test_what_cannot_be_written_is_left_and_told(precover: Runner, folder: Path) -> None:
    wrong = {"way": ["boxes", "bench", "volume"], "value": "12 in3"}
    ran = precover("bring-in", "boathouse.yaml", sheet(folder, wrong, ANSWERS[0]))
    assert ran.status == 1
    assert 'volume of bench, 12 in3: the job says "11.5 in3" by now' in ran.said
    assert "volume: 20.5 in3" in (folder / "boathouse.yaml").read_text(encoding="utf-8")


def test_another_file_can_be_written(precover: Runner, folder: Path) -> None:
    (folder / "boathouse.yaml").write_bytes(b"\xef\xbb\xbf" + BOATHOUSE.encode())
    ran = precover("bring-in", "boathouse.yaml", sheet(folder, *ANSWERS), "-o", "new.yaml")
    assert ran.status == 0
    assert (folder / "boathouse.yaml").read_bytes()[3:] == BOATHOUSE.encode()
    assert "20.5 in3" in (folder / "new.yaml").read_text(encoding="utf-8")


def test_the_mark_of_byte_order_stays(precover: Runner, folder: Path) -> None:
    (folder / "boathouse.yaml").write_bytes(b"\xef\xbb\xbf" + BOATHOUSE.encode())
    precover("bring-in", "boathouse.yaml", sheet(folder, *ANSWERS))
    assert (folder / "boathouse.yaml").read_bytes().startswith(b"\xef\xbb\xbf#")


def test_the_sheet_of_another_job_is_told(precover: Runner, folder: Path) -> None:
    ran = precover("bring-in", "boathouse.yaml", sheet(folder, *ANSWERS, job="Net shed"))
    assert 'The sheet was made for "Net shed", the job is called "Boathouse".' in ran.err


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("{}", "precover_field_sheet"),
        ("{", "sheet.json:2:1"),
        ('{"precover_field_sheet": 1, "job": "x", "answers": [{"way": []}]}', "keys and positions"),
        ('{"precover_field_sheet": 1, "job": "x", "answers": [{"way": ["a"]}]}', "says nothing"),
        ('{"precover_field_sheet": 2, "job": "x", "answers": []}', "1"),
    ],
)
def test_what_is_no_sheet_is_refused(precover: Runner, folder: Path, text: str, said: str) -> None:
    (folder / "sheet.json").write_text(text, encoding="utf-8")
    ran = precover("bring-in", "boathouse.yaml", "sheet.json")
    assert ran.status == 65
    assert said in ran.err
    assert (folder / "boathouse.yaml").read_text(encoding="utf-8") == BOATHOUSE


def test_a_file_that_cannot_be_written_is_refused(precover: Runner, folder: Path) -> None:
    ran = precover("bring-in", "boathouse.yaml", sheet(folder, *ANSWERS), "-o", "no/such/f.yaml")
    assert ran.status == 65
    assert "no/such/f.yaml:1:1" in ran.err
    assert list(folder.glob(".*")) == []


def test_both_files_are_needed(precover: Runner) -> None:
    assert precover("bring-in", "boathouse.yaml").status == 64
    assert precover("bring-in", "-", "-").status == 64
