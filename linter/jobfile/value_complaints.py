"""What is said of values: of another type, no word that is known, no quantity, too large."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from linter.jobfile.schema import UNKNOWN, read_format
from linter.jobfile.trade_words import nearest_value
from linter.text import Refusal, nearest
from linter.text.schema_words import (
    allowed_words,
    example,
    expected,
    kinds_of_value,
    meaning_and_example,
    quoted,
    types_of,
    write,
)
from linter.units import NotAQuantity

if TYPE_CHECKING:
    from linter.jobfile.faults import Complaint, Fault

_AS_SHOWN = "write it as in the example"
_MISFITS = {
    "minimum": ("{what} is less than {limit}", "correct the number"),
    "maximum": ("{what} is more than {limit}", "correct the number"),
    "minLength": ("Nothing is written between the quotation marks", "write some words"),
    "maxLength": ("{what} is longer than {limit} characters", "shorten it"),
    "minItems": ("{what} with fewer than {limit} stands here", _AS_SHOWN),
    "maxItems": ("{what} with more than {limit} stands here", "leave out what is too much"),
    "minProperties": ("{what} with nothing in it stands here", _AS_SHOWN),
    "maxProperties": (
        "{what} with more than {limit} key stands here",
        "write a list, with one key in each item: [{...}, {...}]",
    ),
    "uniqueItems": ("{what} that names one thing twice stands here", "leave one of the two out"),
    "const": ("{what} cannot stand here", _AS_SHOWN),
}


def wrong_type(fault: Fault) -> list[Complaint]:
    """A number for text, a list for a group of keys, and the like."""
    node, schema = fault.node, fault.schema
    if node.value is None:
        return nothing_written(fault)
    if "format" in schema and not node.items and not node.fields:
        return unreadable(fault)
    mend = _AS_SHOWN
    if "string" in types_of(schema) and re.search(schema.get("pattern", "."), node.text):
        mend = f'put it into quotation marks: "{node.text}"'
    found = f"{quoted(fault.value)} stands here, not {kinds_of_value(schema)}"
    return [fault.complaint(Refusal(node.place, found, expected(schema), mend))]


def nothing_written(fault: Fault) -> list[Complaint]:
    """A key with no value after it."""
    refusal = Refusal(
        fault.node.place,
        f"Nothing is written after {fault.name}" if fault.name else "Nothing is written here",
        expected(fault.schema),
        "write a value, or leave out the key",
    )
    return [fault.complaint(refusal)]


def unreadable(fault: Fault) -> list[Complaint]:
    """A text that is no length, sheath or day, in the words of the one who reads such texts."""
    schema, place = fault.schema, fault.node.place
    written = write(fault.value)
    try:
        read_format(schema["format"], written)
    except NotAQuantity as reason:
        expect = f"{reason.expected.partition(', such as')[0]}, such as {example(schema)}"
        near = reason.nearest or nearest(written, [UNKNOWN])
        refusal = Refusal(place, reason.found, expect, reason.mend, near)
    else:  # true or a number, which reads well as text
        mend = f'put it into quotation marks: "{fault.node.text}"'
        refusal = Refusal(place, f"{quoted(fault.value)} is no text", expected(schema), mend)
    return [fault.complaint(refusal)]


def not_a_word(fault: Fault) -> list[Complaint]:
    """A word, or a number, that is none of those which can stand here."""
    if fault.node.value is None:
        return nothing_written(fault)
    words, schema = allowed_words(fault.schema), fault.schema
    what = quoted(fault.value)
    refusal = Refusal(
        fault.node.place,
        f"{what} is not a word that can stand here" if words else f"{what} cannot stand here",
        expected(schema) if words else f"one of: {', '.join(map(write, schema['enum']))}",
        "write one of these" + (f', or "{UNKNOWN}"' if UNKNOWN in words else ""),
        nearest_value(write(fault.value), words),
    )
    return [fault.complaint(refusal)]


def misfit(fault: Fault) -> list[Complaint]:
    """A value of the right type that is too large, too long, or doubled."""
    return _misfit(fault, *_MISFITS[fault.keyword])


def wrong_form(fault: Fault) -> list[Complaint]:
    """A text that has not the form of a name, a role, a wire; or a word where a number stands."""
    if {"integer", "number"} & set(types_of(fault.schema)):
        return _misfit(fault, "{what} is no number", f"write a number, or {UNKNOWN}")
    if fault.value == UNKNOWN:
        return _misfit(fault, "{what} cannot stand here: names must be known", "write the name")
    near = nearest_value(write(fault.value), _alternatives_of(fault.limit))
    return _misfit(fault, "{what} does not fit here", _AS_SHOWN, near)


def _alternatives_of(pattern: object) -> list[str]:
    """The plain words that a pattern of alternatives allows: those of the roles of conductors."""
    inside = re.fullmatch(r"\^\((.*)\)\$", str(pattern))
    parts = inside[1].replace("[12]", "1").split("|") if inside else []
    return [re.sub(r"\(.*|\\S\+", "", each).strip() for each in parts]


def _misfit(fault: Fault, found: str, mend: str, near: tuple[str, ...] = ()) -> list[Complaint]:
    is_number = "integer" in types_of(fault.schema)
    refusal = Refusal(
        fault.node.place,
        found.format(what=quoted(fault.value), limit=fault.limit),
        meaning_and_example(fault.schema),
        mend,
        nearest(write(fault.value), [UNKNOWN]) if is_number else near,
    )
    return [fault.complaint(refusal)]
