"""The rule packs at hand: those that come with precover, and those in a folder of one's own."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from linter.cli.files import STANDARD_INPUT
from linter.cli.pack_folders import (
    PackFolder,
    chain_of,
    manifests_misnamed,
    packs_in,
    places_in,
    text_of,
)
from linter.cli.places import Places
from linter.cli.words import Option
from linter.cli.wrong_use import WrongUse
from linter.resources import MANIFEST, rulesets_dir
from linter.text import Place, Refusal, Refused, nearest

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from linter.job.jobs import Job
    from linter.packs.model import Pack

PACKS = Option("--packs", "a folder that holds rule packs, or is one", adds_up=True)
"""The option of every command that uses packs."""

BESIDE = "packs"
"""The folder beside a job file that is looked into, so that job and rules travel together."""


class Shelf:
    """The packs that can be asked for by name, each put together once.

    `own` are folders of packs of one's own, or of one pack each.
    """

    def __init__(self, own: Sequence[str] = ()) -> None:
        self._folders = packs_in(rulesets_dir(), "rulesets")
        self._places = Places(rulesets_dir(), "rulesets")
        self._shipped = frozenset(self._folders)
        self._has_own = bool(own)
        for folder in own:
            found = _own_packs(folder)
            clash = self._put(found) or self._places.put(Path(folder), folder.rstrip("/"))
            if clash is not None:
                raise WrongUse(f"{clash[0]}.", mend=clash[1])
        self._packs: dict[tuple[str, ...], Pack] = {}
        self._beside: dict[str, Shelf] = {}

    def for_job(self, file: str) -> Shelf:
        """The shelf for a job file: with the packs of a folder `packs` beside it, where one is.

        Folders of one's own that were named hold instead. Raises `Refused` where a pack beside the
        file has the name of one that comes with precover.
        """
        if self._has_own or file == STANDARD_INPUT:
            return self
        folder = Path(file).parent / BESIDE
        shown = folder.as_posix()
        if shown not in self._beside:
            found = packs_in(folder, shown) if folder.is_dir() else {}
            own = found or (folder.is_dir() and places_in(folder, shown))
            self._beside[shown] = self._with(found, folder, shown) if own else self
        return self._beside[shown]

    def _with(self, found: Mapping[str, PackFolder], folder: Path, shown: str) -> Shelf:
        shelf = Shelf()
        clash = shelf._put(found) or shelf._places.put(folder, shown)
        if clash is not None:
            raise Refused([Refusal(Place(shown, 1, 1), clash[0], "", clash[1])])
        return shelf

    @property
    def names(self) -> list[str]:
        """The names of all packs, in order."""
        return sorted(self._folders)

    def ships(self, name: str) -> bool:
        """Whether a pack of that name comes with precover."""
        return name in self._shipped

    @property
    def places(self) -> Places:
        """The places of which it is known which pack holds there."""
        return self._places

    def pack_of(self, job: Job) -> Pack:
        """The pack that a job names, with its layers, or that holds at its place on a day.

        Raises `Refused` at the job's line.
        """
        if job.locality is not None:
            span = self._places.span_of(job)
            named = (span.pack, span.place)
        elif job.pack is not None:
            named = (job.pack, job.place_of("pack"))
        else:
            raise Refused([self._unnamed(job)])
        asked = [named, *_layers(job)]
        unknown = [(name, place) for name, place in asked if name not in self._folders]
        if unknown:
            raise Refused(self._unknown(name, place) for name, place in unknown)
        return self.pack(named[0], job.layers)

    def pack_named(self, name: str) -> Pack:
        """The pack of that name; raises `WrongUse` where there is none."""
        if name not in self._folders:
            expected = f"one of: {', '.join(self.names)}"
            mend = "write one of these, the folder of a pack, or --packs and the folder it lies in"
            raise WrongUse(f'There is no pack "{name}".', expected, nearest(name, self.names), mend)
        return self.pack(name, ())

    def pack(self, name: str, layers: Sequence[str]) -> Pack:
        """The pack with its layers, from the cache where it is there."""
        asked = (name, *layers)
        if asked not in self._packs:
            self._packs[asked] = self._assembled(name, layers)
        return self._packs[asked]

    def _assembled(self, name: str, layers: Sequence[str]) -> Pack:
        from linter.packs.cache import cached_pack  # noqa: PLC0415

        asked = chain_of(self._folders, (name, *layers)) or self.names
        texts = [text_of(each, self._folders[each]) for each in asked]
        return cached_pack(texts, name, tuple(layers), cache_folder())

    def _put(self, found: Mapping[str, PackFolder]) -> tuple[str, str] | None:
        """Puts packs on the shelf; what is found and how to mend it where a name is taken."""
        for name, each in found.items():
            other = self._folders.get(name)
            if name in self._shipped:
                said = f'"{each.shown}" has the name of a pack that comes with precover'
                return said, "give it another name, and let it extend that pack"
            if other is not None and other.path.resolve() != each.path.resolve():
                said = f'Two packs are called "{name}": {other.shown} and {each.shown}'
                return said, "rename or leave out one of the two"
            self._folders[name] = each
        return None

    def _unnamed(self, job: Job) -> Refusal:
        return Refusal(
            job.place_of("pack"), "this job names no rule pack", f"one of: {', '.join(self.names)}",
            "name the pack under job, as pack, or its place and the day of the permit",
        )  # fmt: skip

    def _unknown(self, name: str, place: Place) -> Refusal:
        return Refusal(
            place, f'"{name}" is not a rule pack at hand', f"one of: {', '.join(self.names)}",
            f"write the name of a pack, put yours into a folder {BESIDE} beside the job file, or "
            "name the folder that holds it with --packs",
            nearest(name, self.names),
        )  # fmt: skip


def _own_packs(folder: str) -> dict[str, PackFolder]:
    expected = f"a folder that holds one folder for each pack, with a {MANIFEST} in it"
    path = Path(folder)
    if not path.is_dir():
        raise WrongUse(f'"{folder}" is not a folder.', expected)
    found = packs_in(path, folder.rstrip("/") or folder)
    if not found and not places_in(path, folder):
        raise WrongUse(f'"{folder}" holds no rule pack.', expected, manifests_misnamed(path))
    return found


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


def _layers(job: Job) -> list[tuple[str, Place]]:
    named = []
    for number, layer in enumerate(job.layers):
        place = job.field_places.get(f"layers.{number}", job.place_of("layers"))
        named.append((layer, place))
    return named
