"""Entries that stand under another clause of this edition, or are known to hold in it."""

from collections.abc import Iterator

from linter.packs.entries import LISTS, Change, Stated, clause_of, is_low
from linter.packs.model import CONFIRMED, NUMBER, What
from linter.packs.search import Search, begin
from linter.packs.texts import PackFiles
from linter.text import join_words
from linter.text.yaml_places import Node

_RENUMBERED = "The clause has another number in this edition."
_CONFIRMED = "Seen to hold in this edition."


def renumber(search: Search, node: Node, layer: str) -> None:
    """Another clause for each entry that is named; its number is another one."""
    for what, name in _all_named(search, node):
        _stand(search, what, name, Change(node, layer, (NUMBER,), _RENUMBERED))


def confirm(search: Search, node: Node, pack: PackFiles) -> None:
    """What is named is known to hold in this edition, under the clause that is stated.

    There is something to confirm where the edition says that what it takes over is not confirmed,
    and where the clause below is of low confidence.
    """
    for what, name in _all_named(search, node):
        change = Change(node, pack.id, (CONFIRMED,), _CONFIRMED)
        _stand(search, what, name, change, confirms=not pack.manifest.inherits_confirmed)


def _all_named(search: Search, node: Node) -> list[tuple[What, Node]]:
    found = list(_named(node))
    if not found:
        search.refuse(
            node.place,
            "This names nothing that stands under the clause",
            f"name them, under {join_words(list(LISTS), 'or')}",
        )
    return found


def _named(node: Node) -> Iterator[tuple[What, Node]]:
    for name, what in LISTS.items():
        for each in node.fields[name].items if name in node.fields else ():
            yield what, each


def _stand(
    search: Search, what: What, name: Node, change: Change, confirms: bool | None = None
) -> None:
    """Put an entry under another clause; `confirms` says whether anything there wants confirming.

    It is None where the clause is only renumbered.
    """
    about, _, plain = name.text.rpartition(".")
    entry = search.find_named(what, plain, about, Stated(name, change.layer))
    if entry is None or search.is_own(entry, name, change.layer, "renumbered"):
        return
    own = [each for each in entry.changes if each.layer == change.layer]
    if own:
        search.refuse(
            name.place,
            f"{begin(entry.key)} is amended or renumbered in this layer already",
            "keep one of the two",
            (own[0].place, "first"),
        )
    elif confirms is False and not is_low(entry):
        search.refuse(
            name.place,
            f"{begin(entry.key)} counts as confirmed already",
            'leave it out, or write "inherited: not confirmed" in the manifest',
        )
    elif confirms is None and _number(clause_of(entry)) == _number(change.node.fields["clause"]):
        search.refuse(
            name.place,
            f"{begin(entry.key)} stands under this number already",
            "leave it out, or write its new number",
        )
    else:
        entry.changes.append(change)


def _number(clause: Node) -> str:
    return clause.fields["id"].text
