"""Worksheets: calculations that are shown line by line, made of the measures of one kind."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.packs.entries import Stated
from linter.packs.expressions import read_expression, read_sentence
from linter.packs.model import SheetLine, Worksheet
from linter.packs.scopes import kind_of
from linter.packs.shown import unit_refused
from linter.text import Refusal
from linter.vocabulary.model import Shape

if TYPE_CHECKING:
    from linter.packs.entries import Entry
    from linter.packs.expressions import Names
    from linter.packs.rules import Reader
    from linter.text.yaml_places import Node
    from linter.units import Dimension


def read_worksheet(entry: Entry, reader: Reader) -> Worksheet | None:
    """The worksheet; None where it is refused."""
    history = reader.history(entry)
    if kind_of(entry.fields["about"].node, reader.refusals) is None:
        return None
    before = len(reader.refusals)
    about = entry.fields["about"].text
    names = reader.names(about)
    where = reader.condition(entry, "where", names)
    units = _units(entry, reader)
    stated = entry.fields["lines"]
    read = [_line(Stated(node, stated.layer), names, reader) for node in stated.node.items]
    lines = tuple(line for line in read if line is not None)
    _refuse_mixed_sums(stated.node, lines, reader)
    if len(reader.refusals) > before:
        return None
    title = entry.fields["title"].text
    return Worksheet(entry.key.name, about, title, where, lines, units, history)


def _units(entry: Entry, reader: Reader) -> dict[str, str]:
    if "units" not in entry.fields:
        return {}
    node = entry.fields["units"].node
    for name, unit in node.fields.items():
        refused = unit_refused(name, unit.text, node.keys[name], unit.place)
        reader.refusals.extend([refused] if refused is not None else [])
    return {name: unit.text for name, unit in node.fields.items()}


def _line(stated: Stated, names: Names, reader: Reader) -> SheetLine | None:
    fields = stated.node.fields
    said = read_sentence(Stated(fields["line"], stated.layer), names, reader.refusals)
    shows = read_expression(Stated(fields["shows"], stated.layer), names, None, reader.refusals)
    if shows is None:
        return None
    return SheetLine(said, shows, _yes(fields.get("adds")), _yes(fields.get("result")))


def _yes(node: Node | None) -> bool:
    return node is not None and node.text == "yes"


def _refuse_mixed_sums(lines: Node, read: tuple[SheetLine, ...], reader: Reader) -> None:
    """Refuse a line that adds what cannot be added to the lines before it."""
    if len(read) != len(lines.items):
        return
    first: Dimension | None = None
    for line, node in zip(read, lines.items, strict=True):
        if not line.adds:
            continue
        type_ = line.shows.type
        if type_.shape is not Shape.QUANTITY or (first or type_.dimension) != type_.dimension:
            what = type_.dimension if type_.shape is Shape.QUANTITY else type_.shape.value
            expected = f"a {first}, as the lines before it" if first else "a quantity"
            reader.refusals.append(
                Refusal(
                    node.place,
                    f"The line adds what it shows, a value of {what}",
                    expected,
                    "correct what it shows, or leave out that it adds",
                )
            )
            return
        first = type_.dimension
