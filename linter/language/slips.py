"""What is said of text that the grammar does not know: a common slip, or what was expected."""

from __future__ import annotations

import re

from linter.language.build import inside
from linter.language.slip_signs import SIGNS
from linter.language.slip_words import WORDS
from linter.text import Place, Refusal, join_words, nearest


def refuse_character(text: str, at: int, place: Place) -> Refusal:
    """What is said of a character that begins no word of the language."""
    rest = text[at:]
    for pattern, found, expected, mend in SIGNS:
        match = re.match(pattern, rest)
        if match:
            said = match.group()
            return _refusal(text, at, place, (found.format(said=said), expected, mend), ())
    row = (
        f'"{rest[0]}" is not a sign of this language',
        "names, words in quotes, numbers and signs",
        "leave it out",
    )
    return _refusal(text, at, place, row, ())


def refuse_token(text: str, at: int, allowed: set[str], place: Place) -> Refusal:
    """What is said of a word that cannot stand where it does, or of an end that comes too soon.

    `allowed` are the names of the grammar's words that could stand there.
    """
    before, rest = text[:at].rstrip(), text[at:]
    word = _WORD.match(rest)
    said = word.group() if word else "the end"
    for slip in WORDS:
        if slip.fits(before, rest, allowed):
            found = slip.found.format(said=said)
            return _refusal(text, at, place, (found, slip.expected, slip.mend), ())
    found = f'"{said}" cannot stand here' if word else "the expression ends too soon"
    words = sorted(each.lower() for each in allowed if each not in _SIGNS)
    near = nearest(said.lower(), words) if word else ()
    mend = f'write "{near[0]}"' if near else "write what was expected, or leave this out"
    return _refusal(text, at, place, (found, _expected(allowed), mend), near)


def _refusal(
    text: str, at: int, place: Place, row: tuple[str, str, str], near: tuple[str, ...]
) -> Refusal:
    line = text.count("\n", 0, at) + 1
    column = at - (text.rfind("\n", 0, at) + 1) + 1
    found, expected, mend = row
    return Refusal(inside(place, line, column), found, expected, mend, near)


def _expected(allowed: set[str]) -> str:
    """What could stand there, in words; what goes together is named by one of its group."""
    left = set(allowed)
    said = []
    for words, name in _GROUPS:
        if words <= left:
            left -= words
            said.append(name)
    said.extend(_SIGNS.get(each, f'"{each.lower()}"') for each in sorted(left))
    return join_words(said, "or") or "the end of the expression"


_WORD = re.compile(r'[A-Za-z_][\w.]*|[0-9.]+|"[^"\n]*"|\S')
_SIGNS = {
    "PLUS": '"+"',
    "MINUS": '"-"',
    "TIMES": '"*"',
    "OVER": '"/"',
    "OPEN": '"("',
    "CLOSE": '")"',
    "COMMA": '","',
    "NAME": "a name",
    "NUMBER": "a number",
    "WORD": "a word in quotes",
    "$END": "the end",
}
_BEGINS_VALUE = frozenset(
    {
        "NAME",
        "NUMBER",
        "WORD",
        "OPEN",
        "SUM",
        "COUNT",
        "LARGEST",
        "SMALLEST",
        "LARGER",
        "SMALLER",
        "LOOK",
    }
)
# The larger groups first: a group is named when all of it could stand there.
_GROUPS: tuple[tuple[frozenset[str], str], ...] = (
    (_BEGINS_VALUE | {"NOT", "EVERY", "SOME", "NO", "IF"}, "a condition or a value"),
    (_BEGINS_VALUE | {"NOT", "EVERY", "SOME", "NO"}, "a condition or a value"),
    (_BEGINS_VALUE, "a value"),
    (
        frozenset({"NAME", "NUMBER", "WORD", "OPEN"}),
        "a name, a word in quotes, or a value in parentheses",
    ),
    (frozenset({"AT", "MORE", "LESS", "IS"}), 'a comparison such as "at least" or "is"'),
    (frozenset({"PLUS", "MINUS", "TIMES", "OVER"}), 'a sign such as "+"'),
    (frozenset({"AND", "OR"}), '"and" or "or"'),
)
