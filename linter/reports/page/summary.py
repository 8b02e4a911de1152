"""How many findings and open questions each room has, in one table."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from linter.audit.findings import OUT_OF_SIGHT, TO_BE_LOOKED_AT, WEIGHTS
from linter.reports.page.elements import Element, Node, el
from linter.reports.page.punch_list import WHOLE

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.reports.page.subject import Subject

_HEADS = ("Room", "Boxes", "Danger", "Violation", "Advice", "To measure", "To look at")


def summary(subject: Subject) -> Iterator[Node]:
    """The table; what belongs to no room stands last."""
    by_room = _counted(subject)
    boxes = Counter(str(box.room or "") for box in subject.job.boxes.values())
    rooms = [*map(str, subject.job.rooms)]
    rooms += [""] if boxes[""] or any(by_room[each][""] for each in by_room) else []
    rows = [
        _row(room or WHOLE, [boxes[room], *(c[room] for c in by_room.values())]) for room in rooms
    ]
    totals = [boxes.total(), *(each.total() for each in by_room.values())]
    yield el(
        "div",
        el(
            "table",
            el("thead", el("tr", *(el("th", head, scope="col") for head in _HEADS))),
            el("tbody", *rows),
            el("tfoot", _row("All", totals)),
            class_="numbers",
        ),
        class_="wide",
    )
    yield el("p", "Weights as the rule pack gives them. A thing to measure counts once for each "
             "question asked of it.", class_="quiet small")  # fmt: skip


def _counted(subject: Subject) -> dict[str, Counter[str]]:
    """The numbers by room, for each column after the boxes."""
    audit = subject.audit
    found = {
        weight: Counter(each.stop.room for each in audit.findings if each.weight == weight)
        for weight in WEIGHTS
    }
    found["measure"] = Counter(each.stop.room for asked in audit.open for each in asked.things)
    found["look"] = Counter(
        look.stop.room
        for item in audit.walk_through
        for look in item.those(TO_BE_LOOKED_AT, OUT_OF_SIGHT)
    )
    return found


def _row(name: str, numbers: list[int]) -> Element:
    cells = (el("td", str(each) if each else "\N{MIDDLE DOT}") for each in numbers)
    return el("tr", el("th", name, scope="row"), *cells)
