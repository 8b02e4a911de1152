"""`precover packs show RULE`: one rule, its clause, and where each value comes from."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.cli.output import show_lines
from linter.cli.shelf import PACKS, Shelf
from linter.cli.status import Status
from linter.cli.words import Option, tell_apart
from linter.cli.wrong_use import WrongUse
from linter.packs.describe import describe
from linter.reports.layout import EMPTY, Line
from linter.reports.rule_page import rule_page
from linter.text import nearest

if TYPE_CHECKING:
    from collections.abc import Sequence

    from linter.packs.model import Pack

_OPTIONS = (Option("--pack", "the name of a pack"), PACKS)


def run_packs_show(words: Sequence[str]) -> Status:
    """Shows the rule as the pack asked for has it, or as every pack that has it."""
    names, options = tell_apart("precover packs show", _OPTIONS, words)
    if len(names) != 1:
        found = "Which rule to show is missing." if not names else "Only one rule can be shown."
        raise WrongUse(found, mend="write the name of one rule")
    shelf = Shelf(options.all("--packs"))
    wanted = [options.one("--pack")] if options.one("--pack") else shelf.names
    packs = [shelf.pack_named(name) for name in wanted]
    lines: list[Line] = []
    for pack in _with_rule(packs, names[0]):
        lines += [*([EMPTY] if lines else []), *rule_page(pack, describe(pack, names[0]))]
    show_lines(lines)
    return Status.NOTHING_OUTSTANDING


def _with_rule(packs: list[Pack], name: str) -> list[Pack]:
    found = [pack for pack in packs if any(rule.name == name for rule in pack.rules)]
    if found:
        return found
    rules = dict.fromkeys(rule.name for pack in packs for rule in pack.rules)
    of = packs[0].id if len(packs) == 1 else "any pack at hand"
    near = nearest(name, rules)
    raise WrongUse(f'"{name}" is not a rule of {of}.', "" if near else ", ".join(rules), near)
