"""The field sheet as a person fills it in: on a phone, kept, saved, brought in, printed."""

import json
import time
from pathlib import Path

import pytest
from pypdfium2 import PdfDocument

from linter.cli.run import run
from tests.browser.chromium import Browser
from tests.golden.fresh import ROOT

LOOKS = Path(__file__).with_name("looks.js").read_text(encoding="utf-8")
JOB = ROOT / "examples/pottery-studio/as-pulled.yaml"
PHONE = (360, 740)
A4 = (8.27, 11.69)

TYPE = """((id, text) => {
  const field = document.getElementById(id);
  if (field.type === "radio") field.checked = true; else field.value = text;
  field.dispatchEvent(new Event("input", {bubbles: true}));
})"""
FIELD = """((way) => [...document.querySelectorAll("[data-way]")]
  .find((each) => JSON.stringify(JSON.parse(each.dataset.way)) === JSON.stringify(way)).id)"""


@pytest.fixture(scope="module")
def sheet(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The field sheet of the studio as it was pulled."""
    file = tmp_path_factory.mktemp("sheet") / "sheet.html"
    assert run(["fieldsheet", str(JOB), "-o", str(file)]) == 0
    return file


def field(browser: Browser, *way: str | int) -> str:
    """The field for the place at the end of a way."""
    found: str = browser.tell(f"{FIELD}({json.dumps(way)})") or ""
    return found


def filled(browser: Browser, name: str, text: str) -> str:
    """Fills in a field; what is told to be wrong with it."""
    browser.tell(f"{TYPE}({json.dumps(name)}, {json.dumps(text)})")
    told = f"document.getElementById({json.dumps(name + '-wrong')})?.textContent ?? ''"
    wrong: str = browser.tell(told)
    return wrong


EXAMPLES = {job.parent.name: job for job in sorted((ROOT / "examples").glob("*/*.yaml"))}


@pytest.mark.parametrize("example", [*EXAMPLES, "studio in the dark"])
def test_it_reads_on_a_phone(browser: Browser, sheet: Path, tmp_path: Path, example: str) -> None:
    if example in EXAMPLES:
        sheet = tmp_path / "example.html"
        assert run(["fieldsheet", str(EXAMPLES[example]), "-o", str(sheet)]) == 0
    browser.open(sheet, *PHONE, dark=example not in EXAMPLES)
    browser.tell("document.querySelectorAll('details').forEach((each) => { each.open = true; })")
    found = [browser.tell(f"({LOOKS}).{name}()") for name in ("beyond", "contrast")]
    assert found == [[], []]
    assert browser.complaints() == []


def empty(browser: Browser, sheet: Path) -> None:
    """Opens the sheet with nothing kept of it."""
    browser.open(sheet, *PHONE)
    browser.tell("localStorage.clear()")
    browser.open(sheet, *PHONE)


@pytest.mark.parametrize(
    ("way", "text", "said"),
    [
        (("usual", "cable", "free_length"), "7", "A number with its unit (mm,"),
        (("usual", "cable", "free_length"), "7 A", "A number with its unit (mm,"),
        (("usual", "cable", "free_length"), "7-1/2 in", ""),
        (("usual", "cable", "free_length"), "190 mm", ""),
        (("usual", "cable", "support_spacing"), "4 ft 6 in", ""),
        (("usual", "cable", "free_length"), "unknown", ""),
        (("usual", "cable", "cables_under_staple"), "two", "A whole number, such as 1."),
        (("usual", "cable", "cables_under_staple"), "2", ""),
        (("usual", "cable", "along_framing", "distance_to_face"), "no", ""),
    ],
)
def test_units_are_told_while_typing(
    browser: Browser, sheet: Path, way: tuple[str, ...], text: str, said: str
) -> None:
    browser.open(sheet, *PHONE)
    wrong = filled(browser, field(browser, *way), text)
    assert wrong.startswith(said)
    assert bool(wrong) == bool(said)


def test_what_is_typed_is_kept_saved_and_brought_in(
    browser: Browser, sheet: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    empty(browser, sheet)
    filled(browser, "by", "M. Ferrow")
    filled(browser, "on", "2026-03-14")
    filled(browser, field(browser, "usual", "cable", "free_length"), "8 in")
    filled(browser, field(browser, "cables", "k10", "at_to", "free_length"), "5-1/2 in")
    filled(browser, field(browser, "usual", "cable", "along_framing", "distance_to_face"), "no")
    filled(browser, field(browser, "usual", "cable", "cables_under_staple"), "1")
    tick = browser.tell("document.querySelector('[data-tick] input[type=radio]').id")
    filled(browser, tick, "")

    # Closed and opened again, nothing of it is gone.
    browser.open(sheet, *PHONE)
    assert browser.tell("document.getElementById('count').textContent") == "5 filled in"
    saved = _saved(browser, tmp_path)

    job = tmp_path / "job.yaml"
    job.write_bytes(JOB.read_bytes())
    capsys.readouterr()
    status = run(["bring-in", str(job), str(saved)])
    said = capsys.readouterr()
    assert (status, said.err) == (0, "")
    assert "free length of the end of k10: now 5-1/2 in" in said.out
    text = job.read_text(encoding="utf-8")
    for part in ("free_length: 8 in", "along_framing: no", "cables_under_staple: 1", "looked_at:"):
        assert part in text
    assert "by: M. Ferrow" in text
    assert run(["audit", str(job)]) in (1, 3)


def test_nothing_is_saved_that_cannot_be_read(
    browser: Browser, sheet: Path, tmp_path: Path
) -> None:
    empty(browser, sheet)
    name = field(browser, "usual", "cable", "free_length")
    filled(browser, name, "long enough")
    with pytest.raises(TimeoutError):
        _saved(browser, tmp_path, seconds=0.5)
    assert browser.tell("document.activeElement.id") == name


def test_it_prints_as_a_sheet_for_a_pencil(browser: Browser, sheet: Path) -> None:
    browser.open(sheet, *PHONE)
    pdf = PdfDocument(browser.printed(*A4))
    text = " ".join(each.get_textpage().get_text_range() for each in pdf)
    assert "What differs here:" in text
    assert "Save what is filled in" not in text


def _saved(browser: Browser, folder: Path, seconds: float = 10.0) -> Path:
    """The file that the sheet saves; raises `TimeoutError` where none comes."""
    browser.ask("Page.setDownloadBehavior", behavior="allow", downloadPath=str(folder))
    browser.tell("document.getElementById('save').click()")
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        browser.tell("new Promise((done) => setTimeout(done, 50))")
        found = list(folder.glob("*-field-sheet.json"))
        if found:
            return found[0]
    raise TimeoutError("nothing was saved")
