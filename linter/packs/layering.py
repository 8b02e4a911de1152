"""Layers laid on each other: what they add, amend and withdraw, with all that is refused.

Everything happens on entries as stated; what they mean is checked afterwards, on the result.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from linter.packs.entries import Change, Entry, Key, Stated, added, changes, what_of
from linter.packs.order import stands_on
from linter.packs.rows import change_rows
from linter.packs.texts import PackFiles
from linter.text import Place, Refusal, nearest
from linter.text.yaml_places import Node
from linter.units import NotAQuantity, read_quantity

EVERYWHERE = "everywhere"
_NO_FIELDS = ("limit", "table", "measure", "rule", "about", "clause", "reason", "set", "remove")


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
        if entry is None:
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
        if not names and not {"set", "remove"} & set(node.fields):
            self.refuse(
                node.place,
                f"The amendment of {entry.key} changes nothing",
                "say what it is to be, or leave the amendment out",
            )
        change.changed = (*(name for name in names if name not in kept), *rows)
        entry.changes.append(change)

    def set_field(self, entry: Entry, name: str, node: Node, layer: str) -> bool:
        """Whether the field became another one."""
        old, new = entry.fields.get(name), node.fields[name]
        if name == "where" and new.text == EVERYWHERE:
            return entry.fields.pop("where", None) is not None
        if old is not None and (
            _same(old.node, new) or (name == "value" and _reads_alike(old, new))
        ):
            return False
        entry.fields[name] = Stated(new, layer)
        return True

    def withdraw(self, node: Node, layer: str) -> None:
        entry = self.find(node, layer)
        if entry is not None:
            del self.laid.entries[entry.key]
            self.laid.withdrawn[entry.key] = Change(node, layer)

    def find(self, node: Node, layer: str) -> Entry | None:
        """The entry that an amendment or a withdrawal names; None where it is refused."""
        what = what_of(node)
        if what is None:
            self.refuse(
                node.place,
                "This does not name one thing that is to change or fall away",
                "name one rule, limit, table or measure",
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
        self.refusals.append(
            Refusal(
                name.place,
                f'There is no {what} "{name.text}" in what the layer stands on',
                f"the name of a {what} that is there",
                'write its name, or put it under "adds" if it is new',
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
