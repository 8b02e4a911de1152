"""What judging a rule on a thing comes to: met, broken, does not apply, or cannot be told."""

from __future__ import annotations

from enum import Enum
from typing import NamedTuple

from linter.vocabulary.model import FactRef


class Verdict(Enum):
    """A judgement that can be told."""

    MET = "met"
    BROKEN = "broken"
    DOES_NOT_APPLY = "does not apply"


class NoRow(NamedTuple):
    """A table has no value for keys that are known; `facts` are those the keys come from."""

    table: str
    keys: tuple[float | str | bool, ...]
    facts: frozenset[FactRef] = frozenset()


class NoQuotient(NamedTuple):
    """Something was to be divided by nothing; `facts` are those the divisor comes from."""

    facts: frozenset[FactRef]


Reason = FactRef | NoRow | NoQuotient


class CannotTell(NamedTuple):
    """A judgement that hangs on what is not known: `because` names all of it, and no more."""

    because: frozenset[Reason]


Judgement = Verdict | CannotTell
