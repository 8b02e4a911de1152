"""`precover progress BEFORE AFTER`: what became of a job between two of its saved files."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.audit.audit import examined
from linter.audit.open_checks import open_checks
from linter.cli.files import read_text, shown_name
from linter.cli.output import show_lines
from linter.cli.shelf import PACKS, Shelf
from linter.cli.signed import sign_offs_of, signed_of
from linter.cli.status import Status
from linter.cli.words import tell_apart
from linter.cli.wrong_use import WrongUse
from linter.job.changes import changes
from linter.jobfile import read_job
from linter.reports.outcomes import Audited
from linter.reports.progress import progress
from linter.reports.progress_lines import progress_page
from linter.text.yaml_places import read_places

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.audit.audit import Examined
    from linter.job.jobs import Job
    from linter.text.yaml_places import Node

_FILES = 2
_MEND = "write precover progress BEFORE AFTER, the earlier job file first"


def run_progress(words: Sequence[str]) -> Status:
    """Shows it; the status is that of findings where any is new, or has changed and is there."""
    names, options = tell_apart("precover progress", (PACKS,), words)
    if len(names) != _FILES or names[0] == names[1] == "-":
        found = "Two job files are needed." if len(names) <= _FILES else "That is a file too many."
        raise WrongUse(found, "an earlier and a later file of one job", mend=_MEND)
    shelf = Shelf(options.all("--packs"))
    first, then, _, _ = _audited(names[0], shelf)
    second, now, found_now, job = _audited(names[1], shelf)
    of = progress(then, now, found_now, job.stage)
    show_lines(progress_page(of, changes(first, second)))
    return Status.FINDINGS if any(of.after.outstanding.values()) else Status.NOTHING_OUTSTANDING


def _audited(name: str, shelf: Shelf) -> tuple[Node, Audited, Examined, Job]:
    """A job file with what it states, its audit, and what that was drawn from."""
    file, text = shown_name(name), read_text(name)
    job = read_job(text, file)
    pack = shelf.for_job(file).pack_of(job)
    found = examined(job, pack)
    checks = open_checks(found)
    signed = signed_of(file, job, sign_offs_of(file, job), found, checks)
    return read_places(text, file), Audited(file, found.audit, signed, checks, pack), found, job
