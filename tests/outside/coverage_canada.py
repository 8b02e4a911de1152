"""The table of what answers each item that agencies ask in Canada: from the data in coverage/."""

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

import yaml

from linter.packs.model import Pack
from tests.outside.coverage_table import (
    BY_LOOK,
    BY_RULE,
    HERE,
    NOT_YET,
    OUT,
    Answer,
    answers,
    edition,
    names_in,
    state,
)

CANADIAN = ("ca-cec-2018", "ca-cec-2021", "ca-cec-2024")
CANADIAN_MAIN = "ca-cec-2021"
_LISTS = {"rules": "rule", "items": "item", "measures": "measure"}
_HEAD = """\
# What public checklists ask, and what answers it in Canada

The items are those of [COVERAGE.md](COVERAGE.md), most of them from lists of agencies in the
United States; what Canada does not ask, or asks otherwise, says so. Items of the walk-through
are in *italics*. The 2024 edition holds most of its rules to advice, since its text was not
seen. This page is generated.
"""


@cache
def canadian_answers() -> tuple[Answer, ...]:
    """The items of the matrix, each with what the Canadian packs have for it."""
    lines = canadian_lines()
    return tuple(_answer(each, lines.get(each.item, {})) for each in answers())


@cache
def canadian_lines() -> dict[str, dict[str, Any]]:
    """What the page on Canada says, by item."""
    lines: dict[str, dict[str, Any]] = yaml.safe_load(
        (HERE / "canada.yaml").read_text(encoding="utf-8")
    )
    return lines


def canadian_table() -> str:
    """The whole page."""
    return "\n".join([_HEAD, *_tally(), *_groups()]) + "\n"


def _answer(here: Answer, line: Mapping[str, Any]) -> Answer:
    there = names_in(edition(CANADIAN[-1]))
    names = {
        what: tuple(
            dict.fromkeys(
                [*line.get(key, ()), *(each for each in here.names[what] if each in there[what])]
            )
        )
        for key, what in _LISTS.items()
    }
    why, not_yet = str(line.get("why", "")), bool(line.get("not yet"))
    return here._replace(names=names, why=why, not_yet=not_yet)


def _tally() -> Iterator[str]:
    yield f"| answered | {' | '.join(CANADIAN)} |"
    yield f"| --- | {' | '.join('---' for _ in CANADIAN)} |"
    for each in (BY_RULE, BY_LOOK, OUT, NOT_YET):
        numbers = [str(_count(each, edition(name))) for name in CANADIAN]
        yield f"| {each} | {' | '.join(numbers)} |"


def _count(wanted: str, pack: Pack) -> int:
    return sum(state(answer, pack) == wanted for answer in canadian_answers())


def _groups() -> Iterator[str]:
    group = ""
    for answer in canadian_answers():
        if answer.group != group:
            group = answer.group
            yield f"\n## {group}\n\n| asked | decidable | answered by |\n| --- | --- | --- |"
        yield f"| {answer.item}: {answer.sentence} | {answer.decidable} | {_said(answer)} |"


def _said(answer: Answer) -> str:
    named = [
        f"*{name}*" if what == "item" else f"`{name}`"
        for what in _LISTS.values()
        for name in answer.names[what]
    ]
    parts = [", ".join(named), answer.why, NOT_YET if answer.not_yet else ""]
    return ". ".join(part.rstrip(".") for part in parts if part)
