"""What is said of keys: names that cannot be, keys not known, missing, or one too many."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from linter.jobfile.trade_words import nearest_key, nearest_value
from linter.text import Refusal, nearest
from linter.text.schema_words import (
    allowed_words,
    as_name,
    example,
    expected,
    meaning_and_example,
    quoted,
)

if TYPE_CHECKING:
    from linter.jobfile.faults import Complaint, Fault

_MOST_LISTED = 12  # more words than that hide the one that was meant


def wrong_key(fault: Fault) -> list[Complaint]:
    """A key that can be no name, or is none of the words allowed."""
    key, words = str(fault.value), allowed_words(fault.schema)
    mend = "write one of these words" if words else "write it as in the example"
    if not words and re.search(fault.schema["pattern"], as_name(key)):
        mend = f'write it so: "{as_name(key)}"'
    refusal = Refusal(
        fault.node.keys.get(key, fault.node.place),
        f"{quoted(key)} cannot stand here",
        expected(fault.schema),
        mend,
        nearest_value(key, words),
    )
    return [fault.complaint(refusal, key)]


def unknown_keys(fault: Fault) -> list[Complaint]:
    """One complaint for each key that the schema does not know."""
    strange = [key for key in fault.node.fields if key not in fault.schema["properties"]]
    return [fault.complaint(_unknown_key(fault, key), key) for key in strange]


def _unknown_key(fault: Fault, key: str) -> Refusal:
    known = fault.schema["properties"]
    near = nearest_key(key, known)
    expect = f"one of: {', '.join(known)}"
    if near and len(known) > _MOST_LISTED:
        expect = f"{near[0]} ({meaning_and_example(known[near[0]])}), or another key of the schema"
    return Refusal(
        fault.node.keys.get(key, fault.node.place),
        f"{quoted(key)} is not known in {fault.name or 'a job file'}",
        expect,
        "correct the word, or put it where it belongs; words for people go into note",
        near,
    )


def missing_keys(fault: Fault) -> list[Complaint]:
    """The keys that must be there and are not, unless one written wrong is meant for them."""
    fields, known = fault.node.fields, fault.schema["properties"]
    strange = [key for key in fields if key not in known]
    return [
        fault.complaint(_missing_key(fault, key))
        for key in fault.schema["required"]
        if key not in fields and not any(nearest(each, [key]) for each in strange)
    ]


def _missing_key(fault: Fault, key: str) -> Refusal:
    part = fault.schema["properties"][key]
    return Refusal(
        fault.place_of_thing,
        f'"{key}" is missing from {fault.name or "the file"}',
        expected(part),
        f'write "{key}: {example(part)}" or the like',
    )


def both_keys(fault: Fault) -> list[Complaint]:
    """Two keys of which a file has one at the most."""
    one, other = fault.schema["not"]["required"]
    keys = fault.node.keys
    refusal = Refusal(
        keys[other],
        f'"{other}" stands beside "{one}"',
        f'"{one}" where there is one, "{other}" where there are several',
        f'move what "{one}" says under "{other}", by a name of its own',
        also=(keys[one], f'"{one}" stands'),
    )
    return [fault.complaint(refusal, other)]
