"""What an expression may speak of: its subject, and the names the pack has for it."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.vocabulary.model import FactType


class KeyShape(NamedTuple):
    """One key of a table: its name, its type, how it is looked up, its words if it has any."""

    name: str
    type: FactType
    how: str
    words: frozenset[str] = frozenset()


class TableShape(NamedTuple):
    """The keys of a table, in order, and the types of its columns by name."""

    keys: tuple[KeyShape, ...]
    columns: Mapping[str, FactType]


class Scope(NamedTuple):
    """The names an expression may use.

    `subject` is a kind of thing. `measures` are by kind and name. `steps` are those before this one
    in its measure. `lists` are limits that are lists of words.
    """

    subject: str
    limits: Mapping[str, FactType] = {}
    lists: Mapping[str, tuple[str, ...]] = {}
    tables: Mapping[str, TableShape] = {}
    measures: Mapping[tuple[str, str], FactType] = {}
    steps: Mapping[str, FactType] = {}
