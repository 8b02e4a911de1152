"""`precover makeup JOB BOX`: how one box is made up."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.cli.files import read_text, shown_name
from linter.cli.output import show_lines
from linter.cli.status import Status
from linter.cli.words import tell_apart
from linter.cli.wrong_use import WrongUse
from linter.job.stated import BoxId
from linter.jobfile import read_job
from linter.reports.box_card import box_card
from linter.text import nearest
from linter.wiring import derive
from linter.wiring.card import make_up_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.job.jobs import Job

_MEND = "write precover makeup JOB BOX"


def run_makeup(words: Sequence[str]) -> Status:
    """Shows the make-up of the box named, as the job states or derives it."""
    names, _ = tell_apart("precover makeup", (), words)
    file, box = _two(names)
    job = read_job(read_text(file), shown_name(file))
    stated = job.boxes.get(BoxId(box))
    if stated is None:
        raise _no_such_box(box, job)
    made = make_up_of(derive(job), job, box)
    show_lines(box_card(made, stated.room or "no room stated", stated.place))
    return Status.NOTHING_OUTSTANDING


def _two(names: list[str]) -> tuple[str, str]:
    """The file and the box, where just these are named."""
    match names:
        case [file, box]:
            return file, box
        case [] | [_]:
            what = "The name of a box is" if names else "A job file and the name of a box are"
            raise WrongUse(f"{what} missing.", mend=_MEND)
        case _:
            raise WrongUse(f'"{names[2]}" is one word too many.', mend=_MEND)


def _no_such_box(box: str, job: Job) -> WrongUse:
    boxes = [str(each) for each in job.boxes]
    near = nearest(box, boxes)
    expected = "" if near else f"one of: {', '.join(boxes)}"
    return WrongUse(f'"{box}" is not a box of this job.', expected, near)
