"""Findings that are one thing to look at: siblings of one rule, at one place, worked out alike."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.signoff.standing import NOTHING_SAID, alike_in
from linter.text import join_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.audit.findings import Finding, Stop
    from linter.reports.earlier import News
    from linter.signoff.standing import SignedOff, Standing


class Entry(NamedTuple):
    """A finding to show, and its siblings: the same of other things at the same place.

    `standing` is what was said of them by a person, if anything was; `state` and `news` tell, in a
    word and in a sentence, what is new of them, where an earlier audit is named.
    """

    first: Finding
    others: tuple[Finding, ...]
    standing: Standing | None = None
    state: str = ""
    news: str = ""

    @property
    def all(self) -> tuple[Finding, ...]:
        """Every finding that it stands for."""
        return (self.first, *self.others)


def entries(
    findings: Iterable[Finding], signed: SignedOff = NOTHING_SAID, news: News | None = None
) -> tuple[Entry, ...]:
    """The findings as a person counts them, in the order of the first of each.

    Siblings break one rule at one place, with one working, and the same is said of each but for its
    name. The place is the box; of what lies in no box it is the circuit, since a circuit is mended
    as a whole. What was said of siblings is the same, too.
    """
    alike: dict[object, list[Finding]] = {}
    for finding in findings:
        standing = signed.of(finding)
        told = standing and alike_in(standing), news and news.of(finding)
        alike.setdefault((_same(finding), told), []).append(finding)
    return tuple(_entry(group, signed, news) for group in alike.values())


def _entry(group: list[Finding], signed: SignedOff, news: News | None) -> Entry:
    first, *others = group
    told = (news.of(first), news.told(first)) if news else ("", "")
    return Entry(first, tuple(others), signed.of(first), *told)


def named(others: Iterable[Finding], line: int) -> str:
    """The siblings by name, what their names end in alike said once; places off `line` are told."""
    others = tuple(others)
    places = {each.place.line for each in others}
    if places == {line}:
        return _with_common_end([each.label for each in others])
    return "; ".join(f"{each.label} (line {each.place.line})" for each in others)


def _same(finding: Finding) -> tuple[object, ...]:
    said = finding.sentence[1:].replace(finding.label[1:], "")
    return (
        finding.rule, finding.weight, finding.reference, finding.do, finding.caution,
        _place(finding.stop), finding.working, said,
    )  # fmt: skip


def _place(stop: Stop) -> tuple[str, str]:
    if stop.box or not stop.circuit:
        return stop.room, stop.heading
    return "circuit", stop.circuit


def _with_common_end(labels: list[str]) -> str:
    """The labels joined as one reads them.

    >>> _with_common_end(["white of k2 in bench", "bare of k2 in bench"])
    'white and bare of k2 in bench'
    """
    words = [label.split(" ") for label in labels]
    end = list(_common_end(words)) if len(words) > 1 else []
    heads = [" ".join(each[: len(each) - len(end)]) for each in words]
    return " ".join([join_words(heads), *reversed(end)])


def _common_end(words: list[list[str]]) -> Iterator[str]:
    """The words in which all end, from the last on; the first of each is never one of them."""
    shortest = min(map(len, words))
    for number in range(1, shortest):
        last = {each[-number] for each in words}
        if len(last) > 1:
            return
        yield last.pop()
