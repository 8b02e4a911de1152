"""A card for each box: its drawing, its make-up in words, its fill, what to write inside it."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from linter.job.stated import BoxId
from linter.reports.box_card import card_parts
from linter.reports.box_fill import fill_of
from linter.reports.drawing.box import box_drawing
from linter.reports.drawing.contents import contents_of
from linter.reports.drawing.svg import svg_of
from linter.reports.page.elements import Element, Node, el
from linter.reports.page.inside import to_write_inside
from linter.reports.sayings import CARD_CAUTION, counted
from linter.text import join_words
from linter.trace.needed import needed_by
from linter.wiring.card import make_up_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.job.boxes import Box
    from linter.reports.box_fill import Fill
    from linter.reports.drawing.contents import Contents
    from linter.reports.page.subject import Subject


def cards(subject: Subject) -> Iterator[Node]:
    """The cards of all boxes, as one walks through the rooms."""
    yield el("p", f"{CARD_CAUTION} Rows are drawn for reading: in the box, conductors lie folded.")
    for box, number in subject.numbers.items():
        yield card(subject, box, f"Card {number} of {len(subject.numbers)}")


def card(subject: Subject, box: str, which: str) -> Element:
    """The card of one box; `which` numbers it among the others."""
    held = subject.job.boxes[BoxId(box)]
    needed = partial(needed_by, subject.trace, subject.wiring)
    made = make_up_of(subject.wiring, subject.job, box, subject.words, needed)
    lacking = frozenset(f"{each.wire}@{box}" for each in made.lacking)
    contents = contents_of(subject.wiring, subject.job, box, subject.words, lacking)
    drawing = box_drawing(contents, is_metal=held.material == "metal")
    parts = [
        el("div", el("h4", heading), _rows(heading, rows))
        for heading, rows in card_parts(made, numbered=True)
    ]
    return el(
        "article",
        el("h3", box),
        el("p", _about(held), class_="quiet small"),
        el(
            "div",
            svg_of(drawing, f"Box {box}", _told(contents)),
            el("p", _entries(contents), class_="quiet small") if contents.blocks else None,
            *_fill(fill_of(subject.examined.pack, subject.examined.facts, box)),
            _note(held),
            _inside(to_write_inside(subject, box)),
            class_="sight",
        ),
        el("div", *parts, class_="words-of-card"),
        el("p", f"{which}: {box}", class_="end quiet small"),
        class_="card",
        id=subject.anchor(box),
    )


def _fill(fill: Fill | None) -> Iterator[Element]:
    """The line, and a bar of which as much is full as of the box; it is told by the line."""
    if fill is None:
        return
    part = min(fill.used / fill.of, 1.0) if fill.of else 1.0
    full = "full over" if fill.used > fill.of else "full"
    yield el("p", fill.line)
    yield el(
        "svg",
        el("rect", x=0.5, y=0.5, width=199.0, height=9.0, class_="room"),
        el("rect", x=0.5, y=0.5, width=199.0 * part, height=9.0, class_=full),
        view_box="0 0 200 10", preserve_aspect_ratio="none", class_="fill-bar", aria_hidden="true",
    )  # fmt: skip


def _rows(heading: str, rows: tuple[str, ...]) -> Element:
    """The rows under a heading; those of joints have the numbers that stand in the drawing."""
    return el("ol" if heading == "Joints" else "ul", *(el("li", row) for row in rows))


def _about(box: Box) -> str:
    """Where and what the box is, as far as the job says."""
    said = [str(box.room)] if box.room else ["no room stated"]
    said.append(f"{counted(box.gangs or 1, 'gang', 'gangs')}, {box.form or 'form unknown'}")
    said += [box.material] if box.material else []
    said += [box.volume.written] if box.volume is not None else []
    said += [box.trade_size] if box.trade_size else []
    said += [f"{box.height.written} above the floor"] if box.height is not None else []
    return ", ".join(said)


def _told(contents: Contents) -> str:
    cables = join_words([f"{each.cable} {each.where}" for each in contents.blocks])
    devices = join_words([f"{each.kind} {each.name}" for each in contents.faces])
    return (
        f"Cables: {cables or 'none'}. In it: {devices or 'joints only'}. Told in words beside it."
    )


def _entries(contents: Contents) -> str:
    """Which sides of the box the cables are drawn at, and whether the job says so."""
    unstated = [each.cable for each in contents.blocks if not each.is_stated]
    if not unstated:
        return "Cables are drawn at the sides where they enter."
    if len(unstated) == len(contents.blocks):
        return "Where cables enter is not stated; they are drawn at the top."
    return f"Where {join_words(unstated)} enters is not stated; drawn at the top."


def _note(box: Box) -> Element | None:
    return el("p", el("strong", "Note: "), box.note) if box.note else None


def _inside(rows: tuple[str, ...]) -> Element | None:
    if not rows:
        return None
    listed = (el("li", row) for row in rows)
    return el("div", el("h4", "Write inside the box before the walls are closed"),
              el("ul", *listed), class_="inside")  # fmt: skip
