"""Worksheets as JSON: the same words and values as the report, and values in base units."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

from linter.reports.sayings import CAUTION, CLOSING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.audit.worksheets import Entered, Missing, Sheet

FORMAT = 1
Data = dict[str, object]


def worksheets_json(job: str, pack: str, sheets: Sequence[Sheet]) -> str:
    """All worksheets as one document; what cannot be told is null and says what is missing."""
    document: Data = {
        "precover_loads": FORMAT,
        "job": job,
        "pack": pack,
        "caution": CAUTION,
        "closing": CLOSING,
        "worksheets": [_sheet(each) for each in sheets],
    }
    return json.dumps(document, indent=2) + "\n"


def _sheet(sheet: Sheet) -> Data:
    return {
        "worksheet": sheet.name,
        "title": sheet.title,
        "kind": sheet.kind,
        "thing": sheet.ref,
        "reference": sheet.reference._asdict(),
        "may_be_used_if_known": [_missing(each) for each in sheet.doubt],
        "lines": [_line(each) for each in sheet.lines],
    }


def _line(entered: Entered) -> Data:
    steps = [each for each in entered.work if each.brief]
    return {
        "line": entered.said,
        "steps": [{"name": s.name, "reckoned": s.brief, "result": s.result} for s in steps],
        "value": entered.value,
        "written": entered.written,
        "adds": entered.adds,
        "running_total": entered.running or None,
        "result": entered.result,
        "reference": entered.reference._asdict(),
        "missing": [_missing(each) for each in entered.missing],
    }


def _missing(missing: Missing) -> Data:
    return {**missing._asdict(), "things": list(missing.things)}
