"""Words and numbers as they are shown: nearest names, lists, short decimals, inert text."""

import math
from collections.abc import Iterable, Sequence

LONGEST_WORD = 60
_DECIMALS, _FIGURES = 4, 3  # sums of quarters and eighths of in3 can be checked with four
_WIDE_SPACES = "\u00a0\u2002\u2003\u2009\u202f\u3000"
_COMMANDS_BEGIN = ("::", "##")
_ORDINARY_LEAST, _ORDINARY_MOST = 1e-9, 1e15


def nearest(word: str, allowed: Iterable[str], most: int = 3) -> tuple[str, ...]:
    """The allowed words that `word` was probably meant to be, nearest first.

    A word counts as near when about one letter in three, at the most, was missed, added, changed
    or swapped with its neighbour; capitals do not matter. Words of one distance keep their order.

    >>> nearest("recepticle", ["switch", "receptacle", "luminaire"])
    ('receptacle',)
    """
    if not word or len(word) > LONGEST_WORD:
        return ()
    limit = max(1, len(word) // 3)
    wanted = word.casefold()
    near = []
    for each in dict.fromkeys(allowed):
        if abs(len(each) - len(word)) <= limit:
            distance = _distance(wanted, each.casefold())
            if distance <= limit and distance < min(len(word), len(each)):
                near.append((distance, each))
    near.sort(key=lambda pair: pair[0])
    return tuple(each for _, each in near[:most])


def join_words(words: Sequence[str], last: str = "and") -> str:
    """The words as a list that reads aloud.

    >>> join_words(["hot", "neutral", "bond"])
    'hot, neutral and bond'
    """
    if len(words) < 2:  # noqa: PLR2004  a list needs two words to be joined
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"


def write_number(x: float) -> str:
    """The number as a short decimal: at most four decimals, or three figures below 0.1.

    >>> [write_number(x) for x in (18.0, 2.25, 1 / 3, 0.0052108, -0.0)]
    ['18', '2.25', '0.3333', '0.00521', '0']
    """
    if math.isnan(x):
        return "not a number"
    if math.isinf(x):
        return "without limit" if x > 0 else "without limit below"
    size = abs(x)
    if size and not _ORDINARY_LEAST <= size < _ORDINARY_MOST:
        return f"{x:.3g}"
    decimals = _DECIMALS
    if 0 < size < 0.1:  # noqa: PLR2004  below it, four decimals would lose figures
        decimals = _FIGURES - 1 - int(f"{x:e}".partition("e")[2])
    written = f"{x:.{decimals}f}".rstrip("0").rstrip(".")
    return "0" if written == "-0" else written


def clean(text: str) -> str:
    r"""The text with control, invisible and direction-changing characters made visible and inert.

    >>> clean("bench\x1b[2J left")
    'bench\\x1b[2J left'
    """
    if text.isprintable():
        return text
    return "".join(each if each.isprintable() else _inert(each) for each in text)


def inert_line(line: str) -> str:
    r"""The line, with what a build service would take for a command to itself made inert.

    Such services read what programs print, and act on lines that begin with two colons or hashes.

    >>> inert_line("  ::error::owned")
    '  \\x3a:error::owned'
    """
    begins = line.lstrip()
    if not begins.startswith(_COMMANDS_BEGIN):
        return line
    blank = line[: len(line) - len(begins)]
    return f"{blank}\\x{ord(begins[0]):02x}{begins[1:]}"


def _inert(character: str) -> str:
    if character in _WIDE_SPACES:
        return " "
    return character.encode("unicode_escape", "backslashreplace").decode("ascii")


def _distance(one: str, other: str) -> int:
    """The edits (miss, add, change, swap of neighbours) that turn one word into the other."""
    two_above: list[int] = []
    above = list(range(len(other) + 1))
    for i, a in enumerate(one):
        row = [i + 1]
        for j, b in enumerate(other):
            least = min(above[j + 1] + 1, row[j] + 1, above[j] + (a != b))
            if i and j and a == other[j - 1] and b == one[i - 1]:
                least = min(least, two_above[j - 1] + 1)
            row.append(least)
        two_above, above = above, row
    return above[-1]
