"""What a person said of a finding, as a sign-off file keeps it."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from linter.text import Place

Key = tuple[str, str, str]
"""The rule, and the kind and name of the thing it was put to."""


class Saying(NamedTuple):
    """What is said, by whom, on which day (year-month-day), why, and at which stage of the job."""

    says: str
    by: str
    on: str
    because: str = ""
    stage: str = ""


class Item(NamedTuple):
    """A finding or an open check as it was when something was said of it.

    `mark` is its fingerprint, `by_rule` that of the rule with its limits and tables.
    """

    rule: str
    kind: str
    ref: str
    mark: str
    by_rule: str
    weight: str
    found: str

    @property
    def key(self) -> Key:
        """What it is recognised by, whatever the facts."""
        return self.rule, self.kind, self.ref


class Entry(NamedTuple):
    """One item of a sign-off file, with what was said of it and where that stands."""

    item: Item
    saying: Saying
    place: Place


class SignOffs(NamedTuple):
    """A sign-off file: the name of its job, where that stands, and all entries in file order."""

    job: str
    job_place: Place
    entries: tuple[Entry, ...]

    def latest(self) -> dict[Key, Entry]:
        """Of each finding what was said on the latest day, of several the last in the file."""
        found: dict[Key, Entry] = {}
        for each in self.entries:
            before = found.get(each.item.key)
            if before is None or before.saying.on <= each.saying.on:
                found[each.item.key] = each
        return found
