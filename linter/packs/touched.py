"""What one layer of a pack touches, so that its proofs can be run without those below.

A case comes out by its rule or measure and by the limits, tables and measures that this relies on.
Where the layer states or amends none of them, and no case, it comes out as it does below the layer,
where it has its own proof.
"""

from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from linter.language.checked import Checked
from linter.packs.model import History, Pack
from linter.packs.proofs import Proof
from linter.packs.reliance import reliance_of

Proved = tuple[str, str, str]


class Touched(NamedTuple):
    """The cases that hang on a layer, by what they prove, and the tables that it touches."""

    cases: Mapping[Proved, Sequence[Proof]]
    tables: frozenset[str]


def touched_by(pack: Pack, layer: str, cases: Mapping[Proved, Sequence[Proof]]) -> Touched:
    """What of the cases of a pack hangs on what a layer states, amends or proves."""
    limits = {name for name, each in pack.limits.items() if _is_of(each.history, layer)}
    tables = {
        name
        for name, each in pack.tables.items()
        if _is_of(each.history, layer) or any(row.origin.layer == layer for row in each.rows)
    }
    measures = {key for key, each in pack.measures.items() if _is_of(each.history, layer)}

    def hangs(key: Proved, proofs: Iterable[Proof]) -> bool:
        used = reliance_of(_expressions(pack, key), pack.library)
        return (
            any(proof.layer == layer for proof in proofs)
            or _is_of(_history(pack, key), layer)
            or not limits.isdisjoint(used.limits)
            or not tables.isdisjoint(used.tables)
            or not measures.isdisjoint(used.measures)
        )

    kept = {key: proofs for key, proofs in cases.items() if hangs(key, proofs)}
    return Touched(kept, frozenset(tables))


def _is_of(history: History, layer: str) -> bool:
    return layer in {history.origin.layer, *(each.origin.layer for each in history.amendments)}


def _history(pack: Pack, key: Proved) -> History:
    what, about, name = key
    if what == "measure":
        return pack.measures[about, name].history
    return (pack.rule(name) if what == "rule" else pack.item(name)).history


def _expressions(pack: Pack, key: Proved) -> list[Checked]:
    what, about, name = key
    if what == "measure":
        return [step for _, step in pack.measures[about, name].measure.steps]
    if what == "item":
        where = pack.item(name).where
        return [] if where is None else [where]
    rule = pack.rule(name)
    return [each for each in (rule.where, rule.need) if each is not None]
