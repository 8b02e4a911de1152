"""Layers laid on each other: what they add, amend and withdraw, with all that is refused.

Everything happens on entries as stated; what they mean is checked afterwards, on the result.
"""

from collections.abc import Mapping, Sequence

from linter.packs.entries import WHATS, Change, Entry, Key, Stated, added, changes
from linter.packs.rows import ROW_WORDS, change_rows, rows_touched
from linter.packs.search import Laid, Search, begin
from linter.packs.standing import confirm, renumber
from linter.packs.texts import PackFiles
from linter.packs.word_lists import changed_words
from linter.text import Place, Refusal
from linter.text.yaml_places import Node
from linter.units import NotAQuantity, read_quantity

EVERYWHERE = "everywhere"
_NO_FIELDS = (*WHATS, "about", "clause", "reason", *ROW_WORDS)


def lay(
    packs: Mapping[str, PackFiles], ordered: Sequence[PackFiles], refusals: list[Refusal]
) -> Laid:
    """The packs laid on each other, the lowest first; what is refused is added to `refusals`."""
    search = Search(packs, refusals)
    laying = _Laying(search)
    for pack in ordered:
        for entry in added(pack, refusals):
            laying.add(entry)
        for node in changes(pack, "amends"):
            laying.amend(node, pack.id)
        for node in changes(pack, "withdraws"):
            laying.withdraw(node, pack.id)
        for node in changes(pack, "renumbers"):
            renumber(search, node, pack.id)
        for node in changes(pack, "confirms"):
            confirm(search, node, pack)
        for node in changes(pack, "proves"):
            laying.prove(node, pack.id)
    return search.laid


class _Laying:
    """The work of laying, with what each layer amended."""

    def __init__(self, search: Search) -> None:
        self.search, self.laid, self.refuse = search, search.laid, search.refuse
        self.amended: dict[tuple[str, Key, object], Place] = {}

    def add(self, entry: Entry) -> None:
        if self.search.clashes(entry.key, entry.layer, entry.place):
            return
        first = self.laid.entries.get(entry.key)
        if first is None:
            self.laid.entries[entry.key] = entry
            self.laid.withdrawn.pop(entry.key, None)
        elif first.layer == entry.layer:
            self.refuse(
                entry.place,
                f"{begin(entry.key)} is stated twice",
                "rename one of them",
                (first.place, "first stated"),
            )
        else:
            self.refuse(
                entry.place,
                f"{begin(entry.key)} is there already",
                'put the change under "amends", or give it another name',
                (first.place, "stated"),
            )

    def amend(self, node: Node, layer: str) -> None:
        entry = self.search.find(node, layer)
        if entry is None or self.search.is_own(entry, node, layer, "amended"):
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
        rows = self.set_rows_or_words(entry, node, layer)
        if not names and not set(ROW_WORDS) & set(node.fields):
            self.refuse(
                node.place,
                f"The amendment of {entry.key} changes nothing",
                "say what it is to be, or leave the amendment out",
            )
        change.changed = (*(name for name in names if name not in kept), *rows)
        entry.changes.append(change)

    def set_rows_or_words(self, entry: Entry, node: Node, layer: str) -> tuple[str, ...]:
        """Which parts of a table's rows changed, or that the words of a list did."""
        if entry.key.what == "table":
            return change_rows(entry, node, layer, self.search.refusals)
        words = changed_words(entry, node, self.search.refusals)
        if words is None:
            return ()
        entry.before["value"] = entry.fields["value"]
        entry.fields["value"] = Stated(words, layer)
        return ("value",)

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
        if entry.key.what == "table":
            parts += rows_touched(entry, node)
        elif set(ROW_WORDS) & set(node.fields):
            parts.append(("value", "words", node.place))
        for part, shown, place in parts:
            first = self.amended.setdefault((layer, entry.key, part), place)
            if first != place:
                doubled = True
                self.refuse(
                    place,
                    f"{begin(entry.key)} is amended twice in this layer: its {shown}",
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
        if name == "proofs":
            entry.proved.clear()
        return True

    def withdraw(self, node: Node, layer: str) -> None:
        entry = self.search.find(node, layer)
        if entry is None or self.search.is_own(entry, node, layer, "withdrawn"):
            return
        own = [change for change in entry.changes if change.layer == layer]
        if own:
            self.refuse(
                node.place,
                f"{begin(entry.key)} is amended and withdrawn in this layer",
                "keep one of the two",
                (own[0].place, "amended"),
            )
        else:
            del self.laid.entries[entry.key]
            self.laid.withdrawn[entry.key] = Change(node, layer)

    def prove(self, node: Node, layer: str) -> None:
        """Cases of a rule or measure that come out otherwise; all of them are stated in one way."""
        entry = self.search.find(node, layer)
        if entry is None or self.search.is_own(entry, node, layer, "proved"):
            return
        stated = [each for each in (entry.fields["proofs"], *entry.proved) if each.layer == layer]
        if stated:
            self.refuse(
                node.place,
                f"{begin(entry.key)} is proved twice in this layer",
                "keep one of the two",
                (stated[0].node.place, "first proved"),
            )
        else:
            entry.proved.append(Stated(node, layer))


def _same(old: Node, new: Node) -> bool:
    return old.plain() == new.plain() or (
        bool(old.text) and " ".join(old.text.split()) == " ".join(new.text.split())
    )


def _reads_alike(old: Stated, new: Node) -> bool:
    try:
        return read_quantity(old.text) == read_quantity(new.text)
    except NotAQuantity:
        return False
