"""Two packs compared: what one has that the other has not, and what they state otherwise."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.packs.laid_out import CLAUSE, WORDING, Entry, laid_out

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.packs.model import Pack


class Difference(NamedTuple):
    """A field of an entry, as each side writes it; empty where a side has none."""

    field: str
    before: str
    after: str


class Changed(NamedTuple):
    """An entry that both packs have, and the fields in which they differ."""

    before: Entry
    after: Entry
    differences: tuple[Difference, ...]

    @property
    def is_renumbered(self) -> bool:
        """Whether nothing but the number of the clause differs."""
        return [each.field for each in self.differences] == [CLAUSE]

    @property
    def is_reworded(self) -> bool:
        """Whether nothing differs that the rule demands: its words, and perhaps its clause."""
        fields = {each.field for each in self.differences}
        return fields <= {CLAUSE, *WORDING} and fields != {CLAUSE}


class Comparison(NamedTuple):
    """What differs on the way from one pack to another.

    `related` says that they share a layer, so that a name means the same in both.
    """

    before: str
    after: str
    related: bool
    added: tuple[Entry, ...]
    gone: tuple[Entry, ...]
    changed: tuple[Changed, ...]

    @property
    def is_empty(self) -> bool:
        """Whether the two come to the same."""
        return not (self.added or self.gone or self.changed)


class Subject(NamedTuple):
    """What two packs hold on one subject: entries of the one, and of the other."""

    name: str
    before: tuple[Entry, ...]
    after: tuple[Entry, ...]


def compare(before: Pack, after: Pack) -> Comparison:
    """What differs between two packs, name by name, in the order of the packs.

    A pack compared with itself is empty; what is gone taken away from the first, and what is added
    or changed put in, gives the second.
    """
    old = {each.key: each for each in laid_out(before)}
    new = {each.key: each for each in laid_out(after)}
    both = [(each, new[key]) for key, each in old.items() if key in new]
    changed = (Changed(*pair, tuple(_differences(*pair))) for pair in both)
    return Comparison(
        before.id,
        after.id,
        are_related(before, after),
        tuple(each for key, each in new.items() if key not in old),
        tuple(each for key, each in old.items() if key not in new),
        tuple(each for each in changed if each.differences),
    )


def are_related(before: Pack, after: Pack) -> bool:
    """Whether two packs share a layer."""
    return not {each.id for each in before.layers}.isdisjoint(each.id for each in after.layers)


def by_subject(before: Pack, after: Pack) -> tuple[Subject, ...]:
    """The two packs side by side: for each subject, the rules of each and the values they use."""
    old, new = _of_subjects(laid_out(before)), _of_subjects(laid_out(after))
    return tuple(
        Subject(name, tuple(old.get(name, ())), tuple(new.get(name, ())))
        for name in dict.fromkeys([*old, *new])
    )


def _of_subjects(entries: Iterable[Entry]) -> dict[str, list[Entry]]:
    subjects: dict[str, list[Entry]] = {}
    for each in entries:
        for subject in each.subjects:
            subjects.setdefault(subject, []).append(each)
    return subjects


def _differences(before: Entry, after: Entry) -> Iterator[Difference]:
    for name in dict.fromkeys([*before.fields, *after.fields]):
        old, new = before.fields.get(name), after.fields.get(name)
        if old is None or new is None or old.value != new.value:
            yield Difference(name, old.written if old else "", new.written if new else "")
