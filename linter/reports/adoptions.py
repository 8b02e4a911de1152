"""What adopting another pack would change for saved jobs, as lines."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import cited_briefly, counted
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.audit.adoption import Adoption, Retold, Untold
    from linter.audit.findings import Finding


def adoption_page(file: str, adopted: Adoption, before: str, after: str) -> Iterator[Line]:
    """The job's findings that come, go and change, then what could be told of it."""
    yield EMPTY
    yield Line((Span(file, "box", whole=True), Span(f": {_summary(adopted, after)}.")), hang=2)
    yield from _findings(f"Added by {after}", adopted.added)
    yield from _findings(f"Removed: {before} alone says", adopted.removed)
    yield from _retold(adopted.retold, before, after)
    yield from _untold(f"Cannot be told under {after}", adopted.now_open)
    yield from _untold(f"No longer asked for by {after}", adopted.no_longer_open)


def _summary(adopted: Adoption, after: str) -> str:
    counts = (
        (len(adopted.added), "added"),
        (len(adopted.removed), "removed"),
        (len(adopted.retold), "changed"),
    )
    said = [f"{counted(number, 'finding', 'findings')} {how}" for number, how in counts if number]
    changed = join_words(said) or "no finding is added, removed or changed"
    stay = f"; {adopted.same} the same" if adopted.same else ""
    return f"if {after} is adopted, {changed}{stay}"


def _findings(heading: str, findings: Iterable[Finding]) -> Iterator[Line]:
    for number, each in enumerate(findings):
        if not number:
            yield line(heading, "label", indent=2)
        yield _finding(each)


def _finding(finding: Finding, of: str = "", indent: int = 4) -> Line:
    spans = (
        *((Span(f"{of}: ", "quiet"),) if of else ()),
        Span(finding.weight, finding.weight),
        Span(f": {finding.sentence} "),
        Span(f"({finding.rule}; {cited_briefly(finding.reference)})", "quiet"),
    )
    return Line(spans, indent, 2)


def _retold(retold: Iterable[Retold], before: str, after: str) -> Iterator[Line]:
    for number, each in enumerate(retold):
        if not number:
            yield line("Told otherwise", "label", indent=2)
        for finding in each.before:
            yield _finding(finding, before)
        for finding in each.after:
            yield _finding(finding, after)


def _untold(heading: str, untold: Iterable[Untold]) -> Iterator[Line]:
    for number, each in enumerate(untold):
        if not number:
            yield line(heading, "label", indent=2)
        yield line(f"{each.rule}: {join_words(each.things)}", indent=4, hang=2)
