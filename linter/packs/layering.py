"""Layers laid on each other: what they add, amend and withdraw, with all that is refused.

Everything happens on entries as stated; what they mean is checked afterwards, on the result.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from linter.packs.entries import WHATS, Change, Entry, Key, Stated, added, changes, what_of
from linter.packs.order import stands_on
from linter.packs.rows import ROW_WORDS, change_rows, rows_touched
from linter.packs.texts import PackFiles
from linter.text import Place, Refusal, nearest
from linter.text.yaml_places import Node
from linter.units import NotAQuantity, read_quantity

EVERYWHERE = "everywhere"
_NO_FIELDS = (*WHATS, "about", "clause", "reason", *ROW_WORDS)


@dataclass(slots=True)
class Laid:
    """What the layers come to: entries in order, and what was taken away by which change."""

    entries: dict[Key, Entry] = field(default_factory=dict)
    withdrawn: dict[Key, Change] = field(default_factory=dict)


def lay(
    packs: Mapping[str, PackFiles], ordered: Sequence[PackFiles], refusals: list[Refusal]
) -> Laid:
    """The packs laid on each other, the lowest first; what is refused is added to `refusals`."""
    laying = _Laying(packs, refusals)
    for pack in ordered:
        for entry in added(pack, refusals):
            laying.add(entry)
        for node in changes(pack, "amends"):
            laying.amend(node, pack.id)
        for node in changes(pack, "withdraws"):
            laying.withdraw(node, pack.id)
    return laying.laid


class _Laying:
    """The work of laying, with who touched what."""

    def __init__(self, packs: Mapping[str, PackFiles], refusals: list[Refusal]) -> None:
        self.packs, self.refusals = packs, refusals
        self.laid = Laid()
        self.touched: dict[Key, list[tuple[str, Place]]] = {}
        self.amended: dict[tuple[str, Key, object], Place] = {}

    def add(self, entry: Entry) -> None:
        if self.clashes(entry.key, entry.layer, entry.place):
            return
        first = self.laid.entries.get(entry.key)
        if first is None:
            self.laid.entries[entry.key] = entry
            self.laid.withdrawn.pop(entry.key, None)
        elif first.layer == entry.layer:
            self.refuse(
                entry.place,
                f"{_begin(entry.key)} is stated twice",
                "rename one of them",
                (first.place, "first stated"),
            )
        else:
            self.refuse(
                entry.place,
                f"{_begin(entry.key)} is there already",
                'put the change under "amends", or give it another name',
                (first.place, "stated"),
            )

    def amend(self, node: Node, layer: str) -> None:
        entry = self.find(node, layer)
        if entry is None or self.is_own(entry, node, layer, "amended"):
            return
        if self.is_doubled(entry, node, layer):
            return
        change = Change(node, layer)
        names = [name for name in node.fields if name not in _NO_FIELDS]
        kept = [name for name in names if not self.set_field(entry, name, node, layer)]
        for name in kept:
            self.refuse(
                node.keys[name],
                f'"{name}" is amended to what it is',
                "leave it out, or write what it is to be",
            )
        rows = change_rows(entry, node, layer, self.refusals)
        if not names and not set(ROW_WORDS) & set(node.fields):
            self.refuse(
                node.place,
                f"The amendment of {entry.key} changes nothing",
                "say what it is to be, or leave the amendment out",
            )
        change.changed = (*(name for name in names if name not in kept), *rows)
        entry.changes.append(change)

    def is_own(self, entry: Entry, node: Node, layer: str, done: str) -> bool:
        """Whether the layer itself states the entry; then it is refused."""
        if entry.layer == layer:
            self.refuse(
                node.place,
                f"{_begin(entry.key)} is new in this layer, and {done} in it",
                "write it as it is to be where it is stated, and leave this out",
                (entry.place, "stated"),
            )
            return True
        return False

    def is_doubled(self, entry: Entry, node: Node, layer: str) -> bool:
        """Whether the layer amends the same part of the entry elsewhere; then it is refused.

        Were the later one to hold, the name of a file would decide what is in force.
        """
        parts: list[tuple[object, str, Place]] = [
            (name, f'"{name}"', place)
            for name, place in node.keys.items()
            if name not in _NO_FIELDS
        ]
        doubled = False
        for part, shown, place in [*parts, *rows_touched(entry, node)]:
            first = self.amended.setdefault((layer, entry.key, part), place)
            if first != place:
                doubled = True
                self.refuse(
                    place,
                    f"{_begin(entry.key)} is amended twice in this layer: its {shown}",
                    "keep one of the two",
                    (first, "first amended"),
                )
        return doubled

    def set_field(self, entry: Entry, name: str, node: Node, layer: str) -> bool:
        """Whether the field became another one."""
        old, new = entry.fields.get(name), node.fields[name]
        if name == "where" and new.text == EVERYWHERE:
            return entry.fields.pop("where", None) is not None
        if old is not None and (
            _same(old.node, new) or (name == "value" and _reads_alike(old, new))
        ):
            return False
        if old is not None:
            entry.before[name] = old
        entry.fields[name] = Stated(new, layer)
        return True

    def withdraw(self, node: Node, layer: str) -> None:
        entry = self.find(node, layer)
        if entry is None or self.is_own(entry, node, layer, "withdrawn"):
            return
        own = [change for change in entry.changes if change.layer == layer]
        if own:
            self.refuse(
                node.place,
                f"{_begin(entry.key)} is amended and withdrawn in this layer",
                "keep one of the two",
                (own[0].place, "amended"),
            )
        else:
            del self.laid.entries[entry.key]
            self.laid.withdrawn[entry.key] = Change(node, layer)

    def find(self, node: Node, layer: str) -> Entry | None:
        """The entry that an amendment or a withdrawal names; None where it is refused."""
        what = what_of(node)
        if what is None:
            self.refuse(
                node.place,
                "This does not name one thing that is to change or fall away",
                "name one rule, limit, table, measure, item or worksheet",
            )
            return None
        name, about = node.fields[what], node.fields.get("about")
        keys = [key for key in self.laid.entries if key.what == what and key.name == name.text]
        if about is not None:
            keys = [key for key in keys if key.about == about.text]
        gone = [key for key in self.laid.withdrawn if key.what == what and key.name == name.text]
        if len(keys) > 1:
            kinds = ", ".join(key.about for key in keys)
            self.refuse(
                name.place,
                f'Several kinds have a measure "{name.text}": {kinds}',
                'say which is meant with "about"',
            )
            return None
        if any(self.clashes(key, layer, name.place) for key in keys or gone):
            return None
        if not keys:
            self.not_there(what, name, gone)
            return None
        return self.laid.entries[keys[0]]

    def not_there(self, what: str, name: Node, gone: Sequence[Key]) -> None:
        also = (self.laid.withdrawn[gone[0]].place, "withdrawn") if gone else None
        known = [key.name for key in self.laid.entries if key.what == what]
        mend = 'write its name, or put it under "adds" if it is new'
        if gone:
            mend = 'leave this out, or state it in full under "adds" if it is to be in force again'
        self.refusals.append(
            Refusal(
                name.place,
                f'There is no {what} "{name.text}" in what the layer stands on',
                f"the name of a {what} that is there",
                mend,
                nearest(name.text, known),
                also,
            )
        )

    def clashes(self, key: Key, layer: str, place: Place) -> bool:
        """Whether a layer without order to this one touched the same; this touch is recorded."""
        touched = self.touched.setdefault(key, [])
        other = next((each for each in touched if not stands_on(self.packs, layer, each[0])), None)
        touched.append((layer, place))
        if other is None:
            return False
        self.refuse(
            place,
            f'"{layer}" and "{other[0]}" both touch {key}, and neither stands on the other',
            "let one of the layers extend the other, or take the change out of one of them",
            (other[1], f'touched by "{other[0]}"'),
        )
        return True

    def refuse(
        self, place: Place, found: str, mend: str, also: tuple[Place, str] | None = None
    ) -> None:
        self.refusals.append(Refusal(place, found, "", mend, also=also))


def _same(old: Node, new: Node) -> bool:
    return old.plain() == new.plain() or (
        bool(old.text) and " ".join(old.text.split()) == " ".join(new.text.split())
    )


def _reads_alike(old: Stated, new: Node) -> bool:
    try:
        return read_quantity(old.text) == read_quantity(new.text)
    except NotAQuantity:
        return False


def _begin(key: Key) -> str:
    words = str(key)
    return words[:1].upper() + words[1:]
