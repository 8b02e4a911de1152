"""Sentences that every report says the same way: caution, closing line, provenance, counts."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.audit.findings import WEIGHTS, Assumed, Audit, Held, Reference
from linter.text import join_words
from linter.vocabulary.kinds import KINDS

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from linter.packs.model import Unsure

CAUTION = (
    "An aid for a person to confirm, not an approval. Switch off, lock, and test before touching. "
    "What is not in the job file was not looked at."
)
BADGES = {"danger": " DANGER ", "violation": " VIOLATION ", "advice": " ADVICE "}
CARD_CAUTION = "An aid to confirm, not an approval. Switch off, lock, test first."
CLOSING = (
    "What holds is decided by the adopted code, the authority having jurisdiction and a licensed "
    "electrician; confirm each line with them before the walls are closed."
)

KNOWN_IN_WORDS = {"read": "read", "memory": "from memory", "common-practice": "common practice"}
_COUNTED = {
    "danger": ("danger", "dangers"),
    "violation": ("violation", "violations"),
    "advice": ("piece of advice", "pieces of advice"),
}


def provenance(reference: Reference) -> str:
    """How the clause is known, in words.

    >>> provenance(Reference("4-2", "Example code", "first", "read", "handout 7", "", "county"))
    'read in handout 7'
    """
    words = KNOWN_IN_WORDS[reference.known]
    if reference.known == "read":
        return f"{words} in {reference.source}" if reference.source else words
    return f"{words} ({reference.source})" if reference.source else words


def cited(reference: Reference) -> str:
    """The clause with its document and edition, and how it is known.

    >>> cited(Reference("4-2", "Example code", "first", "memory", "", "", "county"))
    '4-2 of Example code first, from memory'
    """
    return f"{_numbered(reference)}, {provenance(reference)}"


def cited_briefly(reference: Reference) -> str:
    """The clause with its edition and how it is known, where one line after the other cites.

    >>> cited_briefly(Reference("4-2", "Example code", "first", "read", "handout 7", "", "county"))
    '4-2 of Example code first, read'
    """
    return f"{_numbered(reference)}, {KNOWN_IN_WORDS[reference.known]}"


def _numbered(reference: Reference) -> str:
    """The clause of its document; what rests on no clause says why it stands.

    >>> _numbered(Reference("none: the outlet is to work", "Code", "1", "memory", "", "", "county"))
    'no clause: the outlet is to work'
    """
    none, found, why = reference.clause.partition("none: ")
    if found and not none:
        return f"no clause: {why}"
    of = " ".join(part for part in (reference.document, reference.edition) if part)
    return f"{reference.clause}{f' of {of}' if of else ''}"


def wants_confirming(unsure: Iterable[Unsure], own: Reference, stated_weight: str) -> str:
    """What of a finding's references wants confirming, and what it weighs once that is done.

    >>> from linter.packs.model import Unsure
    >>> low = Unsure("rule", "box-has-room", "low confidence")
    >>> own = Reference("4-2", "Example code", "first", "memory", "", "", "county")
    >>> wants_confirming([low], own, "violation")
    'reference of low confidence; advice until it is confirmed, then violation'
    """
    said = join_words(list(dict.fromkeys(_unsure(each, own) for each in unsure)))
    then = (
        "" if stated_weight == "advice" else f"; advice until it is confirmed, then {stated_weight}"
    )
    return said + then


def _unsure(unsure: Unsure, own: Reference) -> str:
    of = (
        ""
        if unsure.what in ("rule", "item")
        else f" of the {unsure.what} {unsure.name.replace('_', ' ')}"
    )
    if unsure.why == "low confidence":
        return f"reference{of} of low confidence"
    return f"reference{of} not confirmed for this edition ({own.unconfirmed_in})"


def held_to_advice(held: Held) -> str:
    """How many rules are held to advice, and why.

    >>> held_to_advice(Held(2, 90, 0))
    '2 of 90 rules are held to advice: 2 for a reference of low confidence.'
    """
    low = held.rules - held.unconfirmed
    why = [
        f"{number} for a reference {what}"
        for number, what in (
            (held.unconfirmed, "not confirmed for this edition"),
            (low, "of low confidence"),
        )
        if number
    ]
    return f"{held.rules} of {held.of} rules are held to advice: {join_words(why)}."


def judged_by(audit: Audit) -> str:
    """The pack that an audit goes by, with its layers, and how it was chosen."""
    layers = "".join(f", then {layer}" for layer in audit.layers)
    chosen = f", which holds in {audit.locality} for a permit of {audit.permit_date}"
    return f"{audit.title} ({audit.pack}{layers}){chosen if audit.locality else ''}"


def counted(number: int, one: str, many: str) -> str:
    """The number with its noun.

    >>> counted(1, "box", "boxes"), counted(9, "box", "boxes")
    ('1 box', '9 boxes')
    """
    return f"{number} {one if number == 1 else many}"


def counted_by_weight(counts: Mapping[str, int]) -> str:
    """The findings by weight, the heaviest first.

    >>> counted_by_weight({"danger": 1, "violation": 2, "advice": 0})
    '1 danger, 2 violations and 0 pieces of advice'
    """
    return join_words([counted(counts[weight], *_COUNTED[weight]) for weight in WEIGHTS])


def weighed(counts: Mapping[str, int]) -> list[str]:
    """The findings by weight, the heaviest first, without those of which there are none.

    >>> weighed({"danger": 1, "violation": 2, "advice": 0})
    ['1 danger', '2 violations']
    """
    return [counted(counts[each], *_COUNTED[each]) for each in WEIGHTS if counts[each]]


def taken_as_none(assumed: Iterable[Assumed]) -> Iterator[str]:
    """What was taken as none and of how many things; what is so at the same things together.

    >>> bundles = Assumed("cable", "bundled_conductors", "bundles", ("k1", "k2"))
    >>> list(taken_as_none([bundles]))
    ['bundles of 2 cables']
    """
    nouns: dict[tuple[str, tuple[str, ...]], list[str]] = {}
    for each in assumed:
        nouns.setdefault((each.kind, each.things), []).append(each.noun)
    for (name, things), said in nouns.items():
        kind = KINDS[name]
        of = counted(len(things), kind.label, kind.plural)
        yield f"{join_words(said)} of {of}"
