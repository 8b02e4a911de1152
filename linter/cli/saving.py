"""Files that commands write: aside first, then moved into place, so that none is left half done."""

from __future__ import annotations

import os
from pathlib import Path

from linter.text import Place, Refusal, Refused

_MARK = b"\xef\xbb\xbf"


def save(name: str, text: str) -> None:
    """Writes a text into the file of that name, in UTF-8, with the line ends that it has.

    A file that is replaced keeps its rights, and the mark of byte order if it began with one.
    Raises `Refused` where it cannot be written; the file is then as it was.
    """
    # What a link leads to is written, and the link left.
    path = Path(name).resolve() if Path(name).is_symlink() else Path(name)
    aside = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        mark = _MARK if path.is_file() and _begins_with_mark(path) else b""
        aside.write_bytes(mark + text.encode("utf-8"))
        if path.is_file():
            aside.chmod(path.stat().st_mode)
        aside.replace(path)
    except OSError as error:
        raise Refused([_unwritten(name, error)]) from error
    finally:
        aside.unlink(missing_ok=True)


def _begins_with_mark(path: Path) -> bool:
    with path.open("rb") as file:
        return file.read(len(_MARK)) == _MARK


def _unwritten(name: str, error: OSError) -> Refusal:
    reason = (error.strerror or "it cannot be written").lower()
    return Refusal(
        Place(name, 1, 1),
        f"this file cannot be written: {reason}",
        "a file in a folder that is there and may be written to",
        "name another file, or see that you may write there",
    )
