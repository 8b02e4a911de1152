"""Worksheets as lines: what each line is, its arithmetic, its clause, the running total.

Results of several worksheets of one thing stand side by side; what is missing says how to learn it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.audit.worksheets import said_missing
from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import CAUTION, CLOSING, KNOWN_IN_WORDS, cited
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from linter.audit.findings import Reference
    from linter.audit.worksheets import Entered, Missing, Sheet
    from linter.language.work import WorkLine

_LABEL, _VALUE, _RUNNING = 46, 15, 15
_INSET = 5
_UNKNOWN = "not known yet"
_NOT_KNOWN = "unknown"


NO_APPLIANCES = (
    "The job states no appliance: what cooks, dries, washes, heats and cools counts for nothing in "
    "these figures. Name them under appliances, each with its type, load and voltage."
)
"""What is said where a calculation goes by appliances that nobody has stated."""


def worksheet_report(
    job: str, pack: str, sheets: Sequence[Sheet], *, has_appliances: bool
) -> Iterator[Line]:
    """The worksheets of a job one after the other, their results, what they lack, their clauses."""
    yield Line((Span("CAUTION", "caution", whole=True), Span(f"  {CAUTION}")), hang=2)
    yield EMPTY
    yield line(f"{job}, by {pack}", "room", hang=2)
    if not sheets:
        yield line(f"{pack} has no calculation for this job.", hang=2)
    elif not has_appliances:
        yield line(NO_APPLIANCES, hang=2)
    for number, sheet in enumerate(sheets, 1):
        yield EMPTY
        yield from sheet_lines(number, sheet)
    yield from _side_by_side(sheets)
    yield from _missing(sheets)
    yield from clauses(sheets)
    yield EMPTY
    yield line(CLOSING)


def sheet_lines(number: int, sheet: Sheet) -> Iterator[Line]:
    """One worksheet: heading, lines, and what stands in the way of using it."""
    of = "" if sheet.kind == "dwelling" else f", {sheet.label}"
    yield line(f"{number}. {sheet.title}{of} ({in_short(sheet.reference)})", "box", hang=3)
    if sheet.reference.doubt:
        yield line(sheet.reference.doubt, "quiet", indent=3)
    if sheet.doubt:
        lacking = join_words([said_missing(each) for each in sheet.doubt])
        yield line(f"Whether it may be used hangs on the {lacking}.", indent=3, hang=2)
    totals = any(each.running for each in sheet.lines)
    yield _row("", "", "running total" if totals else "")
    for place, entered in enumerate(sheet.lines, 1):
        yield from _entered(place, entered)


def _entered(place: int, entered: Entered) -> Iterator[Line]:
    """A line: its value and the running total, then the arithmetic, then the clause."""
    value = entered.written if entered.value is not None else _UNKNOWN
    running = entered.running or ("not known" if entered.adds else "")
    yield from _labelled(f"{place:>2}  {entered.said}", value, running)
    for each in worth_saying(entered.work):
        yield line(each, "quiet", indent=_INSET, hang=2)
    yield line(in_short(entered.reference), "quiet", indent=_INSET, hang=2)
    if entered.missing:
        lacking = join_words([said_missing(each) for each in entered.missing])
        yield line(f"Missing: {lacking}.", indent=_INSET, hang=2)


def _labelled(label: str, value: str, running: str) -> Iterator[Line]:
    if len(label) > _LABEL:
        yield Line((Span(label, whole=True),))
        label = ""
    yield _row(label, value, running)


def _row(label: str, value: str, running: str) -> Line:
    text = f"{label:<{_LABEL}} {value:>{_VALUE}} {running:>{_RUNNING}}"
    return Line((Span(text.rstrip(), whole=True),))


def worth_saying(work: Sequence[WorkLine]) -> Iterator[str]:
    """The steps as on paper; the last without its result, which stands beside the line already."""
    for number, each in enumerate(work, 1):
        if not each.brief or each.result == _NOT_KNOWN:
            continue  # what is missing is named below
        last = number == len(work)
        if last and each.brief == each.result:
            continue
        name = "" if last else f"{each.name.replace('_', ' ')}: "
        result = "" if last or each.brief == each.result else f" = {each.result}"
        yield f"{name}{each.brief}{result}"


def _side_by_side(sheets: Sequence[Sheet]) -> Iterator[Line]:
    """What one wants to know, a row for each result and a column for each worksheet."""
    rows = list(dict.fromkeys(each.said for sheet in sheets for each in sheet.results))
    if not rows:
        return
    yield EMPTY
    yield line("Results", "box")
    width = 12
    yield _columns("worksheet", [str(number) for number, _ in enumerate(sheets, 1)], width)
    for said in rows:
        values = [_result(sheet, said) for sheet in sheets]
        yield _columns(said, values, width)


def _columns(label: str, values: Iterable[str], width: int) -> Line:
    cells = "".join(f" {value:>{width}}" for value in values)
    return Line((Span(f"   {label:<37}{cells}".rstrip(), whole=True),))


def _result(sheet: Sheet, said: str) -> str:
    for each in sheet.results:
        if each.said == said:
            return each.written if each.value is not None else "not known"
    return "-"


def _missing(sheets: Sequence[Sheet]) -> Iterator[Line]:
    missing = all_missing(sheets)
    if not missing:
        return
    yield EMPTY
    yield line("To find out first", "box")
    for each in missing:
        yield line(f"{said_missing(each)}: {each.ask}", indent=3, hang=2)


def all_missing(sheets: Iterable[Sheet]) -> tuple[Missing, ...]:
    """All that the worksheets lack: one entry for a fact, with all things it is missing of."""
    found: dict[tuple[str, str, str, str], list[str]] = {}
    for sheet in sheets:
        for each in (*sheet.doubt, *sheet.missing):
            things = found.setdefault((each.kind, each.fact, each.label, each.ask), [])
            things.extend(name for name in each.things if name not in things)
    return tuple(_merged(*key, things) for key, things in found.items())


def _merged(kind: str, fact: str, label: str, ask: str, things: list[str]) -> Missing:
    from linter.audit.worksheets import Missing  # noqa: PLC0415  the type alone is wanted above

    return Missing(kind, fact, label, ask, tuple(things))


def clauses(sheets: Sequence[Sheet]) -> Iterator[Line]:
    """Every clause once, in full: document, edition, how it is known, what is in doubt."""
    references = [ref for sheet in sheets for ref in (sheet.reference, *_of_lines(sheet))]
    if not references:
        return
    yield EMPTY
    yield line("Clauses", "box")
    alike: dict[Reference, list[str]] = {}
    for each in dict.fromkeys(references):
        alike.setdefault(each._replace(clause="", layer=""), []).append(each.clause)
    for ground, clauses in alike.items():
        doubt = f" {ground.doubt}" if ground.doubt else ""
        joined = ground._replace(clause=", ".join(dict.fromkeys(clauses)))
        yield line(f"{cited(joined)}.{doubt}", "quiet", indent=3, hang=2)


def _of_lines(sheet: Sheet) -> list[Reference]:
    return [each.reference for each in sheet.lines]


def in_short(reference: Reference) -> str:
    """The clause, and how it is known; the document stands in the list of clauses."""
    unsure = bool(reference.unconfirmed_in) or reference.confidence == "low"
    known = f"{reference.clause}, {KNOWN_IN_WORDS[reference.known]}"
    return f"{known}, to be confirmed" if unsure else known
