"""Lines of words with a style, folded to a width; what stands between a report and the terminal.

A style names a meaning (danger, room, quiet), never a colour; a report reads the same without any.

>>> print(plain([Line((Span("Pull more cable into the box."),), indent=2, hang=2)], 24), end="")
  Pull more cable into
    the box.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.text import clean, inert_line

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
    return "".join(f"{inert_line(row)}\n" for row in rows)


def _folded(whole: Line, width: int) -> Iterator[list[Span]]:
    row = [Span(" " * whole.indent)]
    column = whole.indent
    fresh = True
    for word in _words(whole.spans):
        length = sum(len(span.text) for span in word)
        blank = not word[0].text.strip()
        if not fresh and not blank and column + length > width:
            yield _without_last_blank(row)
            column, fresh = whole.indent + whole.hang, True
            row = [Span(" " * column)]
        if fresh and blank:
            continue
        row += word
        column, fresh = column + length, False
    yield _without_last_blank(row)


def _without_last_blank(row: list[Span]) -> list[Span]:
    """The row without blanks at its end, which could fall over the edge of a terminal."""
    while row and not row[-1].text.strip():
        row.pop()
    return row


def _words(spans: Iterable[Span]) -> Iterator[list[Span]]:
    """The words of a line and the blanks between them; a word may be of several styles."""
    word: list[Span] = []
    for span in spans:
        for part in _parts(span):
            if part.text == " ":
                yield from [word] if word else []
                yield [part]
                word = []
            else:
                word.append(part)
    yield from [word] if word else []


def _parts(span: Span) -> Iterator[Span]:
    """The words and single blanks of a span, made inert."""
    text = clean(span.text)
    if span.whole:
        yield Span(text, span.style)
        return
    for number, word in enumerate(text.split(" ")):
        if number:
            yield Span(" ", span.style)
        if word:
            yield Span(word, span.style)
