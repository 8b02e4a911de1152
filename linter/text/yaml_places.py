"""YAML or JSON read with the place of every key and value.

Text comes in, a `Node` goes out. Only JSON's types are told apart: `yes`, `no`, `on` and `12:30`
stay text. What only makes files hard to follow (anchors, tags, several documents) is refused, as is
a key that is stated twice. The parser is walked event by event, without recursion, so that no depth
of brackets can harm.
"""

from __future__ import annotations

import math
import re
from functools import cache
from typing import TYPE_CHECKING, Any, NamedTuple, NoReturn

from linter.text.refusals import Place, Refusal, Refused
from linter.text.yaml_slips import outside_yaml, slip_of

if TYPE_CHECKING:
    from collections.abc import Callable

    import yaml

DEEPEST = 40
_LONGEST_NUMBER = 30

Value = str | int | float | bool | None | list["Node"] | dict[str, "Node"]


class Node(NamedTuple):
    """A value of the file: where it stands and, if it is no list or map, how it is written.

    `value` is JSON's: text, a number, true, false, nothing, a list of nodes, or nodes by key; then
    `keys` has the place of each key. `text_place` is where the first character of the text stands:
    past the quotation mark, or on the first line of a literal block, all lines of which begin in
    its column. It is None where the text is folded over several lines.
    """

    value: Value
    place: Place
    text: str = ""
    text_place: Place | None = None
    keys: dict[str, Place] = {}  # noqa: RUF012  never written to

    @property
    def items(self) -> list[Node]:
        """The nodes of a list; none if this is no list."""
        return self.value if isinstance(self.value, list) else []

    @property
    def fields(self) -> dict[str, Node]:
        """The nodes of a map by key; none if this is no map."""
        return self.value if isinstance(self.value, dict) else {}

    @property
    def is_nothing(self) -> bool:
        """Whether nothing is written here."""
        return self.value is None and not self.text

    def at(self, path: list[str | int]) -> Node:
        """The node at the end of a path of keys and positions, or the last one on the way to it."""
        node = self
        for step in path:
            if isinstance(step, str) and step in node.fields:
                node = node.fields[step]
            elif isinstance(step, int) and 0 <= step < len(node.items):
                node = node.items[step]
            else:
                break
        return node

    def plain(self) -> object:
        """The value without places, as a JSON reader would give it."""
        if isinstance(self.value, list):
            return [each.plain() for each in self.value]
        if isinstance(self.value, dict):
            return {key: each.plain() for key, each in self.value.items()}
        return self.value


def read_places(text: str, file: str) -> Node:
    r"""The one document that `text` holds; raises `Refused` where it cannot be read.

    >>> node = read_places("boxes:\n  sink-left: {gangs: 1, is_metal: yes}\n", "studio.yaml")
    >>> node.plain()
    {'boxes': {'sink-left': {'gangs': 1, 'is_metal': 'yes'}}}
    >>> str(node.at(["boxes", "sink-left", "gangs"]).place)
    'studio.yaml:2:22'
    """
    text = text.removeprefix("\ufeff")  # some editors put a mark of byte order first
    unreadable = outside_yaml(text, file)
    if unreadable is not None:
        raise Refused([unreadable])
    return _Reading(text, file).document()


class _Open:
    """A list or map whose end has not come yet."""

    __slots__ = ("items", "key", "key_place", "keys", "place")

    def __init__(self, place: Place, items: list[Node] | dict[str, Node]) -> None:
        self.place = place
        self.items = items
        self.keys: dict[str, Place] = {}
        self.key: str | None = None
        self.key_place = place


