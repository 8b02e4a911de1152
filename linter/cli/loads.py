"""`precover loads JOB`: the calculations of the pack, step by step."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.audit.worksheets import worksheets_of
from linter.cli.files import read_text, shown_name
from linter.cli.output import show, show_lines
from linter.cli.shelf import PACKS, Shelf
from linter.cli.status import Status
from linter.cli.words import Option, tell_apart
from linter.cli.wrong_use import WrongUse, one_of
from linter.facts import facts_of
from linter.jobfile import read_job
from linter.trace import trace
from linter.wiring import derive

if TYPE_CHECKING:
    from collections.abc import Sequence

_OPTIONS = (Option("--form", "text or json", "text"), PACKS)
_MEND = "write precover loads JOB"


def run_loads(words: Sequence[str]) -> Status:
    """Shows the worksheets of the job's pack, worked out; says whether anything cannot be told."""
    names, options = tell_apart("precover loads", _OPTIONS, words)
    form = one_of(options.one("--form"), ("text", "json"), "form")
    if len(names) != 1:
        found = f'"{names[1]}" is one word too many.' if names else "A job file is missing."
        raise WrongUse(found, mend=_MEND)
    file = shown_name(names[0])
    job = read_job(read_text(names[0]), file)
    pack = Shelf(options.all("--packs")).for_job(file).pack_of(job)
    wiring = derive(job)
    sheets = worksheets_of(facts_of(job, wiring, trace(job, wiring)), pack)
    if form == "json":
        from linter.reports.worksheets_json import worksheets_json  # noqa: PLC0415

        show(worksheets_json(job.name, pack.id, sheets))
    else:
        from linter.reports.worksheets import worksheet_report  # noqa: PLC0415

        stated = bool(job.appliances)
        show_lines(worksheet_report(job.name, pack.id, sheets, has_appliances=stated))
    open_ = any(sheet.doubt or sheet.missing or not job.appliances for sheet in sheets)
    return Status.CANNOT_TELL if open_ else Status.NOTHING_OUTSTANDING
