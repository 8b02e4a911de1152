"""Entries of packs as stated: fields with the layer each came from, before they are checked.

Layers are laid on each other in this form, so that every field keeps its place.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import NamedTuple

from linter.packs.model import CONFIRMED, STATED_ELSEWHERE, What
from linter.packs.texts import PackFiles
from linter.text import Place, Refusal, join_words
from linter.text.yaml_places import Node

LISTS: dict[str, What] = {
    "tables": "table",
    "limits": "limit",
    "measures": "measure",
    "rules": "rule",
    "walk through": "item",
    "worksheets": "worksheet",
}
WHATS: tuple[What, ...] = ("limit", "table", "measure", "rule", "item", "worksheet")
SECTIONS = ("adds", "amends", "withdraws", "renumbers", "confirms", "proves")
"""What a layer's file may hold."""


class Key(NamedTuple):
    """What an entry is called: by its name, a measure by kind and name."""

    what: What
    name: str
    about: str = ""

    def __str__(self) -> str:
        return f'the {self.what} "{self.name}"'


class Stated(NamedTuple):
    """A node and the pack that states it."""

    node: Node
    layer: str

    @property
    def text(self) -> str:
        """What is written there."""
        return self.node.text


@dataclass(slots=True)
class Change:
    """An amendment or a withdrawal as stated."""

    node: Node
    layer: str
    changed: tuple[str, ...] = ()
    usual_reason: str = ""

    @property
    def place(self) -> Place:
        """Where it stands."""
        return self.node.place

    @property
    def reason(self) -> str:
        """Why the layer makes it, in a sentence."""
        stated = self.node.fields.get("reason")
        return self.usual_reason if stated is None else stated.text


@dataclass(slots=True)
class Entry:
    """A limit, table, measure, rule, item or worksheet as its layers state it.

    `rows` belongs to tables: the rows with the layer of each. `changes` are amendments, in order.
    `before` has what each amended field was before its last amendment, `proved` what layers prove
    otherwise since the proofs were last stated in full.
    """

    key: Key
    layer: str
    place: Place
    fields: dict[str, Stated]
    rows: list[Stated] = field(default_factory=list)
    changes: list[Change] = field(default_factory=list)
    before: dict[str, Stated] = field(default_factory=dict)
    proved: list[Stated] = field(default_factory=list)


def added(pack: PackFiles, refusals: list[Refusal]) -> Iterator[Entry]:
    """The entries that a pack states as new, in file order."""
    for node in pack.subjects:
        refusals.extend(_misplaced(pack, node))
        home = node.fields.get("adds", node) if pack.manifest.base is not None else node
        for name, what in LISTS.items():
            if name in home.fields:
                for each in home.fields[name].items:
                    yield _entry(what, each, pack.id)


def changes(pack: PackFiles, section: str) -> Iterator[Node]:
    """What a layer's files list in a section, in file order; a base pack can have none."""
    for node in pack.subjects if pack.manifest.base is not None else ():
        if section in node.fields:
            yield from node.fields[section].items


def clause_of(entry: Entry) -> Node:
    """The clause under which an entry stands, after what layers changed."""
    for change in reversed(entry.changes):
        if not STATED_ELSEWHERE.issuperset(change.changed):
            return change.node.fields["clause"]
    return entry.fields["clause"].node


def is_low(entry: Entry) -> bool:
    """Whether a clause under which an entry stands is of low confidence, and none confirms it."""
    low = "confidence" in entry.fields["clause"].node.fields
    for change in entry.changes:
        stated = "confidence" in change.node.fields["clause"].fields
        low = stated if change.changed == (CONFIRMED,) else low or stated
    return low


def what_of(node: Node) -> What | None:
    """What kind of entry an amendment or a withdrawal names; None where it names none or two."""
    named = [what for what in WHATS if what in node.fields]
    return named[0] if len(named) == 1 else None


def _entry(what: What, node: Node, layer: str) -> Entry:
    about = node.fields["about"].text if what == "measure" else ""
    fields = {name: Stated(each, layer) for name, each in node.fields.items() if name != what}
    rows = [Stated(row, layer) for row in node.fields["rows"].items] if what == "table" else []
    name = node.fields[what]
    return Entry(Key(what, name.text, about), layer, name.place, fields, rows)


def _misplaced(pack: PackFiles, node: Node) -> Iterator[Refusal]:
    """What stands in a base pack and belongs to a layer, or the other way round."""
    for key, place in node.keys.items():
        if pack.manifest.base is None and key in SECTIONS:
            yield Refusal(
                place,
                f'"{key}" stands in a pack that extends nothing',
                "tables, limits, measures, rules, walk through and worksheets",
                "say in the manifest what the pack extends, or state the entries themselves",
            )
        elif pack.manifest.base is not None and key in LISTS:
            yield Refusal(
                place,
                f'"{key}" stands by itself in a layer',
                join_words(SECTIONS, "or"),
                f'put "{key}" under "adds"',
            )
