"""Parts of the page: elements, lines as lists, what is written inside a box, the directory."""

import functools

import pytest

from linter.audit.audit import examined
from linter.cli.shelf import Shelf
from linter.jobfile import read_job
from linter.reports.drawing.contents import contents_of
from linter.reports.drawing.plan import plans_of
from linter.reports.layout import EMPTY, line
from linter.reports.page.directory import directories
from linter.reports.page.elements import Element, Node, el, written
from linter.reports.page.from_lines import from_lines
from linter.reports.page.inside import to_write_inside
from linter.reports.page.subject import Subject
from linter.signoff.standing import NOTHING_SAID
from linter.trace import trace
from linter.wiring import derive
from tests.browser.jobs import HEAVY, PLANNED


@functools.cache
def _subject(planned: bool) -> Subject:
    file = PLANNED if planned else HEAVY
    job = read_job(file.read_text(encoding="utf-8"), file.name)
    wiring = derive(job)
    found = examined(job, Shelf().pack_of(job))
    return Subject(file.name, job, wiring, trace(job, wiring), found, NOTHING_SAID)


def _words(node: Node) -> str:
    return " ".join(map(_words, node.children)) if isinstance(node, Element) else str(node)


def test_what_is_no_name_is_no_element() -> None:
    for name in ("", "1a", "a b", "a>"):
        with pytest.raises(ValueError, match="no element"):
            el(name)
    with pytest.raises(ValueError, match="no element"):
        el("p", **{"on click": "x"})


def test_an_attribute_without_a_value_stands_alone_and_none_is_left_out() -> None:
    assert written(el("input", type="checkbox", disabled=True, id=None)) == (
        '<input type="checkbox" disabled>'
    )


def test_lines_set_in_further_belong_to_the_line_above() -> None:
    lines = [line("hall", "room"), line("box", "box", 2), line("a", indent=4), EMPTY]
    lines += [line("b", indent=4), line("c", indent=8), line("other", "box", 2)]
    html = "".join(map(written, from_lines(lines, 3))).replace("\n", "")
    assert html == (
        "<h3>hall</h3><ul><li><strong>box</strong><ul><li>a</li><li>b \N{EN DASH} c</li></ul></li>"
        "<li><strong>other</strong></li></ul>"
    )


def test_a_white_that_is_hot_is_written_inside_with_its_tape() -> None:
    rows = to_write_inside(_subject(True), "loft-bed")
    assert "k84 \N{LEFTWARDS ARROW} loft-desk, loft, space 15" in rows
    assert "k85 \N{RIGHTWARDS ARROW} loft-bed-switch" in rows
    assert "white of k85 is hot of space 15, leg B (loft), black tape" in rows


def test_both_spaces_of_a_shared_neutral_and_the_load_side_are_written_inside() -> None:
    assert to_write_inside(_subject(True), "sink-left")[0].endswith("counter, spaces 1 and 3")
    assert "load of wheel-1: k51" in to_write_inside(_subject(True), "wheel-1")


def test_a_directory_has_every_space_and_tells_what_no_one_named() -> None:
    (panel,) = directories(_subject(False))
    said = _words(panel)
    assert "with 1: Casting pit benches, both sides" in said
    assert "yard: casting-pit" in said  # no "serves" is stated of breaker 6
    assert said.count("free") == 12 - 4


def test_line_and_load_of_a_ground_fault_device_stand_apart() -> None:
    subject = _subject(False)
    box = "by-the-door-of-the-casting-pit"
    contents = contents_of(subject.wiring, subject.job, box, {}, frozenset())
    switch, receptacle = contents.faces
    assert [side.heading for side in receptacle.sides] == ["LINE", "LOAD", ""]
    assert [pin.label for pin in receptacle.sides[1].pins] == ["load hot", "load neutral"]
    assert [side.heading for side in switch.sides] == [""]
    assert [each.side for each in contents.blocks] == ["top", "bottom", "top", "right", "bottom"]


def test_the_tab_to_break_is_drawn_on_a_split_receptacle() -> None:
    subject = _subject(False)
    (face,) = contents_of(subject.wiring, subject.job, "bench", {}, frozenset()).faces
    assert face.remarks == ("break off the tab, hot side",)


def test_a_cable_to_another_storey_leaves_the_plan_and_a_home_run_does_not() -> None:
    subject = _subject(True)
    numbers = {box: str(number) for box, number in subject.numbers.items()}
    plans = {each.storey: each for each in plans_of(subject.job, subject.wiring, numbers)}
    leaving = {(run.box, run.to) for run in plans["ground"].leaving}
    assert ("heater-joint", "loft-heater") in leaving
    assert all(run.to == "panel" for run in plans["ground"].runs if run.is_home)
    drawn = {(run.box, run.to) for run in plans["ground"].runs}
    assert ("sink-left", "sink-right") in drawn
    assert not drawn & leaving
