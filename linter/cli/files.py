"""The files a command was given: read, found in folders, or refused."""

from __future__ import annotations

import os
import re
import sys
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from linter.cli.output import say
from linter.resources import MANIFEST, PLACE_FILE
from linter.text import Place, Refusal, Refused, clean, nearest

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

STANDARD_INPUT = "standard input"
SIGN_OFF_SUFFIX = ".sign-off.yaml"
LARGEST = 64 * 1024 * 1024

_SUFFIXES = (".yaml", ".yml", ".json")
_SAYS_PRECOVER = re.compile(r"""^\s*[{,]?\s*["']?precover["']?\s*:""", re.MULTILINE)


class JobFile(NamedTuple):
    """A file to audit: its name as the person gave it, and its text or why it has none."""

    name: str
    text: str
    refused: Refused | None = None


def job_files(names: Iterable[str]) -> Iterator[JobFile]:
    """The job files that the names stand for, in order, each once; those of a folder by name.

    Files of a folder that are no job files are said on standard error and left out.
    """
    seen: set[str] = set()
    for name in names:
        for each in _named(name):
            if each.name not in seen:
                seen.add(each.name)
                yield each


def read_text(name: str) -> str:
    """The text of a file, or of standard input for "-".

    Raises `Refused` where there is none, it cannot be read, or it is no text in UTF-8.
    """
    shown = shown_name(name)
    try:
        data = _bytes(name)
    except OSError as error:
        raise Refused([_unreadable(shown, error)]) from error
    if len(data) > LARGEST:
        megabytes = LARGEST // 1024 // 1024
        raise _refused(
            shown,
            "this file is too large to be a job",
            f"at most {megabytes} MB",
            "name another file",
        )
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = data[: error.start]
        line, column = before.count(b"\n") + 1, error.start - (before.rfind(b"\n") + 1) + 1
        found = "a character here is not written in UTF-8"
        raise Refused(
            [Refusal(Place(shown, line, column), found, "text in UTF-8", "save the file as UTF-8")]
        ) from error


def shown_name(name: str) -> str:
    """How a file is named in messages."""
    return STANDARD_INPUT if name == "-" else name


def _named(name: str) -> Iterator[JobFile]:
    if name != "-" and Path(name).is_dir():
        yield from _in_folder(name)
        return
    yield _read(name)


def _read(name: str) -> JobFile:
    try:
        return JobFile(shown_name(name), read_text(name))
    except Refused as refused:
        return JobFile(shown_name(name), "", refused)


def _in_folder(folder: str) -> Iterator[JobFile]:
    found = 0
    below = _files_below(folder)
    for path in below:
        if path.endswith(SIGN_OFF_SUFFIX):
            _say_of_no_job(path, below)
            continue
        if path.endswith(PLACE_FILE):
            say(f"{clean(path)} is left out: it tells of a place, it is not a job.")
            continue
        each = _read(path)
        if each.refused is None and not _SAYS_PRECOVER.search(each.text):
            say(f'{clean(path)} is left out: it does not state "precover: 1" as a job file does.')
            continue
        found += 1
        yield each
    if not found:
        refused = _refused(
            folder, "this folder holds no job file", 'a YAML or JSON file with "precover: 1"',
            "name the folder or the files that hold the jobs",
        )  # fmt: skip
        yield JobFile(folder, "", refused)


def _say_of_no_job(path: str, files: Iterable[str]) -> None:
    """A sign-off file is no job; one that lies beside none is said, since it says nothing."""
    job = path.removesuffix(SIGN_OFF_SUFFIX)
    if not {f"{job}{suffix}" for suffix in _SUFFIXES} & set(files):
        say(f"{clean(path)} is a sign-off, and there is no job file beside it.")


def _files_below(folder: str) -> list[str]:
    found = []
    for here, folders, files in os.walk(folder):
        folders[:] = sorted(each for each in folders if not each.startswith("."))
        if MANIFEST in files:
            say(f"{clean(Path(here).as_posix())} is left out: it is a rule pack, not a job.")
            folders.clear()
            continue
        wanted = [each for each in files if each.endswith(_SUFFIXES) and not each.startswith(".")]
        found += [(Path(here) / each).as_posix() for each in wanted]
    return sorted(found)


def _bytes(name: str) -> bytes:
    if name == "-":
        return sys.stdin.buffer.read(LARGEST + 1)
    with Path(name).open("rb") as file:
        return file.read(LARGEST + 1)


def _unreadable(name: str, error: OSError) -> Refusal:
    place = Place(name, 1, 1)
    if isinstance(error, FileNotFoundError):
        near = nearest(Path(name).name, _neighbours(name))
        return Refusal(
            place,
            "there is no such file",
            "a job file, a folder of job files, or -",
            "check the name",
            near,
        )
    reason = (error.strerror or "it cannot be read").lower()
    return Refusal(place, f"this file cannot be read: {reason}", "", "see that you may read it")


def _neighbours(name: str) -> list[str]:
    try:
        return sorted(each.name for each in Path(name).parent.iterdir())
    except OSError:
        return []


def _refused(name: str, found: str, expected: str, mend: str) -> Refused:
    return Refused([Refusal(Place(name, 1, 1), found, expected, mend)])
