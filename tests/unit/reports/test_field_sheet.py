"""The field sheet: every open question has its line, and whatever a job says is text in it."""

import json
import re
from functools import partial
from html.parser import HTMLParser
from pathlib import Path

import pytest

from linter.audit.audit import audit
from linter.cli.shelf import Shelf
from linter.jobfile import read_job
from linter.jobfile.bringing_in import Answer, bring_in
from linter.jobfile.ways import standing_in, usual_way, where_stated
from linter.reports.sheet.form import field_sheet
from linter.reports.sheet.lines import Places, Sheet, sheet_of

ROOT = Path(__file__).parents[3]
STUDIO = ROOT / "examples/pottery-studio"
FILLED_IN = {"length": "9 in", "count": "1", "wire size": "18 AWG", "volume": "22.5 in3"}


def made(text: str) -> Sheet:
    job = read_job(text, "job.yaml")
    found = audit(job, Shelf().pack_of(job))
    places = Places(partial(where_stated, job), usual_way, standing_in(text, "job.yaml"))
    return sheet_of(found, places)


@pytest.fixture(scope="module")
def as_pulled() -> str:
    return (STUDIO / "as-pulled.yaml").read_text(encoding="utf-8")


@pytest.fixture(scope="module")
def sheet(as_pulled: str) -> Sheet:
    return made(as_pulled)


class Fields(HTMLParser):
    """The fields of a form, and what is written beside them."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.fields: list[dict[str, str | None]] = []
        self.names: list[str] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.names.append(tag)
        if tag in ("input", "select"):
            self.fields.append(dict(attrs))


def test_what_is_alike_everywhere_is_asked_once_and_its_exceptions_at_their_places(
    sheet: Sheet,
) -> None:
    usual = {each.way: each.label for each in sheet.usual}
    assert usual["usual", "cable", "free_length"] == "free length, all 52 cable ends"
    exceptions = [
        ask
        for _, halts in sheet.rooms
        for halt in halts
        for ask in halt.asks
        if ask.way[-1:] == ("free_length",)
    ]
    assert len(exceptions) == 52
    assert all(each.is_usual for each in exceptions)


def test_no_line_of_the_job_is_asked_for_twice(sheet: Sheet) -> None:
    ways = [ask.way for _, halts in sheet.rooms for halt in halts for ask in halt.asks if ask.way]
    assert len(ways) == len(set(ways))


def test_the_rooms_come_in_the_order_of_the_walk(sheet: Sheet, as_pulled: str) -> None:
    rooms = [room for room, _ in sheet.rooms]
    walked = [room for room in read_job(as_pulled, "").rooms if room in rooms]
    assert [room for room in rooms if room in walked] == walked


def test_what_is_filled_in_on_the_sheet_can_be_brought_in(sheet: Sheet, as_pulled: str) -> None:
    """Each line of the sheet, filled in with its example, is taken by the job file."""
    asks = [ask for _, halts in sheet.rooms for halt in halts for ask in halt.asks]
    answers = [
        Answer(ask.way, ask.words[0] if ask.words else _example(ask.format, ask.example), ask.was)
        for ask in (*sheet.usual, *asks[::9])
        if ask.way and ask.item is None
    ]
    brought = bring_in(as_pulled, "as-pulled.yaml", answers)
    assert brought.left == ()
    assert len(brought.changes) == len(answers) > 80
    again = made(brought.text)
    assert again.number < sheet.number
    assert again.usual == ()


def _example(format_: str, example: str) -> str | int:
    return int(example or 1) if format_ == "count" else example or FILLED_IN[format_]


def test_a_sound_job_has_nothing_left_to_measure() -> None:
    sheet = made((STUDIO / "put-right.yaml").read_text(encoding="utf-8"))
    assert [halt.asks for _, halts in sheet.rooms for halt in halts if halt.asks] == []


def test_every_field_has_its_label_and_its_way(sheet: Sheet) -> None:
    text = field_sheet(sheet)
    fields = Fields(text).fields
    labelled = set(re.findall(r'<label for="([^"]+)"', text)) | set(
        re.findall(r'type="radio" name="[^"]+" id="([^"]+)"', text)
    )
    assert {each["id"] for each in fields} == labelled
    assert len({each["id"] for each in fields}) == len(fields)
    ways = [json.loads(each["data-way"] or "") for each in fields if "data-way" in each]
    assert ["usual", "cable", "free_length"] in ways


def test_whatever_a_job_says_is_text_in_it(as_pulled: str) -> None:
    name = "\"</title><script>alert(1)</script>&<img src=x onerror='a'>\u202e"
    hostile = as_pulled.replace("Pottery studio flat", json.dumps(name))
    text = field_sheet(made(hostile))
    assert Fields(text).names.count("script") == 1
    assert "img" not in Fields(text).names
    assert "\u202e" not in text
    assert "&lt;script&gt;alert(1)" in text


def test_the_same_job_gives_the_same_sheet(as_pulled: str, sheet: Sheet) -> None:
    assert field_sheet(made(as_pulled)) == field_sheet(sheet)
