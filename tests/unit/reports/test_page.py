"""The report as HTML: valid, self-contained, and inert whatever a job says."""

import json
import re
from collections.abc import Iterator
from pathlib import Path
from xml.etree.ElementTree import Element

import pytest
from tinyhtml5.parser import HTMLParser

from linter.cli.run import run
from linter.jobfile.schema import job_schema
from linter.reports.page.elements import escaped
from linter.text.yaml_places import read_places
from tests.architecture.test_words import NOT_IN_OUR_VOCABULARY
from tests.browser.hostile import hostile_job
from tests.browser.jobs import HEAVY, MISTAKEN, PLANNED
from tests.properties.test_hostile_text import FOUNDRY, HOSTILE, with_text_everywhere

# Everything that could load, run, send or go somewhere: none of it is in a report.
ACTING = {
    "script", "iframe", "object", "embed", "img", "image", "video", "audio", "link", "base", "form",
    "use", "animate", "set", "foreignObject", "a:href", "button",
}  # fmt: skip
INERT = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]")


def _page(job: Path, folder: Path) -> str:
    file = folder / "report.html"
    assert run(["report", str(job), "-o", str(file)]) == 0
    return file.read_text(encoding="utf-8")


def _parsed(page: str) -> Element:
    """The page parsed as browsers do; what the standard calls a parse error is one here."""
    parser = HTMLParser(namespace_html_elements=False)
    root = parser.parse(page)
    assert isinstance(root, Element)
    assert not parser.errors
    return root


@pytest.mark.parametrize("job", [MISTAKEN, PLANNED, HEAVY], ids=lambda job: job.stem)
def test_the_page_is_valid_whole_and_asks_for_nothing(job: Path, tmp_path: Path) -> None:
    page = _page(job, tmp_path)
    root = _parsed(page)
    assert not _acting(root)
    assert not re.search(r"url\(|@import|https?:(?!//www\.w3\.org)", page)
    words = re.sub(r"<style>.*?</style>", "", page, flags=re.DOTALL)
    assert not NOT_IN_OUR_VOCABULARY.search(words)
    ids = [each.attrib["id"] for each in root.iter() if "id" in each.attrib]
    assert len(ids) == len(set(ids))
    for each in root.iter():
        for key in ("href", "for", "aria-labelledby"):
            if key in each.attrib:
                assert each.attrib[key].removeprefix("#") in ids


def _acting(root: Element) -> list[str]:
    return [tag for each in root.iter() for tag in _acts(each)]


def _acts(each: Element) -> Iterator[str]:
    tag = str(each.tag).rpartition("}")[2]
    if tag in ACTING:
        yield tag
    for key, value in each.attrib.items():
        if key.startswith("on") or key in ("src", "style", "action", "srcset"):
            yield f"{tag} {key}"
        if key == "href" and not value.startswith("#"):
            yield f"{tag} {key}={value}"


def test_hostile_words_are_shown_and_do_nothing(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job = tmp_path / "hostile.json"
    job.write_text(hostile_job(), encoding="utf-8")
    page = _page(job, tmp_path)
    root = _parsed(page)
    assert not _acting(root)
    assert not INERT.search(page)
    assert "".join(root.itertext()).count("<script>alert(1)</script>") >= 4
    assert capsys.readouterr().err == ""


@pytest.mark.parametrize("text", HOSTILE[:4])
def test_hostile_words_in_every_free_field_come_out_inert(text: str, tmp_path: Path) -> None:
    """In a job in which everything occurs that a job file may hold."""
    job = read_places(FOUNDRY.read_text(encoding="utf-8"), "foundry.yaml").plain()
    told = with_text_everywhere(job, text, job_schema())
    assert isinstance(told, dict)
    told["job"]["pack"] = "us-nec-2023"
    told["job"].pop("layers", None)
    file = tmp_path / "foundry.json"
    file.write_text(json.dumps(told), encoding="utf-8")
    page = _page(file, tmp_path)
    body = page.partition("</style>")[2]
    assert body.count(escaped(text)) > 5
    assert not INERT.search(body)
    assert not re.search(r"<(script|img|iframe|a href=.[^#])", body)


def test_a_file_that_is_no_page_is_not_written_over(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job = tmp_path / "job.yaml"
    before = HEAVY.read_text(encoding="utf-8")
    job.write_text(before, encoding="utf-8")
    assert run(["report", str(job), "-o", str(job)]) == 64
    assert "no HTML file" in capsys.readouterr().err
    assert job.read_text(encoding="utf-8") == before
    assert run(["report", str(job)]) == 64
    assert run(["report", str(job), "-o", str(tmp_path)]) == 64


def test_what_was_said_of_findings_stands_with_them(tmp_path: Path) -> None:
    job = tmp_path / "pit.yaml"
    job.write_text(MISTAKEN.read_text(encoding="utf-8"), encoding="utf-8")
    before = _page(job, tmp_path)
    rule = re.search(r"<dd>([a-z-]+): ", before)
    assert rule is not None
    said = ["--rule", rule.group(1), "--by", "O. Tarn", "--because", "A <b>marked</b> ring."]
    assert run(["signoff", str(job), "not-a-defect", *said]) == 0
    after = _page(job, tmp_path)
    words = " ".join("".join(_parsed(after).itertext()).split())
    assert "JUDGED NOT A DEFECT" in words
    assert "O. Tarn" in words
    assert "A <b>marked</b> ring" in words
    assert str(tmp_path) not in after
