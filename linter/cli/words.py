"""The words after a command, told apart: options with their values, and names."""

import argparse
from collections.abc import Mapping, Sequence
from typing import NamedTuple, NoReturn

from linter.cli.wrong_use import WrongUse
from linter.text import join_words, nearest


class Option(NamedTuple):
    """An option that takes a value; `adds_up` where it may be given several times."""

    name: str
    meaning: str
    default: str = ""
    adds_up: bool = False


class Options(NamedTuple):
    """The values of options as given, or their defaults."""

    given: Mapping[str, Sequence[str]]

    def one(self, name: str) -> str:
        """The value of an option that is given once at the most; empty where there is none."""
        return self.given[name][0] if self.given[name] else ""

    def all(self, name: str) -> Sequence[str]:
        """The values of an option that adds up."""
        return self.given[name]


class _Parser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        raise WrongUse(f"{self.prog}: {message}.", mend=f'ask "{self.prog} --help"')


def tell_apart(
    prog: str, options: Sequence[Option], words: Sequence[str]
) -> tuple[list[str], Options]:
    """The names among the words, and the values of the options.

    What follows two hyphens is a name. Raises `WrongUse` for an option that the command does not
    have, one without its value, or one given twice that does not add up.

    >>> form = Option("--form", "", "text")
    >>> names, options = tell_apart("precover audit", [form], ["a.yaml", "--form", "json"])
    >>> names, options.one("--form")
    (['a.yaml'], 'json')
    """
    parser = _Parser(prog=prog, add_help=False, allow_abbrev=False)
    for option in options:
        # nargs="?" leaves it to us to say that a value is missing.
        parser.add_argument(option.name, dest=option.name, nargs="?", const="", action="append")
    parser.add_argument("names", nargs="*")
    at = words.index("--") if "--" in words else len(words)
    found, unknown = parser.parse_known_intermixed_args(list(words[:at]))
    if unknown:
        _refuse(prog, unknown[0], [option.name for option in options])
    given = {option.name: _values(prog, option, getattr(found, option.name)) for option in options}
    return [*found.names, *words[at + 1 :]], Options(given)


def _values(prog: str, option: Option, given: Sequence[str] | None) -> Sequence[str]:
    if given is None:
        return [option.default] if option.default else []
    if "" in given:
        raise WrongUse(f"{option.name} has no value.", option.meaning, mend=_ask(prog))
    if len(given) > 1 and not option.adds_up:
        found = f"{option.name} is given twice: {join_words(given)}."
        raise WrongUse(found, mend="give it once")
    return given


def _refuse(prog: str, word: str, options: list[str]) -> NoReturn:
    name = word.partition("=")[0]
    allowed = [*options, "--help"]
    expected = f"one of: {', '.join(allowed)}"
    raise WrongUse(
        f'"{name}" is not an option of {prog}.', expected, nearest(name, allowed), _ask(prog)
    )


def _ask(prog: str) -> str:
    return f'"{prog} --help" tells what each means'
