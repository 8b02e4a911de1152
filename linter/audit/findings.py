"""What an audit says: findings, open questions, and where in the dwelling each of them belongs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from linter.vocabulary.kinds import KINDS

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.language.work import WorkLine
    from linter.packs.model import Unsure
    from linter.text import Place

WEIGHTS = ("danger", "violation", "advice")
"""The weights of rules, the heaviest first."""


class Reference(NamedTuple):
    """The clause that a rule rests on, and how we know of it.

    `known` is read, memory or common-practice; `source` is the published text in which it was read,
    in words; `doubt` is what is uncertain about it; `layer` is the pack that states the rule.
    `confidence` may be low; `unconfirmed_in` is the edition at hand, where it is not known to hold
    in that.
    """

    clause: str
    document: str
    edition: str
    known: str
    source: str
    doubt: str
    layer: str
    confidence: str = ""
    unconfirmed_in: str = ""


class Basis(NamedTuple):
    """A limit, table or measure that the working uses, with the clause that states it."""

    what: str
    name: str
    value: str
    reference: Reference


class Stop(NamedTuple):
    """Where one stops on the walk through the rooms: a box, a panel, a cable, or the thing itself.

    `order` places it on the walk; two findings of one stop stand under one heading.
    """

    room: str
    box: str
    circuit: str
    heading: str
    place: Place
    order: tuple[int, int, int]


class Relied(NamedTuple):
    """A fact that a finding was worked out from, with its value as the job writes it.

    `usual` says that it rests on a usual value of the job, `assumed` that it was taken as none,
    because the job says nothing of it.
    """

    kind: str
    ref: str
    fact: str
    value: str
    usual: bool
    assumed: bool = False


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that a person should look at, with everything needed to judge it.

    It weighs no more than advice while its reference is `unsure`; `stated_weight` is the pack's.

    Raises `ValueError` where clause, provenance or working are missing: such a finding is not made.
    """

    rule: str
    weight: str
    reference: Reference
    kind: str
    ref: str
    label: str
    stop: Stop
    place: Place
    sentence: str
    working: tuple[WorkLine, ...]
    do: str
    caution: str
    relies_on: tuple[Relied, ...]
    rests_on: tuple[Basis, ...]
    fingerprint: str
    stated_weight: str
    unsure: tuple[Unsure, ...] = ()

    def __post_init__(self) -> None:
        if not (self.reference.clause and self.reference.known and self.working):
            raise ValueError(f"{self.rule}: a finding needs clause, provenance and working")

    @property
    def usual(self) -> tuple[str, ...]:
        """The usual values of the job that it rests on, each once, in words."""
        return tuple(dict.fromkeys(self._named(each) for each in self.relies_on if each.usual))

    @property
    def assumed(self) -> tuple[str, ...]:
        """What was taken as none for it, each once, in words."""
        return tuple(dict.fromkeys(self._named(each) for each in self.relies_on if each.assumed))

    def _named(self, relied: Relied) -> str:
        kind = KINDS[relied.kind]
        fact = kind.fact(relied.fact)
        name = fact.label if fact is not None else relied.fact
        return name if relied.kind == self.kind else f"{name} of the {kind.label}"


class Asked(NamedTuple):
    """A thing to measure or look at."""

    ref: str
    label: str
    stop: Stop
    place: Place


class Answer(NamedTuple):
    """What the answers would settle for one rule, at the things named.

    `when` pairs each answer with its outcome (met, broken, does not apply); it is empty where that
    cannot be said beforehand. `needs_more` says whether the checks hang on other unknowns as well.
    """

    rule: str
    weight: str
    checks: int
    things: tuple[str, ...]
    when: tuple[tuple[str, str], ...]
    needs_more: bool


class OpenQuestion(NamedTuple):
    """A measurement that settles checks: `settles` hang on it alone, `helps` on more besides.

    `along` names what else those hang on; `everywhere` says that every box, or everything of
    the kind, is meant. `lacking` says what is missing where all facts are known, such as a row.
    """

    kind: str
    fact: str
    label: str
    ask: str
    lacking: str
    settles: int
    helps: int
    along: tuple[str, ...]
    weight: str
    things: tuple[Asked, ...]
    everywhere: bool
    answers: tuple[Answer, ...]


class Unlooked(NamedTuple):
    """A key of the job file that no rule of the pack looks at, and each place that states it.

    `of` names the kind of thing; it is empty for what stands by itself, such as the walls.
    """

    of: str
    key: str
    places: tuple[Place, ...]


class Assumed(NamedTuple):
    """What was taken as none at some things, because the job says nothing of it.

    `fact` of a thing of that kind would say it; `noun` is what is taken as none: "bundles".
    """

    kind: str
    fact: str
    noun: str
    things: tuple[str, ...]


class Look(NamedTuple):
    """One thing that an item of the walk-through is about, and what is recorded of it.

    `state` is one of `STATES`; `by`, `on` and `found` are as recorded. `lacking` says why a record
    does not count. `fingerprint` stays the same until the item or the thing is another.
    """

    ref: str
    label: str
    stop: Stop
    place: Place
    state: str
    by: str = ""
    on: str = ""
    found: str = ""
    lacking: str = ""
    fingerprint: str = ""


TO_BE_LOOKED_AT, OUT_OF_SIGHT = "to be looked at", "out of sight"
STATES = (TO_BE_LOOKED_AT, OUT_OF_SIGHT, "as it should be", "to be put right", "not applicable")


class WalkItem(NamedTuple):
    """An item of the walk-through at a job, with all things that it is about, in walking order.

    `everywhere` says that these are all the things of their kind that the job has.
    """

    item: str
    weight: str
    subject: str
    ask: str
    caution: str
    reference: Reference
    kind: str
    everywhere: bool
    looks: tuple[Look, ...]

    def those(self, *states: str) -> tuple[Look, ...]:
        """The looks that are in one of these states."""
        return tuple(each for each in self.looks if each.state in states)


class Held(NamedTuple):
    """How many of the rules in force weigh no more than advice until a reference is confirmed.

    `unconfirmed` of them rest on a clause that is not confirmed for the edition; the rest on one of
    low confidence.
    """

    rules: int
    of: int
    unconfirmed: int


class Audit(NamedTuple):
    """What an audit of one job says; `counts` and `cannot_tell` are numbers by weight.

    `locality` is the place whose day of permit chose the pack; it is empty where the job names one.
    """

    job: str
    stage: str
    pack: str
    title: str
    layers: tuple[str, ...]
    findings: tuple[Finding, ...]
    open: tuple[OpenQuestion, ...]
    checks: int
    counts: Mapping[str, int]
    cannot_tell: Mapping[str, int]
    unlooked: tuple[Unlooked, ...] = ()
    assumed: tuple[Assumed, ...] = ()
    walk_through: tuple[WalkItem, ...] = ()
    held: Held = Held(0, 0, 0)
    locality: str = ""
    permit_date: str = ""


def at_least(weight: str) -> tuple[str, ...]:
    """The weights that count when `weight` is the least that does.

    >>> at_least("violation")
    ('danger', 'violation')
    """
    return WEIGHTS[: WEIGHTS.index(weight) + 1]
