"""What refers to something is held against what there is: every mistake, wherever it stands."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.jobfile.box_references import wrong_in_boxes
from linter.jobfile.cable_references import wrong_in_cables
from linter.jobfile.known import MissingName
from linter.jobfile.make_up_references import wrong_in_make_up
from linter.jobfile.panel_references import wrong_in_panels
from linter.jobfile.record_references import wrong_in_records
from linter.text import nearest
from linter.text.refusals import MOST_SHOWN

if TYPE_CHECKING:
    from collections.abc import Iterable

    from linter.job.jobs import Job
    from linter.jobfile.known import Known, Wrong
    from linter.text import Refusal


def wrong_references(job: Job, known: Known) -> list[Refusal]:
    """The refusals of all references of the job that lead nowhere, or to what they cannot mean."""
    checks = (
        wrong_in_panels,
        wrong_in_boxes,
        wrong_in_make_up,
        wrong_in_cables,
        wrong_in_records,
    )
    return _one_for_each_mistake(refusal for check in checks for refusal in check(job, known))


def _one_for_each_mistake(found: Iterable[Wrong]) -> list[Refusal]:
    """The refusals in file order, without those that only repeat: the first of each stays.

    A missing name is spoken of in many places; what a cable says of both its ends is found wrong
    at each. Nearest names are looked for as far as they are shown: a long file has many names.
    """
    mistakes: dict[object, list[MissingName]] = {}
    for each in found:
        wrong = each if isinstance(each, MissingName) else MissingName(each, "", "")
        key = (wrong.group, wrong.name) if wrong.name else each
        mistakes.setdefault(key, []).append(wrong)
    firsts = sorted(map(_first_of, mistakes.values()), key=lambda each: each.refusal.place)
    shown = [_with_nearest(each) for each in firsts[:MOST_SHOWN]]
    return shown + [each.refusal for each in firsts[MOST_SHOWN:]]


def _first_of(repeated: list[MissingName]) -> MissingName:
    """The first refusal, with the second place that speaks of the same."""
    first, *others = sorted(repeated, key=lambda each: each.refusal.place)
    later = [each.refusal.place for each in others if each.refusal.place != first.refusal.place]
    if not later:
        return first
    more = f", and {len(later) - 1} more times below," if len(later) > 1 else ""
    also = (later[0], f"spoken of again{more}")
    return first._replace(refusal=first.refusal._replace(also=also))


def _with_nearest(wrong: MissingName) -> Refusal:
    near = wrong.refusal.nearest or nearest(wrong.name, wrong.allowed)
    return wrong.refusal._replace(nearest=near)
