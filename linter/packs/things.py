"""Things made from the facts of a proof, and what a proof says nothing of."""

import re
from collections.abc import Mapping

from linter.packs.proofs import Proof
from linter.text import Place
from linter.units import Unknown
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import Fact, FactRef, Shape, Thing


def subject_of(proof: Proof) -> Thing:
    """The subject of a proof with the facts it gives; other facts are missing, not unknown."""
    return _thing(proof.about, proof.about, proof.facts, proof.place)


def path_of(ref: FactRef) -> str:
    """The path by which a proof names a fact of a thing that it made.

    >>> path_of(FactRef("wire_end", "box.wire_ends[2]", "size"))
    'box.wire_ends.size'
    """
    return re.sub(r"\[\d+\]", "", f"{ref.ref}.{ref.fact}")


def _thing(kind: str, ref: str, facts: Mapping[str, object], place: Place) -> Thing:
    values: dict[str, object] = {}
    written: dict[str, str] = {}
    declared = {fact.name: fact for fact in KINDS[kind].facts}
    for name, stated in facts.items():
        fact = declared[name]
        values[name] = _value(kind, ref, fact, stated, place)
        if fact.type.shape is Shape.QUANTITY and isinstance(stated, list):
            written[name] = str(stated[1])
    label = ref.rpartition(".")[2].replace("_", " ")
    return Thing(kind, ref, place, values, label=label, written=written)


def _value(kind: str, ref: str, fact: Fact, stated: object, place: Place) -> object:
    if stated is None:
        return Unknown([FactRef(kind, ref, fact.name)])
    below = f"{ref}.{fact.name}"
    if isinstance(stated, dict):
        return _thing(fact.type.kind, below, stated, place)
    if not isinstance(stated, list):
        return stated
    if fact.type.shape is Shape.QUANTITY:
        return float(stated[0])
    return tuple(
        _thing(fact.type.kind, f"{below}[{number}]", each, place)
        for number, each in enumerate(stated, 1)
    )
