"""The table of what answers each item that agencies ask: from the data in coverage/ and packs."""

from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

import yaml

from linter.packs.assemble import assemble
from linter.packs.model import Pack
from tests.cases.shipped_packs import shipped_packs

HERE = Path(__file__).parent / "coverage"
EDITIONS = ("us-nec-2017", "us-nec-2020", "us-nec-2023", "us-nec-2026")
MAIN = "us-nec-2023"
BY_RULE, BY_LOOK, OUT, NOT_YET = (
    "by a rule",
    "by the walk-through",
    "not ours, with the reason",
    "not yet",
)
_LISTS = {"rules": "rule", "items": "item", "measures": "measure"}
_HEAD = """\
# What public checklists ask, and what answers it

141 items that public agencies ask to be checked in dwelling wiring, merged by meaning from 41 of
their checklists; which lists name an item, and with which clauses, stands in
`tests/outside/coverage/matrix.yaml`. Each is answered by rules, by items of the walk-through (in
*italics*), or by measures that the worksheets show; or the table says why it is not ours. A name
that not every edition has is followed by those that have it. This page is generated.
"""


class Answer(NamedTuple):
    """An item of the matrix with what answers it; `names` by what they are."""

    item: str
    group: str
    sentence: str
    decidable: str
    names: Mapping[str, tuple[str, ...]]
    why: str
    not_yet: bool


@cache
def answers() -> tuple[Answer, ...]:
    """The items of the matrix in order, each with its line of the answers, or with none."""
    matrix = yaml.safe_load((HERE / "matrix.yaml").read_text(encoding="utf-8"))
    lines = _lines()
    return tuple(
        _answer(group["group"], item, lines.get(item["item"], {}))
        for group in matrix
        for item in group["items"]
    )


def strays() -> set[str]:
    """Lines of the answers that are of no item of the matrix."""
    return set(_lines()) - {each.item for each in answers()}


@cache
def edition(name: str) -> Pack:
    """The pack of an edition."""
    return assemble(shipped_packs(), name)


def names_in(pack: Pack) -> dict[str, set[str]]:
    """What a pack has, by what it is: rules, items of the walk-through, measures as KIND.NAME."""
    return {
        "rule": {rule.name for rule in pack.rules},
        "item": {item.name for item in pack.items},
        "measure": {".".join(key) for key in pack.measures},
    }


def state(answer: Answer, pack: Pack) -> str:
    """How an item is answered in a pack."""
    there = names_in(pack)
    if answer.not_yet:
        return NOT_YET
    if any(name in there[what] for what in ("rule", "measure") for name in answer.names[what]):
        return BY_RULE
    if any(name in there["item"] for name in answer.names["item"]):
        return BY_LOOK
    return OUT if answer.why else NOT_YET


def table() -> str:
    """The whole page."""
    return "\n".join([_HEAD, *_tally(), *_groups()]) + "\n"


def _lines() -> dict[str, dict[str, Any]]:
    lines: dict[str, dict[str, Any]] = yaml.safe_load(
        (HERE / "answers.yaml").read_text(encoding="utf-8")
    )
    return lines


def _answer(group: str, item: Mapping[str, Any], line: Mapping[str, Any]) -> Answer:
    names = {what: tuple(line.get(key, ())) for key, what in _LISTS.items()}
    decidable = "yes" if item["decidable"] is True else str(item["decidable"])
    why = str(line.get("why", ""))
    return Answer(
        item["item"], group, item["sentence"], decidable, names, why, bool(line.get("not yet"))
    )


def _tally() -> Iterator[str]:
    states = (BY_RULE, BY_LOOK, OUT, NOT_YET)
    yield f"| answered | {' | '.join(EDITIONS)} |"
    yield f"| --- | {' | '.join('---' for _ in EDITIONS)} |"
    for each in states:
        numbers = [
            str(sum(state(answer, edition(name)) == each for answer in answers()))
            for name in EDITIONS
        ]
        yield f"| {each} | {' | '.join(numbers)} |"


def _groups() -> Iterator[str]:
    group = ""
    for answer in answers():
        if answer.group != group:
            group = answer.group
            yield f"\n## {group}\n\n| asked | decidable | answered by |\n| --- | --- | --- |"
        yield f"| {answer.item}: {answer.sentence} | {answer.decidable} | {_said(answer)} |"


def _said(answer: Answer) -> str:
    named = [
        f"{_styled(what, name)}{_only_in(what, name)}"
        for what in _LISTS.values()
        for name in answer.names[what]
    ]
    parts = [", ".join(named), answer.why, NOT_YET if answer.not_yet else ""]
    return ". ".join(part.rstrip(".") for part in parts if part)


def _styled(what: str, name: str) -> str:
    return f"*{name}*" if what == "item" else f"`{name}`"


def _only_in(what: str, name: str) -> str:
    have = [each for each in EDITIONS if name in names_in(edition(each))[what]]
    if len(have) == len(EDITIONS):
        return ""
    return f" ({', '.join(each.rpartition('-')[2] for each in have)})"
