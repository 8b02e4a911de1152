"""The whole file judged by the schema: its complaints, and as much of it as can be used."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from linter.jobfile.schema import job_validator

if TYPE_CHECKING:
    from linter.jobfile.faults import Complaint, Path
    from linter.text import Refusal
    from linter.text.yaml_places import Node

_MOST_ROUNDS = 12


def judge(root: Node) -> tuple[list[Refusal], Node | None]:
    """The refusals of the schema, and what is left of the file once the faulty parts are left out.

    What is left has no fault but keys missing from its top; it is None where nothing can be used.
    Only the first round is reported: later complaints follow from what was left out.
    """
    complaints = _complaints(root)
    refusals = _one_for_each_mistake(complaints)
    left, faulty = root, _faulty(complaints)
    for _ in range(_MOST_ROUNDS):
        if not faulty:
            break
        left = _without(left, faulty)
        faulty = _faulty(_complaints(left))
    return refusals, left if left.fields and not faulty else None


def _faulty(complaints: list[Complaint]) -> set[Path]:
    return {each.leave_out for each in complaints if each.leave_out}


def _complaints(root: Node) -> list[Complaint]:
    plain: Any = root.plain()  # JSON, which the validator's types spell out
    errors = list(job_validator().iter_errors(plain))
    if not errors:
        return []
    from linter.jobfile.complaints import complaints_of  # noqa: PLC0415  not for a sound file

    return [complaint for error in errors for complaint in complaints_of(error, root)]


def _one_for_each_mistake(complaints: list[Complaint]) -> list[Refusal]:
    """One refusal for each place; of several keys missing at one place, one for each."""
    first: dict[object, Refusal] = {}
    for each in complaints:
        what = each.refusal.found if "is missing" in each.refusal.found else ""
        first.setdefault((each.refusal.place, what), each.refusal)
    return list(first.values())


def _without(node: Node, paths: set[Path]) -> Node:
    """The node without what stands at the paths."""
    here = {path[0] for path in paths if len(path) == 1}
    deeper: dict[str | int, set[Path]] = {}
    for path in paths:
        if len(path) > 1:
            deeper.setdefault(path[0], set()).add(path[1:])
    if node.fields:
        fields = {
            key: _without(each, deeper[key]) if key in deeper else each
            for key, each in node.fields.items()
            if key not in here
        }
        return node._replace(value=fields)
    items = [
        _without(each, deeper[at]) if at in deeper else each
        for at, each in enumerate(node.items)
        if at not in here
    ]
    return node._replace(value=items)
