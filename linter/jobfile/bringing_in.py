"""What was measured and looked at, brought into the text of a job file; all else stays as it is."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.jobfile.reading import read_job
from linter.jobfile.ways import standing
from linter.text import Refused
from linter.text.yaml_edits import SAYS_NOTHING, CannotEdit, with_item, with_value
from linter.text.yaml_places import read_places

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.job.stating import Way
    from linter.text import Place
    from linter.text.yaml_edits import Plain
    from linter.text.yaml_places import Node


_SPOKEN = {"at_from": "the beginning", "at_to": "the end"}


class Answer(NamedTuple):
    """A value for the place at the end of a way, and what stood there when it was asked for.

    With `item`, the value is one more item of the list there.
    """

    way: Way
    value: Plain
    was: str = ""
    is_item: bool = False


class Change(NamedTuple):
    """What was written: the way in words, what stood there, what stands there now, and where."""

    what: str
    was: str
    now: str
    place: Place


class Left(NamedTuple):
    """An answer that was not written, and why."""

    what: str
    value: str
    why: str


class BroughtIn(NamedTuple):
    """The name of the job, its new text, what was changed in it, and what was left."""

    job: str
    text: str
    changes: tuple[Change, ...]
    left: tuple[Left, ...]


def bring_in(text: str, file: str, answers: Sequence[Answer]) -> BroughtIn:
    """The text of a job file with the answers in it, each as far as the job stays readable.

    An answer is left where the job has come to say something else since it was asked for. Raises
    `Refused` where the job cannot be read to begin with.
    """
    job = read_job(text, file).name
    changes, left = [], []
    for each in answers:
        outcome = _one(text, file, each)
        if isinstance(outcome, Left):
            left.append(outcome)
        elif outcome is not None:
            text, change = outcome
            changes.append(change)
    return BroughtIn(job, text, tuple(changes), tuple(left))


def _one(text: str, file: str, answer: Answer) -> tuple[str, Change] | Left | None:
    root = read_places(text, file)
    what, now = in_words(answer.way), _in_words(answer.value)
    there = _as_written(root, answer)
    was = "" if answer.is_item else standing(root, there.way)
    if was == now:
        return None
    if was not in (*SAYS_NOTHING, there.was):
        return Left(what, now, f'the job says "{was}" by now')
    write = with_item if answer.is_item else with_value
    try:
        new = write(text, there.way, there.value)
        read_job(new, file)
    except CannotEdit as error:
        return Left(what, now, str(error))
    except Refused as refused:
        first = refused.refusals[0]
        return Left(what, now, f"{first.found.removesuffix('.')}; {first.expected}")
    place = read_places(new, file).at([*answer.way]).place
    return new, Change(what, was if there.value == answer.value else "", now, place)


def in_words(way: Way) -> str:
    """A way as a person reads it.

    >>> in_words(("boxes", "desk", "holds", 0, "receptacle", "rating"))
    'rating of receptacle of desk'
    >>> in_words(("cables", "k1", "at_to", "free_length"))
    'free length of the end of k1'
    """
    section, *steps = way
    named = [str(each) for each in steps if isinstance(each, str) and each != "holds"]
    words = [_SPOKEN.get(each, each.replace("_", " ")) for each in named]
    return " of ".join(reversed(words)) or str(section)


def _as_written(root: Node, answer: Answer) -> Answer:
    """The answer by the way that the file has: one thing may stand for a list of one, or its name.

    `holds: receptacle` becomes `holds: {receptacle: {...}}` where something is said of it.
    """
    match answer.way:
        case ("boxes", str(), "holds", int(at), str(kind), *keys):
            held = list(answer.way[:3])
            if isinstance(root.at([*held]).value, list):
                held.append(at)
            if root.at([*held]).value != kind:
                return answer._replace(way=(*held, kind, *keys))
            value = answer.value
            for key in reversed(keys):
                value = {str(key): value}
            return answer._replace(way=(*held,), value={kind: value}, was=kind)
        case _:
            return answer


def _in_words(value: Plain) -> str:
    if isinstance(value, dict):
        return ", ".join(f"{key} {each}" for key, each in value.items())
    return str(value)
