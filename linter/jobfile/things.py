"""Each kind of thing of a job file, as the mapping that its model is made from."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.job.panel import BreakerRef
from linter.job.stated import PanelId
from linter.job.values import whole
from linter.jobfile.merging import Fields, merged

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from linter.text import Place
    from linter.text.yaml_places import Node

THE_PANEL = "panel"  # what cables call the panel where there is one
_END_KEYS = (
    "free_length",
    "length_outside",
    "sheath_inside",
    "stripped",
    "fastened_at",
    "cable_to_support",
    "clamped",
    "shares_clamp_with",
    "marks",
    "enters",
)


class _Named(NamedTuple):
    """A thing of the file under its name, and the place of the name."""

    name: str
    node: Node
    place: Place


def job_fields(root: Node) -> Fields:
    """The mapping that the model of the whole job is made from."""
    usual = root.fields["usual"].fields if "usual" in root.fields else {}
    panels = _panels(root)
    names = [each.name for each in panels]
    breaker, cable, room = usual.get("breaker"), usual.get("cable"), usual.get("room")
    return {
        **merged(root.keys.get("job", root.place), [_job(root)]),
        "supplies": {each.name: _supply(each) for each in _named(root, "supplies")},
        "dwelling": _dwelling(root),
        "service": _service(root),
        "electrodes": {each.name: _thing(each) for each in _named(root, "electrodes")},
        "raceways": {each.name: _thing(each) for each in _named(root, "raceways")},
        "pipes": {each.name: _thing(each) for each in _named(root, "pipes")},
        "panels": {each.name: _panel(each, breaker) for each in panels},
        "circuits": {each.name: _circuit(each, names) for each in _named(root, "circuits")},
        "rooms": {each.name: _thing(each, room) for each in _named(root, "rooms")},
        "boxes": {each.name: _box(each, usual) for each in _named(root, "boxes")},
        "cables": {each.name: _cable(each, cable, names) for each in _named(root, "cables")},
        "appliances": {each.name: _thing(each) for each in _named(root, "appliances")},
        "walls": {each.name: _thing(each) for each in _named(root, "walls")},
        "counters": {each.name: _thing(each) for each in _named(root, "counters")},
        "stairs": {each.name: _thing(each) for each in _named(root, "stairs")},
        "doors": {each.name: _thing(each) for each in _named(root, "doors")},
        "products": _products(root),
        "site": merged(root.keys.get("site", root.place), [root.fields.get("site")]),
        "readings": _listed(root, "readings"),
        "looked_at": _listed(root, "looked_at"),
    }


def _job(root: Node) -> Node | None:
    """The key job, its place under another name: a model's place is where it is stated."""
    node = root.fields.get("job")
    if node is None or "place" not in node.fields:
        return node
    named = {"place": "locality"}
    return node._replace(
        value={named.get(key, key): each for key, each in node.fields.items()},
        keys={named.get(key, key): place for key, place in node.keys.items()},
    )


def _named(node: Node, key: str) -> list[_Named]:
    group = node.fields.get(key)
    if group is None:
        return []
    return [_Named(name, each, group.keys[name]) for name, each in group.fields.items()]


def _listed(root: Node, key: str) -> list[Fields]:
    group = root.fields.get(key)
    return [merged(each.place, [each]) for each in group.items] if group is not None else []


def _thing(thing: _Named, usual: Node | None = None) -> Fields:
    return {**merged(thing.place, [thing.node], [usual]), "name": thing.name}


def _supply(thing: _Named) -> Fields:
    fields = {**merged(thing.place, [thing.node], but=["usual"]), "name": thing.name}
    if "usual" in thing.node.fields:
        fields["is_usual"] = thing.node.fields["usual"].value in ("yes", True)
    return fields


def _dwelling(root: Node) -> Fields:
    """What is said of the whole; where nothing is, it stands where the job does."""
    node = root.fields.get("dwelling")
    place = root.keys.get("dwelling", root.keys.get("job", root.place))
    fields = merged(place, [node], but=["floors"])
    floors = _named(node, "floors") if node is not None else []
    return {**fields, "floors": {each.name: _thing(each) for each in floors}}


def _service(root: Node) -> Fields | None:
    node = root.fields.get("service")
    return None if node is None else merged(root.keys["service"], [node])


def _panels(root: Node) -> list[_Named]:
    if "panel" in root.fields:
        return [_Named(THE_PANEL, root.fields["panel"], root.keys["panel"])]
    return _named(root, "panels")


def _panel(thing: _Named, usual: Node | None) -> Fields:
    breakers = {}
    for name, node, place in _named(thing.node, "breakers"):
        fields = merged(place, [node], [usual])
        breakers[int(name)] = {**fields, "panel": thing.name, "space": int(name)}
    fields = merged(thing.place, [thing.node], but=["breakers", "make_up"])
    if "make_up" in thing.node.fields:
        fields["make_up"] = _make_up(thing.node.fields["make_up"])
    return {**fields, "name": thing.name, "breakers": breakers}


