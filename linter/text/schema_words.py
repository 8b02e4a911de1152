"""What a schema expects somewhere, said in words with an example, and what stands there instead."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from linter.text.words import join_words

Schema = Mapping[str, Any]

_LONGEST_SHOWN = 60


def expected(schema: Schema) -> str:
    """What goes after "Expected": the words allowed, or what is meant, with an example.

    >>> expected({"enum": ["yes", "no", True]})
    'one of: yes, no'
    >>> expected({"description": "The box.", "examples": ["attic-joint"]})
    'the box, such as attic-joint'
    """
    words = allowed_words(schema)
    if words:
        return f"one of: {', '.join(words)}"
    return meaning_and_example(schema)


def meaning_and_example(schema: Schema) -> str:
    """What the schema says a value means, with the first example."""
    said = str(schema.get("description", "")).partition(". ")[0].rstrip(".")
    meaning = said[:1].lower() + said[1:]
    return f"{meaning}, such as {example(schema)}" if example(schema) else meaning


def example(schema: Schema) -> str:
    """The first example of the schema, as a file writes it; empty where it has none."""
    examples = schema.get("examples") or [""]
    return write(examples[0])


def allowed_words(schema: Schema) -> tuple[str, ...]:
    """The texts that the schema allows, where it lists them; the shortest way to say each."""
    return tuple(each for each in schema.get("enum", ()) if isinstance(each, str))


def write(value: object) -> str:
    """A plain value as a file writes it within a line.

    >>> write({"black": "hot of 3", "holes": [1, True]})
    '{black: hot of 3, holes: [1, true]}'
    """
    if isinstance(value, dict):
        return "{" + ", ".join(f"{key}: {write(each)}" for key, each in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(map(write, value)) + "]"
    if isinstance(value, bool):
        return "true" if value else "false"
    return "" if value is None else str(value)


def quoted(value: object) -> str:
    """A value of the file as it is quoted in a sentence, shortened if long."""
    if isinstance(value, dict):
        return "A group of keys"
    if isinstance(value, list):
        return "A list"
    text = write(value)
    return f'"{text}"' if len(text) <= _LONGEST_SHOWN else f'"{text[:_LONGEST_SHOWN]}…"'


def as_name(text: str) -> str:
    """The text as a name, letters, digits and hyphens; empty if nothing of it can be one.

    >>> as_name("slip light."), as_name("2 hoists")
    ('slip-light', 'x2-hoists')
    """
    parts = "".join(each if each.isalnum() else " " for each in text).split()
    name = "-".join(parts)[:_LONGEST_SHOWN]
    if not name or name in ("unknown", "none", "yes", "no"):
        return ""
    return name if not name[0].isdigit() else f"x{name}"


def kinds_of_value(schema: Schema) -> str:
    """The kinds of value a schema allows, in words: "text or a list"."""
    names = {"object": "keys and values", "array": "a list", "string": "text"}
    names |= {"integer": "a whole number", "number": "a number", "boolean": "yes or no"}
    types = [type_ for each in schema.get("anyOf", [schema]) for type_ in types_of(each)]
    return join_words(list(dict.fromkeys(names[each] for each in types)), "or")


def types_of(schema: Schema) -> tuple[str, ...]:
    """The types a schema allows, by their names in JSON Schema; none where it states none."""
    stated = schema.get("type", ())
    return (stated,) if isinstance(stated, str) else tuple(stated)
