"""Elements of HTML and SVG as values; text becomes markup here and nowhere else.

Every text and every attribute goes through `escaped`, so nothing that a job says can act: markup is
shown as written, and control and direction-changing characters by their number.
"""

from __future__ import annotations

import re
from html import escape
from typing import TYPE_CHECKING, NamedTuple

from linter.text import clean

if TYPE_CHECKING:
    from collections.abc import Iterator

_NAME = re.compile(r"[a-zA-Z][a-zA-Z0-9-]*", re.ASCII)
_EMPTY = frozenset({"br", "hr", "input", "link", "meta", "wbr"})
# What is laid out in lines of its own: a line break after it makes a file that can be read.
_BLOCKS = frozenset((
    "html", "head", "body", "header", "main", "footer", "nav", "section", "article", "div", "ul",
    "ol", "li", "dl", "table", "thead", "tbody", "tr", "h1", "h2", "h3", "h4", "p", "svg", "title",
    "meta", "style", "label",
))  # fmt: skip


_OF_SVG = {"view_box": "viewBox", "preserve_aspect_ratio": "preserveAspectRatio"}


class Element(NamedTuple):
    """An element: its name, its attributes in order, and what stands in it."""

    name: str
    attributes: tuple[tuple[str, str], ...]
    children: tuple[Node, ...]


class Style(NamedTuple):
    """The text of a style sheet of ours, written as it is; never made from what a job says."""

    text: str


Node = Element | Style | str
Attribute = str | float | bool | None


def el(name: str, /, *children: Node | None, **attributes: Attribute) -> Element:
    """An element; what is None is left out, `class_` and `for_` lose their line, `_` becomes `-`.

    An attribute that is True stands without a value, one that is False or None not at all. Raises
    `ValueError` for a name that is none.

    >>> written(el("a", "loft", href="#loft", class_="room", hidden=False))
    '<a href="#loft" class="room">loft</a>'
    """
    pairs = [
        (_attribute_name(key), _value(value)) for key, value in attributes.items() if _is(value)
    ]
    if not all(_NAME.fullmatch(each) for each in (name, *(key for key, _ in pairs))):
        raise ValueError(f"{name} with {pairs} is no element")
    return Element(name, tuple(pairs), tuple(each for each in children if each is not None))


def written(node: Node) -> str:
    """The markup of an element and of all that stands in it."""
    return "".join(_parts(node))


def escaped(text: str) -> str:
    r"""The text as it stands in markup, also between quotes.

    >>> escaped('<b title="x">\u202e')
    '&lt;b title=&quot;x&quot;&gt;\\u202e'
    """
    return escape(clean(text), quote=True)


def _is(value: Attribute) -> bool:
    return value is not None and value is not False


def _attribute_name(key: str) -> str:
    return _OF_SVG.get(key) or key.rstrip("_").replace("_", "-")


def _value(value: Attribute) -> str:
    if isinstance(value, float):
        return f"{value:.1f}".removesuffix(".0")
    return "" if value is True else str(value)


def _parts(node: Node) -> Iterator[str]:
    match node:
        case str():
            yield escaped(node)
        case Style(text):
            yield text
        case Element(name, attributes, children):
            pairs = (
                f' {key}="{escaped(value)}"' if value else f" {key}" for key, value in attributes
            )
            yield f"<{name}{''.join(pairs)}>"
            for child in children:
                yield from _parts(child)
            if name not in _EMPTY:
                yield f"</{name}>"
            if name in _BLOCKS:
                yield "\n"


def _pair(key: str, value: str) -> str:
    return f' {key}="{escaped(value)}"' if value else f" {key}"
