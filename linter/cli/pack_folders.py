"""Folders of rule packs: which packs a folder holds, and the texts of one."""

from __future__ import annotations

import os
import re
from typing import TYPE_CHECKING, NamedTuple

from linter.cli.files import read_text
from linter.resources import MANIFEST, PLACE_FILE

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping
    from pathlib import Path

    from linter.packs.pack_text import PackText

_EXTENDS = re.compile(rb"""^extends:[ ]*["']?([a-z0-9-]+)["']?[ ]*(?:#.*)?\r?$""", re.MULTILINE)
_NOTHING = "nothing"
_LOOKS_LIKE_MORE = (".yaml", ".yml", ".json")


class PackFolder(NamedTuple):
    """The folder of one pack, or the file of one place, and how it is named in messages."""

    path: Path
    shown: str


def packs_in(folder: Path, shown: str) -> dict[str, PackFolder]:
    """The packs of a folder by name: the folder itself if it is one, else those within it."""
    if (folder / MANIFEST).is_file():
        return {folder.resolve().name: PackFolder(folder, shown)}
    within = sorted(each for each in folder.iterdir() if (each / MANIFEST).is_file())
    return {each.name: PackFolder(each, f"{shown}/{each.name}") for each in within}


def chain_of(folders: Mapping[str, PackFolder], names: Iterable[str]) -> list[str]:
    """The packs of these names and all that they stand on, in order; none where that is not plain.

    It is read off the manifests line by line, so that a run need not read packs it has no use for.
    Where anything is odd, whoever checks them all says what.
    """
    found: dict[str, None] = {}
    to_do = list(names)
    while to_do:
        name = to_do.pop()
        if name in found:
            continue
        if name not in folders:
            return []
        found[name] = None
        stated = _EXTENDS.findall((folders[name].path / MANIFEST).read_bytes())
        if len(stated) != 1:
            return []
        below = stated[0].decode("ascii")
        to_do += [] if below == _NOTHING else [below]
    return sorted(found)


def places_in(folder: Path, shown: str) -> dict[str, PackFolder]:
    """The files of a folder of packs that say which pack holds at a place, by name of the place."""
    files = sorted(each for each in folder.glob(f"*{PLACE_FILE}") if each.is_file())
    return {
        each.name.removesuffix(PLACE_FILE): PackFolder(each, f"{shown}/{each.name}")
        for each in files
    }


def manifests_misnamed(folder: Path) -> list[str]:
    """The files of a folder, and of those within it, that look like a manifest by another name."""
    near = [*folder.glob("pack.*"), *folder.glob("*/pack.*")]
    return sorted(str(each) for each in near if _looks_like_more(each.name))


def text_of(name: str, folder: PackFolder) -> PackText:
    """The texts of a pack, and what in its folder looks like more of it and is not read."""
    from linter.packs.pack_text import PackText  # noqa: PLC0415

    texts: dict[str, str] = {}
    unread: list[str] = []
    for each in sorted(os.scandir(folder.path), key=lambda entry: entry.name):
        shown = f"{folder.shown}/{each.name}"
        if each.is_dir():
            unread += [f"{shown}/"] if _holds_more(each.path) else []
        elif each.name.endswith(".yaml"):
            texts[shown] = read_text(each.path)
        elif _looks_like_more(each.name):
            unread.append(shown)
    return PackText(name, texts, tuple(unread))


def _holds_more(folder: str) -> bool:
    return any(_looks_like_more(file) for _, _, files in os.walk(folder) for file in files)


def _looks_like_more(name: str) -> bool:
    return name.lower().endswith(_LOOKS_LIKE_MORE)
