"""What is said of YAML that cannot be read: the parser's complaint in words of the trade."""

from __future__ import annotations

import unicodedata
from typing import TYPE_CHECKING

from linter.text.refusals import Place, Refusal

if TYPE_CHECKING:
    import yaml

_AS_NEIGHBOURS = "indent it as its neighbours are, or put the whole text into quotation marks"
# Words of the parser; what stands there, what was expected, how to mend it. The first that fits
# is taken.
_SLIPS: tuple[tuple[str, str, str, str], ...] = (
    (
        "mapping values are not allowed",
        "A colon stands where none can be",
        "one key and one value in a line",
        "put a value with a colon into quotation marks, or indent the line as its neighbours are",
    ),
    (
        "',' or ']'",
        "A list in brackets is not closed",
        "a comma between items, and ] at the end",
        "close the bracket, or put text with commas or brackets into quotation marks",
    ),
    (
        "',' or '}'",
        "A map in braces is not closed",
        "a comma between items, and } at the end",
        "close the brace, or put text with commas or braces into quotation marks",
    ),
    (
        "escape",
        "A backslash stands in double quotation marks",
        "text without backslashes",
        "use single quotation marks, or leave out the backslash",
    ),
    (
        "quoted scalar",
        "A quotation mark is opened here and not closed",
        "a second quotation mark",
        "close the quotation mark",
    ),
    ("found character '\\t'", "A tab stands here", "spaces", "indent with spaces"),
    ("tab", "A tab stands here", "spaces", "indent with spaces"),
    (
        "could not find expected ':'",
        "A colon is missing after a key",
        "a key, a colon and a value",
        "write the colon and a space after the key, and indent what belongs to it",
    ),
    (
        "'-' indicator",
        "This line does not fit the list above it",
        "a line that begins with - and a space",
        "indent it as the other items of the list are",
    ),
    (
        "expected key",
        "This line does not fit the lines above it",
        "a key in the same column as the one above",
        _AS_NEIGHBOURS,
    ),
    (
        "block sequence entries are not allowed",
        "A list begins in the middle of a line",
        "a list on lines of its own",
        "begin a new line before the -",
    ),
    (
        "document start",
        "Text stands after the end of the document",
        "one list or map in a file",
        _AS_NEIGHBOURS,
    ),
    (
        "cannot start any token",
        "A character stands here that no plain value begins with",
        "a value",
        "put the value into quotation marks",
    ),
    (
        "block scalar",
        "A literal block begins wrongly",
        "| at the end of the line, and indented lines below",
        "begin the text on the next line",
    ),
    (
        "alias",
        "An alias stands here",
        "the value itself",
        "put text that begins with * into quotation marks",
    ),
    (
        "anchor",
        "An anchor stands here",
        "the value itself",
        "put text that begins with & into quotation marks",
    ),
    (
        "tag",
        "A tag stands here",
        "a plain value",
        "put text that begins with ! into quotation marks",
    ),
    (
        "simple key",
        "A colon is missing after a key",
        "a key, a colon and a value",
        "write the colon and a space after the key",
    ),
    (
        "YAML document",
        "The file begins with a line for other readers",
        "keys and values",
        "leave out that line",
    ),
    (
        "nesting",
        "Lists and maps stand in each other too deep",
        "",
        "close the brackets that were meant to be closed",
    ),
    (
        "node content",
        "A value is missing, or a bracket stands where none is open",
        "a value",
        "write the value; put text that begins with a bracket or a brace into quotation marks",
    ),
    (
        "directive",
        "A line begins with %",
        "a key or a value",
        "put text that begins with % into quotation marks",
    ),
)
_LINE_BREAKS = dict.fromkeys(map(ord, "\t\n\r"))
_NO_TEXT = "\ufeff\ufffe\uffff"
_CANNOT_BE_READ = (
    "The file cannot be read from here on",
    "YAML or JSON",
    "look at this line and the one above",
)


def slip_of(error: yaml.MarkedYAMLError, text: str, file: str) -> Refusal:
    """The refusal for what the parser complains of, at the place it complains of.

    An opened quotation mark, bracket or brace is shown where it is opened, not where the file ends.
    """
    words = f"{error.context or ''} {error.problem or ''}"
    place = _place(error, file)
    if _tab_at(text, place):
        words = "tab"
    found, expected, mend = next((slip[1:] for slip in _SLIPS if slip[0] in words), _CANNOT_BE_READ)
    return Refusal(place, found, expected, mend)


def outside_yaml(text: str, file: str) -> Refusal | None:
    """The refusal for the first character that no YAML file may hold; None where there is none."""
    if text.translate(_LINE_BREAKS).isprintable():
        return None
    line = column = 1
    for character in text:
        if not _may_stand(character):
            found = f"A character that cannot be seen stands here: U+{ord(character):04X}"
            return Refusal(Place(file, line, column), found, "text", "remove the character")
        line, column = (line + 1, 1) if character == "\n" else (line, column + 1)
    return None


def _may_stand(character: str) -> bool:
    if character in "\t\n\r":
        return True
    # Controls, halves of characters, marks of byte order.
    return unicodedata.category(character) not in ("Cc", "Cs") and character not in _NO_TEXT


def _place(error: yaml.MarkedYAMLError, file: str) -> Place:
    mark = error.problem_mark or error.context_mark
    opened = error.context_mark
    context = error.context or ""
    if opened is not None and ("quoted scalar" in context or "flow" in context):
        mark = opened
    return Place(file, mark.line + 1, mark.column + 1) if mark else Place(file, 1, 1)


def _tab_at(text: str, place: Place) -> bool:
    lines = text.splitlines()
    line = lines[place.line - 1] if place.line <= len(lines) else ""
    return "\t" in line[: place.column] and not line[: place.column].strip()
