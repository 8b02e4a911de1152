"""The names a file has, also of things that could not be read: what references are held against."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple, TypeAlias

from linter.text import Place, Refusal, nearest
from linter.text.schema_words import as_name

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from linter.job.cables import Cable
    from linter.job.jobs import Job
    from linter.text.yaml_places import Node


class MissingName(NamedTuple):
    """A name that nothing has; wherever the file speaks of it, the mistake is the same one.

    The nearest of the names `allowed` are looked for when it is known which refusals are shown.
    """

    refusal: Refusal
    name: str
    group: str
    allowed: Iterable[str] = ()


Wrong: TypeAlias = Refusal | MissingName


class Names(NamedTuple):
    """The names of one kind of thing, each with its place.

    `complete` is false where the group that holds them could not be read, so that no name can be
    said to be missing.
    """

    kind: str
    group: str
    all: Mapping[str, Place]
    complete: bool = True

    def missing(self, name: str | None, place: Place) -> Iterator[Wrong]:
        """The refusal of a name that nothing has; none if something has it."""
        if name is None or name in self.all or not self.complete:
            return
        first = next(iter(self.all), None)
        such = f", such as {first}" if first else f"; there is none yet under {self.group}"
        refusal = Refusal(
            place,
            f'"{name}" is no {self.kind} of this job',
            f"the name of a {self.kind}{such}",
            f"write a name that stands under {self.group}, or add it there",
        )
        yield MissingName(refusal, name, self.group, self.all)


@dataclass(frozen=True, slots=True)
class Known:
    """All names of a file, and which of its things were read but in part."""

    rooms: Names
    panels: Names
    circuits: Names
    boxes: Names
    cables: Names
    ends: Names
    outlets: Names
    targets: Names
    switches: frozenset[str]
    breakers_are_whole: bool
    read_in_part: frozenset[str]
    unread: frozenset[str]

    def may_end_in(self, cable: Cable, box: str) -> bool:
        """Whether the cable ends in the box, or at something that is not known."""
        return any(end == box or end not in self.ends.all for end in cable.ends)

    def is_whole(self, name: str) -> bool:
        """Whether all that the file says of the box or cable was read."""
        return name not in self.read_in_part


def known_names(root: Node, usable: Node, job: Job) -> Known:
    """The names in the whole file `root`, of which `usable` could be read, into `job`."""
    rooms = _names(root, "room", "rooms")
    circuits, cables = _names(root, "circuit", "circuits"), _names(root, "cable", "cables")
    boxes, panels = _names(root, "box", "boxes"), _panel_names(root)
    complete = boxes.complete and panels.complete
    devices = [each for box in job.boxes.values() for each in box.holds]
    at: dict[str, Place] = {each.name: each.place for each in devices}
    unread = _unread_devices(root, job)
    at |= unread
    return Known(
        rooms=rooms,
        panels=panels,
        circuits=circuits,
        boxes=boxes,
        cables=cables,
        ends=Names("box or panel", "boxes", {**panels.all, **boxes.all}, complete),
        outlets=Names("device", "boxes", at, boxes.complete),
        targets=Names("device or box", "boxes", {**boxes.all, **at}, boxes.complete),
        switches=frozenset(each.name for each in devices if each.kind == "switch"),
        breakers_are_whole=panels.complete and _breakers(root) == _breakers(usable),
        read_in_part=_read_in_part(root, usable),
        unread=frozenset(unread) | (cables.all.keys() - job.cables.keys()),
    )


def _names(root: Node, kind: str, group: str) -> Names:
    node = root.fields.get(group)
    if node is None:
        strange = [key for key in root.fields if group in nearest(key, [group])]
        return Names(kind, group, {}, not strange)
    meant = {as_name(key): place for key, place in node.keys.items()}
    return Names(kind, group, {**meant, **node.keys}, isinstance(node.value, dict))


def _breakers(root: Node) -> list[str]:
    """The spaces at which the file has breakers, panel after panel, and keys meant for them."""
    panels = [*_under(root, "panels").values()]
    panels += [root.fields["panel"]] if "panel" in root.fields else []
    found = []
    for panel in panels:
        found += [*_under(panel, "breakers"), *nearest("breakers", panel.fields)]
    return found


def _panel_names(root: Node) -> Names:
    if "panel" in root.fields:
        is_whole = isinstance(root.fields["panel"].value, dict)
        return Names("panel", "panels", {"panel": root.keys["panel"]}, is_whole)
    several, one = _names(root, "panel", "panels"), _names(root, "panel", "panel")
    names = dict(several.all)
    if len(names) == 1:
        names["panel"] = next(iter(names.values()))
    return Names("panel", "panels", names, several.complete and one.complete)


def _unread_devices(root: Node, job: Job) -> dict[str, Place]:
    """Names that devices of boxes may have which were read but in part, or not at all."""
    found: dict[str, Place] = {}
    held_by: dict[str, int] = {name: len(box.holds) for name, box in job.boxes.items()}
    for name, node in _under(root, "boxes").items():
        held = node.fields.get("holds")
        entries = (held.items or [held]) if held is not None else []
        if held_by.get(name) == len(entries):
            continue
        numbered = [f"{name}.{number}" for number in range(1, len(entries) + 1)]
        found |= dict.fromkeys([name, *numbered], node.place)
        kinds = [each for entry in entries for each in entry.fields.values()]
        stated = [each.fields["name"] for each in kinds if "name" in each.fields]
        found |= {str(each.value): each.place for each in stated}
    return found


def _read_in_part(root: Node, usable: Node) -> frozenset[str]:
    """Boxes and cables of which something was left out; all cables if it was the usual sheath."""
    usual = [_under(_node(each, "usual"), "cable") for each in (root, usable)]
    if any(usual[0].get(key) is not usual[1].get(key) for key in ("sheath", "conductors")):
        return frozenset(_under(root, "cables")) | _changed(root, usable, "boxes")
    return _changed(root, usable, "cables") | _changed(root, usable, "boxes")


def _changed(root: Node, usable: Node, group: str) -> frozenset[str]:
    left = _under(usable, group)
    return frozenset(
        name for name, node in _under(root, group).items() if left.get(name) is not node
    )


def _node(node: Node | None, key: str) -> Node | None:
    return node.fields.get(key) if node is not None else None


def _under(node: Node | None, key: str) -> Mapping[str, Node]:
    """What stands under a key, by name; nothing if the key is missing or has no names under it."""
    found = _node(node, key)
    return found.fields if found is not None else {}
