"""What the vocabulary says, in the words of a pack: the label of a fact, how it is learnt."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping


class Wording:
    """Puts the words that a pack shows in the place of ours, also where they stand in the plural.

    Only for what we say ourselves: a person's names for things stay as they are.

    >>> Wording({"bond": "equipment ground"}).of("Look where the bonds are joined, and bond screw.")
    'Look where the equipment grounds are joined, and equipment ground screw.'
    """

    def __init__(self, words: Mapping[str, str]) -> None:
        self._words = {name: word for name, word in words.items() if name != word}
        longest_first = sorted(self._words, key=len, reverse=True)
        names = "|".join(re.escape(name) for name in longest_first)
        self._pattern = re.compile(rf"\b({names})(s?)\b", re.IGNORECASE) if names else None

    def of(self, text: str) -> str:
        """The text in the words of the pack."""
        return self._pattern.sub(self._instead, text) if self._pattern else text

    def _instead(self, found: re.Match[str]) -> str:
        ours, plural = found.groups()
        word = self._words[ours.lower()] + plural
        return word if ours[0].islower() else word[0].upper() + word[1:]
