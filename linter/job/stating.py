"""Where in a job file something is stated, and what may stand there."""

from collections.abc import Mapping
from typing import NamedTuple

Step = str | int
Way = tuple[Step, ...]
"""The keys, and the positions in lists, that lead to a place in a job file."""

ANSWER = "?"


class Accepts(NamedTuple):
    """What may stand at a place: one of these words, or a text of a format ("length", "count").

    `means` is what the schema says of the place, `example` one value of it.
    """

    words: tuple[str, ...]
    format: str
    means: str
    example: str


class Stating(NamedTuple):
    """The way to where a fact is stated; `item` is what is added to a list that the way leads to.

    In an item the answer takes the place of `ANSWER`. `instead` is a word that says there is
    nothing of the kind, and the way to where that is said.
    """

    way: Way
    accepts: Accepts
    item: Mapping[str, str] | None = None
    instead: tuple[str, Way] | None = None
