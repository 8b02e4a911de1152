"""Places: which pack holds there for permits of which days."""

import json
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from itertools import pairwise
from typing import NamedTuple

from linter.resources import schemas_dir
from linter.text import Place, Refusal, Refused
from linter.text.schema_refusals import schema_refusals
from linter.text.yaml_places import Node, read_places


class Span(NamedTuple):
    """The days of the permits for which a pack holds; `last` is empty where no day is the last.

    `place` is where the file says it, `by` the act that adopts it.
    """

    pack: str
    first: str
    last: str
    by: str
    place: Place


class Locality(NamedTuple):
    """A place with the packs that hold there, the oldest first, without overlaps."""

    name: str
    title: str
    spans: tuple[Span, ...]
    note: str = ""

    def at(self, day: str) -> Span | None:
        """The span of a day; None where nothing is stated for it.

        >>> begun = Span("code", "2024-07-01", "", "Ordinance 1", Place("a.place.yaml", 4, 5))
        >>> town = Locality("town", "Town", (begun,))
        >>> town.at("2024-07-01") == begun, town.at("2024-06-30")
        (True, None)
        """
        inside = (each for each in self.spans if each.first <= day <= (each.last or day))
        return next(inside, None)


def read_locality(text: str, file: str, name: str) -> Locality:
    """The place that a file states; `name` is what its file is called. Raises `Refused`."""
    node = read_places(text, file)
    refusals = schema_refusals(node, _schema()) or [*_wrong(node, name)]
    if refusals:
        raise Refused(refusals)
    fields = node.fields
    nodes = sorted(fields["holds"].items, key=lambda each: each.fields["from"].text)
    spans = tuple(map(_span, nodes, [*nodes[1:], None]))
    refusals = [*_overlaps(spans)]
    if refusals:
        raise Refused(refusals)
    note = fields["note"].text if "note" in fields else ""
    return Locality(fields["place"].text, fields["title"].text, spans, note)


def _schema() -> Mapping[str, object]:
    text = (schemas_dir() / "place.schema.json").read_text(encoding="utf-8")
    schema: Mapping[str, object] = json.loads(text)
    return schema


def _span(node: Node, later: Node | None) -> Span:
    fields = node.fields
    last = fields["until"].text if "until" in fields else ""
    if not last and later is not None:
        last = _day_before(later.fields["from"].text)
    return Span(fields["pack"].text, fields["from"].text, last, fields["by"].text, node.place)


def _day_before(day: str) -> str:
    return (date.fromisoformat(day) - timedelta(days=1)).isoformat()


def _wrong(node: Node, name: str) -> Iterator[Refusal]:
    """What is wrong with a place that the schema lets through, span by span."""
    stated = node.fields["place"]
    if stated.text != name:
        found = f'The place is called "{stated.text}", and its file "{name}"'
        yield Refusal(stated.place, found, "one name for both", "rename one of the two")
    for each in node.fields["holds"].items:
        days = [each.fields[key] for key in ("from", "until") if key in each.fields]
        missing = [day for day in days if not _is_a_day(day.text)]
        for day in missing:
            mend = "write a day of the calendar, as year-month-day"
            yield Refusal(day.place, f'"{day.text}" is no day', "such as 2024-07-01", mend)
        first, last = days[0], days[-1]
        if not missing and last.text < first.text:
            found = f"The pack holds until {last.text}, and from {first.text}"
            yield Refusal(last.place, found, f"a day from {first.text} on", "swap the two days")


def _is_a_day(text: str) -> bool:
    try:
        date.fromisoformat(text)
    except ValueError:
        return False
    return True


def _overlaps(spans: Sequence[Span]) -> Iterator[Refusal]:
    for earlier, later in pairwise(spans):
        if later.first <= earlier.last or later.first == earlier.first:
            yield Refusal(
                later.place,
                f'"{later.pack}" holds from {later.first}, and "{earlier.pack}" then still does',
                "one pack for a day",
                f'end "{earlier.pack}" the day before, or begin "{later.pack}" later',
                also=(earlier.place, f'"{earlier.pack}" is stated'),
            )
