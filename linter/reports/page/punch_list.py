"""The findings to tick off, as one walks through the rooms, each with what stands behind it."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from linter.reports.backing import on_paper, resting, sources
from linter.reports.entries import entries, named
from linter.reports.page.elements import Element, Node, el
from linter.reports.page.from_lines import from_lines
from linter.reports.sayings import counted, counted_by_weight
from linter.reports.sign_offs import said, settled, totals
from linter.signoff.standing import is_judged_no_defect

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.audit.findings import Finding
    from linter.reports.entries import Entry
    from linter.reports.page.subject import Subject

_TICKS = 'Ticks are for paper, or while the page is open; "precover signoff" keeps what is said.'
WHOLE = "the whole dwelling"


def punch_list(subject: Subject) -> Iterator[Node]:
    """The findings by room and box; that there are none is said with what was looked at."""
    audit = subject.audit
    checks = counted(audit.checks, "check", "checks")
    if not audit.findings:
        yield el("p", f"No finding, from {checks}. What cannot be told yet stands further down.")
        yield from _signed(subject, [])
        return
    yield el("p", f"{counted_by_weight(audit.counts)}, from {checks}. {_TICKS}")
    told, judged = _sorted_out(entries(audit.findings, subject.signed))
    number = 0
    for room, in_room in groupby(told, key=lambda each: each.first.stop.room):
        yield el("h3", room or WHOLE)
        for heading, at_stop in groupby(in_room, key=lambda each: each.first.stop.heading):
            here = list(at_stop)
            yield el("h4", heading, " ", _card(subject, here[0].first))
            items = [_item(entry, number + n) for n, entry in enumerate(here, 1)]
            number += len(here)
            yield el("ul", *items, class_="findings")
    yield from _signed(subject, judged)


def _sorted_out(found: Iterable[Entry]) -> tuple[list[Entry], list[Entry]]:
    """What is to be looked at, and what was judged not a defect."""
    told: list[Entry] = []
    judged: list[Entry] = []
    for each in found:
        (judged if is_judged_no_defect(each.standing) else told).append(each)
    return told, judged


def _signed(subject: Subject, judged: list[Entry]) -> Iterator[Node]:
    """What people judged not a defect, with the reason; what was said of nothing that is found."""
    if subject.signed.file:
        yield from from_lines(settled(judged, subject.signed), 3)
        yield from from_lines(totals([subject.signed]), 3)


def _card(subject: Subject, finding: Finding) -> Element | None:
    box = finding.stop.box
    if box not in subject.job.boxes:
        return None
    return el("a", f"card {subject.numbers[box]}", href=f"#{subject.anchor(box)}")


def _item(entry: Entry, number: int) -> Element:
    finding = entry.first
    name = f"tick-{number}"
    return el(
        "li",
        el(
            "p",
            el("input", type="checkbox", id=name),
            " ",
            el(
                "label",
                el("span", finding.weight, class_=f"weight {finding.weight}"),
                f" {finding.sentence}",
                for_=name,
            ),
        ),
        el("p", *_where(entry), class_="quiet small"),
        el("p", said(entry.standing), class_="said") if entry.standing is not None else None,
        *_work(entry),
        el("p", el("strong", "Do: "), finding.do),
        el("p", el("strong", "Caution: "), finding.caution, class_="warn")
        if finding.caution
        else None,
        _behind(entry),
        class_="finding",
    )


def _where(entry: Entry) -> Iterator[str]:
    finding = entry.first
    circuit = finding.stop.circuit
    word = "circuits" if " and " in circuit else "circuit"
    yield f"Line {finding.place.line} of the job file"
    yield f"; {word} {circuit}" if circuit else ""
    yield f"; also {named(entry.others, finding.place.line)}" if entry.others else ""
    yield f"; mark {finding.fingerprint[:8]}."


def _work(entry: Entry) -> Iterator[Element]:
    rows = [" = ".join(parts) for parts in map(on_paper, entry.first.working) if parts]
    if rows:
        yield el("ul", *(el("li", row) for row in rows), class_="work")


def _behind(entry: Entry) -> Element:
    notes = [*sources(entry.first), *resting(entry.all)]
    return el("dl", *_pairs(notes), class_="small")


def _pairs(notes: Iterable[tuple[str, str]]) -> Iterator[Element]:
    for label, text in notes:
        yield el("div", el("dt", label), el("dd", text))
