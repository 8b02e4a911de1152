"""What layers name, found among what is laid already, with all that is refused on the way."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from linter.packs.entries import Change, Entry, Key, Stated, what_of
from linter.packs.model import What
from linter.packs.order import stands_on
from linter.packs.texts import PackFiles
from linter.text import Place, Refusal, nearest
from linter.text.yaml_places import Node


@dataclass(slots=True)
class Laid:
    """What the layers come to: entries in order, and what was taken away by which change."""

    entries: dict[Key, Entry] = field(default_factory=dict)
    withdrawn: dict[Key, Change] = field(default_factory=dict)


class Search:
    """What is laid, who touched what of it, and where refusals are gathered."""

    def __init__(self, packs: Mapping[str, PackFiles], refusals: list[Refusal]) -> None:
        self.packs, self.refusals = packs, refusals
        self.laid = Laid()
        self.touched: dict[Key, list[tuple[str, Place]]] = {}

    def find(self, node: Node, layer: str) -> Entry | None:
        """The entry that one item of a layer names; None where it is refused."""
        what = what_of(node)
        if what is None:
            self.refuse(
                node.place,
                "This does not name one thing that is to change or fall away",
                "name one rule, limit, table, measure, item or worksheet",
            )
            return None
        about = node.fields.get("about")
        name = node.fields[what]
        return self.find_named(what, name.text, about.text if about else "", Stated(name, layer))

    def find_named(self, what: What, name: str, about: str, at: Stated) -> Entry | None:
        """The entry of that name, of a measure about a kind; None where it is refused."""
        keys = [key for key in self.laid.entries if key.what == what and key.name == name]
        if about:
            keys = [key for key in keys if key.about == about]
        gone = [key for key in self.laid.withdrawn if key.what == what and key.name == name]
        if len(keys) > 1:
            kinds = ", ".join(key.about for key in keys)
            self.refuse(
                at.node.place,
                f'Several kinds have a measure "{name}": {kinds}',
                'say which is meant with "about"',
            )
            return None
        if any(self.clashes(key, at.layer, at.node.place) for key in keys or gone):
            return None
        if not keys:
            self.not_there(what, at.node, gone)
            return None
        return self.laid.entries[keys[0]]

    def is_own(self, entry: Entry, node: Node, layer: str, done: str) -> bool:
        """Whether the layer itself states the entry; then it is refused."""
        if entry.layer == layer:
            self.refuse(
                node.place,
                f"{begin(entry.key)} is new in this layer, and {done} in it",
                "write it as it is to be where it is stated, and leave this out",
                (entry.place, "stated"),
            )
            return True
        return False

    def not_there(self, what: str, name: Node, gone: Sequence[Key]) -> None:
        """Refuse a name that nothing has; `gone` has what a layer below took away."""
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
        """Add a refusal; `also` is a second place, and what stands there."""
        self.refusals.append(Refusal(place, found, "", mend, also=also))


def begin(key: Key) -> str:
    """The name of an entry, as a sentence begins."""
    words = str(key)
    return words[:1].upper() + words[1:]
