"""What jsonschema complains of, as refusals in words of the trade.

A complaint becomes one refusal or several (each unknown key is one), and names the parts of the
file that cannot be used; what can be is judged further, so that all mistakes come out in one run.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, NamedTuple

from linter.jobfile.schema import UNKNOWN, read_format
from linter.jobfile.words import (
    allowed_words,
    as_name,
    example,
    expected,
    kinds_of_value,
    meaning_and_example,
    quoted,
    types_of,
    write,
)
from linter.text import Place, Refusal, nearest
from linter.units import NotAQuantity

if TYPE_CHECKING:
    from collections.abc import Callable

    from jsonschema import ValidationError

    from linter.jobfile.schema import Schema
    from linter.text.yaml_places import Node

Path = tuple[str | int, ...]

_MOST_LISTED = 12  # more words than that hide the one that was meant


class Complaint(NamedTuple):
    """A refusal, and the path of what is left out when the rest is judged further."""

    refusal: Refusal
    leave_out: Path


def complaints_of(error: ValidationError, root: Node) -> list[Complaint]:
    """The complaints that an error of jsonschema comes to."""
    if _is_about_key(error):
        return [_key(error, root)]
    say = _SAY.get(str(error.validator))
    return say(error, root) if say is not None else [_misfit(error, root)]


def _is_about_key(error: ValidationError) -> bool:
    return "propertyNames" in list(error.absolute_schema_path)[-2:-1]


def _path(error: ValidationError) -> Path:
    return tuple(error.absolute_path)


def _node(error: ValidationError, root: Node) -> Node:
    return root.at(list(error.absolute_path))


def _schema(error: ValidationError) -> Schema:
    return error.schema if isinstance(error.schema, dict) else {}


def _name_of(path: Path) -> str:
    """What a person calls the thing at a path: its key, or its position in a list."""
    named = [str(step) if isinstance(step, str) else f"number {step + 1}" for step in path]
    return " ".join(named[-2:]) if path and isinstance(path[-1], int) else "".join(named[-1:])


def _key(error: ValidationError, root: Node) -> Complaint:
    """A key that can be no name, or is none of the words allowed."""
    key, schema = str(error.instance), _schema(error)
    words = allowed_words(schema)
    place = _node(error, root).keys.get(key, _node(error, root).place)
    mend = "write one of these words" if words else "write it as in the example"
    if not words and re.search(schema["pattern"], as_name(key)):
        mend = f'write it so: "{as_name(key)}"'
    refusal = Refusal(
        place, f"{quoted(key)} cannot stand here", expected(schema), mend, nearest(key, words)
    )
    return Complaint(refusal, (*_path(error), key))


def _unknown_keys(error: ValidationError, root: Node) -> list[Complaint]:
    """One complaint for each key that the schema does not know."""
    node, schema = _node(error, root), _schema(error)
    known = schema.get("properties", {})
    return [
        Complaint(_unknown_key(error, node, key, known), (*_path(error), key))
        for key in node.fields
        if key not in known
    ]


def _unknown_key(error: ValidationError, node: Node, key: str, known: Schema) -> Refusal:
    near = nearest(key, known)
    expect = f"one of: {', '.join(known)}"
    if near and len(known) > _MOST_LISTED:
        expect = f"{near[0]} ({meaning_and_example(known[near[0]])}), or another key of the schema"
    return Refusal(
        node.keys.get(key, node.place),
        f"{quoted(key)} is not known in {_name_of(_path(error)) or 'a job file'}",
        expect,
        "correct the word, or put it where it belongs; words for people go into note",
        near,
    )


def _missing(error: ValidationError, root: Node) -> list[Complaint]:
    """The keys that must be there and are not, unless one written wrong is meant for them."""
    node, schema = _node(error, root), _schema(error)
    strange = [key for key in node.fields if key not in schema["properties"]]
    return [
        Complaint(
            Refusal(
                _place_of_thing(error, root),
                f'"{key}" is missing from {_name_of(_path(error)) or "the file"}',
                expected(schema["properties"][key]),
                f'write "{key}: {_short(example(schema["properties"][key]))}" or the like',
            ),
            _path(error),
        )
        for key in schema["required"]
        if key not in node.fields and not any(key in nearest(each, [key]) for each in strange)
    ]


def _short(text: str) -> str:
    return text or "…"


def _place_of_thing(error: ValidationError, root: Node) -> Place:
    """Where the key of the thing stands, or the thing itself if it has none."""
    path = list(error.absolute_path)
    if path and isinstance(path[-1], str):
        above = root.at(path[:-1])
        return above.keys.get(path[-1], above.place)
    return root.at(path).place


def _wrong_type(error: ValidationError, root: Node) -> list[Complaint]:
    node, schema = _node(error, root), _schema(error)
    if node.value is None:
        return [_nothing(error, node, schema)]
    if "format" in schema and not node.items and not node.fields:
        return [_unreadable(error, root)]
    mend = "write it as in the example"
    if "string" in types_of(schema) and re.search(schema.get("pattern", "."), node.text):
        mend = f'put it into quotation marks: "{node.text}"'
    what = quoted(error.instance)
    found = f"{what} stands here, not {kinds_of_value(schema)}"
    return [Complaint(Refusal(node.place, found, expected(schema), mend), _path(error))]


def _nothing(error: ValidationError, node: Node, schema: Schema) -> Complaint:
    name = _name_of(_path(error))
    mend = "write a value, or leave out the key"
    found = f"Nothing is written after {name}" if name else "Nothing is written here"
    return Complaint(Refusal(node.place, found, expected(schema), mend), _path(error))


def _unreadable(error: ValidationError, root: Node) -> Complaint:
    """A text that is no length, sheath or day, in the words of the one who reads such texts."""
    node, schema = _node(error, root), _schema(error)
    written = write(error.instance)
    try:
        read_format(schema["format"], written)
    except NotAQuantity as reason:
        expect, _, _ = reason.expected.partition(", such as")
        expect = f"{expect}, such as {example(schema)}"
        near = reason.nearest or nearest(written, ["unknown"])
        refusal = Refusal(node.place, reason.found, expect, reason.mend, near)
    else:  # a day, say, that was written as a number
        mend = f'put it into quotation marks: "{node.text}"'
        refusal = Refusal(node.place, f"{quoted(written)} is a number", expected(schema), mend)
    return Complaint(refusal, _path(error))


def _format(error: ValidationError, root: Node) -> list[Complaint]:
    return [_unreadable(error, root)]


def _not_a_word(error: ValidationError, root: Node) -> list[Complaint]:
    node, schema = _node(error, root), _schema(error)
    if node.value is None:
        return [_nothing(error, node, schema)]
    words = allowed_words(schema)
    allowed = expected(schema) if words else f"one of: {', '.join(map(write, schema['enum']))}"
    what = quoted(error.instance)
    refusal = Refusal(
        node.place,
        f"{what} is not a word that can stand here" if words else f"{what} cannot stand here",
        allowed,
        "write one of these" + (', or "unknown"' if "unknown" in words else ""),
        nearest(write(error.instance), words),
    )
    return [Complaint(refusal, _path(error))]


def _alternatives(error: ValidationError, root: Node) -> list[Complaint]:
    """What is wrong in the alternative that was meant; which one, its type or one key tells."""
    node = _node(error, root)
    branches = _schema(error)["anyOf"]
    meant = [each for each, branch in enumerate(branches) if _is_meant(node, error, branch)]
    if node.value is None or not meant:
        return [_none_meant(error, node, branches)]
    inside = [each for each in error.context or () if each.schema_path[0] == meant[0]]
    return [complaint for each in inside for complaint in complaints_of(each, root)]


def _is_meant(node: Node, error: ValidationError, branch: Schema) -> bool:
    """Whether the value is of the branch's type and has the key that tells the branch."""
    if not any(_IS_OF[kind](error.instance) for kind in types_of(branch)):
        return False
    telling = _constants(branch)
    if telling:
        return all(node.at([key]).value == part["const"] for key, part in telling)
    required = branch.get("required", [])
    return not node.fields or not required or any(key in node.fields for key in required)


