"""What comes back from a field sheet, read under its published schema."""

from __future__ import annotations

import json
from functools import cache
from typing import TYPE_CHECKING, NamedTuple, cast

from linter.jobfile.bringing_in import Answer
from linter.resources import schemas_dir
from linter.text import Refusal, Refused
from linter.text.schema_refusals import schema_refusals
from linter.text.yaml_places import read_places

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.text.yaml_edits import Plain, Step
    from linter.text.yaml_places import Node


class Sheet(NamedTuple):
    """The name of the job that a sheet was made for, and its answers."""

    job: str
    answers: tuple[Answer, ...]


def read_sheet(text: str, file: str) -> Sheet:
    """The sheet that a text holds; raises `Refused` where it is none.

    >>> answers = '[{"way": ["boxes", "bench", "depth"], "value": "3 in"}]'
    >>> text = f'{{"precover_field_sheet": 1, "job": "Shed", "answers": {answers}}}'
    >>> read_sheet(text, "shed.json").answers[0].value
    '3 in'
    """
    root = read_places(text, file)
    refusals = schema_refusals(root, _schema()) or [
        _says_nothing(each)
        for each in root.fields["answers"].items
        if ("value" in each.fields) == ("item" in each.fields)
    ]
    if refusals:
        raise Refused(refusals)
    answers = tuple(map(_answer, root.fields["answers"].items))
    return Sheet(str(root.fields["job"].value), answers)


def _answer(node: Node) -> Answer:
    # The schema lets nothing else through.
    way = tuple(cast("Step", each.value) for each in node.fields["way"].items)
    is_item = "item" in node.fields
    value = cast("Plain", node.fields["item" if is_item else "value"].plain())
    was = node.fields["was"].text if "was" in node.fields else ""
    return Answer(way, value, was, is_item)


def _says_nothing(node: Node) -> Refusal:
    return Refusal(
        node.place,
        "This answer says nothing, or two things",
        "a value, or an item of a list",
        'write one of "value" and "item"',
    )


@cache
def _schema() -> Mapping[str, object]:
    text = (schemas_dir() / "field-sheet.schema.json").read_text(encoding="utf-8")
    schema: Mapping[str, object] = json.loads(text)
    return schema
