"""Texts and places as SARIF has them: inert in any viewer, relative to the root of the repository.

Source: SARIF 2.1.0 (OASIS Standard), clauses 3.4 (artifact locations), 3.11 (messages).
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from linter.text import clean

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from linter.text import Place

Data = dict[str, object]

ROOT = "ROOT"
LEVELS = {"danger": "error", "violation": "warning", "advice": "note"}
"""The level of a result, by the weight of its rule."""

_LONGEST = 8000
_LINK = re.compile(r"\[(?=[^\]]*\]\()")


class Addresses:
    """The addresses of files, relative to the root of the repository.

    `find` gives the address of a file, as a URI has it, by the name that a person gave; nothing for
    one that has none, such as standard input.
    """

    def __init__(self, find: Callable[[str], str]) -> None:
        self._find = find

    def location(self, place: Place, **more: object) -> Data:
        """A place in a file; what is read from standard input has no address."""
        uri = self._find(place.file)
        artifact: Data = {"description": message(place.file)}
        if uri:
            artifact = {"uri": uri, "uriBaseId": ROOT}
        region = {"startLine": place.line, "startColumn": place.column}
        return {"physicalLocation": {"artifactLocation": artifact, "region": region}, **more}


def message(text: str) -> Data:
    r"""A message in which nothing acts: no link, and no number that would be filled in.

    >>> message("bench [here](1) {0}")
    {'text': 'bench \\[here](1) {{0}}'}
    """
    shown = text if len(text) <= _LONGEST else f"{text[:_LONGEST]}…"
    return {"text": _LINK.sub(r"\\[", shown.replace("{", "{{").replace("}", "}}"))}


def help_text(lines: Iterable[str]) -> Data:
    """Text about a rule, which is no message: braces stand for what a finding fills in."""
    return {"text": "\n".join(line for line in lines if line)}


def inert(value: object) -> object:
    r"""The same data, with characters that do not show, or that turn text round, made visible.

    >>> inert({"name": "bench\x1b[2J"})
    {'name': 'bench\\x1b[2J'}
    """
    if isinstance(value, str):
        return "\n".join(map(clean, value.split("\n")))
    if isinstance(value, dict):
        return {key: inert(each) for key, each in value.items()}
    return list(map(inert, value)) if isinstance(value, list) else value
