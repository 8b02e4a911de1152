"""The addresses of files in a report: relative to the root of the repository they lie in."""

from __future__ import annotations

from pathlib import Path
from urllib.parse import quote

from linter.cli.files import STANDARD_INPUT

_REPOSITORY = ".git"


class Finder:
    """The address of a file, as a URI has it; empty for what is read from standard input.

    The root is the nearest folder above the working folder that is a repository, or the working
    folder itself. A file outside it keeps its name alone, so that no path of the machine is told.
    """

    def __init__(self) -> None:
        self._here = Path.cwd()
        self._root = _root(self._here)

    def __call__(self, file: str) -> str:
        """The address of the file of that name."""
        if file == STANDARD_INPUT:
            return ""
        path = self._here / file
        for each in (Path(*_without_dots(path)), path.resolve()):
            if each.is_relative_to(self._root):
                return quote(each.relative_to(self._root).as_posix())
        return quote(path.name)


def _root(folder: Path) -> Path:
    above = (folder, *folder.parents)
    return next((each for each in above if (each / _REPOSITORY).exists()), folder)


def _without_dots(path: Path) -> list[str]:
    parts: list[str] = []
    for part in path.parts:
        if part == "..":
            parts.pop()
        else:
            parts.append(part)
    return parts
