"""`precover audit FILE...`: what a person should look at, file by file."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.audit.findings import WEIGHTS, at_least
from linter.cli.faults import Fault, attempted
from linter.cli.files import JobFile, job_files, read_text, shown_name
from linter.cli.output import say, show, show_lines
from linter.cli.shelf import PACKS, Shelf
from linter.cli.signed import sign_offs_of, signed_of
from linter.cli.status import Status, worst
from linter.cli.sweeping import sweeping
from linter.cli.words import Option, tell_apart
from linter.cli.wrong_use import WrongUse, one_of
from linter.reports.outcomes import Audited, OurFault, Outcome, TurnedAway
from linter.text import Refused

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.audit.open_checks import OpenCheck
    from linter.reports.earlier import Earlier

FORMS = ("text", "json", "sarif")
WORKINGS = ("brief", "full")
_COMMAND = "precover audit"
_OPTIONS = (
    Option("--form", "text, json or sarif", "text"),
    Option("--hold-on", "danger, violation or advice", "violation"),
    Option("--working", "brief or full", "brief"),
    Option("--against", "a file of findings that an earlier audit wrote as json"),
    PACKS,
)


def run_audit(words: Sequence[str]) -> Status:
    """Audits every file named, reports on all of them together, and gives the worst status."""
    names, options = tell_apart(_COMMAND, _OPTIONS, words)
    form = one_of(options.one("--form"), FORMS, "form")
    hold_on = one_of(options.one("--hold-on"), WEIGHTS, "weight")
    full = one_of(options.one("--working"), WORKINGS, "working") == "full"
    if not names:
        raise WrongUse("A file to audit is missing.", "a job file, a folder of job files, or -")
    shelf = Shelf(options.all("--packs"))
    earlier = _earlier(options.one("--against"))
    wanted = _Wanted(shelf, form != "text" or earlier is not None, earlier)
    outcomes = [_outcome(file, wanted) for file in sweeping(job_files(names))]
    _report(outcomes, form, full)
    return worst(_status(each, hold_on) for each in outcomes)


def _earlier(name: str) -> Earlier | None:
    if not name:
        return None
    from linter.reports.earlier import read_earlier  # noqa: PLC0415  only where one is named

    return read_earlier(read_text(name), shown_name(name))


class _Wanted(NamedTuple):
    """What all files are audited with: packs, open checks one by one or not, an earlier audit."""

    shelf: Shelf
    one_by_one: bool
    earlier: Earlier | None


def _outcome(file: JobFile, wanted: _Wanted) -> Outcome:
    try:
        found = attempted(f"auditing {file.name}", lambda: _audited(file, wanted))
    except Refused as refused:
        say(str(refused))
        return TurnedAway(file.name, refused.refusals)
    return OurFault(file.name, found.doing) if isinstance(found, Fault) else found


def _audited(file: JobFile, wanted: _Wanted) -> Audited:
    from linter.audit.audit import examined  # noqa: PLC0415
    from linter.jobfile import read_job  # noqa: PLC0415

    if file.refused is not None:
        raise file.refused
    job = read_job(file.text, file.name)
    pack = wanted.shelf.for_job(file.name).pack_of(job)
    found = examined(job, pack)
    said = sign_offs_of(file.name, job)
    checks: tuple[OpenCheck, ...] = ()
    if wanted.one_by_one or said is not None:
        from linter.audit.open_checks import open_checks  # noqa: PLC0415

        only = None if wanted.one_by_one or said is None else said.latest()
        checks = open_checks(found, only)
    signed = signed_of(file.name, job, said, found, checks)
    audited = Audited(file.name, found.audit, signed, checks, pack)
    if wanted.earlier is None:
        return audited
    from linter.reports.earlier import news_of  # noqa: PLC0415  only where one is named

    return audited._replace(news=news_of(wanted.earlier, file.name, found.audit.findings, checks))


def _report(outcomes: Sequence[Outcome], form: str, full: bool) -> None:
    if form == "json":
        from linter.reports.as_json import as_json  # noqa: PLC0415  one form is asked for, not both

        show(as_json(outcomes))
        return
    if form == "sarif":
        from linter.cli.addresses import Finder  # noqa: PLC0415
        from linter.reports.as_sarif import as_sarif  # noqa: PLC0415

        show(as_sarif(outcomes, Finder()))
        return
    from linter.reports.terminal import report  # noqa: PLC0415

    show_lines(report(outcomes, full))


def _status(outcome: Outcome, hold_on: str) -> Status:
    if isinstance(outcome, TurnedAway):
        return Status.REFUSED
    if isinstance(outcome, OurFault):
        return Status.OUR_FAULT
    counted = at_least(hold_on)
    if any(outcome.outstanding[weight] for weight in counted):
        return Status.FINDINGS
    if any(outcome.untold[weight] for weight in counted):
        return Status.CANNOT_TELL
    return Status.NOTHING_OUTSTANDING
