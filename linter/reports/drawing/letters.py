"""How much room words take in a drawing, and words made to fit the room there is.

Nobody knows which font a phone or a printer has. Widths are those of DejaVu Sans, one of the widest
that are used for reading; what fits by them fits in any other.
"""

from __future__ import annotations

import re
import unicodedata

_NARROW, _SLIM, _SMALL, _DIGIT, _CAPITAL, _WIDE = 0.34, 0.43, 0.635, 0.64, 0.79, 1.0
_OF = dict.fromkeys("ijlI.,:;'|! ", _NARROW)
_OF |= dict.fromkeys('ftr()[]-/"', _SLIM)
_OF |= dict.fromkeys(
    "mwMW@%&+=<>~_\N{EN DASH}\N{EM DASH}\N{HORIZONTAL ELLIPSIS}\N{RIGHTWARDS ARROW}", _WIDE
)
_BEYOND = 1.15
_BREAKS = re.compile(r"(?<=[-.\s])")
_BOLD = 1.12
MORE = "\N{HORIZONTAL ELLIPSIS}"


def width_of(text: str, size: float, *, bold: bool = False) -> float:
    """The most room that the text takes, in the units of its size."""
    ems = sum(map(_ems, text))
    return ems * size * (_BOLD if bold else 1.0)


def fitted(text: str, size: float, room: float, *, bold: bool = False) -> str:
    """The text, or as much of its beginning as has room, with an ellipsis.

    >>> fitted("a very long name of a box", 10.0, 60.0)
    'a very lo\N{HORIZONTAL ELLIPSIS}'
    """
    if width_of(text, size, bold=bold) <= room:
        return text
    kept = text
    while kept and width_of(kept + MORE, size, bold=bold) > room:
        kept = kept[:-1]
    return kept.rstrip() + MORE if kept else ""


def folded(text: str, size: float, room: float, most: int, *, bold: bool = False) -> list[str]:
    """The text on lines that have room, at most so many; what does not go on the last is cut off.

    It is broken at blanks, and after the hyphens and full stops of names.

    >>> folded("three-way switch stair-bottom", 10.0, 110.0, 3)
    ['three-way switch', 'stair-bottom']
    """
    lines: list[str] = []
    pieces = [each for each in _BREAKS.split(text) if each]
    while pieces and len(lines) < most - 1:
        taken = 1
        while taken < len(pieces) and _fits("".join(pieces[: taken + 1]), size, room, bold=bold):
            taken += 1
        lines.append(fitted("".join(pieces[:taken]).strip(), size, room, bold=bold))
        pieces = pieces[taken:]
    return [*lines, fitted("".join(pieces).strip(), size, room, bold=bold)] if pieces else lines


def _fits(text: str, size: float, room: float, *, bold: bool) -> bool:
    return width_of(text.strip(), size, bold=bold) <= room


def _ems(character: str) -> float:
    known = _OF.get(character)
    if known is not None:
        return known
    if character.isascii():
        return _DIGIT if character.isdigit() else _CAPITAL if character.isupper() else _SMALL
    return 0.0 if unicodedata.combining(character) else _BEYOND
