"""The checks that cannot be told, one by one, each with a fingerprint as a finding has it."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.audit.questions import lacks_of
from linter.audit.relied import fingerprint, used_by
from linter.audit.stops import Walk
from linter.audit.wording import Wording
from linter.packs.writing import writer_of
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import FactRef

if TYPE_CHECKING:
    from collections.abc import Container

    from linter.audit.audit import Examined
    from linter.audit.findings import Stop
    from linter.audit.judging import Untold
    from linter.language.verdict import Reason
    from linter.text import Place


class ToLearn(NamedTuple):
    """A fact that a check hangs on: of which thing, in words, and how a person learns it.

    Where all facts are known, `fact` says what is missing, such as a row, and `ask` is empty.
    """

    kind: str
    ref: str
    fact: str
    ask: str


class OpenCheck(NamedTuple):
    """A rule that cannot be told of a thing, and what to learn for it."""

    rule: str
    weight: str
    kind: str
    ref: str
    label: str
    stop: Stop
    place: Place
    to_learn: tuple[ToLearn, ...]
    fingerprint: str


def open_checks(
    examined: Examined, only: Container[tuple[str, str, str]] | None = None
) -> tuple[OpenCheck, ...]:
    """All of them, as one walks through the rooms; or `only` those of these rules and things.

    `only` has the rule, and the kind and name of the thing: telling all of a large job takes long.
    """
    tell = _Telling(examined)
    found = [
        tell.check(each)
        for each in examined.untold
        if only is None or (each.rule.name, each.thing.kind, each.thing.ref) in only
    ]
    return tuple(sorted(found, key=lambda each: (each.stop.order, each.rule)))


class _Telling:
    """Says what there is to say of a check, in the words of the pack."""

    def __init__(self, examined: Examined) -> None:
        self._facts, self._library = examined.facts, examined.pack.library
        self._walk = Walk(examined.facts.things)
        self._wording = Wording(examined.pack.words)
        self._lacks = lacks_of(self._library, writer_of(examined.pack))

    def check(self, untold: Untold) -> OpenCheck:
        rule, thing, because = untold
        used = used_by(rule, thing, self._library)
        return OpenCheck(
            rule=rule.name,
            weight=rule.weight,
            kind=thing.kind,
            ref=thing.ref,
            label=thing.label,
            stop=self._walk.stop_of(thing),
            place=thing.place,
            to_learn=tuple(sorted(map(self._to_learn, because))),
            fingerprint=fingerprint(rule.name, thing, used, self._facts),
        )

    def _to_learn(self, reason: Reason) -> ToLearn:
        if not isinstance(reason, FactRef):
            return ToLearn("", "", self._lacks(reason), "")
        fact = KINDS[reason.kind].fact(reason.fact)
        label, ask = (fact.label, fact.ask) if fact else (reason.fact, "")
        return ToLearn(reason.kind, reason.ref, self._wording.of(label), self._wording.of(ask))
