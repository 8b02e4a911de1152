"""What a JSON schema has against a document, said in words of the trade.

The schema's own descriptions and examples are what is shown as expected, so a good schema gives
good messages. One mistake gives one refusal; a schema judged this way tells alternatives apart by a
key (`if` and `then`), never by trying them all.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.text.refusals import Refusal
from linter.text.schema_words import (
    allowed_words,
    example,
    kinds_of_value,
    meaning_and_example,
    quoted,
    write,
)
from linter.text.words import join_words, nearest

if TYPE_CHECKING:
    from collections.abc import Mapping

    from jsonschema.exceptions import ValidationError

    from linter.text.yaml_places import Node


def schema_refusals(node: Node, schema: Mapping[str, object]) -> list[Refusal]:
    """All that the schema has against the document, in file order; empty where it has nothing.

    >>> from linter.text.yaml_places import read_places
    >>> schema = {"properties": {"room": {"type": "string"}}, "additionalProperties": False}
    >>> print(schema_refusals(read_places("rom: hall", "studio.yaml"), schema)[0])
    studio.yaml:1:1  "rom" is not a key here.
        Expected room.
        Nearest: room.
        To mend: write one of the keys expected, or leave "rom" out.
    """
    from jsonschema import Draft202012Validator  # noqa: PLC0415  only who judges pays for it

    errors = list(Draft202012Validator(schema).iter_errors(node.plain()))
    errors.sort(key=lambda each: (len(each.absolute_path), str(each.validator)))
    refusals: list[Refusal] = []
    judged: set[tuple[tuple[str | int, ...], str]] = set()
    for error in errors:
        path = tuple(error.absolute_path)
        group = _GROUPS.get(str(error.validator), "value")
        if (path, group) not in judged:
            judged.add((path, group))
            refusals.extend(_say(error, node.at(list(path))))
    return sorted(refusals, key=lambda each: each.place)


_GROUPS = {"required": "missing", "additionalProperties": "keys", "propertyNames": "keys"}


def _say(error: ValidationError, node: Node) -> list[Refusal]:
    match str(error.validator):
        case "required":
            return [_missing(error, node)]
        case "additionalProperties":
            return _no_keys(error, node)
        case "propertyNames" | "pattern" if _is_key(error, node):
            return [_misnamed(error, node)]
        case "enum":
            return [_none_of(error, node)]
        case "minItems" | "minProperties" | "maxProperties" | "minLength":
            return [_too_few(error, node)]
        case _:
            return [_unlike(error, node)]


def _is_key(error: ValidationError, node: Node) -> bool:
    return isinstance(error.instance, str) and error.instance in node.keys


def _missing(error: ValidationError, node: Node) -> Refusal:
    schema = _map(error.schema)
    names = [str(name) for name in _list(schema.get("required")) if name not in node.fields]
    shown = join_words([f'"{name}"' for name in names])
    properties = _map(schema.get("properties"))
    parts = [f'"{name}: {_to_paste(_map(properties.get(name)))}"' for name in names]
    return Refusal(
        node.place,
        f"{shown} {'is' if len(names) == 1 else 'are'} missing here",
        meaning_and_example(_map(properties.get(names[0]))) if len(names) == 1 else "",
        f"add {join_words(parts)}",
    )


def _to_paste(wanted: Mapping[str, object]) -> str:
    """An example that is right wherever it is pasted; dots where the writer alone knows."""
    return example(wanted) if allowed_words(wanted) else "…"


def _no_keys(error: ValidationError, node: Node) -> list[Refusal]:
    known = list(_map(_map(error.schema).get("properties")))
    free = [name for name in known if name not in node.fields]
    return [
        Refusal(
            node.keys[key],
            f"{quoted(key)} is not a key here",
            join_words(known, "or"),
            f"write one of the keys expected, or leave {quoted(key)} out",
            nearest(key, free),
        )
        for key in node.fields
        if key not in known
    ]


def _misnamed(error: ValidationError, node: Node) -> Refusal:
    key = str(error.instance)
    expected = meaning_and_example(_map(error.schema)) or "a key in the form that is usual here"
    return Refusal(node.keys[key], f"{quoted(key)} is no name", expected, "write it in that form")


def _none_of(error: ValidationError, node: Node) -> Refusal:
    words = [write(each) for each in _list(error.validator_value)]
    return Refusal(
        node.place,
        _found(node),
        f"one of: {', '.join(words)}",
        "write one of these words",
        nearest(node.text, words),
    )


def _too_few(error: ValidationError, node: Node) -> Refusal:
    most = str(error.validator) == "maxProperties"
    empty = str(error.validator) == "minLength"
    little = "Nothing stands here" if empty else "Too little stands here"
    found = "Too much stands here together" if most else little
    mend = "write each in an entry of its own" if most else "write it in full, or leave it out"
    return Refusal(node.place, found, meaning_and_example(_map(error.schema)), mend)


def _unlike(error: ValidationError, node: Node) -> Refusal:
    schema = _map(error.schema)
    described = meaning_and_example(schema)
    if str(error.validator) == "type":
        kinds = kinds_of_value(schema)
        described = f"{kinds}: {described}" if described else kinds
    return Refusal(node.place, _found(node), described, "write it as expected")


def _found(node: Node) -> str:
    if node.is_nothing:
        return "Nothing stands here"
    shown = quoted(node.value if node.items or node.fields else node.text)
    return f"{shown} stands here"


def _map(value: object) -> Mapping[str, object]:
    return value if isinstance(value, dict) else {}


def _list(value: object) -> list[object]:
    return value if isinstance(value, list) else []
