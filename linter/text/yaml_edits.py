r"""One value put into the text of a YAML or JSON file, all else left as it stands, byte for byte.

>>> with_value("boxes:\n  desk: {gangs: 1}  # by the door\n", ["boxes", "desk", "depth"], "3 in")
'boxes:\n  desk: {gangs: 1, depth: 3 in}  # by the door\n'
"""

from __future__ import annotations

import json
import re
from typing import TYPE_CHECKING, NamedTuple

import yaml

from linter.text.refusals import Refused
from linter.text.yaml_places import read_places

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

Step = str | int
Plain = str | int | float | bool | None | dict[str, "Plain"] | list["Plain"]

SAYS_NOTHING = frozenset({"", "unknown", "none", "no", "nothing", "null"})
"""Words that give way to a map, where something is to be said within them."""

_BARE = re.compile(r"[A-Za-z0-9][A-Za-z0-9 ./+_-]*[A-Za-z0-9]|[A-Za-z0-9]", re.ASCII)


_LAST_SHORT = 0xFFFF  # the last character that four digits can name


class CannotEdit(ValueError):
    """The text cannot be changed there without touching something else."""


class _Splice(NamedTuple):
    """Characters from `start` up to `end` give way to `new`."""

    start: int
    end: int
    new: str


def with_value(text: str, path: Sequence[Step], value: Plain) -> str:
    """The text with `value` at the end of `path`, a way of keys and of positions in lists.

    Maps that are missing on the way are written in braces. Raises `CannotEdit` where a value that
    says something stands on the way, or the text would not read back as meant; `Refused` where
    the text as it is cannot be read.
    """
    marked = text.startswith("\ufeff")
    body = text[1:] if marked else text
    before = read_places(body, "").plain()
    splice = _splice(body, path, value)
    after = body[: splice.start] + splice.new + body[splice.end :]
    if _read_again(after) != put(before, path, value):
        raise CannotEdit(f"cannot write at {'/'.join(map(str, path)) or 'the top'}")
    return ("\ufeff" if marked else "") + after


def with_item(text: str, path: Sequence[Step], item: Plain) -> str:
    r"""The text with one more item at the end of the list at the path; where none is, it is made.

    Raises as `with_value` does.

    >>> with_item("said: # by whom\n- {by: O. Tarn}\n", ["said"], {"by": "M. Ferrow"})
    'said: # by whom\n- {by: O. Tarn}\n- {by: M. Ferrow}\n'
    """
    here = read_places(text, "").at([*path])
    return with_value(text, [*path, len(here.items)], item)


def put(within: object, path: Sequence[Step], value: Plain) -> object:
    """Plain data with `value` at the end of `path`.

    >>> put({"desk": "unknown"}, ["desk", "depth"], "3 in")
    {'desk': {'depth': '3 in'}}
    """
    if not path:
        return value
    step, rest = path[0], path[1:]
    if isinstance(step, int):
        items = list(within) if isinstance(within, list) else []
        inner = items[step] if step < len(items) else None
        return [*items[:step], put(inner, rest, value), *items[step + 1 :]]
    fields: Mapping[str, object] = within if isinstance(within, dict) else {}
    return {**fields, step: put(fields.get(step), rest, value)}


def _read_again(text: str) -> object:
    try:
        return read_places(text, "").plain()
    except Refused:
        return None


def _splice(text: str, path: Sequence[Step], value: Plain) -> _Splice:
    loader = yaml.CSafeLoader if yaml.__with_libyaml__ else yaml.SafeLoader
    node = yaml.compose(text, Loader=loader)
    assert node is not None  # noqa: S101  it has been read, so there is one
    write = _Writer(text)
    for at, step in enumerate(path):
        inner = _inner(node, step)
        if inner is None:
            return write.added(node, step, write.nested(path[at + 1 :], value))
        node = inner
    return write.in_place_of(node, write.plain(value))


def _inner(node: yaml.Node, step: Step) -> yaml.Node | None:
    if isinstance(node, yaml.MappingNode):
        return next((value for key, value in node.value if key.value == step), None)
    if isinstance(node, yaml.SequenceNode) and isinstance(step, int) and step < len(node.value):
        inner: yaml.Node = node.value[step]
        return inner
    return None


