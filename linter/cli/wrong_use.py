"""What is said of a command line that is not understood."""

from collections.abc import Iterable

from linter.text import clean, join_words, nearest


class WrongUse(Exception):
    """The command line is not understood; the lines say why and how to mend it."""

    def __init__(
        self, found: str, expected: str = "", near: Iterable[str] = (), mend: str = ""
    ) -> None:
        lines = [f"precover: {clean(found)}"]
        lines += [f"    Expected {expected}."] if expected else []
        near = tuple(near)
        lines += [f"    Nearest: {join_words(near, 'or')}."] if near else []
        lines += [f"    To mend: {mend}."] if mend else []
        self.lines = "\n".join(lines)
        super().__init__(self.lines)


def one_of(word: str, allowed: Iterable[str], what: str, mend: str = "") -> str:
    """The word, if it is one of those allowed.

    Raises `WrongUse` that names the nearest, and all of them.

    >>> one_of("json", ["text", "json"], "form")
    'json'
    """
    allowed = tuple(allowed)
    if word in allowed:
        return word
    found = f'"{word}" is not a {what}.' if word else f"A {what} is missing."
    raise WrongUse(found, f"one of: {', '.join(allowed)}", nearest(word, allowed), mend)
