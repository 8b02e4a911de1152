"""Finds the command a command line names, runs it, and turns what it meets into a status."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from importlib import import_module

from linter.cli.guides import GUIDES, MAIN_GUIDE
from linter.cli.output import say, show
from linter.cli.status import Status
from linter.cli.wrong_use import WrongUse
from linter.text import Refused, nearest

Command = Callable[[Sequence[str]], Status]
_INTERRUPTED = 130
_FAMILIES = frozenset(name.partition(" ")[0] for name in GUIDES if " " in name)
_ASK = '"precover --help" tells what each does'


def run(words: Sequence[str]) -> int:
    """The status of the command that the words name, once it has run."""
    # No extension of a library that happens to be installed may change what an audit says.
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    try:
        return _status(words)
    except KeyboardInterrupt:
        return _INTERRUPTED


def _status(words: Sequence[str]) -> int:
    try:
        name, rest = _command(words)
        if not name or _asks_for_guide(rest):
            show(GUIDES[name] if name else _about(rest))
            return Status.NOTHING_OUTSTANDING
        return _guarded(name, rest)
    except WrongUse as wrong:
        say(wrong.lines)
        return Status.WRONG_USE


def _asks_for_guide(words: Sequence[str]) -> bool:
    before_names = words[: words.index("--")] if "--" in words else words
    return "--help" in before_names or "-h" in before_names


def _about(words: Sequence[str]) -> str:
    from linter import __version__  # noqa: PLC0415

    return f"precover {__version__}\n" if words[0] == "--version" else MAIN_GUIDE


def _command(words: Sequence[str]) -> tuple[str, Sequence[str]]:
    """The command's name and the words after it; no name where precover itself is asked about."""
    if not words:
        raise WrongUse("A command is missing.", _all_commands(), mend=_ASK)
    if words[0] in ("--help", "-h", "--version"):
        return "", words
    if words[0] in _FAMILIES and _asks_for_guide(words[1:2]):
        return "", ["--help"]
    for length in (2, 1):
        name = " ".join(words[:length])
        if name in GUIDES:
            return name, words[length:]
    raise _not_a_command(words)


def _not_a_command(words: Sequence[str]) -> WrongUse:
    firsts = list(dict.fromkeys(name.partition(" ")[0] for name in GUIDES))
    longer = [name for name in GUIDES if name.startswith(f"{words[0]} ")]
    if longer and len(words) == 1:
        return WrongUse(f'"{words[0]}" needs one more word.', f"one of: {', '.join(longer)}")
    found = " ".join(words[:2]) if longer else words[0]
    near = nearest(found, longer or firsts)
    return WrongUse(f'"{found}" is not a command.', _all_commands(), near, _ASK)


def _all_commands() -> str:
    return f"one of: {', '.join(GUIDES)}"


def _guarded(name: str, rest: Sequence[str]) -> Status:
    """Runs a command; what it refuses and where it fails is said, never thrown at the person."""
    from linter.cli.faults import attempted  # noqa: PLC0415

    try:
        outcome = attempted(f"running precover {name}", lambda: _loaded(name)(rest))
    except Refused as refused:
        say(str(refused))
        return Status.REFUSED
    return outcome if isinstance(outcome, Status) else Status.OUR_FAULT


def _loaded(name: str) -> Command:
    """The function that runs a command; each is imported only when it is the one asked for.

    "packs list" is `run_packs_list` of the module `packs_list` beside this one, and so on.
    """
    module = name.replace(" ", "_").replace("-", "_")
    command: Command = getattr(import_module(f"linter.cli.{module}"), f"run_{module}")
    return command