def _circuit(thing: _Named, panels: Sequence[str]) -> Fields:
    """A circuit; its breakers are in the panel it names, or in the only one there is."""
    fields = merged(thing.place, [thing.node], but=["breakers", "panel"])
    stated = thing.node.fields.get("panel")
    panel = str(stated.value) if stated else panels[0] if len(panels) == 1 else ""
    breakers = thing.node.fields["breakers"]
    refs = [BreakerRef(PanelId(panel), whole(each.value)) for each in breakers.items]
    places = fields["field_places"]
    if isinstance(places, dict):
        places["breakers"] = breakers.place
        places |= {f"breakers.{at}": each.place for at, each in enumerate(breakers.items)}
        places |= {"panel": stated.place} if stated else {}
    return {**fields, "name": thing.name, "breakers": refs}


def _box(thing: _Named, usual: Mapping[str, Node]) -> Fields:
    """A box; a stated trade size takes the place of a usual volume, and the other way round."""
    but = {"trade_size": "volume", "volume": "trade_size"}
    not_usual = [other for key, other in but.items() if key in thing.node.fields]
    dropped = [key for key in not_usual if key not in thing.node.fields]
    fields = merged(
        thing.place,
        [thing.node],
        [usual.get("box")],
        but=["holds", "make_up", *dropped],
    )
    fields["name"] = thing.name
    fields["holds"] = _devices(thing, usual)
    if "make_up" in thing.node.fields:
        fields["make_up"] = _make_up(thing.node.fields["make_up"])
    return fields


def _devices(box: _Named, usual: Mapping[str, Node]) -> list[Fields]:
    held = box.node.fields.get("holds")
    if held is None or held.value == "nothing":
        return []
    entries = held.items if isinstance(held.value, list) else [held]
    several = len(entries) > 1
    return [
        _device(each, box.name, f".{number}" if several else "", usual)
        for number, each in enumerate(entries, start=1)
    ]


def _device(entry: Node, box: str, number: str, usual: Mapping[str, Node]) -> Fields:
    kind, node = next(iter(entry.fields.items())) if entry.fields else (str(entry.value), None)
    place = entry.keys.get(kind, entry.place)
    fields = merged(place, [node], [usual.get(kind)])
    return {"name": f"{box}{number}", **fields, "kind": kind, "box": box}


def _make_up(node: Node) -> Fields:
    fields = merged(node.place, [node], but=["joints"])
    joints = node.fields["joints"].items if "joints" in node.fields else []
    parted: dict[bool, list[Fields]] = {True: [], False: []}
    for each in joints:
        parted["terminal" in each.fields].append(merged(each.place, [each]))
    return {**fields, "joints": parted[False], "landings": parted[True]}


def _cable(thing: _Named, usual: Node | None, panels: Sequence[str]) -> Fields:
    """A cable; colours and bond of the usual sheath do not hold for one that states its own."""
    dropped = [
        key
        for key in ("conductors", "bond")
        if "sheath" in thing.node.fields and key not in thing.node.fields
    ]
    fields = merged(
        thing.place,
        [thing.node],
        [usual],
        but=[*_END_KEYS, "at_from", "at_to", *dropped],
    )
    fields["name"] = thing.name
    for end in ("from_", "to"):
        if fields[end] == THE_PANEL and THE_PANEL not in panels and len(panels) == 1:
            fields[end] = panels[0]
    for end in ("at_from", "at_to"):
        place = thing.node.keys.get(end, thing.place)
        wide = [_only_ends(thing.node), _only_ends(usual)]
        fields[end] = merged(place, [thing.node.fields.get(end), wide[0]], [wide[1]])
    return fields


def _only_ends(node: Node | None) -> Node | None:
    """What a cable, or the usual cable, says of both its ends."""
    if node is None:
        return None
    return node._replace(value={key: node.fields[key] for key in _END_KEYS if key in node.fields})


def _products(root: Node) -> Fields:
    node = root.fields.get("products")
    place = root.keys.get("products", root.place)
    if node is None:
        return merged(place, [])
    return {
        **merged(place, []),
        "connectors": {each.name: _connector(each) for each in _named(node, "connectors")},
        "staples": {each.name: _thing(each) for each in _named(node, "staples")},
    }


def _connector(thing: _Named) -> Fields:
    fields = merged(thing.place, [thing.node], but=["combinations"])
    fields["name"] = thing.name
    if "combinations" in thing.node.fields:
        listed = thing.node.fields["combinations"].items
        fields["combinations"] = [_combination(each) for each in listed]
    return fields


def _combination(node: Node) -> Fields:
    """So many conductors of such sizes; `size` is short for both sizes."""
    size = node.fields.get("size")
    if size is None:
        return merged(node.place, [node])
    both = node._replace(value={"smallest": size, "largest": size, **node.fields})
    return merged(node.place, [both], but=["size"])