_IS_OF: dict[str, Callable[[object], bool]] = {
    "object": lambda value: isinstance(value, dict),
    "array": lambda value: isinstance(value, list),
    "string": lambda value: isinstance(value, str),
    "boolean": lambda value: isinstance(value, bool),
    "integer": lambda value: isinstance(value, int) and not isinstance(value, bool),
}


def _none_meant(error: ValidationError, node: Node, branches: list[Schema]) -> Complaint:
    """No alternative is meant: one key has none of its words, is missing, or the type is wrong."""
    schema = _schema(error)
    tellers = [(key, part["const"]) for each in branches for key, part in _constants(each)]
    if node.fields and tellers:
        key = tellers[0][0]
        words = tuple(str(word) for _, word in tellers)
        at = node.fields.get(key, node)
        found = f"{quoted(at.plain())} is not known as {key}"
        if at is node:
            found = f'"{key}" is missing'
        near = nearest(write(at.plain()), words) if at is not node else ()
        mend = f'write "{key}: {words[0]}" or another of these'
        refusal = Refusal(at.place, found, f"one of: {', '.join(words)}", mend, near)
        return Complaint(refusal, _path(error))
    if node.value is None:
        return _nothing(error, node, schema)
    what = quoted(error.instance)
    kinds = kinds_of_value(schema)
    found = f"{what} stands here, not {kinds}"
    if node.fields:
        found = "These keys do not say what is meant here"
    refusal = Refusal(node.place, found, expected(schema), "write it as in the example")
    return Complaint(refusal, _path(error))


