"""The checked pack kept between runs, as data, in a folder that the edge hands in.

An entry is keyed by the texts of all packs, our version and code, and Python's version. It is
written aside and then moved. A folder or a file that others can write to is not used, and whatever
is odd about an entry means that the pack is checked anew: the cache can make a run slow, never
wrong.
"""

import hashlib
import json
import os
import stat
import sys
from collections.abc import Iterable, Sequence
from functools import cache
from pathlib import Path

from linter import __version__
from linter.packs.data import pack_from_data, pack_to_data
from linter.packs.model import Pack
from linter.packs.pack_text import PackText, key_of

_KEPT = 16
_OURS = ("language", "packs", "units", "vocabulary")
_OTHERS_MAY_WRITE = stat.S_IWGRP | stat.S_IWOTH


def cached_pack(
    texts: Sequence[PackText], wanted: str, layers: Sequence[str], folder: Path | None
) -> Pack:
    """The pack from the cache in `folder`, or checked anew and then kept there.

    Without a folder nothing is kept. Raises `Refused` as `assemble` does.
    """
    usable = None if folder is None else _usable(folder)
    key = key_of(texts, wanted, *sorted(layers), *_versions())
    if usable is not None:
        kept = _read(usable / f"{key}.json")
        if kept is not None:
            return kept
    from linter.packs.assemble import assemble  # noqa: PLC0415  who has a kept pack never pays

    pack = assemble(texts, wanted, layers)
    if usable is not None:
        _keep(pack, usable, key)
    return pack


def _versions() -> tuple[str, ...]:
    return (__version__, sys.version, *_code())


@cache
def _code() -> tuple[str, ...]:
    """What tells one state of our code from another; in a checkout the version does not."""
    root = Path(__file__).resolve().parents[1]
    states: list[str] = []
    folders = [os.fspath(root / name) for name in _OURS]
    for folder in folders:
        for entry in os.scandir(folder):
            if entry.is_dir():
                folders.append(entry.path)
            elif entry.name.endswith((".py", ".lark")):
                found = entry.stat()
                states.append(f"{entry.path} {found.st_size} {found.st_mtime_ns}")
    return tuple(sorted(states))


def _usable(folder: Path) -> Path | None:
    """The folder, made if need be; None where it cannot be used or others can write to it."""
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        found = folder.lstat()
    except OSError:
        return None
    return folder if stat.S_ISDIR(found.st_mode) and _only_ours(found) else None


def _only_ours(found: os.stat_result) -> bool:
    if not hasattr(os, "getuid"):  # where files have no such owner, the folder is the user's own
        return True
    return found.st_uid == os.getuid() and not found.st_mode & _OTHERS_MAY_WRITE


def _read(path: Path) -> Pack | None:
    """The pack kept at a path; None where there is none, or anything about it is odd."""
    try:
        found = path.lstat()
        if not stat.S_ISREG(found.st_mode) or not _only_ours(found):
            return None
        digest, _, body = path.read_bytes().partition(b"\n")
        if digest != _digest(body):
            return None
        # The proofs stand apart, on a line of their own: an audit has no use for them.
        head, _, proofs = body.partition(b"\n")
        return pack_from_data(json.loads(head))._replace(proofs=proofs.decode("utf-8"))
    except (OSError, ValueError, TypeError, KeyError, IndexError, AttributeError):
        return None


def _keep(pack: Pack, folder: Path, key: str) -> None:
    data = pack_to_data(pack._replace(proofs=""))
    head = json.dumps(data, separators=(",", ":")).encode("ascii")
    body = head + b"\n" + pack.proofs.encode("utf-8")
    try:
        _write_aside(folder, key, _digest(body) + b"\n" + body)
        _drop_old(folder.glob("*.json"))
    except OSError:
        return  # a cache that cannot be written is no reason to stop


def _write_aside(folder: Path, key: str, content: bytes) -> None:
    aside = folder / f"{key}.{os.getpid()}.part"
    handle = os.open(aside, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
        aside.replace(folder / f"{key}.json")
    finally:
        aside.unlink(missing_ok=True)


def _drop_old(paths: Iterable[Path]) -> None:
    """Keep the entries that were written last, and no more than a few."""
    by_age = sorted(paths, key=lambda path: path.stat().st_mtime_ns, reverse=True)
    for path in by_age[_KEPT:]:
        path.unlink(missing_ok=True)


def _digest(body: bytes) -> bytes:
    return hashlib.sha256(body).hexdigest().encode("ascii")
