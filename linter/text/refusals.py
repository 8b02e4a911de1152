"""What is said of input that cannot be understood, and where it stands.

The values are named tuples: every run imports them, and a dataclass costs it six times the time.
"""

from collections.abc import Iterable
from typing import NamedTuple

from linter.text.words import clean

MOST_SHOWN = 50


class Place(NamedTuple):
    """A file, a line and a column; line and column count characters from 1.

    >>> str(Place("kiln-room.yaml", 14, 12))
    'kiln-room.yaml:14:12'
    """

    file: str
    line: int
    column: int

    def __str__(self) -> str:
        return f"{clean(self.file)}:{self.line}:{self.column}"


class Refusal(NamedTuple):
    """One mistake of the input: what stands there, what was expected, and how to mend it.

    `found` is a sentence; `expected` follows the word "Expected"; `mend` follows "To mend:".
    `also` is a second place with the words before it, such as "first stated".
    """

    place: Place
    found: str
    expected: str
    mend: str
    nearest: tuple[str, ...] = ()
    also: tuple[Place, str] | None = None

    def render(self) -> str:
        """The refusal as it is shown, over several lines, without a last line break.

        >>> place, first = Place("kiln.yaml", 9, 3), Place("kiln.yaml", 4, 3)
        >>> print(Refusal(place, '"bench" names two boxes', "", "rename one of them",
        ...               also=(first, "first stated")).render())
        kiln.yaml:9:3  "bench" names two boxes.
            First stated at kiln.yaml:4:3.
            To mend: rename one of them.
        """
        lines = [f"{self.place}  {_sentence(self.found)}"]
        if self.also is not None:
            place, words = self.also
            lines.append(f"{words[:1].upper()}{words[1:]} at {place}.")
        if self.expected:
            lines.append(f"Expected {_sentence(self.expected)}")
        if self.nearest:
            lines.append(f"Nearest: {_sentence(', '.join(self.nearest))}")
        if self.mend:
            lines.append(f"To mend: {_sentence(self.mend)}")
        return "\n    ".join(clean(line) for line in lines)

    def __str__(self) -> str:
        return self.render()


class Refused(Exception):
    """The input is refused, for every reason in `refusals`, which stand in file order."""

    def __init__(self, refusals: Iterable[Refusal]) -> None:
        self.refusals: tuple[Refusal, ...] = tuple(sorted(refusals, key=lambda each: each.place))
        super().__init__(self.refusals)

    def __str__(self) -> str:
        shown = [each.render() for each in self.refusals[:MOST_SHOWN]]
        more = len(self.refusals) - len(shown)
        if more:
            shown.append(f"{more} more {'is' if more == 1 else 'are'} not shown.")
        return "\n".join(shown)


def _sentence(words: str) -> str:
    return words if words.endswith((".", "?", ":")) else f"{words}."
