"""What a thing of the file says, with the usual values for what it leaves out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.jobfile.schema import UNKNOWN

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable

    from linter.text import Place
    from linter.text.yaml_places import Node

Fields = dict[str, object]

_RENAMED = {"from": "from_", "for": "for_"}  # Python's own words
# What single words come to, where they do not stand for themselves.
_WORDS: dict[str, dict[object, object]] = {
    "protection": {
        "none": (),
        "ground-fault": ("ground-fault",),
        "arc-fault": ("arc-fault",),
    },
    "tied_to": {"none": ()},
    "load": {"none": ()},
    "holes": {"none": ()},
    "marks": {"none": {}},
    "clamps": {"none": 0},
    "split": {"no": None},
    "carries": {UNKNOWN: UNKNOWN},
    "along_framing": {"no": False},
    "bundled": {"no": False},
    "over_attic": {"no": False},
    "under_joists": {"no": False},
    "exposed": {"no": False},
    "return_air": {"no": False},
    "underground": {"no": False},
    "whirlpool": {"no": False},
    "under_roof": {"no": False},
    "temporary_power": {"no": False},
    "includes": {"none": ()},
    "lies_in": {"none": ()},
    "largest_breaker": {"none": False},
    "senses": {each: (each,) for each in ("smoke", "carbon monoxide", "heat")},
}
_MAPS = ("marks", "carries", "levels")  # maps of words; all other maps within a thing are things


def merged(
    place: Place,
    stated: Iterable[Node | None],
    usual: Iterable[Node | None] = (),
    *,
    but: Collection[str] = (),
) -> Fields:
    """The fields of a thing as its model takes them: stated ones, usual ones, and their places.

    Of several layers the first that has a key counts. `but` names keys that are left out.
    """
    fields: Fields = {}
    places: dict[str, Place] = {}
    for node in stated:
        _take(node, fields, places, but)
    own = set(fields)
    for node in usual:
        _take(node, fields, places, but)
    if len(fields) > len(own):
        fields["usual"] = frozenset(fields.keys() - own)
    fields["place"] = place
    fields["field_places"] = places
    return fields


def plain(key: str, node: Node) -> object:
    """The value under a key as its model takes it; an unknown one is None."""
    value = node.value
    if isinstance(value, dict):
        return node.plain() if key in _MAPS else merged(node.place, [node])
    if isinstance(value, list):
        return [plain("", each) for each in value]
    special = _WORDS.get(key)
    if special is not None and value in special:
        return special[value]
    if key == "along_framing" and value in ("yes", True):
        return merged(node.place, [])
    return None if value == UNKNOWN else value


def _take(
    node: Node | None, fields: Fields, places: dict[str, Place], but: Collection[str]
) -> None:
    if node is None:
        return
    for key, each in node.fields.items():
        name = _RENAMED.get(key, key)
        if name in fields or key in but:
            continue
        fields[name] = plain(key, each)
        places[name] = each.place
        value = each.value
        if isinstance(value, dict):
            places.update((f"{name}.{step}", item.place) for step, item in value.items())
        elif isinstance(value, list):
            places.update((f"{name}.{step}", item.place) for step, item in enumerate(value))
