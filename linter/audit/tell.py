"""Findings from verdicts: sentence, working, clause, facts relied on, fingerprint."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.audit.bases import bases_of, for_permits, reference
from linter.audit.findings import Finding
from linter.audit.relied import fingerprint, relied_on, told_of, used_by
from linter.language.work import WorkLine, working
from linter.packs.writing import write_sentence

if TYPE_CHECKING:
    from linter.audit.findings import Basis, Reference
    from linter.audit.stops import Walk
    from linter.facts import Facts
    from linter.language.writing import Writer
    from linter.packs.model import Pack, Rule, Sentence
    from linter.vocabulary.model import Thing


class Teller:
    """Says what there is to say of a rule that a thing breaks, in the words and units of a pack."""

    def __init__(
        self, pack: Pack, facts: Facts, walk: Walk, write: Writer, permit_date: str | None
    ) -> None:
        self._pack, self._facts, self._walk, self._write = pack, facts, walk, write
        self._permit_date = permit_date
        self._bases: dict[str, tuple[Basis, ...]] = {}

    def finding(self, rule: Rule, thing: Thing) -> Finding:
        """The finding that the thing breaks the rule."""
        used = used_by(rule, thing, self._pack.library)
        told = told_of(rule, thing, self._pack.library)
        return Finding(
            rule=rule.name,
            weight=rule.weight,
            reference=self._reference(rule),
            kind=thing.kind,
            ref=thing.ref,
            label=thing.label,
            stop=self._walk.stop_of(thing),
            place=thing.place,
            sentence=self._sentence(rule.say, thing),
            working=self._work(rule, thing),
            do=self._sentence(rule.do, thing),
            caution=self._sentence(rule.caution, thing),
            relies_on=relied_on(used, self._facts, self._write),
            rests_on=self._rests_on(rule),
            fingerprint=fingerprint(rule.name, thing, used | told, self._facts),
            stated_weight=rule.stated_weight,
            unsure=rule.unsure,
        )

    def _reference(self, rule: Rule) -> Reference:
        own = reference(rule.clause, rule.history.cited[1].layer)
        asked = "" if self._permit_date else for_permits(rule.permits)
        if not asked:
            return own
        doubt = f"{own.doubt} It is asked {asked}; the job does not say its day.".strip()
        return own._replace(doubt=doubt)

    def _rests_on(self, rule: Rule) -> tuple[Basis, ...]:
        if rule.name not in self._bases:
            self._bases[rule.name] = bases_of(self._pack, rule)
        return self._bases[rule.name]

    def _work(self, rule: Rule, thing: Thing) -> tuple[WorkLine, ...]:
        return working(rule.need, thing, self._pack.library, self._write)

    def _sentence(self, sentence: Sentence, thing: Thing) -> str:
        said = write_sentence(sentence, thing, self._pack.library, self._write)
        return said[:1].upper() + said[1:]
