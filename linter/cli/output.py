"""What reaches the person: reports on standard output, everything else on standard error."""

from __future__ import annotations

import os
import sys
from typing import TYPE_CHECKING, TextIO

from linter.text import inert_line

if TYPE_CHECKING:
    from collections.abc import Iterable

    from linter.reports.layout import Line

_NARROWEST, _WIDEST = 40, 100


def show(text: str) -> None:
    """Writes a report, or what was asked for, to standard output."""
    _write(sys.stdout, text)


def show_lines(lines: Iterable[Line]) -> None:
    """Writes lines to standard output: in colour to a terminal, else as plain text."""
    from linter.reports.layout import plain  # noqa: PLC0415  commands that show no lines do without

    if not sys.stdout.isatty():
        show(plain(lines))
    elif os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb":
        show(plain(lines, _terminal_width()))
    else:
        _show_coloured(lines)


def say(text: str) -> None:
    """Writes a remark, a refusal or our own fault to standard error."""
    lines = "\n".join(map(inert_line, text.split("\n")))
    _write(sys.stderr, f"{lines}\n")


def _show_coloured(lines: Iterable[Line]) -> None:
    from rich.console import Console  # noqa: PLC0415  11 ms that only a terminal needs

    from linter.reports.terminal import coloured  # noqa: PLC0415

    width = _terminal_width()
    console = Console(width=width, highlight=False, soft_wrap=True)
    with console.capture() as captured:
        for row in coloured(lines, width):
            console.print(row)
    show(captured.get())


def _terminal_width() -> int:
    import shutil  # noqa: PLC0415  only a terminal has a width

    return min(max(shutil.get_terminal_size().columns, _NARROWEST), _WIDEST)


def _write(stream: TextIO, text: str) -> None:
    encoding = stream.encoding or "utf-8"
    # What the terminal cannot show is shown as its number, rather than failing at it.
    inert = text.encode(encoding, "backslashreplace").decode(encoding)
    try:
        print(inert, end="", file=stream, flush=True)
    except BrokenPipeError:
        # Whoever read our output wants no more of it; the status is told all the same.
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())
