"""The walk-through as lines: what is to be looked at, by place, and what somebody has looked at."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.audit.findings import OUT_OF_SIGHT, TO_BE_LOOKED_AT
from linter.audit.stops import stopped_at
from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import counted
from linter.text import join_words
from linter.vocabulary.kinds import KINDS

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.audit.findings import Look, WalkItem

_MOST_NAMED = 4
_TICK = "___ "
_VISITS = {
    "": "THE WHOLE DWELLING",
    "room": "IN THE ROOMS",
    "box": "AT THE BOXES",
    "cable": "ALONG THE CABLES",
    "panel": "AT THE PANEL",
    "breaker": "AT THE PANEL",
    "circuit": "AT THE PANEL",
    "appliance": "ON THE APPLIANCES",
}


def to_look_at(items: Iterable[WalkItem]) -> Iterator[Line]:
    """The items that nobody has looked at everywhere, by place; then those looked at, in short."""
    items = tuple(items)
    if not items:
        return
    yield EMPTY
    yield line("TO LOOK AT", "advice-heading")
    yield line(_tally(items), indent=2, hang=2)
    by_visit: dict[str, list[WalkItem]] = {name: [] for name in _VISITS.values()}
    for item in items:
        if item.those(TO_BE_LOOKED_AT, OUT_OF_SIGHT):
            by_visit[_VISITS[stopped_at(item.looks[0].stop)]].append(item)
    for visit, group in by_visit.items():
        if group:
            yield EMPTY
            yield line(visit, "room", indent=1)
        for item in group:
            yield from _open(item)
    yield from _done([item for item in items if not item.those(TO_BE_LOOKED_AT, OUT_OF_SIGHT)])


def _tally(items: tuple[WalkItem, ...]) -> str:
    looks = [look for item in items for look in item.looks]
    done = [look for look in looks if look.state not in (TO_BE_LOOKED_AT, OUT_OF_SIGHT)]
    places = counted(len(looks), "place", "places")
    return (
        f"{counted(len(items), 'item', 'items')} at {places}; {len(done)} looked at. "
        'Record under "looked_at" who looked, when, and what came of it.'
    )


def _open(item: WalkItem) -> Iterator[Line]:
    """An item with its name, where it is still open, and what to look at."""
    left = item.those(TO_BE_LOOKED_AT, OUT_OF_SIGHT)
    named = (Span(f"{item.item}{_at(item, left)}: ", "quiet"), Span(item.ask))
    yield Line((Span(_TICK), *named), 2, len(_TICK))
    if item.caution:
        yield line(f"Caution: {item.caution}", "", 2 + len(_TICK), 2)
    gone = item.those(OUT_OF_SIGHT)
    if gone:
        at = counted(len(gone), "place", "places")
        yield line(f"Can no longer be seen at {at}, by the stage of the job.", "", 2 + len(_TICK))
    for why in dict.fromkeys(look.lacking for look in left if look.lacking):
        yield line(f"Recorded, but {why}.", "", 2 + len(_TICK), 2)


def _at(item: WalkItem, looks: tuple[Look, ...]) -> str:
    """Where an item is meant: by name where these are few, else by their number."""
    kind = KINDS[item.kind]
    if len(looks) == len(item.looks) and item.everywhere:
        return "" if len(looks) == 1 else f" (all {counted(len(looks), kind.label, kind.plural)})"
    if len(looks) <= _MOST_NAMED:
        return f" ({join_words([look.label for look in looks])})"
    return f" ({counted(len(looks), kind.label, kind.plural)})"


def _done(items: list[WalkItem]) -> Iterator[Line]:
    if not items:
        return
    yield EMPTY
    yield line("LOOKED AT", "room", indent=1)
    for item in items:
        said = dict.fromkeys(f"{each.state}, {each.by}, {each.on}" for each in item.looks)
        yield Line((Span(f"{item.item}: ", "quiet"), Span("; ".join(said))), 2, 4)
