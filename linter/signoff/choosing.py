"""The findings and open checks of which something can be said, and those a person means."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, NamedTuple

from linter.audit.findings import Finding
from linter.signoff.rule_mark import rule_mark, rules_and_items
from linter.signoff.said import Item
from linter.signoff.sayings import AGREED
from linter.signoff.standing import key_of
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from linter.audit.audit import Examined
    from linter.audit.open_checks import OpenCheck
    from linter.signoff.said import Entry, SignOffs
    from linter.text import Place

SHORT_MARK = 8
"""The figures of a mark that are shown, where that is enough to tell it from all others."""

FINDING, OPEN, GONE = "finding", "open", "gone"


class Candidate(NamedTuple):
    """Something of which a person may say something.

    It is a finding, an open check, or gone: agreed before, and not found any more. `names` are the
    words by which its place is meant: of the thing, box, room, circuits and line.
    """

    what: str
    item: Item
    names: frozenset[str]
    place: Place


class NotMeant(Exception):
    """A word that names none of the candidates, or several where one is meant."""

    def __init__(self, found: str, allowed: Iterable[str]) -> None:
        super().__init__(found)
        self.found = found
        self.allowed = tuple(dict.fromkeys(allowed))


def candidates(
    examined: Examined, checks: Sequence[OpenCheck], said: SignOffs | None
) -> tuple[Candidate, ...]:
    """All of a job, as one walks through the rooms: findings, open checks, then what is gone."""
    rules = rules_and_items(examined.pack)
    marks: dict[str, str] = {}

    def item(found: Finding | OpenCheck) -> Item:
        if found.rule not in marks:
            marks[found.rule] = rule_mark(examined.pack, rules[found.rule])
        return Item(
            *key_of(found), found.fingerprint, marks[found.rule], found.weight, _words(found)
        )

    every: tuple[Finding | OpenCheck, ...] = (*examined.audit.findings, *checks)
    here = [Candidate(_what(each), item(each), _names(each), each.place) for each in every]
    found = {each.item.key for each in here}
    latest = said.latest().values() if said else ()
    gone = [_gone(each) for each in latest if _is_gone(each, found)]
    return (*here, *gone)


def chosen(
    of: Sequence[Candidate], marks: Sequence[str], rules: Sequence[str], places: Sequence[str]
) -> tuple[Candidate, ...]:
    """Those that the words mean: by one of the marks, of one of the rules, at one of the places.

    Where nothing is named of one sort, all are meant of that sort. Raises `NotMeant`.
    """
    for mark in marks:
        _one_by_mark(of, mark)
    for rule in rules:
        _some(rule, "rule", [each.item.rule for each in of])
    for place in places:
        _some(place, "place", [name for each in of for name in sorted(each.names)])
    return tuple(
        each
        for each in of
        if (not marks or each.item.mark.startswith(tuple(marks)))
        and (not rules or each.item.rule in rules)
        and (not places or not each.names.isdisjoint(places))
    )


def _one_by_mark(of: Sequence[Candidate], mark: str) -> None:
    found = [each.item for each in of if each.item.mark.startswith(mark)]
    if not found:
        raise NotMeant(f'No finding here has a mark that begins with "{mark}"', ())
    if len(found) > 1:
        marks = join_words([each.mark for each in found])
        raise NotMeant(f'Several marks begin with "{mark}": {marks}', ())


def _some(word: str, what: str, allowed: Sequence[str]) -> None:
    if word not in allowed:
        raise NotMeant(f'Nothing is found here by the {what} "{word}"', allowed)


def _what(found: Finding | OpenCheck) -> str:
    return FINDING if isinstance(found, Finding) else OPEN


def _words(found: Finding | OpenCheck) -> str:
    if isinstance(found, Finding):
        return found.sentence
    facts = join_words(list(dict.fromkeys(each.fact for each in found.to_learn)))
    return f"It cannot be told of {found.label}: {facts}."


def _names(found: Finding | OpenCheck) -> frozenset[str]:
    stop = found.stop
    circuits = re.split(r",? and |, ", stop.circuit)
    names = {found.ref, *re.split(r"[@ ]", found.ref), found.ref.partition(".")[0], found.label}
    line = str(found.place.line)
    names |= {stop.room, stop.box, stop.heading, *circuits, line, f"line {line}"}
    return frozenset(names - {""})


def _is_gone(entry: Entry, found: set[tuple[str, str, str]]) -> bool:
    return entry.saying.says == AGREED and entry.item.key not in found


def _gone(entry: Entry) -> Candidate:
    names = frozenset((entry.item.ref, *re.split(r"[@ ]", entry.item.ref)))
    return Candidate(GONE, entry.item, names, entry.place)
