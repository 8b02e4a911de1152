"""Clauses and the history of entries, with the sources that manifests list."""

from collections.abc import Mapping, Sequence
from itertools import takewhile
from typing import NamedTuple, cast

from linter.packs.entries import Change, Entry, Stated
from linter.packs.manifest import Manifest
from linter.packs.model import Amendment, Carried, Clause, History, Known, Origin, Source
from linter.packs.order import stands_on
from linter.packs.texts import PackFiles
from linter.text import Refusal, nearest
from linter.text.yaml_places import Node


class Ground(NamedTuple):
    """What checking stands on: the packs, where refusals are gathered, what editions carry on."""

    packs: Mapping[str, PackFiles]
    refusals: list[Refusal]
    carried: Mapping[str, Carried]


def carried_by(ordered: Sequence[PackFiles]) -> dict[str, Carried]:
    """The edition to which each layer is carried by those laid on it, by layer.

    Later editions of its own document carry it on, up to the first layer, of whatever document,
    that says that what it takes over is not confirmed.
    """
    manifests = [pack.manifest for pack in ordered]
    carried: dict[str, Carried] = {}
    for number, stated in enumerate(manifests):
        above = manifests[number + 1 :]
        sure = [*takewhile(lambda each: each.inherits_confirmed, above)]
        own = [each.edition for each in (stated, *sure) if each.document == stated.document]
        unsure = _edition_at_hand(above[len(sure) :])
        if unsure or own[-1] != stated.edition:
            carried[stated.pack] = Carried(
                stated.pack, stated.document, stated.edition, own[-1], unsure
            )
    return carried


def _edition_at_hand(unsure: Sequence[Manifest]) -> str:
    """The newest edition of the document of the first layer that confirms nothing; or empty."""
    if not unsure:
        return ""
    newest = [each for each in unsure if each.document == unsure[0].document][-1]
    return f"{newest.document} {newest.edition}"


def read_history(entry: Entry, ground: Ground) -> History:
    """Where the entry was first stated, and what layers changed since."""
    clause = read_clause(entry.fields["clause"], ground)
    amendments = tuple(amendment_of(each, ground) for each in entry.changes)
    stated = dict.fromkeys([entry.layer, *(each.origin.layer for each in amendments)])
    carried = tuple(found for name in stated if (found := ground.carried.get(name)))
    return History(Origin(entry.layer, entry.place), clause, amendments, carried)


def amendment_of(change: Change, ground: Ground) -> Amendment:
    """A change as it is kept: what it touched, its clause and its reason."""
    fields = change.node.fields
    return Amendment(
        Origin(change.layer, change.place),
        change.changed,
        read_clause(Stated(fields["clause"], change.layer), ground),
        change.reason,
    )


def read_clause(stated: Stated, ground: Ground) -> Clause:
    """The clause, with the document and edition of the layer that states it unless it names others.

    Where only another document is named, its edition is not stated: it has years of its own.
    """
    fields = {name: node.text for name, node in stated.node.fields.items()}
    manifest = ground.packs[stated.layer].manifest
    document = fields.get("document", manifest.document)
    edition = manifest.edition if document == manifest.document else ""
    return Clause(
        fields["id"],
        cast("Known", fields["known"]),  # the schema lets nothing else stand there
        document,
        fields.get("edition", edition),
        _source(stated, ground),
        fields.get("doubt", ""),
        "low" if "confidence" in fields else "",  # the schema lets no other word stand there
    )


def _source(stated: Stated, ground: Ground) -> Source | None:
    node = stated.node.fields.get("source")
    if node is None:
        if stated.node.fields["known"].text == "read":
            ground.refusals.append(_no_source_named(stated.node))
        return None
    below = [
        pack for pack in ground.packs.values() if stands_on(ground.packs, stated.layer, pack.id)
    ]
    sources = {
        name: pack.manifest.sources[name] for pack in below for name in pack.manifest.sources
    }
    if node.text not in sources:
        ground.refusals.append(_no_such_source(node, tuple(sources)))
        return None
    found = sources[node.text]
    return Source(node.text, found.title, found.kind, found.year, found.by)


def _no_source_named(node: Node) -> Refusal:
    return Refusal(
        node.place,
        "The clause is said to be read, and no source is named",
        "source: the published text that was read",
        'name the source, or write "known: memory"',
    )


def _no_such_source(node: Node, known: tuple[str, ...]) -> Refusal:
    return Refusal(
        node.place,
        f'The manifest lists no source "{node.text}"',
        f"one of: {', '.join(known)}" if known else "a source that the manifest lists",
        "list the source in the manifest, or write the name of one that is listed",
        nearest(node.text, known),
    )
