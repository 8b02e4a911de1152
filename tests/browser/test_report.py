"""The report of every example job, drawn by Chromium: on a phone, in the dark, on paper."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from pypdfium2 import PdfDocument

from linter.cli.run import run
from tests.browser.chromium import Browser
from tests.browser.hostile import hostile_job
from tests.browser.jobs import HEAVY, JOBS, PLANNED

LOOKS = Path(__file__).with_name("looks.js").read_text(encoding="utf-8")
PHONE, DESK = (360, 740), (1100, 800)
A4, LETTER = (8.27, 11.69), (8.5, 11.0)


PRINTED = [(HEAVY, LETTER), (HEAVY, A4), (PLANNED, A4)]


@pytest.fixture(scope="module", params=JOBS, ids=lambda job: f"{job.parent.name}/{job.stem}")
def page(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The report of a job."""
    return _report(request.param, tmp_path_factory.mktemp("report"))


def _report(job: Path, folder: Path) -> Path:
    file = folder / "report.html"
    assert run(["report", str(job), "-o", str(file)]) == 0
    return file


def _look(browser: Browser, *names: str) -> list[str]:
    found = [browser.tell(f"({LOOKS}).{name}()") for name in names]
    return [each for complaints in found for each in complaints]


def test_it_reads_on_a_phone(browser: Browser, page: Path) -> None:
    browser.open(page, *PHONE)
    assert not _look(browser, "beyond", "drawings", "contrast", "keyboard")
    assert not browser.complaints()


def test_it_reads_in_the_dark(browser: Browser, page: Path) -> None:
    browser.open(page, *PHONE, dark=True)
    assert browser.tell("getComputedStyle(document.body).backgroundColor") == "rgb(20, 24, 31)"
    assert not _look(browser, "contrast")


def test_it_reads_on_a_desk(browser: Browser, page: Path) -> None:
    browser.open(page, *DESK)
    assert not _look(browser, "beyond")


@pytest.mark.parametrize(("job", "paper"), PRINTED, ids=lambda each: getattr(each, "stem", ""))
def test_it_prints_with_no_card_split(
    browser: Browser, tmp_path: Path, job: Path, paper: tuple[float, float]
) -> None:
    browser.open(_report(job, tmp_path), *DESK)
    cards = browser.tell("[...document.querySelectorAll('.card .end')].map(e => e.textContent)")
    assert cards
    pdf = PdfDocument(browser.printed(*paper))
    texts = ["".join(each.get_textpage().get_text_range().split()) for each in pdf]
    ends = [next(n for n, text in enumerate(texts) if _plain(end) in text) for end in cards]
    assert list(_pages_of_headings(pdf, "Box cards")) == ends


def _plain(text: str) -> str:
    return "".join(text.split())


def _pages_of_headings(pdf: PdfDocument, section: str) -> Iterator[int]:
    """The pages on which the headings one level below a section begin, by the PDF's own outline."""
    inside = None
    for each in pdf.get_toc():
        if each.get_title() == section:
            inside = each.level
        elif inside is not None and each.level <= inside:
            return
        elif inside is not None and each.level == inside + 1:
            yield each.get_dest().get_index()


def test_hostile_words_and_longest_names_do_no_harm(browser: Browser, tmp_path: Path) -> None:
    job = tmp_path / "hostile.json"
    job.write_text(hostile_job(), encoding="utf-8")
    page = _report(job, tmp_path)
    for dark in (False, True):
        browser.open(page, *PHONE, dark=dark)
        assert not _look(browser, "beyond", "drawings", "contrast", "keyboard")
        assert not browser.complaints()
    browser.open(page, *DESK)
    assert not _look(browser, "beyond")
