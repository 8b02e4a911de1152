"""The rule packs at hand: those that come with precover, and those in a folder of one's own."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from linter.cli.pack_folders import PackFolder, packs_in, text_of
from linter.cli.words import Option
from linter.cli.wrong_use import WrongUse
from linter.resources import rulesets_dir
from linter.text import Place, Refusal, Refused, nearest

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.job.jobs import Job
    from linter.packs.model import Pack

PACKS = Option("--packs", "a folder that holds rule packs")
"""The option of every command that uses packs."""


class Shelf:
    """The packs that can be asked for by name, each put together once."""

    def __init__(self, own: str = "") -> None:
        self._folders: dict[str, PackFolder] = {}
        self._put(rulesets_dir(), "rulesets")
        if own:
            if not Path(own).is_dir():
                raise WrongUse(
                    f'"{own}" is not a folder.', "a folder that holds one folder for each pack"
                )
            self._put(Path(own), own)
        self._packs: dict[tuple[str, ...], Pack] = {}

    @property
    def names(self) -> list[str]:
        """The names of all packs, in order."""
        return sorted(self._folders)

    def pack_of(self, job: Job) -> Pack:
        """The pack that a job names, with its layers; raises `Refused` at the job's line."""
        if job.pack is None:
            raise Refused([self._unnamed(job)])
        unknown = [(name, place) for name, place in _asked(job) if name not in self._folders]
        if unknown:
            raise Refused(self._unknown(name, place) for name, place in unknown)
        return self.pack(job.pack, job.layers)

    def pack_named(self, name: str) -> Pack:
        """The pack of that name; raises `WrongUse` where there is none."""
        if name not in self._folders:
            expected = f"one of: {', '.join(self.names)}"
            raise WrongUse(f'There is no pack "{name}".', expected, nearest(name, self.names))
        return self.pack(name, ())

    def pack(self, name: str, layers: Sequence[str]) -> Pack:
        """The pack with its layers, from the cache where it is there."""
        asked = (name, *layers)
        if asked not in self._packs:
            self._packs[asked] = self._assembled(name, layers)
        return self._packs[asked]

    def _assembled(self, name: str, layers: Sequence[str]) -> Pack:
        from linter.packs.cache import cached_pack  # noqa: PLC0415

        texts = [text_of(name, self._folders[name]) for name in self.names]
        return cached_pack(texts, name, tuple(layers), cache_folder())

    def _put(self, folder: Path, shown: str) -> None:
        for name, each in packs_in(folder, shown).items():
            if name in self._folders:
                found = f'"{name}" in {shown} has the name of a pack that comes with precover.'
                raise WrongUse(found, mend="give it another name, and let it extend that pack")
            self._folders[name] = each

    def _unnamed(self, job: Job) -> Refusal:
        return Refusal(
            job.place_of("pack"), "this job names no rule pack", f"one of: {', '.join(self.names)}",
            "name the pack under job, as pack",
        )  # fmt: skip

    def _unknown(self, name: str, place: Place) -> Refusal:
        return Refusal(
            place, f'"{name}" is not a rule pack at hand', f"one of: {', '.join(self.names)}",
            "write the name of a pack, or name the folder that holds yours with --packs",
            nearest(name, self.names),
        )  # fmt: skip


def cache_folder() -> Path | None:
    """The folder for what can be worked out again, as the platform has it, if it has one."""
    home = os.environ.get("HOME") or os.environ.get("USERPROFILE")
    if os.environ.get("XDG_CACHE_HOME"):
        above = Path(os.environ["XDG_CACHE_HOME"])
    elif sys.platform == "win32" and os.environ.get("LOCALAPPDATA"):
        above = Path(os.environ["LOCALAPPDATA"])
    elif home:
        above = Path(home) / ("Library/Caches" if sys.platform == "darwin" else ".cache")
    else:
        return None
    # A relative path would be another folder from each place one works in.
    return above / "precover" if above.is_absolute() else None


def _asked(job: Job) -> list[tuple[str, Place]]:
    named = [(job.pack or "", job.place_of("pack"))]
    for number, layer in enumerate(job.layers):
        place = job.field_places.get(f"layers.{number}", job.place_of("layers"))
        named.append((layer, place))
    return named
