"""The words after a command, told apart: options with their values, and names."""

import argparse
from collections.abc import Sequence
from typing import NamedTuple, NoReturn

from linter.cli.wrong_use import WrongUse
from linter.text import nearest


class Option(NamedTuple):
    """An option that takes a value."""

    name: str
    meaning: str
    default: str = ""


class _Parser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        raise WrongUse(f"{self.prog}: {message}.", mend=f'ask "{self.prog} --help"')


def tell_apart(
    prog: str, options: Sequence[Option], words: Sequence[str]
) -> tuple[list[str], dict[str, str]]:
    """The names among the words, and the value of each option.

    What follows two hyphens is a name. Raises `WrongUse` for an option that the command does not
    have, or one without its value.

    >>> tell_apart("precover audit", [Option("--form", "", "text")], ["a.yaml", "--form", "json"])
    (['a.yaml'], {'--form': 'json'})
    """
    parser = _Parser(prog=prog, add_help=False, allow_abbrev=False)
    for option in options:
        # nargs="?" leaves it to us to say that a value is missing.
        parser.add_argument(option.name, dest=option.name, nargs="?", const="", default=None)
    parser.add_argument("names", nargs="*")
    at = words.index("--") if "--" in words else len(words)
    found, unknown = parser.parse_known_intermixed_args(list(words[:at]))
    if unknown:
        _refuse(prog, unknown[0], [option.name for option in options])
    values: dict[str, str] = {}
    for option in options:
        value = getattr(found, option.name)
        if value == "":
            raise WrongUse(f"{option.name} has no value.", option.meaning, mend=_ask(prog))
        values[option.name] = option.default if value is None else value
    return [*found.names, *words[at + 1 :]], values


def _refuse(prog: str, word: str, options: list[str]) -> NoReturn:
    name = word.partition("=")[0]
    allowed = [*options, "--help"]
    expected = f"one of: {', '.join(allowed)}"
    raise WrongUse(
        f'"{name}" is not an option of {prog}.', expected, nearest(name, allowed), _ask(prog)
    )


def _ask(prog: str) -> str:
    return f'"{prog} --help" tells what each means'
