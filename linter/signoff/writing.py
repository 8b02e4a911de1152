"""The text of a sign-off file with one more act at its end; all else stays as it is."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

from linter.signoff.reading import FORMAT
from linter.text import Refused
from linter.text.yaml_edits import with_item
from linter.text.yaml_places import read_places

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from linter.signoff.said import Item, Saying
    from linter.text.yaml_edits import Plain

_LAST_SHORT = 0xFFFF  # the last character that four digits can name


def with_act(text: str, job: str, saying: Saying, items: Sequence[Item]) -> str:
    r"""The text of a sign-off file in which this is said, too; of an empty one, a new file.

    `job` is the name of the job; there is at least one item. Raises `Refused` where the text cannot
    be read, `CannotEdit` where nothing can be added to it.

    >>> from linter.signoff.said import Item, Saying
    >>> item = Item("box-has-room", "box", "bench", "3f2a90c1d4e5b607", "90aa12bc44de01f2",
    ...             "violation", "Box bench is full.")
    >>> print(with_act("", "Net shed", Saying("agreed", "M. Ferrow", "2026-03-14"), [item]), end="")
    # What people said of findings. Entries are added at the end; the latest counts.
    precover_sign_off: 1
    job: "Net shed"
    signed:
      - says: "agreed"
        by: "M. Ferrow"
        on: "2026-03-14"
        of:
          - rule: "box-has-room"
            thing: "box bench"
            mark: "3f2a90c1d4e5b607"
            by_rule: "90aa12bc44de01f2"
            weight: "violation"
            found: "Box bench is full."
    """
    act = _act(saying, items)
    if not text.strip():
        return _new_file(job) + "\n".join(_block(act, 2)) + "\n"
    root = read_places(text, "")
    signed = root.fields.get("signed")
    if signed is not None and signed.items and signed.place.line > root.keys["signed"].line:
        # A list of lines, as this module writes it: the new act is written in lines as well.
        line_end = "\r\n" if "\r\n" in text else "\n"
        lines = line_end.join(_block(act, signed.place.column - 1))
        gap = "" if text.endswith("\n") else line_end
        longer = f"{text}{gap}{lines}{line_end}"
        if _says(longer, root.plain(), act):
            return longer
    return with_item(text, ["signed"], act)


def _act(saying: Saying, items: Sequence[Item]) -> dict[str, Plain]:
    said: dict[str, Plain] = {key: each for key, each in saying._asdict().items() if each}
    listed: list[Plain] = []
    for each in items:
        told = each._asdict()
        thing = f"{told.pop('kind')} {told.pop('ref')}"
        listed.append({"rule": told.pop("rule"), "thing": thing, **told})
    return {**said, "of": listed}


def _new_file(job: str) -> str:
    return (
        "# What people said of findings. Entries are added at the end; the latest counts.\n"
        f"precover_sign_off: {FORMAT}\njob: {_quoted(job)}\nsigned:\n"
    )


def _says(text: str, before: object, act: Plain) -> bool:
    """Whether the text reads as before, and the act after all others."""
    try:
        now = read_places(text, "").plain()
    except Refused:
        return False
    if not (isinstance(before, dict) and isinstance(before["signed"], list)):
        return False
    return now == {**before, "signed": [*before["signed"], act]}


def _block(value: dict[str, Plain], indent: int) -> Iterator[str]:
    """A map as an item of a list, a line for each of its values."""
    lead = "- "
    for key, each in value.items():
        if isinstance(each, list):
            yield f"{' ' * indent}{lead}{key}:"
            for item in each:
                if isinstance(item, dict):
                    yield from _block(item, indent + 4)
        else:
            yield f"{' ' * indent}{lead}{key}: {_quoted(each)}"
        lead = "  "


def _quoted(value: Plain) -> str:
    """The value in quotation marks; characters that do not show are written as their numbers."""
    text = json.dumps(value, ensure_ascii=False)
    return "".join(each if each.isprintable() else _numbered(ord(each)) for each in text)


def _numbered(code: int) -> str:
    return f"\\u{code:04x}" if code <= _LAST_SHORT else f"\\U{code:08x}"
