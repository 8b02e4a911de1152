"""`precover packs prove PACK`: whether every rule of a pack does what its proofs say."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from linter.cli.output import show_lines
from linter.cli.shelf import PACKS, Shelf
from linter.cli.status import Status
from linter.cli.words import tell_apart
from linter.cli.wrong_use import WrongUse
from linter.packs.prove import prove
from linter.reports.pack_list import proof_lines
from linter.resources import MANIFEST

if TYPE_CHECKING:
    from collections.abc import Sequence


def run_packs_prove(words: Sequence[str]) -> Status:
    """Runs the proofs of the pack named, and says which do not come out as stated."""
    names, options = tell_apart("precover packs prove", (PACKS,), words)
    if len(names) != 1:
        found = "Which pack to prove is missing." if not names else "Only one pack can be proved."
        raise WrongUse(found, f"one of: {', '.join(Shelf(options.all('--packs')).names)}")
    folders, name = _told(names[0], options.all("--packs"))
    pack = Shelf(folders).pack_named(name)
    report = prove(pack)
    show_lines(proof_lines(pack, report))
    return Status.FINDINGS if report.failing else Status.NOTHING_OUTSTANDING


def _told(pack: str, folders: Sequence[str]) -> tuple[Sequence[str], str]:
    """The folders of packs and the name of the one to prove, which may be told by its folder."""
    path = Path(pack)
    if (path / MANIFEST).is_file():
        return [*folders, pack], path.resolve().name
    return folders, pack
