"""The packs that a command about packs is told of: by their name, or by their folder."""

from __future__ import annotations

import os
from pathlib import Path
from typing import TYPE_CHECKING

from linter.cli.pack_folders import packs_in, places_in
from linter.cli.shelf import BESIDE, Shelf
from linter.resources import MANIFEST

if TYPE_CHECKING:
    from collections.abc import Sequence


def shelf_for(own: Sequence[str], *told: str) -> tuple[Shelf, list[str]]:
    """The shelf of packs at hand, and the names of those told of, each by its name or its folder.

    `own` are folders of packs that were named. Where none is, the folder `packs` of the folder that
    one works in is looked into, as it is for a job file that lies there.
    """
    by_folder = [each for each in told if each and (Path(each) / MANIFEST).is_file()]
    names = [Path(each).resolve().name if each in by_folder else each for each in told]
    beside = [folder for each in by_folder for folder in _beside(each)]
    return Shelf([*(own or _at_hand()), *beside, *by_folder]), names


def _beside(pack: str) -> list[str]:
    """The packs of one's own that lie beside one, since it may stand on them."""
    shipped = Shelf()
    above = os.path.normpath(os.path.join(pack, os.pardir))  # noqa: PTH118  of "." it is ".."
    around = packs_in(Path(above), Path(above).as_posix())
    return [each.shown for name, each in around.items() if not shipped.ships(name)]


def _at_hand() -> list[str]:
    folder = Path(BESIDE)
    holds = folder.is_dir() and (packs_in(folder, BESIDE) or places_in(folder, BESIDE))
    return [BESIDE] if holds else []
