"""Facts of a proof as stated, by paths and nested maps, read into one tree of JSON's types.

A tree has one item for each fact that is given: a quantity is [value in base units, as written],
yes or no a boolean, a word or text a string, an unknown None, a thing a tree, things a list of
trees.
"""

import json
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from linter.packs.values import read_value, refusal_of
from linter.text import Place, Refusal, nearest
from linter.text.yaml_places import Node
from linter.units import NotAQuantity
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import Fact, Kind, Shape

Tree = dict[str, object]

TIMES = "times"
UNKNOWN = "unknown"
_MOST_TIMES = 1000


class _Given(NamedTuple):
    """A fact as given: the path from the thing it is about, its place, its value."""

    path: Sequence[str]
    place: Place
    node: Node


def read_tree(node: Node, about: str, refusals: list[Refusal]) -> Tree:
    """The tree of a map whose paths begin with the name of the subject's kind."""
    tree: Tree = {}
    for path, value in node.fields.items():
        first, _, rest = path.partition(".")
        if first != about or not rest:
            refusals.append(_not_of_subject(node.keys[path], path, about))
            continue
        _put(tree, KINDS[about], _Given(rest.split("."), node.keys[path], value), refusals)
    return tree


def merged(lower: Mapping[str, object], upper: Mapping[str, object]) -> Tree:
    """The facts of both; where both give a fact, the upper one holds, thing by thing.

    >>> merged({"room": {"use": "kitchen", "is_wet": False}}, {"room": {"use": "hall"}})
    {'room': {'use': 'hall', 'is_wet': False}}
    """
    result: Tree = dict(lower)
    for name, value in upper.items():
        below = result.get(name)
        if isinstance(below, dict) and isinstance(value, dict):
            result[name] = merged(below, value)
        else:
            result[name] = value
    return result


def told_apart(tree: object) -> str:
    """A text that is the same for the same facts, however their quantities are written.

    >>> one, other = {"length": [0.1524, "6 in"]}, {"length": [0.15240000000000001, "0.5 ft"]}
    >>> told_apart(one) == told_apart(other)
    True
    """
    return json.dumps(_values(tree), sort_keys=True)


def _values(tree: object) -> object:
    match tree:
        case dict():
            return {name: _values(value) for name, value in tree.items()}
        case [value, str()]:
            return value if isinstance(value, str) else f"{value:.9g}"
        case list():
            return [_values(each) for each in tree]
    return tree


def _put(tree: Tree, kind: Kind, given: _Given, refusals: list[Refusal]) -> None:
    first, *rest = given.path
    fact = kind.fact(first)
    if fact is None:
        refusals.append(_no_fact(given.place, kind, first))
    elif rest:
        below = _below(tree, fact, given.place, refusals)
        if below is not None:
            _put(below, KINDS[fact.type.kind], given._replace(path=rest), refusals)
    else:
        _put_value(tree, fact, given, refusals)


def _put_value(tree: Tree, fact: Fact, given: _Given, refusals: list[Refusal]) -> None:
    old, value = tree.get(fact.name), _value(fact, given.node, refusals)
    if fact.name not in tree:
        tree[fact.name] = value
    elif isinstance(old, dict) and isinstance(value, dict):
        tree[fact.name] = merged(old, value)
    else:
        refusals.append(_twice(given.place, fact))


def _below(tree: Tree, fact: Fact, place: Place, refusals: list[Refusal]) -> Tree | None:
    """The tree of the thing that a path goes on through; None where it cannot."""
    if fact.type.shape is not Shape.THING:
        refusals.append(_no_thing(place, fact))
        return None
    below = tree.setdefault(fact.name, {})
    if isinstance(below, dict):
        return below
    refusals.append(_twice(place, fact))
    return None


def _value(fact: Fact, node: Node, refusals: list[Refusal]) -> object:
    if node.text == UNKNOWN:
        return None
    match fact.type.shape:
        case Shape.THING:
            return _thing(fact, node, refusals)
        case Shape.THINGS:
            return _things(fact, node, refusals)
        case _:
            return _scalar(fact, node, refusals)


def _scalar(fact: Fact, node: Node, refusals: list[Refusal]) -> object:
    if not node.text:
        refusals.append(_expected(node, fact, "a value", fact.example))
        return None
    try:
        value = read_value(node, fact.type)
    except NotAQuantity as error:
        refusals.append(refusal_of(error, node))
        return None
    return [value, node.text] if fact.type.shape is Shape.QUANTITY else value


def _thing(fact: Fact, node: Node, refusals: list[Refusal]) -> object:
    if not isinstance(node.value, dict):
        refusals.append(_expected(node, fact, "a map of its facts", "{…}"))
        return None
    return _facts(KINDS[fact.type.kind], node, refusals)


def _things(fact: Fact, node: Node, refusals: list[Refusal]) -> object:
    if not isinstance(node.value, list):
        refusals.append(_expected(node, fact, "a list of maps, one for each thing", "[{…}, {…}]"))
        return []
    found: list[Tree] = []
    for each in node.items:
        if isinstance(each.value, dict):
            times = _times(each, refusals)
            found.extend([_facts(KINDS[fact.type.kind], each, refusals)] * times)
        else:
            refusals.append(_expected(each, fact, "a map of its facts", "{…}"))
    return found


def _facts(kind: Kind, node: Node, refusals: list[Refusal]) -> Tree:
    tree: Tree = {}
    for path, value in node.fields.items():
        if path != TIMES:
            _put(tree, kind, _Given(path.split("."), node.keys[path], value), refusals)
    return tree


def _times(node: Node, refusals: list[Refusal]) -> int:
    times = node.fields.get(TIMES)
    if times is None:
        return 1
    if type(times.value) is int and 1 <= times.value <= _MOST_TIMES:
        return times.value
    refusals.append(
        Refusal(
            times.place,
            f'"{times.text}" stands here',
            f"a whole number from 1 to {_MOST_TIMES}",
            "write how many such things there are",
        )
    )
    return 1


def _expected(node: Node, fact: Fact, expected: str, example: str) -> Refusal:
    several = "A list" if isinstance(node.value, list) else "A map"
    found = f'"{node.text}" stands here' if node.text else f"{several} stands here"
    mend = f'write "{example}", or unknown' if example else "write it so, or unknown"
    return Refusal(node.place, f"{found} for {fact.name}", expected, mend)


def _not_of_subject(place: Place, path: str, about: str) -> Refusal:
    return Refusal(
        place,
        f'"{path}" does not begin with what it is about',
        f"a path that begins with {about}",
        f'write "{about}." before the name of the fact',
    )


def _no_fact(place: Place, kind: Kind, name: str) -> Refusal:
    names = [fact.name for fact in kind.facts]
    return Refusal(
        place,
        f'A {kind.label} has no fact "{name}"',
        f"a fact of a {kind.label}",
        f'write the name of a fact; "precover packs words {kind.name}" lists them',
        nearest(name, names),
    )


def _no_thing(place: Place, fact: Fact) -> Refusal:
    many = fact.type.shape is Shape.THINGS
    return Refusal(
        place,
        f'The path goes on after "{fact.name}", which is {"several" if many else "no thing"}',
        "a list of maps" if many else "the end of the path",
        "state the things as a list of maps" if many else "leave out the rest of the path",
    )


def _twice(place: Place, fact: Fact) -> Refusal:
    return Refusal(place, f'"{fact.name}" is given twice in this case', "", "keep one of the two")