def _constants(branch: Schema) -> list[tuple[str, Schema]]:
    parts = branch.get("properties", {})
    return [(key, part) for key, part in parts.items() if "const" in part]


def _misfit(error: ValidationError, root: Node) -> Complaint:
    """A value of the right type that is too large, too long, of the wrong form, or doubled."""
    node, schema = _node(error, root), _schema(error)
    found, mend = _MISFITS[str(error.validator)]
    if error.validator == "pattern":
        found, mend = _wrong_form(error.instance, schema)
    near = nearest(write(error.instance), ["unknown"]) if "integer" in types_of(schema) else ()
    refusal = Refusal(
        node.place,
        found.format(what=quoted(error.instance), limit=error.validator_value),
        meaning_and_example(schema),
        mend,
        near,
    )
    return Complaint(refusal, _path(error))


def _wrong_form(value: object, schema: Schema) -> tuple[str, str]:
    """What is said of a text that has not the form of a name, a role, a wire, a number."""
    if "integer" in types_of(schema) or "number" in types_of(schema):
        return "{what} is no number", "write a number, or unknown"
    if value == UNKNOWN:
        return "{what} cannot stand here: names must be known", "write the name"
    return "{what} does not fit here", "write it as in the example"


_AS_SHOWN = "write it as in the example"
_MISFITS = {
    "pattern": ("", ""),
    "minimum": ("{what} is less than {limit}", "correct the number"),
    "maximum": ("{what} is more than {limit}", "correct the number"),
    "minLength": ("Nothing is written between the quotation marks", "write some words"),
    "maxLength": ("{what} is longer than {limit} characters", "shorten it"),
    "minItems": ("{what} with fewer than {limit} stands here", _AS_SHOWN),
    "maxItems": ("{what} with more than {limit} stands here", "leave out what is too much"),
    "minProperties": ("{what} with nothing in it stands here", _AS_SHOWN),
    "maxProperties": (
        "{what} with more than {limit} key stands here",
        "write a list, with one key in each item: [{{...}}, {{...}}]",
    ),
    "uniqueItems": ("{what} that names one thing twice stands here", "leave one of the two out"),
    "const": ("{what} cannot stand here", _AS_SHOWN),
}


def _both(error: ValidationError, root: Node) -> list[Complaint]:
    """Two keys of which a file has one at the most."""
    one, other = _schema(error)["not"]["required"]
    node = _node(error, root)
    refusal = Refusal(
        node.keys[other],
        f'"{other}" stands beside "{one}"',
        f'"{one}" where there is one, "{other}" where there are several',
        f'move what "{one}" says under "{other}", by a name of its own',
        also=(node.keys[one], f'"{one}" stands'),
    )
    return [Complaint(refusal, (*_path(error), other))]


_SAY: dict[str, Callable[[ValidationError, Node], list[Complaint]]] = {
    "additionalProperties": _unknown_keys,
    "required": _missing,
    "type": _wrong_type,
    "format": _format,
    "enum": _not_a_word,
    "anyOf": _alternatives,
    "not": _both,
}
