"""`precover packs show RULE`: one rule, its clause, and where each value comes from."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.cli.output import show_lines
from linter.cli.packs_told import shelf_for
from linter.cli.shelf import PACKS
from linter.cli.status import Status
from linter.cli.words import Option, tell_apart
from linter.cli.wrong_use import WrongUse
from linter.packs.describe import describe
from linter.reports.layout import EMPTY
from linter.reports.pack_contents import contents, withdrawal
from linter.reports.rule_page import item_page, rule_page
from linter.text import nearest

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from linter.cli.shelf import Shelf
    from linter.packs.model import Pack
    from linter.reports.layout import Line

_OPTIONS = (Option("--pack", "the name of a pack, or its folder"), PACKS)


def run_packs_show(words: Sequence[str]) -> Status:
    """Shows a rule as one pack has it, the rules of a clause, or all rules of a pack."""
    names, options = tell_apart("precover packs show", _OPTIONS, words)
    if len(names) != 1:
        found = "Which rule to show is missing." if not names else "Only one rule can be shown."
        raise WrongUse(found, mend="write the name of one rule, a clause, or a pack")
    shelf, (wanted, by) = shelf_for(options.all("--packs"), names[0], options.one("--pack"))
    show_lines(_shown(wanted, by, shelf))
    return Status.NOTHING_OUTSTANDING


def _shown(wanted: str, by: str, shelf: Shelf) -> Iterator[Line]:
    if wanted in shelf.names:
        return contents(shelf.pack_named(wanted))
    # A layer says what differs in one place; who names none asks for what holds in most, and first
    # of the packs that he has brought himself.
    packs = [shelf.pack_named(by)] if by else _in_turn(shelf)
    for page in (_rule, _clause, _withdrawn):
        shown = [(pack, lines) for pack in packs if (lines := page(pack, wanted)) is not None]
        if shown:
            return _in_one(shown, shelf)
    raise _no_such_rule(wanted, packs)


def _in_one(shown: list[tuple[Pack, Iterator[Line]]], shelf: Shelf) -> Iterator[Line]:
    """The first page; where it is of a pack that stands by itself, those of all that do so."""
    first, lines = shown[0]
    yield from lines
    alike = (shelf.ships(first.id), False)
    for pack, more in shown[1:]:
        if not _is_layer(first) and (shelf.ships(pack.id), _is_layer(pack)) == alike:
            yield EMPTY
            yield from more


def _rule(pack: Pack, wanted: str) -> Iterator[Line] | None:
    known = any(rule.name == wanted for rule in pack.rules)
    if known:
        return rule_page(pack, describe(pack, wanted))
    item = next((item for item in pack.items if item.name == wanted), None)
    return item_page(pack, item) if item is not None else None


def _clause(pack: Pack, wanted: str) -> Iterator[Line] | None:
    cited = [rule.clause.id for rule in pack.rules] + [item.clause.id for item in pack.items]
    stands = any(clause.startswith(wanted) for clause in cited)
    return contents(pack, wanted) if stands else None


def _withdrawn(pack: Pack, wanted: str) -> Iterator[Line] | None:
    found = [e for e in pack.withdrawn if e.what in ("rule", "item") and e.name == wanted]
    return withdrawal(pack, found[0]) if found else None


def _in_turn(shelf: Shelf) -> list[Pack]:
    """Packs of one's own come first, and of each kind those that stand by themselves."""
    packs = map(shelf.pack_named, shelf.names)
    return sorted(packs, key=lambda each: (shelf.ships(each.id), _is_layer(each), each.id))


def _is_layer(pack: Pack) -> bool:
    return pack.layer(pack.id).extends != ""


def _no_such_rule(wanted: str, packs: list[Pack]) -> WrongUse:
    rules = dict.fromkeys(rule.name for pack in packs for rule in pack.rules)
    rules |= dict.fromkeys(item.name for pack in packs for item in pack.items)
    of = packs[0].id if len(packs) == 1 else "any pack at hand"
    mend = f'"precover packs show {packs[0].id}" lists its rules'
    return WrongUse(f'"{wanted}" is not a rule of {of}.', "", nearest(wanted, rules), mend)
