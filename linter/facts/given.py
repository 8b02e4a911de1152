"""The facts that a job states outright, taken from its models with text, place and usual values."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from linter.facts.left_out import LEFT_OUT, NOTHING
from linter.units import Quantity, Unknown
from linter.vocabulary.model import FactRef, Thing
from linter.vocabulary.shorthand import NOT_STATED

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.job.stated import Stated
    from linter.text import Place


def unknown(kind: str, ref: str, fact: str) -> Unknown:
    """The unknown that hangs on one fact of one thing.

    >>> unknown("cable", "k1", "size")
    Unknown(["FactRef(kind='cable', ref='k1', fact='size')"])
    """
    return Unknown((FactRef(kind, ref, fact),))


def word_of(model: Stated, field: str) -> str | None:
    """The word that a field states, yes and no too; None is unknown, left out is not stated."""
    value = getattr(model, field)
    if not model.says(field):
        return NOT_STATED
    return ("yes" if value else "no") if isinstance(value, bool) else value


class Given:
    """What one model of a job states, being gathered into the facts of one thing.

    `fields` names the field of the model for each fact that is stated as it is; the rest is put in
    with `put`. What the job leaves open hangs on the fact itself, unless another unknown is given;
    what is taken as none because the job leaves it out is `assumed`.
    """

    __slots__ = (
        "_left_out", "_places", "assumed", "kind", "model", "ref", "stated_at", "usual", "values",
        "written",
    )  # fmt: skip

    def __init__(self, kind: str, ref: str, model: Stated, fields: Mapping[str, str]) -> None:
        self.kind = kind
        self.ref = ref
        self.model = model
        self._places = model.field_places
        self._left_out = LEFT_OUT.get(kind, NOTHING)
        self.values: dict[str, object] = {}
        self.written: dict[str, str] = {}
        self.stated_at: dict[str, Place] = {}
        self.usual: set[str] = set()
        self.assumed: dict[str, FactRef] = {}
        for fact, field in fields.items():
            self.put(fact, getattr(model, field), field)

    def put(self, fact: str, value: object, field: str = "") -> None:
        """The value of a fact that follows from a field; None is unknown, a count a float."""
        if value is None:
            value = unknown(self.kind, self.ref, fact)
        elif type(value) is Quantity:
            if value.written:
                self.written[fact] = value.written
            value = value.value
        elif type(value) is int:
            value = float(value)
        self.values[fact] = value
        if field in self._places:
            self._rests_on(fact, field)
        elif field in self._left_out and not isinstance(value, Unknown):
            self.assumed[fact] = FactRef(self.kind, self.ref, self._left_out[field].fact)

    def own_unknown(self, fact: str) -> Unknown:
        """The unknown that hangs on this fact of this thing."""
        return unknown(self.kind, self.ref, fact)

    def thing(self, label: str) -> Thing:
        """The thing with the facts gathered so far."""
        return Thing(
            self.kind,
            self.ref,
            self.model.place,
            self.values,
            label=label,
            written=self.written,
            stated_at=self.stated_at,
            usual=_kept_once(frozenset(self.usual)),
            assumed=self.assumed,
        )

    def _rests_on(self, fact: str, field: str) -> None:
        self.stated_at[fact] = self._places[field]
        if field in self.model.usual:
            self.usual.add(fact)


@lru_cache
def _kept_once(names: frozenset[str]) -> frozenset[str]:
    """The names as they were kept before: most things of a kind rest on the same usual values."""
    return names
