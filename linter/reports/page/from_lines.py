"""Lines made for a terminal as elements: what is set in further belongs to what is above."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.reports.page.elements import Element, Node, el

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.reports.layout import Line, Span

_STYLES = {"box": "strong", "label": "strong", "caution": "strong"}
_BLANK = "_ "
_HEADINGS = ("room", "advice-heading")


class Branch(NamedTuple):
    """A line, and the lines that belong to it."""

    line: Line
    under: list[Branch]


def branches(lines: Iterable[Line]) -> list[Branch]:
    """The lines as a tree, by how far each is set in; empty lines are left out."""
    top: list[Branch] = []
    open_: list[Branch] = []
    for each in lines:
        if not each.spans:
            continue
        while open_ and open_[-1].line.indent >= each.indent:
            open_.pop()
        branch = Branch(each, [])
        (open_[-1].under if open_ else top).append(branch)
        open_.append(branch)
    return top


def from_lines(lines: Iterable[Line], level: int) -> Iterator[Node]:
    """Headings of that level for rooms and visits, lists for what stands under them."""
    yield from _nodes(branches(lines), level)


def _nodes(found: Iterable[Branch], level: int) -> Iterator[Node]:
    listed: list[Branch] = []
    for branch in found:
        if branch.line.spans[0].style in _HEADINGS:
            yield from _list(listed)
            listed = []
            yield el(f"h{level}", *_inline(branch.line, plain=True))
            yield from _nodes(branch.under, min(level + 1, 4))
        else:
            listed.append(branch)
    yield from _list(listed)


def _list(found: list[Branch]) -> Iterator[Element]:
    if found:
        yield el("ul", *(_item(each) for each in found))


def _item(branch: Branch) -> Element:
    """A line with those that belong to it; a single short one goes on in the same line."""
    if len(branch.under) == 1 and not branch.under[0].under:
        return el("li", *_inline(branch.line), " \N{EN DASH} ", *_inline(branch.under[0].line))
    return el("li", *_inline(branch.line), *_list(branch.under))


def _inline(line: Line, *, plain: bool = False) -> Iterator[Node]:
    for span in line.spans:
        if span.text.strip(_BLANK):  # paper and screen have a box to tick for it
            yield span.text if plain else _styled(span)


def _styled(span: Span) -> Node:
    if span.style in _STYLES:
        return el("strong", span.text)
    return el("span", span.text, class_="quiet") if span.style == "quiet" else span.text
