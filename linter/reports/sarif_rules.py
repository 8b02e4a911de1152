"""The rules and items behind the results of SARIF, pack by pack, each with help."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.audit.bases import bases_of, reference
from linter.language.print import to_text
from linter.packs.describe import sentence_text
from linter.packs.model import Rule
from linter.reports.sarif_words import LEVELS, Data, help_text
from linter.reports.sayings import cited, provenance
from linter.signoff.rule_mark import rules_and_items
from linter.vocabulary.kinds import KINDS

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.packs.model import Item, Pack


class Components:
    """The packs of a run as components of the tool, with the rules that its results name."""

    def __init__(self) -> None:
        self._packs: dict[tuple[str, ...], Pack] = {}
        self._rules: dict[tuple[str, ...], dict[str, int]] = {}

    def rule(self, pack: Pack, name: str) -> Data:
        """How a result names its rule."""
        key = pack.key, *(each.id for each in pack.layers)
        self._packs[key] = pack
        rules = self._rules.setdefault(key, {})
        index = rules.setdefault(name, len(rules))
        component = list(self._rules).index(key)
        return {"id": name, "index": index, "toolComponent": {"index": component}}

    def all(self) -> list[Data]:
        """The components, in the order in which they were first named."""
        return [_component(self._packs[key], rules) for key, rules in self._rules.items()]


def _component(pack: Pack, names: Iterable[str]) -> Data:
    known = rules_and_items(pack)
    own = pack.layer(pack.id)
    layers = [each.id for each in pack.layers]
    return {
        "name": pack.id,
        "version": own.version,
        "fullName": pack.title,
        "contents": ["localizedData", "nonLocalizedData"],
        "rules": [_descriptor(pack, known[name]) for name in names],
        "properties": {"layers": layers, "document": own.document, "edition": own.edition},
    }


def _descriptor(pack: Pack, rule: Rule | Item) -> Data:
    own = reference(rule.clause, rule.history.cited[1].layer)
    words = rule.name.replace("-", " ")
    return {
        "id": rule.name,
        "shortDescription": {"text": f"{words[:1].upper()}{words[1:]}."},
        "fullDescription": help_text([_needs(rule)]),
        "help": help_text(_help(pack, rule)),
        "defaultConfiguration": {"level": LEVELS[rule.weight]},
        "properties": {
            "weight": rule.weight,
            "tags": [rule.subject, rule.weight],
            "clause": own.clause,
            "document": own.document,
            "edition": own.edition,
            "known": own.known,
            "source": own.source,
            "provenance": provenance(own),
            "doubt": own.doubt,
            "layer": own.layer,
        },
    }


def _needs(rule: Rule | Item) -> str:
    about = f'Each {KINDS[rule.about].label}, from the stage "{rule.from_stage}" on'
    where = f", where {to_text(rule.where.node)}" if rule.where is not None else ""
    needs = to_text(rule.need.node) if isinstance(rule, Rule) else sentence_text(rule.ask)
    return f"{about}{where}: {needs}"


def _help(pack: Pack, rule: Rule | Item) -> Iterator[str]:
    own = reference(rule.clause, rule.history.cited[1].layer)
    yield _needs(rule)
    yield f"Do: {sentence_text(rule.do)}" if rule.do else ""
    yield f"Caution: {sentence_text(rule.caution)}" if rule.caution else ""
    yield f"Clause: {cited(own)}."
    yield f"Doubt: {own.doubt}" if own.doubt else ""
    if isinstance(rule, Rule):
        for basis in bases_of(pack, rule):
            value = f" {basis.value}" if basis.value else ""
            name = f"{basis.what} {basis.name.replace('_', ' ')}{value}"
            yield f"Uses the {name}: {cited(basis.reference)}."
    yield "A finding is for a person to confirm with the adopted code and those who enforce it."
