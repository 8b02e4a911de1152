"""The reference of the language, as Markdown, from the remarks of the grammar file."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterator

_REMARK = re.compile(r"// (?P<what>\S.*?)\.\s{2,}(?P<example>\S.*)$")
_KEYWORD = re.compile(r'^[A-Z]+: "(?P<word>[a-z]+)"$')
_SIGN = re.compile(r'^[A-Z]+: "(?P<sign>[^a-z"]+)"$')


def language_reference(grammar: str) -> str:
    r"""What can be written, each with its example, in the order of the grammar; then its words.

    >>> print(language_reference("// A plain number.      2\nnumber: NUMBER"), end="")
    | what | example |
    | --- | --- |
    | A plain number | `2` |
    """
    lines = [_row(match) for match in map(_REMARK.match, grammar.splitlines()) if match]
    table = ["| what | example |", "| --- | --- |", *lines]
    return "".join(f"{line}\n" for line in [*table, *_words(grammar)])


def _row(match: re.Match[str]) -> str:
    cells = (match["what"], f"`{match['example'].strip()}`")
    return "| " + " | ".join(cell.replace("|", r"\|") for cell in cells) + " |"


def _words(grammar: str) -> Iterator[str]:
    lines = grammar.splitlines()
    words = [f"`{match['word']}`" for match in map(_KEYWORD.match, lines) if match]
    signs = [f"`{match['sign']}`" for match in map(_SIGN.match, lines) if match]
    if words:
        yield ""
        yield f"Its words are {join_words(words)}; its signs {join_words(signs)}."
