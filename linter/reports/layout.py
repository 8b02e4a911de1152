"""Lines of words with a style, folded to a width; what stands between a report and the terminal.

A style names a meaning (danger, room, quiet), never a colour; a report reads the same without any.

>>> print(plain([Line((Span("Pull more cable into the box."),), indent=2, hang=2)], 24), end="")
  Pull more cable into
    the box.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.text import clean

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

WIDTH = 80
"""The width of a report that is not written to a terminal."""

_LEAST_WIDTH = 20


class Span(NamedTuple):
    """Words of one style; `whole` words are never folded."""

    text: str
    style: str = ""
    whole: bool = False


class Line(NamedTuple):
    """Spans that follow each other; what does not fit goes on below, set in by `hang` more."""

    spans: tuple[Span, ...] = ()
    indent: int = 0
    hang: int = 0


EMPTY = Line()


def line(text: str, style: str = "", indent: int = 0, hang: int = 0) -> Line:
    """A line of one style."""
    return Line((Span(text, style),), indent, hang)


def fold(lines: Iterable[Line], width: int) -> Iterator[list[Span]]:
    """The lines as shown: each a list of spans no wider than `width`, where words allow it."""
    for each in lines:
        yield from _folded(each, max(width, each.indent + each.hang + _LEAST_WIDTH))


def plain(lines: Iterable[Line], width: int = WIDTH) -> str:
    """The lines as text without colour."""
    rows = ("".join(span.text for span in row).rstrip() for row in fold(lines, width))
    return "".join(f"{row}\n" for row in rows)


def _folded(whole: Line, width: int) -> Iterator[list[Span]]:
    row = [Span(" " * whole.indent)]
    column = whole.indent
    fresh = True
    for span in whole.spans:
        for word in _words(span):
            if not fresh and word.strip() and column + len(word) > width:
                yield _without_last_blank(row)
                row = [Span(" " * (whole.indent + whole.hang))]
                column, fresh = whole.indent + whole.hang, True
            if fresh and not word.strip():
                continue
            row.append(Span(word, span.style))
            column, fresh = column + len(word), False
    yield _without_last_blank(row)


def _without_last_blank(row: list[Span]) -> list[Span]:
    """The row without blanks at its end, which could fall over the edge of a terminal."""
    while row and not row[-1].text.strip():
        row.pop()
    return row


def _words(span: Span) -> Iterator[str]:
    """The words of a span and the spaces between them, made inert."""
    text = clean(span.text)
    if span.whole:
        yield text
        return
    for number, word in enumerate(text.split(" ")):
        if number:
            yield " "
        if word:
            yield word