class _Reading:
    """One pass over the events of one file."""

    def __init__(self, text: str, file: str) -> None:
        self.text, self.file = text, file
        self.open: list[_Open] = []
        self.found: Node | None = None
        self.refusals: list[Refusal] = []
        self.lines: list[str] | None = None

    def document(self) -> Node:
        import yaml  # noqa: PLC0415  only who reads a file pays for the parser

        loader = yaml.CSafeLoader if yaml.__with_libyaml__ else yaml.SafeLoader
        take: dict[str, Callable[[Any], None]] = {
            "DocumentStartEvent": self.another_document,
            "ScalarEvent": self.scalar,
            "SequenceStartEvent": self.begin_list,
            "MappingStartEvent": self.begin_map,
            "SequenceEndEvent": self.end,
            "MappingEndEvent": self.end,
            "AliasEvent": self.alias,
        }
        try:
            for event in yaml.parse(self.text, Loader=loader):
                do = take.get(type(event).__name__)
                if do is not None:
                    do(event)
        except yaml.MarkedYAMLError as error:
            self.refusals.append(slip_of(error, self.text, self.file))
        if not self.refusals and (self.found is None or self.found.is_nothing):
            self.refuse(Place(self.file, 1, 1), "There is nothing in the file", "", "write into it")
        if self.refusals or self.found is None:
            raise Refused(self.refusals)
        return self.found

    def another_document(self, event: yaml.Event) -> None:
        if self.found is not None:
            self.stop(
                self.place(event),
                "A second document begins here",
                "one document in a file",
                "put it in a file of its own",
            )

    def alias(self, event: yaml.Event) -> None:
        self.no_anchor(event, self.place(event))
        self.put(Node(None, self.place(event)))

    def begin_list(self, event: yaml.Event) -> None:
        self.begin(event, [])

    def begin_map(self, event: yaml.Event) -> None:
        self.begin(event, {})

    def end(self, event: yaml.Event) -> None:  # noqa: ARG002  all are called alike
        done = self.open.pop()
        self.put(Node(done.items, done.place, keys=done.keys))

    def begin(self, event: yaml.Event, items: list[Node] | dict[str, Node]) -> None:
        place = self.place(event)
        self.no_anchor(event, place)
        if len(self.open) >= DEEPEST:
            self.stop(
                place,
                f"Lists and maps stand in each other more than {DEEPEST} deep",
                "",
                "close the brackets that were meant to be closed",
            )
        if self.key_is_due():
            self.stop(
                place,
                "A list or map stands where a key is expected",
                "a word and a colon",
                "put text in braces into quotation marks",
            )
        self.open.append(_Open(place, items))

    def key_is_due(self) -> bool:
        above = self.open[-1] if self.open else None
        return above is not None and above.key is None and isinstance(above.items, dict)

    def scalar(self, event: yaml.ScalarEvent) -> None:
        place = self.place(event)
        if event.anchor is not None or event.tag is not None:
            self.no_anchor(event, place)
        if not self.key_is_due():
            value = event.value if event.style else _value(event.value)
            self.put(Node(value, place, event.value, self.text_place(event, place)))
            return
        self.open[-1].key, self.open[-1].key_place = event.value, place
        if not event.value:
            self.refuse(place, "A key is missing here", "a word before the colon", "write the key")

    def put(self, node: Node) -> None:
        above = self.open[-1] if self.open else None
        if above is None:
            self.found = node
        elif isinstance(above.items, list):
            above.items.append(node)
        elif above.key is not None:
            self.put_under(above, above.items, above.key, node)

    def put_under(self, above: _Open, items: dict[str, Node], key: str, node: Node) -> None:
        above.key = None
        if key in items:
            first = (above.keys[key], "first stated")
            self.refuse(
                above.key_place, f'"{key}" is stated twice', "", "keep one of the two", first
            )
            return
        items[key] = node
        above.keys[key] = above.key_place

    def no_anchor(self, event: yaml.Event, place: Place) -> None:
        anchor, tag = getattr(event, "anchor", None), getattr(event, "tag", None)
        if anchor is not None:
            self.refuse(
                place,
                f'A mark for repeating, "{anchor}", stands here',
                "values written out where they belong",
                "write the value itself; put text that begins with & or * into quotation marks",
            )
        if tag not in (None, "!"):
            self.refuse(
                place,
                f'A tag "{tag}" stands here',
                "a plain value",
                "leave out the tag; put text that begins with ! into quotation marks",
            )

    def text_place(self, event: yaml.ScalarEvent, place: Place) -> Place | None:
        start, end = event.start_mark, event.end_mark
        if start is None or end is None:
            return None
        if not event.style:
            return place if start.line == end.line else None
        if event.style in ("|", ">"):
            return self.block_place(event, place) if event.style == "|" else None
        # What stands after an escaped character is further right in the file; no matter.
        return Place(self.file, place.line, place.column + 1) if start.line == end.line else None

    def block_place(self, event: yaml.ScalarEvent, place: Place) -> Place | None:
        """Where a literal block begins; None if its first line is empty or further in."""
        if self.lines is None:
            self.lines = self.text.splitlines()
        line = self.lines[place.line] if place.line < len(self.lines) else ""
        indent = len(line) - len(line.lstrip(" "))
        if not line.strip() or event.value.startswith((" ", "\n")):
            return None
        return Place(self.file, place.line + 1, indent + 1)

    def place(self, event: yaml.Event) -> Place:
        mark = event.start_mark
        if mark is None:  # the parser's types allow it, the parser does not do it
            return Place(self.file, 1, 1)
        return Place(self.file, mark.line + 1, mark.column + 1)

    def refuse(
        self,
        place: Place,
        found: str,
        expected: str,
        mend: str,
        also: tuple[Place, str] | None = None,
    ) -> None:
        self.refusals.append(Refusal(place, found, expected, mend, also=also))

    def stop(self, place: Place, found: str, expected: str, mend: str) -> NoReturn:
        self.refuse(place, found, expected, mend)
        raise Refused(self.refusals)


@cache
def _number_pattern() -> re.Pattern[str]:
    return re.compile(r"-?(?:0|[1-9]\d*)(\.\d+)?([eE][+-]?\d+)?", re.ASCII)


def _value(text: str) -> str | int | float | bool | None:
    """What a plain word is: as JSON has it, or text."""
    if not text or text == "null":
        return None
    if text in ("true", "false"):
        return text == "true"
    if text[0] not in "-0123456789" or len(text) > _LONGEST_NUMBER:
        return text
    match = _number_pattern().fullmatch(text)
    if match is None:
        return text
    if match[1] is None and match[2] is None:
        return int(text)
    number = float(text)
    return number if math.isfinite(number) else text
