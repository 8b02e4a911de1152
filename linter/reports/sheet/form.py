"""A field sheet as one HTML file."""

from __future__ import annotations

import json
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING

from linter.job.values import DIMENSIONS_OF_FORMATS
from linter.reports.page.elements import Element, Style, el, written
from linter.reports.sayings import CAUTION, counted
from linter.units import LENGTH, unit_names

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.reports.sheet.lines import Ask, Halt, Sheet, Tick

_OPENING = "opening"  # two lengths
_OUTCOMES = ("as it should be", "to be put right", "not applicable")
_WITHOUT_SCRIPT = (
    "This browser runs no scripts, so nothing that is typed here is kept. Print the sheet, and "
    "fill it in with a pencil."
)


def field_sheet(sheet: Sheet) -> str:
    """The text of the HTML file; the same sheet gives the same text."""
    title = f"Field sheet: {sheet.job}"
    head = el(
        "head",
        el("meta", charset="utf-8"),
        el("meta", name="viewport", content="width=device-width, initial-scale=1"),
        el("title", title),
        el("style", Style(_own("style.css"))),
    )
    form = el(
        "form",
        _who(),
        *_usual(sheet),
        *(_room(number, *each) for number, each in enumerate(sheet.rooms)),
        _saving(),
        id="sheet",
        autocomplete="off",
        novalidate=True,
        data_job=sheet.job,
    )
    body = el("body", _header(title, sheet), el("main", form), el("script", Style(_own("keep.js"))))
    return f"<!DOCTYPE html>\n{written(el('html', head, body, lang='en'))}\n"


def _header(title: str, sheet: Sheet) -> Element:
    number = counted(sheet.number, "line", "lines")
    return el(
        "header",
        el("h1", title),
        el("p", f"{number}, at the stage: {sheet.stage}.", class_="quiet"),
        el("p", CAUTION, class_="caution"),
        el("noscript", el("p", _WITHOUT_SCRIPT, class_="caution")),
    )


def _who() -> Element:
    return el(
        "fieldset",
        el("legend", "Who and when"),
        _labelled("by", "Name", el("input", id="by", type="text", maxlength="100")),
        _labelled("on", "Day", el("input", id="on", type="date")),
        class_="who",
    )


def _labelled(for_: str, text: str, field: Element) -> Element:
    return el("p", el("label", text, for_=for_), field)


def _usual(sheet: Sheet) -> Iterator[Element]:
    if sheet.usual or sheet.usual_ticks:
        yield el(
            "section",
            el("h2", "The same everywhere"),
            el(
                "p",
                "What holds for all of a kind. What differs is said at its place, below.",
                class_="quiet",
            ),
            *(_ask(f"u{number}", ask) for number, ask in enumerate(sheet.usual)),
            *(_tick(f"w{number}", tick) for number, tick in enumerate(sheet.usual_ticks)),
        )


def _room(number: int, room: str, halts: tuple[Halt, ...]) -> Element:
    return el(
        "section",
        el("h2", room),
        *(_halt(f"r{number}-{at}", halt) for at, halt in enumerate(halts)),
    )


def _halt(name: str, halt: Halt) -> Element:
    lines = [(line.is_usual, _ask(f"{name}-a{at}", line)) for at, line in enumerate(halt.asks)] + [
        (line.is_usual, _tick(f"{name}-t{at}", line)) for at, line in enumerate(halt.ticks)
    ]
    covered = [each for is_usual, each in lines if is_usual]
    return el(
        "fieldset",
        el("legend", halt.heading),
        *(each for is_usual, each in lines if not is_usual),
        *(_what_differs(covered) if covered else ()),
    )


def _what_differs(covered: list[Element]) -> Iterator[Element]:
    """What is usual elsewhere: out of the way until it is wanted, and a line on paper."""
    yield el(
        "details", el("summary", f"What differs here from the rest ({len(covered)})"), *covered
    )
    yield el("p", "What differs here:", class_="on-paper", aria_hidden="true")


def _ask(name: str, ask: Ask) -> Element:
    hint = f"{name}-hint"
    told = ask.how or ask.means
    example = "" if ask.words and not ask.format else ask.example
    return el(
        "div",
        el("label", ask.label, for_=name),
        _input(name, hint, ask),
        el("p", f"{told} Such as {example}." if example else told, id=hint, class_="hint"),
        el("p", id=f"{name}-wrong", class_="wrong", role="alert"),
        class_="ask",
    )


def _input(name: str, hint: str, ask: Ask) -> Element:
    about = {
        "id": name,
        "aria_describedby": hint,
        "data_way": json.dumps(ask.way) if ask.way else None,
        "data_was": ask.was or None,
        "data_item": json.dumps(ask.item) if ask.item else None,
        "data_instead": json.dumps(ask.instead) if ask.instead else None,
    }
    if ask.words and not ask.format:
        options = (el("option", each, value=each) for each in ask.words)
        return el("select", el("option", value=""), *options, **about)
    dimension = LENGTH if ask.format == _OPENING else DIMENSIONS_OF_FORMATS.get(ask.format)
    units = json.dumps(unit_names(dimension)) if dimension is not None else None
    words = [*ask.words, *([ask.instead[0]] if ask.instead else [])]
    return el(
        "input",
        type="text",
        maxlength="200",
        inputmode="numeric" if ask.format == "count" else None,
        data_example=ask.example or None,
        data_format=ask.format or None,
        data_units=units,
        data_words=json.dumps(words) if words else None,
        **about,
    )


def _tick(name: str, tick: Tick) -> Element:
    caution = el("p", f"Caution: {tick.caution}", class_="hint") if tick.caution else None
    choices = (
        el(
            "label",
            el("input", type="radio", name=name, id=f"{name}-{at}", value=outcome),
            el("span", outcome),
            class_="choice",
        )
        for at, outcome in enumerate(_OUTCOMES)
    )
    return el(
        "div",
        el("p", f"{tick.ask}{f' ({tick.label})' if tick.label else ''}", class_="look"),
        caution,
        el("div", *choices, class_="choices", role="radiogroup", aria_label=tick.ask),
        el("label", "What was found", for_=f"{name}-found", class_="small"),
        el("input", id=f"{name}-found", type="text", maxlength="400"),
        class_="tick",
        data_tick=json.dumps({"item": tick.item, **({"at": tick.at} if tick.at else {})}),
    )


def _saving() -> Element:
    return el(
        "div",
        el("p", id="count", class_="quiet", role="status"),
        el("button", "Save what is filled in", type="button", id="save"),
        el("button", "Empty the sheet", type="button", id="empty", class_="second"),
        class_="saving",
    )


@cache
def _own(name: str) -> str:
    return (files("linter.reports.sheet") / name).read_text(encoding="utf-8")
