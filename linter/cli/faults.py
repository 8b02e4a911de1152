"""The one place that catches everything: our own fault is said as such, and nothing is lost."""

from __future__ import annotations

from pathlib import PurePath
from typing import TYPE_CHECKING, NamedTuple, TypeVar

from linter.cli.output import say
from linter.cli.wrong_use import WrongUse
from linter.text import Refused, clean

if TYPE_CHECKING:
    from collections.abc import Callable

T = TypeVar("T")


class Fault(NamedTuple):
    """A mistake of precover: what was being done, the innermost first."""

    doing: tuple[str, ...]


def attempted(doing: str, what: Callable[[], T]) -> T | Fault:
    """What the function gives, or the fault it met, once that has been said on standard error.

    What the person can mend (`Refused`, `WrongUse`) goes on to the caller.
    """
    try:
        return what()
    except (Refused, WrongUse):
        raise
    except Exception as mistake:  # noqa: BLE001  the one place: anything else is our fault
        notes = (*getattr(mistake, "__notes__", ()), doing)
        say(_told(notes, mistake))
        return Fault(notes)


def _told(notes: tuple[str, ...], mistake: Exception) -> str:
    lines = ["precover made a mistake of its own; this says nothing about the job."]
    lines += [f"    While {note}." for note in notes]
    lines += [f"    {type(mistake).__name__}: {mistake}"]
    lines += [f"    {step}" for step in _steps(mistake)]
    lines += ["    To mend: send us these lines, with the job file; leave the rule in force."]
    return "\n".join(clean(line) for line in lines)


def _steps(mistake: Exception) -> list[str]:
    """The last steps of our own code, without folders of this machine."""
    import traceback  # noqa: PLC0415  wanted only where something went wrong

    frames = traceback.extract_tb(mistake.__traceback__)[-3:]
    return [f"in {PurePath(each.filename).name} line {each.lineno}, {each.name}" for each in frames]
