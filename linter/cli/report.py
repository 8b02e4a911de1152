"""`precover report JOB -o FILE`: everything about a job as one HTML file."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from linter.cli.files import read_text, shown_name
from linter.cli.output import show
from linter.cli.saving import save
from linter.cli.shelf import PACKS, Shelf
from linter.cli.status import Status
from linter.cli.words import Option, tell_apart
from linter.cli.wrong_use import WrongUse

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.reports.page.subject import Subject

_COMMAND = "precover report"
_MEND = f"write {_COMMAND} JOB -o FILE"
_OUT = Option("-o", "the HTML file to write, or - for standard output")
_BEGINS = b"<!doctype html>"


def run_report(words: Sequence[str]) -> Status:
    """Writes the report of a job; a file that is no HTML is not written over."""
    names, options = tell_apart(_COMMAND, (_OUT, PACKS), words)
    if len(names) != 1:
        found = f'"{names[1]}" is one word too many.' if names else "A job file is missing."
        raise WrongUse(found, mend=_MEND)
    out = options.one("-o")
    if not out:
        raise WrongUse("The file to write is missing.", _OUT.meaning, mend=_MEND)
    from linter.reports.page.document import report_page  # noqa: PLC0415  only a report is drawn

    page = report_page(_subject(names[0], Shelf(options.all("--packs"))))
    if out == "-":
        show(page)
    else:
        _refuse_to_lose(out)
        save(out, page)
    return Status.NOTHING_OUTSTANDING


def _refuse_to_lose(out: str) -> None:
    """Raises `WrongUse` where the file holds something else than a page: a job file, say."""
    path = Path(out)
    if path.is_dir():
        raise WrongUse(f'"{out}" is a folder.', _OUT.meaning, mend="name a file in it")
    if path.is_file():
        with path.open("rb") as file:
            begins = file.read(len(_BEGINS))
        if begins and begins.lower() != _BEGINS:
            raise WrongUse(f'"{out}" is there already, and is no HTML file.', mend="name another")


def _subject(file: str, shelf: Shelf) -> Subject:
    from linter.audit.audit import examined  # noqa: PLC0415
    from linter.jobfile import read_job  # noqa: PLC0415
    from linter.reports.page.subject import Subject  # noqa: PLC0415
    from linter.trace import trace  # noqa: PLC0415
    from linter.wiring import derive  # noqa: PLC0415

    job = read_job(read_text(file), shown_name(file))
    pack = shelf.for_job(shown_name(file)).pack_of(job)
    wiring = derive(job)
    # Where the job file lies is nobody's business who reads the report.
    name = Path(shown_name(file)).name
    return Subject(name, job, wiring, trace(job, wiring), examined(job, pack))
