"""`precover bring-in JOB SHEET`: what a field sheet brings back, written into the job file."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.cli.files import STANDARD_INPUT, read_text, shown_name
from linter.cli.output import say, show_lines
from linter.cli.saving import save
from linter.cli.status import Status
from linter.cli.words import Option, tell_apart
from linter.cli.wrong_use import WrongUse
from linter.jobfile.bringing_in import bring_in
from linter.jobfile.sheets import read_sheet
from linter.reports.brought_in import brought_in_page

if TYPE_CHECKING:
    from collections.abc import Sequence

_COMMAND = "precover bring-in"
_INTO = Option("-o", "the file to write instead of the job file")


def run_bring_in(words: Sequence[str]) -> Status:
    """Writes the answers of a sheet into a job file, and shows what changed and what is left."""
    names, options = tell_apart(_COMMAND, (_INTO,), words)
    if len(names) != 2:  # noqa: PLR2004  the job and the sheet
        raise WrongUse("A job file and what its field sheet saved are needed.", mend=_MEND)
    job, sheet = names
    into = options.one(_INTO.name) or job
    if shown_name(into) == STANDARD_INPUT:
        raise WrongUse("Standard input cannot be written to.", mend="name a file with -o")
    read = read_sheet(read_text(sheet), shown_name(sheet))
    result = bring_in(read_text(job), shown_name(into), read.answers)
    if result.changes or into != job:
        save(into, result.text)
    show_lines(brought_in_page(into, result.changes, result.left))
    if read.job != result.job:
        say(f'The sheet was made for "{read.job}", the job is called "{result.job}".')
    return Status.FINDINGS if result.left else Status.NOTHING_OUTSTANDING


_MEND = f"write {_COMMAND} JOB SHEET"
