"""The plan of the dwelling, with what its symbols and lines mean, and the boxes by number."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.reports.drawing.plan import Plan, plans_of
from linter.reports.drawing.plan_places import drawn
from linter.reports.drawing.plan_svg import NAMES, circuit_class, plan_svg, symbol_svg
from linter.reports.page.elements import Element, Node, el
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.reports.page.subject import Subject

_TAGS = {"GFCI": "ground-fault protection in it", "WP": "with a cover for use in wet weather"}

_ABOUT = (
    "Walls and boxes stand as the job states it. A line tells what is joined with what, not the "
    "way of the cable. An arrow leads to the panel; the number after # is the space of its breaker."
)


def plans(subject: Subject) -> Iterator[Node]:
    """A plan of each storey on which boxes have a place; nothing where none has."""
    numbers = {box: str(number) for box, number in subject.numbers.items()}
    for plan in plans_of(subject.job, subject.wiring, numbers):
        yield _plan(subject, plan)


def _plan(subject: Subject, plan: Plan) -> Element:
    drawing = drawn(plan)
    links = {spot.name: subject.anchor(spot.name) for spot in plan.spots if spot.number}
    heading = plan.storey or "All rooms"
    nameless = join_words(list(drawing.nameless))
    boxes = [el("li", el("a", spot.name, href=f"#{links[spot.name]}"), value=spot.number)
             for spot in sorted(plan.spots, key=lambda each: int(each.number or 0))
             if spot.number]  # fmt: skip
    return el(
        "div",
        el("h3", heading),
        plan_svg(drawing, f"Plan of {heading}: boxes by the numbers of their cards", links),
        el("p", _ABOUT, class_="quiet small"),
        el("p", f"No room for the numbers of {nameless}.", class_="small") if nameless else None,
        _leaving(subject, plan),
        el("div", _circuits(plan), _symbols(plan), class_="legend"),
        el("ol", *boxes, class_="numbered small"),
        class_="storey",
    )  # fmt: skip


def _leaving(subject: Subject, plan: Plan) -> Element | None:
    """The cables to boxes that are on another plan, or on none."""
    rows = [
        f"{subject.numbers[run.box]} to {subject.numbers[run.to]} "
        f"(#{'+'.join(plan.circuits[each].spaces for each in run.circuits)})"
        for run in plan.leaving
    ]
    return (
        el("p", f"Cables that leave this plan: {join_words(rows)}.", class_="small")
        if rows
        else None
    )


def _circuits(plan: Plan) -> Element:
    """The circuits on this plan: colour and dashes of their lines, spaces, names."""
    used = sorted({each for run in plan.runs for each in run.circuits})
    rows = [
        el(
            "li",
            _sample(el("path", d="M2 9L38 9", class_=f"run {circuit_class(number)}"), 40),
            f" #{plan.circuits[number].spaces}: {plan.circuits[number].name}",
        )
        for number in used
    ]
    return el("ul", *rows, class_="small", aria_label="Circuits by the spaces of their breakers")


def _symbols(plan: Plan) -> Element:
    kinds = dict.fromkeys(symbol for spot in plan.spots for symbol in spot.symbols)
    rows = [
        el("li", _sample(el("g", *symbol_svg(kind, 11.0, 10.0)), 22), f" {NAMES.get(kind, kind)}")
        for kind in kinds
    ]
    tags = dict.fromkeys(tag for spot in plan.spots for tag in spot.tags)
    rows += [el("li", el("strong", tag), f" {_TAGS[tag]}") for tag in tags]
    return el("ul", *rows, class_="small", aria_label="Symbols")


def _sample(node: Element, width: int) -> Element:
    return el("svg", node, class_="sample", view_box=f"0 0 {width} 20", width=str(width),
              height="20", aria_hidden="true")  # fmt: skip
