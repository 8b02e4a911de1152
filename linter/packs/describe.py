"""One rule of a pack laid open for printing: all it says, all it uses, and where each came from."""

from typing import NamedTuple

from linter.language.checked import Checked
from linter.language.print import to_text
from linter.packs.model import (
    Layer,
    Pack,
    PackLimit,
    PackMeasure,
    PackTable,
    Rule,
    Sentence,
)
from linter.packs.proofs import Proof, from_text
from linter.packs.reliance import reliance_of


class Described(NamedTuple):
    """A rule with the texts of its expressions and sentences, and all it uses, also by measures.

    `layer` is the layer its need comes from. Limits, tables and measures carry their own history;
    `facts` are those it may ask, as kind and name.
    """

    rule: Rule
    layer: Layer
    where: str
    need: str
    say: str
    do: str
    caution: str
    limits: tuple[PackLimit, ...]
    tables: tuple[PackTable, ...]
    measures: tuple[PackMeasure, ...]
    facts: tuple[tuple[str, str], ...]
    proofs: tuple[Proof, ...]


def describe(pack: Pack, name: str) -> Described:
    """The rule of that name laid open; `KeyError` where there is none."""
    rule = pack.rule(name)
    conditions = [each for each in (rule.where, rule.need) if each is not None]
    spoken = [part for part in (*rule.say, *rule.do, *rule.caution) if isinstance(part, Checked)]
    used = reliance_of([*conditions, *spoken], pack.library)
    return Described(
        rule,
        pack.layer(rule.history.origin_of("need").layer),
        to_text(rule.where.node) if rule.where is not None else "",
        to_text(rule.need.node),
        sentence_text(rule.say),
        sentence_text(rule.do),
        sentence_text(rule.caution),
        tuple(pack.limits[each] for each in used.limits),
        tuple(pack.tables[each] for each in used.tables),
        tuple(pack.measures[each] for each in used.measures),
        used.facts,
        tuple(
            proof for proof in from_text(pack.proofs) if (proof.what, proof.name) == ("rule", name)
        ),
    )


def sentence_text(sentence: Sentence) -> str:
    """The sentence as a pack states it, with its values in braces."""
    return "".join(
        part if isinstance(part, str) else f"{{{to_text(part.node)}}}" for part in sentence
    )


def steps_of(measure: PackMeasure) -> tuple[tuple[str, str], ...]:
    """The steps of a measure as name and expression."""
    return tuple((name, to_text(step.node)) for name, step in measure.measure.steps)
