"""The takeoff as tables."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.reports.page.elements import Element, Node, el
from linter.reports.takeoff import takeoff

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.reports.page.subject import Subject
    from linter.reports.takeoff import Counted

_HEADS = ("What", "Number", "In all")
_OF_INCHES = ("in", "ft")


def material(subject: Subject) -> Iterator[Node]:
    """A table for each part, with what was not counted under it."""
    metric = subject.examined.pack.units.get("length") not in _OF_INCHES
    for part in takeoff(subject.job, subject.wiring, metric=metric):
        yield el(
            "div",
            el("h3", part.heading),
            el(
                "table",
                el("thead", el("tr", *(el("th", head, scope="col") for head in _HEADS))),
                el("tbody", *map(_row, part.rows)),
                class_="takeoff",
            ),
            el("p", part.remark, class_="quiet small") if part.remark else None,
            class_="together",
        )


def _row(row: Counted) -> Element:
    cells = el("td", str(row.number)), el("td", row.measure)
    return el("tr", el("th", row.what, scope="row"), *cells)
