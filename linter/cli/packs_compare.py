"""`precover packs compare A B`: what differs between two packs, and for saved jobs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.cli.faults import Fault, attempted
from linter.cli.files import JobFile, job_files
from linter.cli.output import say, show_lines
from linter.cli.packs_told import shelf_for
from linter.cli.shelf import PACKS
from linter.cli.status import Status, worst
from linter.cli.sweeping import sweeping
from linter.cli.words import Option, tell_apart
from linter.cli.wrong_use import WrongUse
from linter.packs.compare import are_related, by_subject, compare
from linter.reports.comparison import comparison_page, subjects_page
from linter.text import Refused, join_words

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from linter.audit.adoption import Adoption
    from linter.packs.model import Pack
    from linter.reports.layout import Line

_JOB = Option("--job", "a job file, or a folder of job files", adds_up=True)
_OPTIONS = (_JOB, PACKS)


def run_packs_compare(words: Sequence[str]) -> Status:
    """Shows what differs between two packs, then what the second would change for each job."""
    names, options = tell_apart("precover packs compare", _OPTIONS, words)
    if len(names) != 2:  # noqa: PLR2004  one pack and the other
        found = f"{join_words(names)} named." if names else "No pack is named."
        raise WrongUse(found, "the names of two packs", mend='"precover packs list" has them all')
    shelf, told = shelf_for(options.all("--packs"), *names)
    before, after = (shelf.pack_named(name) for name in told)
    show_lines(_page(before, after))
    files = job_files(options.all(_JOB.name)) if options.all(_JOB.name) else ()
    return worst(
        [Status.NOTHING_OUTSTANDING, *(_job(each, before, after) for each in sweeping(files))]
    )


def _page(before: Pack, after: Pack) -> Iterator[Line]:
    if are_related(before, after):
        return comparison_page(compare(before, after))
    return subjects_page(before.id, after.id, by_subject(before, after))


def _job(file: JobFile, before: Pack, after: Pack) -> Status:
    from linter.reports.adoptions import adoption_page  # noqa: PLC0415

    try:
        found = attempted(f"comparing {file.name}", lambda: _adopted(file, before, after))
    except Refused as refused:
        say(str(refused))
        return Status.REFUSED
    if isinstance(found, Fault):
        return Status.OUR_FAULT
    show_lines(adoption_page(file.name, found, before.id, after.id))
    return Status.NOTHING_OUTSTANDING


def _adopted(file: JobFile, before: Pack, after: Pack) -> Adoption:
    from linter.audit.adoption import adoption  # noqa: PLC0415
    from linter.jobfile import read_job  # noqa: PLC0415

    if file.refused is not None:
        raise file.refused
    return adoption(read_job(file.text, file.name), before, after)
