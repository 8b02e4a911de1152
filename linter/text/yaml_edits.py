r"""YAML changed where it is meant, and nowhere else: comments, order, blanks and line ends stay.

Text, a path of keys and positions, and a plain value come in; the new text goes out. What comes out
is read again: it must say what was asked for, and everything else as before.

>>> with_value("k1: {from: panel}  # home run\n", ["k1", "length"], "12 ft")
'k1: {from: panel, length: 12 ft}  # home run\n'
>>> with_item("said: # by whom\n- {by: O. Tarn}\n", ["said"], {"by": "M. Ferrow"})
'said: # by whom\n- {by: O. Tarn}\n- by: M. Ferrow\n'
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from linter.text.refusals import Refused
from linter.text.yaml_places import read_places

if TYPE_CHECKING:
    from yaml_edit import Mapping, Node, YamlFile
    from yaml_edit import Sequence as Items

Plain = str | int | float | bool | None | list["Plain"] | dict[str, "Plain"]
Path = Sequence[str | int]


class CannotEdit(Exception):
    """The text cannot be changed at that place without touching something else."""


def with_value(text: str, path: Path, value: Plain) -> str:
    """The text with a value under the last key of the path, which a map is to hold.

    Raises `CannotEdit` where there is no such map, or where what comes out says anything else than
    before but for this value.
    """
    *above, last = path
    wanted = _plain(text)
    here = _at(wanted, above)
    if not (isinstance(here, dict) and isinstance(last, str)):
        raise _cannot(path)
    here[last] = value
    file, top = _opened(text)
    node = _node_at(top, above).as_mapping()
    if node is None:
        raise _cannot(path)
    node.set(last, value)
    return _checked(str(file), wanted, path)


def with_item(text: str, path: Path, item: Plain) -> str:
    """The text with one more item at the end of the list at the path; where none is, it is made.

    Raises `CannotEdit` as `with_value` does.
    """
    wanted = _plain(text)
    here = _at(wanted, path)
    if not isinstance(here, list):
        return with_value(text, path, [item])
    here.append(item)
    file, top = _opened(text)
    node = _node_at(top, path).as_sequence()
    if node is None:
        raise _cannot(path)
    node.append(item)
    return _checked(str(file), wanted, path)


def _plain(text: str) -> Plain:
    return read_places(text, "").plain()  # type: ignore[return-value]  # JSON's types, all of them


def _at(value: Plain, path: Path) -> Plain:
    """What stands at the path in a plain value; nothing where the path does not lead on."""
    for step in path:
        if isinstance(value, dict) and isinstance(step, str):
            value = value.get(step)
        elif isinstance(value, list) and isinstance(step, int) and step < len(value):
            value = value[step]
        else:
            return None
    return value


def _opened(text: str) -> tuple[YamlFile, Node]:
    """The file for the editor, and what stands at its top."""
    import yaml_edit  # noqa: PLC0415  only who writes into a file pays for it

    file = yaml_edit.YamlFile.parse(text)
    document = file.document()
    top = document.root() if document is not None else None
    if top is None:
        raise _cannot([])
    return file, top


def _node_at(node: Node, path: Path) -> Node:
    for step in path:
        below = _below(node, step)
        if below is None:
            raise _cannot(path)
        node = below
    return node


def _below(node: Node, step: str | int) -> Node | None:
    if isinstance(step, int):
        items: Items | None = node.as_sequence()
        return items.get(step) if items is not None else None
    fields: Mapping | None = node.as_mapping()
    return fields.get(step) if fields is not None else None


def _checked(text: str, wanted: Plain, path: Path) -> str:
    """The text, once it reads as wanted; the editor is young, and a job is not to suffer for it."""
    try:
        comes_to = _plain(text)
    except Refused:
        comes_to = None
    if comes_to != wanted:
        raise _cannot(path)
    return text


def _cannot(path: Path) -> CannotEdit:
    return CannotEdit(f"cannot write at {'/'.join(map(str, path)) or 'the top'}")
