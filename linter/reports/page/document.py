"""The whole report: its sections in order, its style, and nothing that asks for a network."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.reports.page.cards import cards
from linter.reports.page.directory import directories
from linter.reports.page.elements import Element, Node, Style, el, written
from linter.reports.page.from_lines import from_lines
from linter.reports.page.material import material
from linter.reports.page.plans import plans
from linter.reports.page.punch_list import punch_list
from linter.reports.page.summary import summary
from linter.reports.page.worksheets import worksheets
from linter.reports.sayings import CAUTION, CLOSING, held_to_advice, judged_by, taken_as_none
from linter.reports.to_look_at import to_look_at
from linter.reports.tracing import circuit_lines
from linter.reports.unanswered import unanswered
from linter.resources import style_sheet
from linter.trace.follow import Follower

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    from linter.reports.layout import Line
    from linter.reports.page.subject import Subject


class _Section(NamedTuple):
    """A section: its id, its heading, and what makes what stands in it."""

    id: str
    heading: str
    of: Callable[[Subject], Iterable[Node]]


def report_page(subject: Subject) -> str:
    """The text of the HTML file."""
    sections = [(each, list(each.of(subject))) for each in _SECTIONS]
    shown = [(section, nodes) for section, nodes in sections if nodes]
    page = el("html", _head(subject), _body(subject, shown), lang="en")
    return f"<!doctype html>\n{written(page)}"


def _head(subject: Subject) -> Element:
    return el(
        "head",
        el("meta", charset="utf-8"),
        el("title", f"{subject.job.name or subject.file}: wiring report"),
        el("meta", name="viewport", content="width=device-width, initial-scale=1"),
        # Even if something foreign got in: it may fetch nothing, run nothing, send nothing.
        el("meta", http_equiv="Content-Security-Policy",
           content="default-src 'none'; style-src 'unsafe-inline'"),
        el("meta", name="color-scheme", content="light dark"),
        el("meta", name="format-detection", content="telephone=no"),
        el("style", Style(style_sheet())),
    )  # fmt: skip


def _body(subject: Subject, shown: list[tuple[_Section, list[Node]]]) -> Element:
    contents = [el("li", el("a", each.heading, href=f"#{each.id}")) for each, _ in shown]
    sections = [
        el("section", el("h2", each.heading, id=f"{each.id}-heading"), *nodes, id=each.id,
           aria_labelledby=f"{each.id}-heading")
        for each, nodes in shown
    ]  # fmt: skip
    return el(
        "body",
        el("a", "To the punch list", href="#punch-list", class_="skip"),
        el(
            "header",
            el("h1", subject.job.name or subject.file),
            el("p", *_about(subject), class_="quiet"),
            el("p", held_to_advice(subject.audit.held), class_="quiet")
            if subject.audit.held.rules
            else None,
            el("p", el("strong", "Caution. "), CAUTION, class_="warn"),
            el("nav", el("ol", *contents), aria_label="Contents"),
        ),
        el("main", *sections),
        el("footer", el("p", CLOSING)),
    )


def _about(subject: Subject) -> Iterator[str]:
    audit = subject.audit
    yield f"Stage: {audit.stage}. By {judged_by(audit)}. "
    yield f"Job file: {subject.file}."


def _to_measure(subject: Subject) -> Iterator[Node]:
    yield from _to_tick(unanswered(subject.audit.open))


def _to_look_at(subject: Subject) -> Iterator[Node]:
    yield from _to_tick(to_look_at(subject.audit.walk_through))


def _to_tick(lines: Iterable[Line]) -> Iterator[Node]:
    """The lines with a box to tick each, without their first heading: the section has its own."""
    _, *nodes = (*from_lines(lines, 2), "")
    if any(nodes):
        yield el("div", *nodes[:-1], class_="ticks")


def _tracings(subject: Subject) -> Iterator[Node]:
    follower = Follower(subject.job, subject.wiring, subject.trace)
    for name in subject.job.circuits:
        lines = circuit_lines(follower.circuit(name), subject.wiring, None)
        yield el("div", *from_lines(lines, 3), class_="tracing")


def _not_looked_at(subject: Subject) -> Iterator[Node]:
    audit = subject.audit
    if audit.assumed:
        listed = ", ".join(taken_as_none(audit.assumed))
        yield el("p", f"Taken as none, since the job says nothing of it: {listed}.")
    if audit.unlooked:
        keys = ", ".join(
            f"{each.key} of {each.of}" if each.of else each.key for each in audit.unlooked
        )
        yield el("p", f"Stated, but no rule of this pack looks at it: {keys}.")


_SECTIONS = (
    _Section("summary", "Summary by room", summary),
    _Section("punch-list", "Punch list", punch_list),
    _Section("to-measure", "What to measure next", _to_measure),
    _Section("to-look-at", "Walk-through", _to_look_at),
    _Section("plan", "Plan", plans),
    _Section("cards", "Box cards", cards),
    _Section("tracings", "Circuit tracings", _tracings),
    _Section("directory", "Panel directory", directories),
    _Section("loads", "Load worksheet", worksheets),
    _Section("takeoff", "Takeoff", material),
    _Section("not-looked-at", "Taken as none, or not looked at", _not_looked_at),
)
