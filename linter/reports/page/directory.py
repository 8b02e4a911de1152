"""The directory of a panel, to print and stick on its door."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.reports.page.elements import Element, Node, el
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from linter.job.panel import Breaker, Panel
    from linter.reports.page.subject import Subject

_SHORT = {"ground-fault": "ground-fault", "arc-fault": "arc-fault"}
_TWO = 2


def directories(subject: Subject) -> Iterator[Node]:
    """A directory for each panel of the job."""
    for panel in subject.job.panels.values():
        yield _directory(subject, panel)


def _directory(subject: Subject, panel: Panel) -> Element:
    taken = {space: breaker for breaker in panel.breakers.values() for space in breaker.spaces}
    last = max([panel.spaces or 0, *taken])
    last += last % _TWO
    rows = [
        el("tr", *_half(subject, taken, space), *_half(subject, taken, space + 1))
        for space in range(1, last, _TWO)
    ]
    where = f", {panel.room}" if panel.room else ""
    main = f"Main {panel.main.written}. " if panel.main is not None else ""
    heads = ("No.", "Serves", "No.", "Serves")
    return el(
        "article",
        el("h3", f"{subject.job.name}: {panel.name}{where}"),
        el("p", f"{main}Fed by {_fed_by(subject)}.", class_="small"),
        el("table", el("thead", el("tr", *(el("th", each, scope="col") for each in heads))),
           el("tbody", *rows), class_="directory"),
        el("p", "Date: ______________   By: ____________________________", class_="small"),
        class_="door",
    )  # fmt: skip


def _fed_by(subject: Subject) -> str:
    found = []
    for name, supply in subject.job.supplies.items():
        facts = [supply.kind or "kind unknown", supply.voltage.written if supply.voltage else ""]
        found.append(f"{name} ({', '.join(filter(None, facts))})")
    return join_words(found, "or")


def _half(subject: Subject, taken: Mapping[int, Breaker], space: int) -> tuple[Element, Element]:
    breaker = taken.get(space)
    number = el("th", str(space), scope="row")
    if breaker is None:
        return number, el("td", el("span", "free", class_="quiet"))
    if space != breaker.space:
        same = f"with {breaker.space}: {_serves(subject, breaker)}"
        return number, el("td", el("span", same, class_="quiet"))
    return number, el(
        "td", el("strong", _serves(subject, breaker)), el("br"),
        el("span", _facts(breaker), class_="small"),
    )  # fmt: skip


def _serves(subject: Subject, breaker: Breaker) -> str:
    """What is written for it; else its circuits and their rooms, which tell it apart as well."""
    if breaker.serves:
        return breaker.serves
    circuits = [
        name
        for name, circuit in subject.job.circuits.items()
        if (breaker.panel, breaker.space) in circuit.breakers
    ]
    if not circuits:
        return "not stated"
    rooms = dict.fromkeys(
        str(box.room)
        for box in subject.job.boxes.values()
        if box.room and _is_on(subject, box.name, circuits)
    )
    return f"{join_words(circuits)}: {join_words(list(rooms))}" if rooms else join_words(circuits)


def _is_on(subject: Subject, box: str, circuits: Sequence[str]) -> bool:
    return any(end.use.circuit in circuits for end in subject.wiring.boxes[box].wire_ends)


def _facts(breaker: Breaker) -> str:
    said = [breaker.rating.written if breaker.rating is not None else "rating unknown"]
    said += [f"{breaker.poles}-pole"] if breaker.poles > 1 else []
    said += [_SHORT.get(each, each) for each in breaker.protection or ()]
    if breaker.tied_to:
        said.append(f"tied to {join_words([str(each) for each in breaker.tied_to])}")
    return ", ".join(said)
