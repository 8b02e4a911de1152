"""What a layer amended beneath a case that was stated before: why it comes out otherwise."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.packs.reliance import reliance_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.language.checked import Checked
    from linter.packs.model import History, Origin, Pack
    from linter.packs.proofs import Proof

_OF_A_CASE = ("where", "need", "from stage", "steps", "value", "set", "add", "remove")


def amended_since(pack: Pack, proof: Proof, expressions: Iterable[Checked]) -> str:
    """Which layer changed what a case rests on, above the layer of the case, and how to mend it.

    Empty where no layer did.
    """
    layers = [layer.id for layer in pack.layers]
    above = layers[layers.index(proof.layer) + 1 :]
    changes = [
        f"{said} at {origin.place}"
        for said, origin in _changes(pack, proof, expressions)
        if origin.layer in above
    ]
    if not changes:
        return ""
    mend = 'state the case as it comes out now in that layer, under "proves"'
    return f"This case is of {proof.layer}; since, {'; '.join(changes)}. To mend: {mend}."


def _history(pack: Pack, proof: Proof) -> History:
    if proof.what == "measure":
        return pack.measures[proof.about, proof.name].history
    return (pack.rule if proof.what == "rule" else pack.item)(proof.name).history


def _changes(
    pack: Pack, proof: Proof, expressions: Iterable[Checked]
) -> Iterator[tuple[str, Origin]]:
    """What amendments there are of the rule or measure and of all it relies on, in words."""
    used = reliance_of(expressions, pack.library)
    yield from _told(f"{proof.what} {proof.name} is amended", _history(pack, proof))
    for limit in used.limits:
        there = pack.limits[limit]
        yield from _told(f"limit {limit} is amended to {there.written}", there.history)
    for table in used.tables:
        yield from _told(f"table {table} is amended", pack.tables[table].history)
    for kind, measure in used.measures:
        if (kind, measure) != (proof.about, proof.name):
            history = pack.measures[kind, measure].history
            yield from _told(f"measure {measure} is amended", history)


def _told(said: str, history: History) -> Iterator[tuple[str, Origin]]:
    for amendment in history.amendments:
        if not set(_OF_A_CASE).isdisjoint(amendment.changed):
            yield said, amendment.origin
