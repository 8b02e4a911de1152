"""`precover report JOB -o FILE`: everything about a job as one HTML file."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from linter.cli.files import read_text, shown_name
from linter.cli.output import show
from linter.cli.saving import save
from linter.cli.shelf import PACKS, Shelf
from linter.cli.signed import sign_offs_of, signed_of
from linter.cli.status import Status
from linter.cli.words import Option, tell_apart
from linter.cli.wrong_use import WrongUse
from linter.text import Refused

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.reports.page.subject import Subject
    from linter.text import Refusal

_COMMAND = "precover report"
_MEND = f"write {_COMMAND} JOB -o FILE"
_OUT = Option("-o", "the HTML file to write, or - for standard output")
STANDARD_OUTPUT = "-"
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
    if out != STANDARD_OUTPUT:
        _refuse_to_lose(out)
    from linter.reports.page.document import report_page  # noqa: PLC0415  only a report is drawn

    page = report_page(_subject(names[0], Shelf(options.all("--packs"))))
    if out == STANDARD_OUTPUT:
        show(page)
    else:
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
    """The job as a report needs it, named without its folders: no reader needs to know them.

    Raises `Refused` with the file as the person named it.
    """
    name = Path(shown_name(file)).name
    try:
        return _read(file, name, shelf)
    except Refused as refused:
        found = [each for each in refused.refusals if each.place.file == name]
        others = [each for each in refused.refusals if each.place.file != name]
        raise Refused([*others, *(_placed(each, shown_name(file)) for each in found)]) from refused


def _read(file: str, name: str, shelf: Shelf) -> Subject:
    from linter.audit.audit import examined  # noqa: PLC0415
    from linter.audit.open_checks import open_checks  # noqa: PLC0415
    from linter.jobfile import read_job  # noqa: PLC0415
    from linter.reports.page.subject import Subject  # noqa: PLC0415
    from linter.trace import trace  # noqa: PLC0415
    from linter.wiring import derive  # noqa: PLC0415

    job = read_job(read_text(file), name)
    found = examined(job, shelf.for_job(shown_name(file)).pack_of(job))
    said = sign_offs_of(file, job, name)
    signed = signed_of(name, job, said, found, open_checks(found) if said is not None else ())
    wiring = derive(job)
    return Subject(name, job, wiring, trace(job, wiring), found, signed)


def _placed(refusal: Refusal, file: str) -> Refusal:
    return refusal._replace(place=refusal.place._replace(file=file))
