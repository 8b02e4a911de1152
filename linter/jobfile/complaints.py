"""What jsonschema complains of, as refusals in words of the trade.

A complaint becomes one refusal or several (each unknown key is one), and names the parts of the
file that cannot be used; what can be is judged further, so that all mistakes come out in one run.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.jobfile.faults import Complaint, Fault
from linter.jobfile.key_complaints import both_keys, missing_keys, unknown_keys, wrong_key
from linter.jobfile.trade_words import nearest_value
from linter.jobfile.value_complaints import (
    misfit,
    not_a_word,
    nothing_written,
    unreadable,
    wrong_form,
    wrong_type,
)
from linter.text import Refusal
from linter.text.schema_words import expected, kinds_of_value, quoted, types_of, write

if TYPE_CHECKING:
    from collections.abc import Callable

    from jsonschema import ValidationError

    from linter.jobfile.schema import Schema
    from linter.text.yaml_places import Node


def complaints_of(error: ValidationError, root: Node) -> list[Complaint]:
    """The complaints that an error of jsonschema comes to."""
    return _complaints(_fault(error, root))


def _fault(error: ValidationError, root: Node, above: Fault | None = None) -> Fault:
    fault = Fault(
        keyword=str(error.validator),
        limit=error.validator_value,
        value=error.instance,
        schema=error.schema if isinstance(error.schema, dict) else {},
        path=tuple(error.absolute_path),
        root=root,
        of_key="propertyNames" in list(error.absolute_schema_path)[-2:-1],
    )
    if above is not None and above.path == fault.path and not fault.of_key:
        fault = fault._replace(schema={**_told(above), **fault.schema})
    within = [(int(each.schema_path[0]), _fault(each, root, fault)) for each in error.context or ()]
    return fault._replace(within=within)


def _told(fault: Fault) -> Schema:
    """What the schema tells of all alternatives, with the examples of the value's own type."""
    examples = [each for each in fault.schema["examples"] if type(each) is type(fault.value)]
    return {"description": fault.schema["description"], "examples": examples}


def _complaints(fault: Fault) -> list[Complaint]:
    return wrong_key(fault) if fault.of_key else _SAY.get(fault.keyword, misfit)(fault)


def _alternatives(fault: Fault) -> list[Complaint]:
    """What is wrong in the alternative that was meant; which one, its type or one key tells."""
    branches = fault.schema["anyOf"]
    meant = [each for each, branch in enumerate(branches) if _is_meant(fault, branch)]
    if fault.node.value is None:
        return nothing_written(fault)
    if not meant:
        return _none_meant(fault, branches)
    inside = [each for branch, each in fault.within if branch == meant[0]]
    return [complaint for each in inside for complaint in _complaints(each)]


def _is_meant(fault: Fault, branch: Schema) -> bool:
    """Whether the value is of the branch's type and has the key that tells the branch."""
    if not any(_IS_OF[kind](fault.value) for kind in types_of(branch)):
        return False
    fields, telling = fault.node.fields, _constants(branch)
    if telling:
        return all(key in fields and fields[key].value == word for key, word in telling)
    required = branch.get("required", [])
    return not fields or not required or any(key in fields for key in required)


_IS_OF: dict[str, Callable[[object], bool]] = {
    "object": lambda value: isinstance(value, dict),
    "array": lambda value: isinstance(value, list),
    "string": lambda value: isinstance(value, str),
    "boolean": lambda value: isinstance(value, bool),
}


def _none_meant(fault: Fault, branches: list[Schema]) -> list[Complaint]:
    """No alternative is meant: one key has none of its words, is missing, or the type is wrong."""
    told_by = [each for branch in branches for each in _constants(branch)]
    if fault.node.fields and told_by:
        return _not_told(fault, told_by[0][0], [str(word) for _, word in told_by])
    found = f"{quoted(fault.value)} stands here, not {kinds_of_value(fault.schema)}"
    if fault.node.fields:
        found = "These keys do not say what is meant here"
    mend = "write it as in the example"
    return [fault.complaint(Refusal(fault.node.place, found, expected(fault.schema), mend))]


def _not_told(fault: Fault, key: str, words: list[str]) -> list[Complaint]:
    """The key that tells the alternatives apart is missing, or has another word."""
    stated = fault.node.fields.get(key)
    refusal = Refusal(
        stated.place if stated else fault.node.place,
        f"{quoted(stated.plain())} is not known as {key}" if stated else f'"{key}" is missing',
        f"one of: {', '.join(words)}",
        f'write "{key}: {words[0]}" or another of these',
        nearest_value(write(stated.plain()), words) if stated else (),
    )
    return [fault.complaint(refusal)]


def _constants(branch: Schema) -> list[tuple[str, object]]:
    parts = branch.get("properties", {})
    return [(key, part["const"]) for key, part in parts.items() if "const" in part]


_SAY: dict[str, Callable[[Fault], list[Complaint]]] = {
    "additionalProperties": unknown_keys,
    "required": missing_keys,
    "type": wrong_type,
    "format": unreadable,
    "enum": not_a_word,
    "pattern": wrong_form,
    "anyOf": _alternatives,
    "not": both_keys,
}
