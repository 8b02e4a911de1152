"""What was written into a job file, and what was left, as lines."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.reports.layout import EMPTY, Line, Span, line
from linter.reports.sayings import counted

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from linter.text import Place


Change = tuple[str, str, str, "Place"]
"""What was written: the way in words, what stood there, what stands there now, and where."""

Left = tuple[str, str, str]
"""An answer that was not written, its value, and why."""


def brought_in_page(file: str, changes: Sequence[Change], left: Sequence[Left]) -> Iterator[Line]:
    """Each value written, with its line; then those that were left."""
    number = counted(len(changes), "value", "values")
    yield Line((Span(file, "box", whole=True), Span(f": {number} brought in.")), hang=2)
    for what, before, after, place in changes:
        was = f"was {before}, " if before else ""
        yield line(f"{what}: {was}now {after} (line {place.line})", indent=2, hang=4)
    if left:
        yield EMPTY
        yield line(f"Left as it is: {counted(len(left), 'answer', 'answers')}", "box")
    for what, value, why in left:
        yield line(f"{what}, {value}: {why}", indent=2, hang=4)
