"""Runs precover in this process on small files, with the invented packs and a cache of its own."""

from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

import pytest

from linter.cli.run import run

ROOT = Path(__file__).resolve().parents[3]
PACKS = str(ROOT / "tests/cases/packs")
BOATHOUSE = (ROOT / "tests/golden/boathouse.yaml").read_text(encoding="utf-8")


class Ran(NamedTuple):
    """What a command gave: its status, and what it wrote."""

    status: int
    out: str
    err: str

    @property
    def said(self) -> str:
        """What it wrote, without the folding of lines."""
        return " ".join((self.out + self.err).split())


Runner = Callable[..., Ran]


def sound(text: str = BOATHOUSE) -> str:
    """The boathouse with all that is wrong or unknown in it put right."""
    return (
        text.replace("volume: unknown, ", "")
        .replace("volume: 11.5 in3, ", "")
        .replace("at_from: {free_length: 4 in}", "at_from: {free_length: 7 in}")
        .replace("at_to: {free_length: unknown}", "at_to: {free_length: 7 in}")
        .replace("  k4: {sheath: 14/3 NM-B, from: winch, to: top, carries: spare}\n", "")
    )


def runner(capsys: pytest.CaptureFixture[str]) -> Runner:
    """A function that runs a command line and gives what came of it."""

    def ran(*words: str) -> Ran:
        status = run(words)
        out, err = capsys.readouterr()
        return Ran(int(status), out, err)

    return ran
