"""Words that a layer adds to a list of words, or removes from it."""

from linter.packs.entries import Entry
from linter.text import Refusal, nearest
from linter.text.yaml_places import Node


def changed_words(entry: Entry, node: Node, refusals: list[Refusal]) -> Node | None:
    """The list of a limit with the words that an amendment adds and removes; None if neither.

    What a layer adds is not there before, and what it removes is: else it is refused.
    """
    added, removed = (_words(node, name) for name in ("add", "remove"))
    if not added and not removed:
        return None
    old = entry.fields["value"].node
    there = [each.text for each in old.items]
    if not old.items or "value" in node.fields:
        refusals.append(_no_list(entry, node))
        return None
    refusals += [_there(entry, each) for each in added if each.text in there]
    refusals += [_not_there(entry, each, there) for each in removed if each.text not in there]
    gone = [each.text for each in removed]
    kept = [each for each in old.items if each.text not in gone]
    return Node([*kept, *(each for each in added if each.text not in there)], node.place)


def _words(node: Node, name: str) -> list[Node]:
    return node.fields[name].items if name in node.fields else []


def _no_list(entry: Entry, node: Node) -> Refusal:
    return Refusal(
        node.place,
        f"The amendment of {entry.key} adds or removes words",
        "a limit that is a list of words, and no value beside it",
        'write its new value, under "value"',
    )


def _there(entry: Entry, word: Node) -> Refusal:
    found = f'"{word.text}" is among the words of {entry.key} already'
    return Refusal(word.place, found, "a word that is not there", "leave it out")


def _not_there(entry: Entry, word: Node, there: list[str]) -> Refusal:
    return Refusal(
        word.place,
        f'"{word.text}" is not among the words of {entry.key}',
        "a word that is there",
        "write the word as it stands there, or leave it out",
        nearest(word.text, there),
    )
