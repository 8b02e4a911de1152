"""`precover packs list`: the rule packs at hand."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.cli.output import say, show_lines
from linter.cli.packs_told import shelf_for
from linter.cli.shelf import PACKS
from linter.cli.status import Status
from linter.cli.words import tell_apart
from linter.cli.wrong_use import WrongUse
from linter.reports.pack_list import pack_list, place_list
from linter.text import Refused

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.packs.localities import Locality
    from linter.packs.model import Pack


def run_packs_list(words: Sequence[str]) -> Status:
    """Lists every pack that can be put together; the refusals of others are said."""
    names, options = tell_apart("precover packs list", (PACKS,), words)
    if names:
        raise WrongUse(f'"{names[0]}" is one word too many.', mend="write precover packs list")
    shelf, _ = shelf_for(options.all("--packs"))
    packs: list[Pack] = []
    refused = False
    for name in shelf.names:
        try:
            packs.append(shelf.pack_named(name))
        except Refused as refusal:
            refused = True
            say(str(refusal))
    show_lines(pack_list(packs))
    places: list[Locality] = []
    for name in sorted(shelf.places.files):
        try:
            places.append(shelf.places.named(name))
        except Refused as refusal:
            refused = True
            say(str(refusal))
    show_lines(place_list(places))
    return Status.REFUSED if refused else Status.NOTHING_OUTSTANDING
