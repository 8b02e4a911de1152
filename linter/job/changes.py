"""What differs between two job files, thing by thing, in the words that each of them writes."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.text import join_words
from linter.text.schema_words import write
from linter.units import NotAQuantity, read_quantity

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from linter.text import Place
    from linter.text.yaml_places import Node

ADDED, GONE, CHANGED = "added", "gone", "changed"

# Sections that hold things by their names, and what a person calls one of them.
_THINGS = {
    "supplies": "supply", "circuits": "circuit", "rooms": "room", "boxes": "box",
    "cables": "cable", "appliances": "appliance", "walls": "wall", "counters": "counter",
    "stairs": "stair", "doors": "door", "raceways": "raceway", "electrodes": "electrode",
    "pipes": "pipe",
}  # fmt: skip
_LISTS = {"readings": "reading", "looked_at": "look"}
_BREAKERS = "breakers"
_ENDS = {"at_from": "from", "at_to": "to"}


class Difference(NamedTuple):
    """A value of a thing that differs: what a person calls it, and how each file writes it.

    What one of them does not state is empty.
    """

    name: str
    was: str
    now: str


class Change(NamedTuple):
    """A thing that was added, is gone, or has changed; `place` is where the file has it."""

    thing: str
    what: str
    place: Place
    differences: tuple[Difference, ...] = ()


def changes(before: Node, after: Node) -> tuple[Change, ...]:
    """What the second file states otherwise than the first, in the order of the second.

    Quantities that are equal are no difference, however they are written; nor is the order.

    >>> from linter.text.yaml_places import read_places
    >>> one = read_places("boxes: {bench: {volume: 18 in3}}", "a.yaml")
    >>> two = read_places("boxes: {bench: {volume: 20 in3}, door: {}}", "b.yaml")
    >>> [(each.thing, each.what) for each in changes(one, two)]
    [('box bench', 'changed'), ('box door', 'added')]
    >>> changes(one, two)[0].differences
    (Difference(name='volume', was='18 in3', now='20 in3'),)
    """
    then, now = dict(_things(before)), dict(_things(after))
    found = [_between(name, then.get(name), each) for name, each in now.items()]
    found += [Change(name, GONE, each.place) for name, each in then.items() if name not in now]
    return tuple(each for each in found if each is not None)


class _Named(NamedTuple):
    """A thing of a file: where it stands, its values, and the names of its ends, if it has any."""

    place: Place
    values: Mapping[str, str]


def _between(name: str, then: _Named | None, now: _Named) -> Change | None:
    if then is None:
        return Change(name, ADDED, now.place)
    keys = dict.fromkeys((*now.values, *then.values))
    differences = [
        Difference(key, then.values.get(key, ""), now.values.get(key, ""))
        for key in keys
        if not _same(then.values.get(key), now.values.get(key))
    ]
    return Change(name, CHANGED, now.place, tuple(differences)) if differences else None


def _same(one: str | None, other: str | None) -> bool:
    if one == other or one is None or other is None:
        return one == other
    try:
        first, second = read_quantity(one), read_quantity(other)
    except NotAQuantity:
        return False
    return (first.dimension, first.value) == (second.dimension, second.value)


def _things(root: Node) -> Iterator[tuple[str, _Named]]:
    """Everything that a file speaks of, under the name a person calls it by."""
    for section, node in root.fields.items():
        yield from _section(section, root.keys[section], node)


def _section(section: str, place: Place, node: Node) -> Iterator[tuple[str, _Named]]:
    if section in _THINGS:
        for name, thing in node.fields.items():
            yield f"{_THINGS[section]} {name}", _named(node.keys[name], thing)
    elif section == "panels":
        for name, panel in node.fields.items():
            yield from _panel(f"panel {name}", node.keys[name], panel, f" of panel {name}")
    elif section == "panel":
        yield from _panel("the panel", place, node, "")
    elif section in _LISTS:
        for each in node.items:
            yield _record(_LISTS[section], each), _Named(each.place, {})
    else:
        label = "usual values" if section == "usual" else f"the {section.replace('_', ' ')}"
        yield label, _named(place, node)


def _record(noun: str, node: Node) -> str:
    """A reading or a look in one line: what of, where, and what else is written down of it."""
    values = {key: node.fields[key].text or _listed(node.fields[key]) for key in node.fields}
    of = values.pop("test", values.pop("item", ""))
    at = next((values.pop(key) for key in ("outlet", "circuit", "at") if key in values), "")
    rest = ", ".join(f"{key.replace('_', ' ')} {value}" for key, value in values.items())
    return f"{noun} of {of}{f' at {at}' if at else ''}{f': {rest}' if rest else ''}"


def _listed(node: Node) -> str:
    return join_words([each.text for each in node.items])


def _panel(name: str, place: Place, panel: Node, of: str) -> Iterator[tuple[str, _Named]]:
    yield name, _named(place, panel, but=_BREAKERS)
    breakers = panel.fields.get(_BREAKERS)
    if breakers is not None:
        for space, breaker in breakers.fields.items():
            yield f"breaker {space}{of}", _named(breakers.keys[space], breaker)


def _named(place: Place, node: Node, but: str = "") -> _Named:
    ends = {key: node.fields[end].text for key, end in _ENDS.items() if end in node.fields}
    if not node.fields:
        return _Named(place, {"": write(node.plain())})
    values = {
        " ".join(path): value
        for key, each in node.fields.items()
        if key != but
        for path, value in _values(each, (_word(key, ends),))
    }
    return _Named(place, values)


def _word(key: str, ends: Mapping[str, str]) -> str:
    """A key as a person says it; an end of a cable is called by what is there."""
    return f"at {ends[key]}:" if key in ends else key.replace("_", " ")


def _values(node: Node, path: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], str]]:
    """The values below a node that are no maps; lists of plain values as one."""
    if node.fields:
        for key, each in node.fields.items():
            yield from _values(each, (*path, _word(key, {})))
    elif any(each.fields for each in node.items):
        for number, each in enumerate(node.items, 1):
            yield from _values(each, (*path, str(number)))
    else:
        yield path, node.text if node.text else write(node.plain())
