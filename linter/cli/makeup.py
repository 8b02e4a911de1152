"""`precover makeup JOB BOX`: how one box, or every box, is made up."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from linter.cli.files import read_text, shown_name
from linter.cli.output import show_lines
from linter.cli.shelf import PACKS, Shelf
from linter.cli.status import Status
from linter.cli.words import tell_apart
from linter.cli.wrong_use import WrongUse
from linter.job.stated import BoxId, RoomId
from linter.jobfile import read_job
from linter.reports.box_card import Where, box_list, cards
from linter.reports.box_fill import fill_line
from linter.text import nearest
from linter.trace import trace
from linter.trace.needed import needed_by
from linter.wiring import derive
from linter.wiring.card import NO_WORDS, make_up_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.job.jobs import Job
    from linter.packs.model import Pack
    from linter.trace import Trace
    from linter.wiring import Wiring

_ALL = "all"
_MEND = "write precover makeup JOB BOX, or all in the place of BOX"


def run_makeup(words: Sequence[str]) -> Status:
    """Shows the make-up of the box named, or of all; which boxes there are where none is named."""
    names, options = tell_apart("precover makeup", (PACKS,), words)
    file, wanted = _told(names)
    job = read_job(read_text(file), shown_name(file))
    walk = sorted(job.boxes, key=lambda box: _room_order(job, box))
    if not wanted:
        show_lines(box_list((box, job.boxes[box].room or "") for box in walk))
        return Status.NOTHING_OUTSTANDING
    if wanted not in job.boxes and wanted != _ALL:
        raise _no_such_box(wanted, job)
    boxes = [BoxId(wanted)] if wanted in job.boxes else walk
    pack = _pack_of(job, Shelf(options.all("--packs")).for_job(shown_name(file)))
    _show(job, boxes, pack)
    return Status.NOTHING_OUTSTANDING


def _show(job: Job, boxes: Sequence[BoxId], pack: Pack | None) -> None:
    wiring = derive(job)
    traced = trace(job, wiring)
    needed = partial(needed_by, traced, wiring)
    words = pack.words if pack else NO_WORDS
    fills = _fills(job, wiring, traced, boxes, pack)
    made = (
        (
            make_up_of(wiring, job, box, words, needed),
            Where(job.boxes[box].room or "", job.boxes[box].place, fills.get(box, "")),
        )
        for box in boxes
    )
    show_lines(cards(made))


def _fills(
    job: Job, wiring: Wiring, traced: Trace, boxes: Sequence[BoxId], pack: Pack | None
) -> dict[str, str]:
    """How full each box is, by the pack of the job."""
    if pack is None:
        return {}
    from linter.facts import facts_of  # noqa: PLC0415  only a job with a pack asks for its facts

    facts = facts_of(job, wiring, traced)
    return {box: fill_line(pack, facts, box) for box in boxes}


def _pack_of(job: Job, shelf: Shelf) -> Pack | None:
    """The pack that the job names, if it is at hand: a card can be drawn without."""
    if job.locality is None:
        asked = {job.pack, *job.layers}
        return shelf.pack_of(job) if job.pack and asked <= set(shelf.names) else None
    return shelf.pack_of(job) if job.locality in shelf.places.files else None


def _room_order(job: Job, box: BoxId) -> int:
    """Where the room of a box stands in the file; a box without a room comes last."""
    rooms = list(job.rooms)
    room = job.boxes[box].room
    return rooms.index(RoomId(room)) if room in rooms else len(rooms)


def _told(names: list[str]) -> tuple[str, str]:
    """The file and the box, which may be left out."""
    match names:
        case [file]:
            return file, ""
        case [file, box]:
            return file, box
        case []:
            raise WrongUse("A job file and the name of a box are missing.", mend=_MEND)
        case _:
            raise WrongUse(f'"{names[2]}" is one word too many.', mend=_MEND)


def _no_such_box(box: str, job: Job) -> WrongUse:
    boxes = [str(each) for each in job.boxes]
    near = nearest(box, boxes)
    expected = "" if near else f"one of: {', '.join(boxes)}"
    return WrongUse(f'"{box}" is not a box of this job.', expected, near)
