"""Two packs compared, as lines: what was added, withdrawn, amended, and by subject if need be."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.audit.bases import reference
from linter.packs.laid_out import CLAUSE
from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import cited_briefly, counted

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.packs.compare import Changed, Comparison, Difference, Subject
    from linter.packs.laid_out import Entry

_NOTHING = "nothing"


def comparison_page(comparison: Comparison) -> Iterator[Line]:
    """The packs name by name: what the second adds, leaves out, and states otherwise."""
    yield _title(comparison.before, comparison.after, _summary(comparison))
    yield from _entries(f"Only in {comparison.after}", comparison.added)
    yield from _entries(f"Only in {comparison.before}", comparison.gone)
    demanding = [
        each for each in comparison.changed if not (each.is_renumbered or each.is_reworded)
    ]
    yield from _changes("Stated otherwise", comparison, demanding)
    yield from _changes(
        "Only worded otherwise",
        comparison,
        [each for each in comparison.changed if each.is_reworded],
    )
    yield from _renumbered([each for each in comparison.changed if each.is_renumbered])


def subjects_page(before: str, after: str, subjects: Iterable[Subject]) -> Iterator[Line]:
    """Packs that share no layer, side by side: for each subject what each of them holds."""
    yield _title(before, after, "they share no layer, so they are compared by subject")
    for subject in subjects:
        yield EMPTY
        yield line(subject.name, "box")
        for pack, entries in ((before, subject.before), (after, subject.after)):
            yield line(f"{pack}:" if entries else f"{pack}: nothing", "label", indent=2)
            for each in entries:
                yield _entry(each, 4)


def _title(before: str, after: str, said: str) -> Line:
    return Line((Span(f"From {before} to {after}", "box"), Span(f": {said}.")), hang=2)


def _summary(comparison: Comparison) -> str:
    if comparison.is_empty:
        return "nothing differs"
    parts = ((comparison.added, "more"), (comparison.gone, "fewer"))
    said = [
        f"{counted(number, what, f'{what}s')} {how}"
        for entries, how in parts
        for what, number in _numbers(entries)
    ]
    changed = _numbers([each.after for each in comparison.changed])
    said += [f"{counted(number, what, f'{what}s')} stated otherwise" for what, number in changed]
    return ", ".join(said)


def _numbers(entries: Iterable[Entry]) -> Iterator[tuple[str, int]]:
    numbers: dict[str, int] = {}
    for each in entries:
        numbers[each.what] = numbers.get(each.what, 0) + 1
    yield from numbers.items()


def _entries(heading: str, entries: Iterable[Entry]) -> Iterator[Line]:
    for number, each in enumerate(entries):
        if not number:
            yield EMPTY
            yield line(heading, "box")
        yield _entry(each, 2)


def _entry(entry: Entry, indent: int) -> Line:
    weight = entry.fields.get("weight")
    said = f", {weight.written}" if weight else ""
    value = entry.fields.get("value")
    said += f" = {value.written}" if value else ""
    return Line(
        (
            Span(f"{entry.what} ", "quiet"),
            Span(entry.name, "box", whole=True),
            Span(f"{said}; {_clause(entry)}"),
        ),
        indent,
        4,
    )


def _changes(heading: str, comparison: Comparison, changes: Iterable[Changed]) -> Iterator[Line]:
    for number, each in enumerate(changes):
        if not number:
            yield EMPTY
            yield line(heading, "box")
        yield from _change(comparison, each)


def _change(comparison: Comparison, changed: Changed) -> Iterator[Line]:
    yield Line(
        (Span(f"{changed.after.what} ", "quiet"), Span(changed.after.name, "box", whole=True)), 2, 4
    )
    for each in changed.differences:
        if each.field != CLAUSE:
            yield from _difference(comparison, each)
    yield _row(comparison.before, _clause(changed.before), 4)
    yield _row(comparison.after, _clause(changed.after), 4)


def _difference(comparison: Comparison, difference: Difference) -> Iterator[Line]:
    yield line(f"{difference.field}:", "label", indent=4)
    yield _row(comparison.before, difference.before or _NOTHING, 6)
    yield _row(comparison.after, difference.after or _NOTHING, 6)


def _row(pack: str, text: str, indent: int) -> Line:
    return Line((Span(f"{pack}: ", "quiet"), Span(text)), indent, 4)


def _renumbered(changes: Iterable[Changed]) -> Iterator[Line]:
    for number, each in enumerate(changes):
        if not number:
            yield EMPTY
            yield line("Only numbered otherwise", "box")
        before, after = each.before.clause.id, each.after.clause.id
        yield line(
            f"{each.after.what} {each.after.name}: {before} is now {after}", indent=2, hang=4
        )


def _clause(entry: Entry) -> str:
    return cited_briefly(reference(entry.clause, entry.layer))