class _Writer:
    """Writes values as this file does: JSON stays JSON, lines end as they do."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.is_json = text.lstrip().startswith("{")
        self.line_end = "\r\n" if "\r\n" in text else "\n"

    def plain(self, value: Plain) -> str:
        """A value as it stands in the file."""
        if isinstance(value, dict):
            inner = (f"{self.plain(key)}: {self.plain(each)}" for key, each in value.items())
            return f"{{{', '.join(inner)}}}"
        if isinstance(value, list):
            return f"[{', '.join(map(self.plain, value))}]"
        bare = isinstance(value, str) and not self.is_json and _stands_bare(value)
        return str(value) if bare else _quoted(value)

    def nested(self, path: Sequence[Step], value: Plain) -> str:
        """A value within the maps and lists that lead to it."""
        if any(isinstance(step, int) and step for step in path):
            raise CannotEdit("a list that is not there has no second item")
        return self.plain(_within(path, value))

    def added(self, node: yaml.Node, step: Step, value: str) -> _Splice:
        """One more key or item, after the last of a map or list; or a map in place of nothing."""
        if not isinstance(node, yaml.CollectionNode):
            if str(node.value) not in SAYS_NOTHING:
                raise CannotEdit(f'"{node.value}" stands where more is to be said')
            said = f"[{value}]" if isinstance(step, int) else f"{{{self.plain(step)}: {value}}}"
            return self.in_place_of(node, said)
        if isinstance(step, int) != isinstance(node, yaml.SequenceNode):
            raise CannotEdit("a list has positions, a map has keys")
        entry = value if isinstance(step, int) else f"{self.plain(step)}: {value}"
        if node.flow_style:
            return self.in_brackets(node, entry)
        dash = "- " if isinstance(node, yaml.SequenceNode) else ""
        return self.on_a_line(node, dash + entry)

    def in_place_of(self, node: yaml.Node, new: str) -> _Splice:
        """The value where another stands; past the colon, where nothing does."""
        start, end = node.start_mark.index, node.end_mark.index
        if isinstance(node, yaml.CollectionNode):
            raise CannotEdit("a map or list stands there")
        return _Splice(start, end, new if end > start else f" {new}")

    def in_brackets(self, node: yaml.CollectionNode, entry: str) -> _Splice:
        """One more entry in braces or brackets."""
        if not node.value:
            at = node.end_mark.index - 1
            return _Splice(at, at, entry)
        at = _last_entry(node).end_mark.index
        return _Splice(at, at, f", {entry}")

    def on_a_line(self, node: yaml.CollectionNode, entry: str) -> _Splice:
        """One more entry on a line of its own, after the last one and what is remarked there."""
        first = node.value[0][0] if isinstance(node, yaml.MappingNode) else node
        indent = " " * first.start_mark.column
        last = _last(node)
        if isinstance(last, yaml.ScalarNode) and last.style in ("|", ">"):
            at = last.end_mark.index
            return _Splice(at, at, f"{indent}{entry}{self.line_end}")
        at = self.text.find("\n", last.end_mark.index)
        at = len(self.text) if at < 0 else at - (self.text[at - 1] == "\r")
        return _Splice(at, at, f"{self.line_end}{indent}{entry}")


def _last(node: yaml.Node) -> yaml.Node:
    """What ends last within a node; braces and brackets end by themselves."""
    while isinstance(node, yaml.CollectionNode) and node.value and not node.flow_style:
        node = _last_entry(node)
    return node


def _last_entry(node: yaml.CollectionNode) -> yaml.Node:
    entry: yaml.Node = node.value[-1][1] if isinstance(node, yaml.MappingNode) else node.value[-1]
    return entry


def _quoted(value: Plain) -> str:
    """The value as JSON has it; characters that do not show are written as escapes."""
    text = json.dumps(value, ensure_ascii=False)
    return "".join(
        each if each.isprintable() or ord(each) > _LAST_SHORT else f"\\u{ord(each):04x}"
        for each in text
    )


def _within(path: Sequence[Step], value: Plain) -> Plain:
    for step in reversed(path):
        value = {step: value} if isinstance(step, str) else [value]
    return value


def _stands_bare(text: str) -> bool:
    """Whether a text needs no quotation marks to be read back as this text."""
    return bool(_BARE.fullmatch(text)) and read_places(f"- {text}", "").plain() == [text]
