"""`precover signoff JOB`: a person says of findings that they are agreed, put right, or none."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.audit.audit import examined
from linter.audit.open_checks import open_checks
from linter.cli.files import STANDARD_INPUT, read_text, shown_name
from linter.cli.output import show_lines
from linter.cli.saving import save
from linter.cli.shelf import PACKS, Shelf
from linter.cli.signed import sign_off_file, sign_offs_of, signed_of
from linter.cli.status import Status
from linter.cli.today import today
from linter.cli.words import Option, tell_apart
from linter.cli.wrong_use import WrongUse, one_of
from linter.jobfile import read_job
from linter.reports.layout import EMPTY, line
from linter.reports.sayings import counted
from linter.reports.sign_offs import listed, said
from linter.signoff.choosing import FINDING, GONE, OPEN, SHORT_MARK, NotMeant, candidates, chosen
from linter.signoff.said import Saying
from linter.signoff.sayings import AGREED, NOT_A_DEFECT, PUT_RIGHT
from linter.text import Place, Refusal, Refused, nearest
from linter.text.yaml_edits import CannotEdit

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from linter.cli.words import Options
    from linter.job.jobs import Job
    from linter.reports.layout import Line
    from linter.signoff.choosing import Candidate
    from linter.signoff.said import SignOffs
    from linter.signoff.standing import SignedOff

_COMMAND = "precover signoff"
_VERBS = {"agreed": AGREED, "put-right": PUT_RIGHT, "not-a-defect": NOT_A_DEFECT}
_WHAT = {"findings": FINDING, "open": OPEN}
_DAY = "a day as year-month-day, such as 2026-03-14"
_OPTIONS = (
    Option("--mark", "the first letters and figures of a mark that the list shows", adds_up=True),
    Option("--rule", "the name of a rule", adds_up=True),
    Option("--at", "a room, box, cable, circuit, thing or line of the job", adds_up=True),
    Option("--what", "findings or open", "findings"),
    Option("--by", "who says so"),
    Option("--because", "why, in quotation marks"),
    Option("--on", f"{_DAY}; today, unless said"),
    PACKS,
)


class _Read(NamedTuple):
    """A job, all of which something can be said, and what was said of it so far."""

    job: Job
    candidates: tuple[Candidate, ...]
    said: SignOffs | None
    signed: SignedOff


def run_signoff(words: Sequence[str]) -> Status:
    """Lists what may be signed; or adds what a person says of it to the file beside the job."""
    names, options = tell_apart(_COMMAND, _OPTIONS, words)
    file, verb = _told(names)
    what = _WHAT[one_of(options.one("--what"), _WHAT, "word after --what")]
    says = _VERBS[verb] if verb else ""
    saying = _saying(says, options) if verb else None
    if says == PUT_RIGHT and what == OPEN:
        raise WrongUse(
            "What cannot be told yet cannot be put right.",
            mend="measure or look, and write into the job file what you found",
        )
    read = _read(file, Shelf(options.all("--packs")))
    wanted = (what, GONE) if says == PUT_RIGHT else (what,)
    among = [each for each in read.candidates if each.what in wanted]
    meant = _chosen(among, options, file)
    if saying is None:
        show_lines(_list(meant, read, what))
        return Status.NOTHING_OUTSTANDING
    if not meant:
        raise WrongUse("Nothing is found there of which that can be said.", mend=_list_mend(file))
    stage = read.job.stage or ""
    _add(file, read, saying._replace(stage=stage), meant)
    show_lines(_signed(file, saying, meant))
    return Status.NOTHING_OUTSTANDING


def _told(names: list[str]) -> tuple[str, str]:
    """The job file, and what is said; nothing is said where only a list is asked for."""
    mend = f"write {_COMMAND} JOB, and after it one of: {', '.join(_VERBS)}"
    match names:
        case []:
            raise WrongUse("A job file is missing.", mend=mend)
        case ["-", *_]:
            raise WrongUse("A sign-off lies beside a job file, and standard input has none.")
        case [file]:
            return file, ""
        case [file, verb]:
            return file, one_of(verb, _VERBS, "thing to say of a finding")
        case _:
            raise WrongUse(f'"{names[2]}" is one word too many.', mend=mend)


def _saying(says: str, options: Options) -> Saying:
    """What is said, by whom, when and why; raises `WrongUse` where something is missing."""
    import datetime  # noqa: PLC0415  only who signs states a day

    by, because, on = options.one("--by"), options.one("--because"), options.one("--on") or today()
    if not by.strip():
        raise WrongUse("Who says so is missing.", "a name", mend='add such as --by "M. Ferrow"')
    if says == NOT_A_DEFECT and not because.strip():
        raise WrongUse(
            "Why it is not a defect is missing.", "a reason", mend='add such as --because "…"'
        )
    if not any(map(options.all, ("--mark", "--rule", "--at"))):
        raise WrongUse(
            "What is meant is missing.",
            "a mark, a rule or a place",
            mend="add --mark, --rule or --at; without anything said, the command lists them",
        )
    try:
        day = datetime.date.fromisoformat(on).isoformat()
    except ValueError:
        raise WrongUse(f'"{on}" is not a day.', _DAY) from None
    if day != on:
        raise WrongUse(f'"{on}" is not a day.', _DAY)
    return Saying(says, by, on, because)


def _read(name: str, shelf: Shelf) -> _Read:
    file = shown_name(name)
    if file == STANDARD_INPUT:
        raise WrongUse("A sign-off lies beside a job file, and standard input has none.")
    job = read_job(read_text(name), file)
    said_so_far = sign_offs_of(file, job)
    found = examined(job, shelf.for_job(file).pack_of(job))
    checks = open_checks(found)
    signed = signed_of(file, job, said_so_far, found, checks)
    return _Read(job, candidates(found, checks, said_so_far), said_so_far, signed)


def _chosen(among: Sequence[Candidate], options: Options, file: str) -> tuple[Candidate, ...]:
    marks, rules, places = map(options.all, ("--mark", "--rule", "--at"))
    try:
        return chosen(among, marks, rules, places)
    except NotMeant as wrong:
        word = next((each for each in (*rules, *places) if f'"{each}"' in wrong.found), "")
        near = nearest(word, wrong.allowed)
        raise WrongUse(f"{wrong.found}.", near=near, mend=_list_mend(file)) from None


def _list_mend(file: str) -> str:
    return f'"{_COMMAND} {file}" lists the findings; with --what open, what cannot be told'


def _add(job_file: str, read: _Read, saying: Saying, meant: Sequence[Candidate]) -> None:
    from linter.signoff.writing import with_act  # noqa: PLC0415  only where something is said

    file = sign_off_file(job_file)
    before = read_text(file) if read.said is not None else ""
    try:
        save(file, with_act(before, read.job.name, saying, [each.item for each in meant]))
    except CannotEdit:
        found = "nothing can be added to this file as it is written"
        mend = 'write the list under "signed" with each entry on lines of its own'
        raise Refused([Refusal(Place(file, 1, 1), found, "", mend)]) from None


def _list(meant: Sequence[Candidate], read: _Read, what: str) -> Iterator[Line]:
    if not meant:
        nothing = "Nothing is found." if what == FINDING else "Nothing is open."
        yield line(nothing)
        return
    marks = [_short(each, read.candidates) for each in meant]
    standings = [read.signed.standings.get(each.item.key) for each in meant]
    yield from listed(meant, marks, [said(each) if each else "" for each in standings])


def _short(candidate: Candidate, of: Sequence[Candidate]) -> str:
    """The mark, as short as it tells the candidate from all others."""
    mark = candidate.item.mark
    others = {each.item.mark for each in of} - {mark}
    length = SHORT_MARK
    while length < len(mark) and any(each.startswith(mark[:length]) for each in others):
        length += 1
    return mark[:length]


def _signed(file: str, saying: Saying, meant: Sequence[Candidate]) -> Iterator[Line]:
    number = counted(len(meant), "finding", "findings")
    yield line(f"{saying.says}, says {saying.by} on {saying.on}, of {number}:", hang=2)
    for each in meant:
        yield line(f"{each.item.rule}: {each.item.found}", indent=2, hang=2)
    yield EMPTY
    yield line(f"Written to {sign_off_file(file)}.", hang=2)
    if saying.says == AGREED and any(each.item.weight == "danger" for each in meant):
        yield line("A danger that is agreed counts until it is gone.", hang=2)
    if saying.says == PUT_RIGHT and any(each.what != GONE for each in meant):
        yield line("It counts until the job file shows it: write the new state there.", hang=2)
