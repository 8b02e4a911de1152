"""The calculations of the pack, filled in as on paper: lines, arithmetic, running total."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.audit.worksheets import said_missing, worksheets_of
from linter.reports.page.elements import Element, Node, el
from linter.reports.page.from_lines import from_lines
from linter.reports.worksheets import NO_APPLIANCES, all_missing, clauses, in_short, worth_saying
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.audit.worksheets import Entered, Missing, Sheet
    from linter.reports.page.subject import Subject

_UNKNOWN = "not known"
_HEADS = ("Line", "Amount", "Running total")


def worksheets(subject: Subject) -> Iterator[Node]:
    """A table for each worksheet, what it lacks under it; nothing where the pack has none."""
    sheets = worksheets_of(subject.examined.facts, subject.examined.pack)
    if sheets and not subject.job.appliances:
        yield el("p", NO_APPLIANCES)
    for sheet in sheets:
        yield _sheet(sheet)


def _sheet(sheet: Sheet) -> Element:
    of = "" if sheet.kind == "dwelling" else f", {sheet.label}"
    hangs = _lacking(sheet.doubt, "Whether it may be used hangs on")
    return el(
        "div",
        el("h3", f"{sheet.title}{of}"),
        el("p", f"{in_short(sheet.reference)}. {sheet.reference.doubt}".rstrip(), class_="quiet"),
        hangs,
        el(
            "table",
            el("thead", el("tr", *(el("th", head, scope="col") for head in _HEADS))),
            el("tbody", *map(_line, sheet.lines)),
            class_="sums",
        ),
        *_to_find_out(sheet),
        *from_lines(clauses([sheet]), 4),
        class_="worksheet",
    )


def _line(line: Entered) -> Element:
    value = _UNKNOWN if line.missing else line.written
    running = line.running or (_UNKNOWN if line.adds else "")
    lacking = _lacking(line.missing, "Missing:")
    said = el("strong", line.said) if line.result else line.said
    return el(
        "tr",
        el(
            "th",
            said,
            *(el("span", step, class_="step") for step in worth_saying(line.work)),
            el("span", in_short(line.reference), class_="step quiet"),
            lacking,
            scope="row",
        ),
        el("td", el("strong", value) if line.result else value),
        el("td", running),
    )


def _lacking(missing: Iterable[Missing], before: str) -> Element | None:
    said = [said_missing(each) for each in missing]
    return el("span", f"{before} {join_words(said)}.", class_="step lacking") if said else None


def _to_find_out(sheet: Sheet) -> Iterator[Element]:
    """How a person learns what is missing, each thing once."""
    rows = [f"{said_missing(each)}: {each.ask}" for each in all_missing([sheet])]
    if rows:
        yield el("h4", "To find out first")
        yield el("ul", *(el("li", row) for row in rows))
