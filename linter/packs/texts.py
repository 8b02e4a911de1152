"""The files of packs, read with places and judged by the published schema."""

import json
import re
from collections.abc import Iterable, Mapping
from functools import cache
from typing import NamedTuple

from linter.packs.manifest import Manifest, read_manifest
from linter.packs.pack_text import PackText
from linter.resources import MANIFEST, schemas_dir
from linter.text import Place, Refusal, Refused
from linter.text.schema_refusals import schema_refusals
from linter.text.yaml_places import Node, read_places


class PackFiles(NamedTuple):
    """The files of one pack, read: its manifest and the files of its subjects, by path."""

    id: str
    manifest: Manifest
    manifest_node: Node
    subjects: tuple[Node, ...]


def read_packs(texts: Iterable[PackText], names: Iterable[str]) -> dict[str, PackFiles]:
    """The packs of those names and all they stand on, by id; names that are not there are left out.

    Raises `Refused` with what is wrong in any of their files.
    """
    by_id: dict[str, PackText] = {}
    refusals: list[Refusal] = []
    for text in texts:
        if text.id in by_id:
            refusals.append(_two_of_one_name(text, by_id[text.id]))
        by_id.setdefault(text.id, text)
    packs: dict[str, PackFiles] = {}
    to_read = [*names]
    while to_read:
        name = to_read.pop()
        if name in packs or name not in by_id:
            continue
        pack = _read_pack(by_id.pop(name), refusals)
        if pack is not None:
            packs[name] = pack
            to_read.extend([pack.manifest.base] if pack.manifest.base else [])
    if refusals:
        raise Refused(refusals)
    return packs


def _read_pack(text: PackText, refusals: list[Refusal]) -> PackFiles | None:
    refusals.extend(_not_read(path) for path in text.unread)
    path = next((path for path in text.files if _is_manifest(path)), None)
    if path is None:
        refusals.append(_no_manifest(text))
    nodes = {each: _read_file(each, text.files[each], refusals) for each in sorted(text.files)}
    node = nodes.pop(path) if path is not None else None
    if node is None:
        return None
    manifest = read_manifest(node)
    if manifest.pack != text.id:
        refusals.append(_other_name(node.fields["pack"], text.id))
    return PackFiles(
        text.id, manifest, node, tuple(each for each in nodes.values() if each is not None)
    )


def _is_manifest(path: str) -> bool:
    return path.rpartition("/")[2] == MANIFEST


def _read_file(path: str, text: str, refusals: list[Refusal]) -> Node | None:
    """The file's one node; None where it was refused."""
    try:
        node = read_places(text, path)
    except Refused as refused:
        refusals.extend(refused.refusals)
        return None
    found = _misplaced(node, _is_manifest(path)) or schema_refusals(node, _schema())
    refusals.extend(found)
    return None if found else node


def _misplaced(node: Node, is_manifest: bool) -> list[Refusal]:
    """What there is to say where a manifest stands in another file, or another file as manifest."""
    if is_manifest == ("pack" in node.fields):
        return []
    return [_not_a_manifest(node) if is_manifest else _second_manifest(node)]


@cache
def _schema() -> Mapping[str, object]:
    text = (schemas_dir() / "pack.schema.json").read_text(encoding="utf-8")
    schema: Mapping[str, object] = json.loads(text)
    return schema


def _two_of_one_name(text: PackText, other: PackText) -> Refusal:
    place, first = (Place(min(each.files, default=each.id), 1, 1) for each in (text, other))
    return Refusal(
        place,
        f'Two packs are called "{text.id}"',
        "one pack of a name",
        "rename or take away one of the two",
        also=(first, "the other stands"),
    )


def _not_read(path: str) -> Refusal:
    found, mend = "This folder is not looked into", "move its files up, or out of the pack"
    if not path.endswith("/"):
        name = path.rpartition("/")[2].rpartition(".")[0]
        found, mend = "This file is not read", f'call it "{name}.yaml", or move it out of the pack'
    expected = "files that end in .yaml, in the folder of the pack itself"
    return Refusal(Place(path, 1, 1), found, expected, mend)


def _no_manifest(text: PackText) -> Refusal:
    return Refusal(
        Place(f"{text.id}/{MANIFEST}", 1, 1),
        f'The pack "{text.id}" has no manifest',
        f"a file {MANIFEST} that says what the pack is",
        f"write {MANIFEST}",
    )


def _not_a_manifest(node: Node) -> Refusal:
    return Refusal(
        Place(node.place.file, 1, 1),
        'This file does not say what the pack is: it has no key "pack"',
        f"the manifest of the pack in {MANIFEST}",
        "say what the pack is, and move tables, limits, measures and rules to other files",
    )


def _second_manifest(node: Node) -> Refusal:
    return Refusal(
        node.keys["pack"],
        "This file says what the pack is, a second time",
        f"one manifest, in {MANIFEST}",
        f"move it to {MANIFEST}",
    )


def _other_name(node: Node, name: str) -> Refusal:
    a_name = re.fullmatch(r"[a-z][a-z0-9]*(-[a-z0-9]+)*", name) is not None
    return Refusal(
        node.place,
        f'The pack calls itself "{node.text}", its folder "{name}"',
        "one name for both, in small letters and words joined by hyphens",
        f'write "{name}", or rename the folder' if a_name else f'call the folder "{node.text}"',
    )
