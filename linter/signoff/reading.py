"""The text of a sign-off file, read or refused with all its mistakes."""

from __future__ import annotations

import datetime
import json
from typing import TYPE_CHECKING, Any

from linter.resources import schemas_dir
from linter.signoff.said import Entry, Item, Saying, SignOffs
from linter.text import Refusal, Refused
from linter.text.schema_refusals import schema_refusals
from linter.text.yaml_places import read_places

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.text.yaml_places import Node

FORMAT = 1


def read_sign_offs(text: str, name: str, job: str) -> SignOffs:
    """What the text of the sign-off file `name` says of the job called `job`.

    Raises `Refused` where it cannot be read, is not as schemas/signoff.schema.json has it, states a
    day that is none, or belongs to a job of another name.
    """
    root = read_places(text, name)
    refusals = schema_refusals(root, _schema())
    if not refusals:
        refusals = [*_of_another_job(root, job), *_no_days(root)]
    if refusals:
        raise Refused(refusals)
    at = root.fields["job"]
    return SignOffs(at.text, at.place, tuple(_entries(root)))


def _schema() -> dict[str, Any]:
    schema: dict[str, Any] = json.loads(
        (schemas_dir() / "signoff.schema.json").read_text(encoding="utf-8")
    )
    return schema


def _of_another_job(root: Node, job: str) -> Iterator[Refusal]:
    stated = root.fields["job"]
    if stated.text != job:
        yield Refusal(
            stated.place,
            f'This sign-off is of the job "{stated.text}", and the job beside it is "{job}"',
            f'the name of the job, "{job}"',
            "put it beside its own job; or, if the job was only renamed, write the new name here",
        )


def _no_days(root: Node) -> Iterator[Refusal]:
    for act in root.fields["signed"].items:
        day = act.fields["on"]
        try:
            datetime.date.fromisoformat(day.text)
        except ValueError:
            yield Refusal(
                day.place,
                f'"{day.text}" is not a day',
                "a day as year-month-day, such as 2026-03-14",
                "write the day on which it was said",
            )


def _entries(root: Node) -> Iterator[Entry]:
    for act in root.fields["signed"].items:
        told = {key: node.text for key, node in act.fields.items() if key != "of"}
        saying = Saying(**told)
        for each in act.fields["of"].items:
            values = {key: node.text for key, node in each.fields.items()}
            kind, _, ref = values.pop("thing").partition(" ")
            yield Entry(Item(kind=kind, ref=ref, **values), saying, each.place)
