"""What refers to something is held against what there is: every mistake, wherever it stands."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.jobfile.box_references import wrong_in_boxes
from linter.jobfile.cable_references import wrong_in_cables
from linter.jobfile.known import MissingName
from linter.jobfile.make_up_references import wrong_in_make_up
from linter.jobfile.panel_references import wrong_in_panels
from linter.jobfile.record_references import wrong_in_records

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
    """The refusals, without those that only repeat: of a name that is missing, the first stays.

    What a cable says of both its ends, say, is found wrong at each.
    """
    mistakes: dict[object, list[Refusal]] = {}
    for each in found:
        if isinstance(each, MissingName):
            mistakes.setdefault((each.group, each.name), []).append(each.refusal)
        else:
            mistakes.setdefault(each, []).append(each)
    return [_first_of(repeated) for repeated in mistakes.values()]


def _first_of(repeated: list[Refusal]) -> Refusal:
    """The first refusal, with the second place that speaks of the same."""
    first, *others = sorted(repeated, key=lambda each: each.place)
    later = [each.place for each in others if each.place != first.place]
    if not later:
        return first
    more = f", and {len(later) - 1} more times below," if len(later) > 1 else ""
    return first._replace(also=(later[0], f"spoken of again{more}"))
