"""Additions, amendments and withdrawals: what the layers come to, and from which line."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml

from linter.packs.assemble import assemble
from linter.packs.describe import describe, sentence_text, steps_of
from linter.packs.model import Clause, History, Origin, Pack, Sentence, Worksheet
from tests.cases.small_packs import BASE, GUILD, texts_of, with_guild

TABLE = Path(__file__).parent / "layers" / "amendments.yaml"


def cases() -> list[Any]:
    table = yaml.safe_load(TABLE.read_text(encoding="utf-8"))
    return [pytest.param(case, id=case["case"]) for case in table]


@pytest.mark.parametrize("case", cases())
def test_what_a_layer_comes_to(case: dict[str, Any]) -> None:
    files = with_guild(case["layer"], case.get("stands on", BASE))
    pack = assemble(texts_of(files), BASE, [GUILD])
    expected = case["holds"]
    if "gone" in expected:
        assert is_gone(pack, expected["gone"])
        return
    shown, clause, origin = found(pack, expected)
    assert shown == expected["shows"]
    assert (
        expected.get("clause", f"{clause.document} {clause.id}") == f"{clause.document} {clause.id}"
    )
    assert place(origin) == expected["from"]


def found(pack: Pack, expected: dict[str, Any]) -> tuple[str, Clause, Origin]:
    """What the pack shows for what a case names, its clause, and where it came from."""
    if "limit" in expected:
        limit = pack.limits[expected["limit"]]
        return limit.written, limit.history.cited[0], limit.history.origin_of("value")
    if "table" in expected:
        table = pack.tables[expected["table"]]
        rows = "; ".join(", ".join(row.written) for row in table.rows)
        changed = [row for row in table.rows if row.origin.layer == GUILD] or table.rows
        changed = [row for row in changed if row.written[0] == expected.get("row", row.written[0])]
        return rows, changed[0].clause, changed[0].origin
    if "measure" in expected:
        measure = pack.measures["box", expected["measure"]]
        steps = "; ".join(f"{name}: {text}" for name, text in steps_of(measure))
        return steps, measure.history.cited[0], measure.history.origin_of("steps")
    if "worksheet" in expected:
        sheet = next(each for each in pack.worksheets if each.name == expected["worksheet"])
        shown = {"title": sheet.title, "lines": "; ".join(map(sentence_text, said(sheet)))}
        origin = origin_in(sheet.history, expected)
        return shown[expected["field"]], sheet.history.cited[0], origin
    if "item" in expected:
        item = pack.item(expected["item"])
        shown = {"ask": sentence_text(item.ask), "until stage": item.until_stage}
        wanted = expected["field"]
        return shown[wanted], item.clause, origin_in(item.history, expected)
    rule = pack.rule(expected["rule"])
    return field(pack, rule.name, expected["field"]), rule.clause, origin_in(rule.history, expected)


def said(sheet: Worksheet) -> Iterator[Sentence]:
    yield from (line.said for line in sheet.lines)


def field(pack: Pack, name: str, wanted: str) -> str:
    laid_open = describe(pack, name)
    return {
        "weight": laid_open.rule.weight,
        "need": laid_open.need,
        "where": laid_open.where,
        "say": sentence_text(laid_open.rule.say),
        "from stage": laid_open.rule.from_stage,
        "subject": laid_open.rule.subject,
    }[wanted]


def origin_in(history: History, expected: dict[str, Any]) -> Origin:
    return history.origin_of(expected["field"])


def place(origin: Origin) -> str:
    return f"{origin.layer} {origin.place.file.rpartition('/')[2]}:{origin.place.line}"


def is_gone(pack: Pack, wanted: str) -> bool:
    what, name = wanted.split()
    there = {
        "rule": {rule.name for rule in pack.rules},
        "limit": set(pack.limits),
        "table": set(pack.tables),
        "measure": {name for _, name in pack.measures},
        "item": {item.name for item in pack.items},
        "worksheet": {sheet.name for sheet in pack.worksheets},
    }[what]
    kept = [each for each in pack.withdrawn if (each.what, each.name) == (what, name)]
    return name not in there and len(kept) == 1 and bool(kept[0].amendment.reason)
