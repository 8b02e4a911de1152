"""`precover packs words`: what a rule may speak of, for those who write packs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.cli.output import show_lines
from linter.cli.packs_told import shelf_for
from linter.cli.shelf import PACKS
from linter.cli.status import Status
from linter.cli.words import Option, tell_apart
from linter.cli.wrong_use import WrongUse
from linter.reports.words_page import fact_page, kind_page, kinds_page, measure_page
from linter.text import nearest
from linter.vocabulary.kinds import KINDS

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from linter.packs.model import Pack
    from linter.reports.layout import Line
    from linter.vocabulary.model import Kind

_OPTIONS = (Option("--pack", "the name of a pack, or its folder"), PACKS)


def run_packs_words(words: Sequence[str]) -> Status:
    """Shows all kinds of thing, the facts of one kind, or one fact."""
    names, options = tell_apart("precover packs words", _OPTIONS, words)
    if len(names) > 1:
        raise WrongUse("Only one kind or fact can be shown.", mend="write KIND or KIND.FACT")
    wanted = options.one("--pack")
    pack = _pack(options.all("--packs"), wanted) if wanted else None
    show_lines(_page(names[0], pack) if names else kinds_page(pack))
    return Status.NOTHING_OUTSTANDING


def _pack(own: Sequence[str], told: str) -> Pack:
    shelf, (name,) = shelf_for(own, told)
    return shelf.pack_named(name)


def _page(name: str, pack: Pack | None) -> Iterator[Line]:
    first, _, second = name.partition(".")
    kind = KINDS.get(first)
    if kind is None:
        near = nearest(first, KINDS)
        raise WrongUse(f'"{first}" is no kind of thing.', f"one of: {', '.join(KINDS)}", near)
    if not second:
        return kind_page(kind, pack)
    fact = kind.fact(second)
    if fact is not None:
        return fact_page(kind, fact, pack)
    measure = pack.measures.get((first, second)) if pack else None
    if pack is not None and measure is not None:
        return measure_page(measure, pack)
    raise _no_such_fact(kind, second, pack)


def _no_such_fact(kind: Kind, name: str, pack: Pack | None) -> WrongUse:
    known = [fact.name for fact in kind.facts]
    known += [measure for of, measure in pack.measures if of == kind.name] if pack else []
    mend = f'"precover packs words {kind.name}" lists the facts it has'
    return WrongUse(f'A {kind.label} has no fact "{name}".', "", nearest(name, known), mend)
