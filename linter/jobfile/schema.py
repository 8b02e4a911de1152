"""The published schema of job files, made ready once to judge many of them.

References are resolved beforehand (the schema does not refer to itself), which halves the time.
Kinds of text that a pattern cannot tell (lengths, sheaths, days) are formats of our own; each
reads the text as the models do, so that both give the same answer.
"""

from __future__ import annotations

import datetime
import json
from functools import cache, partial
from typing import TYPE_CHECKING, Any

from linter.job.sheaths import read_sheath
from linter.job.values import DIMENSIONS_OF_FORMATS, read_measure, read_opening
from linter.resources import schemas_dir
from linter.units import NotAQuantity

if TYPE_CHECKING:
    from collections.abc import Callable

    from jsonschema.protocols import Validator

Schema = dict[str, Any]

UNKNOWN = "unknown"
# Their contents are values of the job file, not schemas.
_PLAIN = frozenset({"examples", "enum", "const", "required"})


def read_format(name: str, text: str) -> object:
    """What `text` says, read as a text of the format `name`; raises `NotAQuantity`."""
    return readers()[name](text)


@cache
def readers() -> dict[str, Callable[[str], object]]:
    """The reader of each format, by its name."""
    return {
        **{name: partial(read_measure, dimension=of) for name, of in DIMENSIONS_OF_FORMATS.items()},
        "opening": read_opening,
        "sheath": read_sheath,
        "day": _read_day,
    }


@cache
def job_validator() -> Validator:
    """The schema of job files, with its references resolved, as something that judges."""
    from jsonschema import FormatChecker  # noqa: PLC0415  38 ms, only here

    from linter.jobfile.validator import validator_of  # noqa: PLC0415

    formats = FormatChecker(formats=())
    for name, read in readers().items():
        formats.checks(name, raises=NotAQuantity)(partial(_fits, read))
    return validator_of(job_schema(), formats)


@cache
def job_schema() -> Schema:
    """The published schema, each reference replaced by what it refers to.

    >>> job_schema()["properties"]["panel"]["properties"]["main"]["examples"]
    ['100 A']
    """
    published = json.loads((schemas_dir() / "job.schema.json").read_text(encoding="utf-8"))
    resolved: Schema = _resolved(published, published, {})
    return resolved


def _resolved(part: Any, published: Schema, known: dict[str, Schema]) -> Any:
    """A part without references; `known` has what they came to: it is resolved once, and shared."""
    if isinstance(part, list):
        return [_resolved(each, published, known) for each in part]
    if not isinstance(part, dict):
        return part
    whole = {
        key: value if key in _PLAIN else _resolved(value, published, known)
        for key, value in part.items()
        if key not in ("$defs", "$ref")
    }
    if "$ref" not in part:
        return whole
    to = part["$ref"]
    if to not in known:
        known[to] = _resolved(_referred(to, published), published, known)
    return {**known[to], **whole} if whole else known[to]


def _referred(reference: str, published: Schema) -> Any:
    found: Any = published
    for step in reference.removeprefix("#/").split("/"):
        found = found[int(step)] if isinstance(found, list) else found[step]
    return found


def _fits(read: Callable[[str], object], value: object) -> bool:
    if isinstance(value, str) and value != UNKNOWN:
        read(value)
    return True


def _read_day(text: str) -> datetime.date:
    figures = [len(each) for each in text.split("-") if each.isascii() and each.isdigit()]
    try:
        return datetime.date.fromisoformat(text if figures == [4, 2, 2] else "")
    except ValueError:
        raise NotAQuantity(
            f'"{text}" is not a day.',
            "a day as year-month-day, such as 2026-03-14",
            "write four figures of the year, two of the month, two of the day",
        ) from None
