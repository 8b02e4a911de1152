"""What refers to something is held against what there is: every mistake, wherever it stands."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.jobfile.box_references import wrong_in_boxes
from linter.jobfile.cable_references import wrong_in_cables
from linter.jobfile.make_up_references import wrong_in_make_up
from linter.jobfile.panel_references import wrong_in_panels
from linter.jobfile.record_references import wrong_in_records

if TYPE_CHECKING:
    from linter.job.jobs import Job
    from linter.jobfile.known import Known
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
    # What a cable says of both its ends is found wrong at each.
    return list(dict.fromkeys(refusal for check in checks for refusal in check(job, known)))
