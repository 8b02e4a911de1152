"""`precover fieldsheet JOB -o FILE`: what to measure and look at, as a form to take along."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from linter.audit.audit import audit
from linter.cli.files import read_text, shown_name
from linter.cli.output import say
from linter.cli.saving import save
from linter.cli.shelf import PACKS, Shelf
from linter.cli.status import Status
from linter.cli.words import Option, tell_apart
from linter.cli.wrong_use import WrongUse
from linter.jobfile import read_job
from linter.jobfile.ways import standing_in, usual_way, where_stated
from linter.reports.sheet.form import field_sheet
from linter.reports.sheet.lines import Places, sheet_of

if TYPE_CHECKING:
    from collections.abc import Sequence

_COMMAND = "precover fieldsheet"
_INTO = Option("-o", "the HTML file to write")


def run_fieldsheet(words: Sequence[str]) -> Status:
    """Writes the field sheet of a job: one HTML file that needs no network."""
    names, options = tell_apart(_COMMAND, (_INTO, PACKS), words)
    if len(names) != 1 or not options.one(_INTO.name):
        raise WrongUse("A job file and a file to write are needed.", mend=_MEND)
    name = shown_name(names[0])
    text = read_text(names[0])
    job = read_job(text, name)
    found = audit(job, Shelf(options.all(PACKS.name)).for_job(name).pack_of(job))
    places = Places(partial(where_stated, job), usual_way, standing_in(text, name))
    sheet = sheet_of(found, places)
    into = options.one(_INTO.name)
    save(into, field_sheet(sheet))
    say(f"{into}: {sheet.number} lines to fill in.")
    return Status.NOTHING_OUTSTANDING


_MEND = f"write {_COMMAND} JOB -o FILE"
