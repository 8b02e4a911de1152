"""`precover packs prove PACK`: whether every rule of a pack does what its proofs say."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.cli.output import show_lines
from linter.cli.packs_told import shelf_for
from linter.cli.shelf import PACKS
from linter.cli.status import Status
from linter.cli.words import tell_apart
from linter.cli.wrong_use import WrongUse
from linter.packs.prove import prove
from linter.reports.pack_list import proof_lines

if TYPE_CHECKING:
    from collections.abc import Sequence


def run_packs_prove(words: Sequence[str]) -> Status:
    """Runs the proofs of the pack named, and says which do not come out as stated."""
    names, options = tell_apart("precover packs prove", (PACKS,), words)
    if len(names) != 1:
        found = "Which pack to prove is missing." if not names else "Only one pack can be proved."
        raise WrongUse(found, f"one of: {', '.join(shelf_for(options.all('--packs'))[0].names)}")
    shelf, (name,) = shelf_for(options.all("--packs"), names[0])
    pack = shelf.pack_named(name)
    report = prove(pack)
    show_lines(proof_lines(pack, report))
    return Status.FINDINGS if report.failing else Status.NOTHING_OUTSTANDING
