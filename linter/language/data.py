"""A checked expression as plain lists, for the cache and for other processes, and back.

A node is a list of the name of its class and its fields; places are left out.
"""

from __future__ import annotations

from functools import cache
from typing import cast

from linter.language import tree
from linter.language.checked import Checked, Later
from linter.language.tree import Base, Node
from linter.units import Dimension
from linter.vocabulary.model import FactType, Shape

Data = list["Data"] | str | float | bool | None


def to_data(checked: Checked) -> Data:
    """The expression as lists, texts and numbers only.

    >>> to_data(Checked("box", FactType(Shape.WORD, words=("hot",)), tree.Word("hot")))
    ['box', ['word', None, ['hot'], ''], ['Word', 'hot']]
    """
    return [checked.subject, type_to_data(checked.type), _plain(checked.node)]


def from_data(data: Data) -> Checked:
    """The expression that `to_data` gave; raises `ValueError` for what it cannot have given.

    Its node is made when it is first asked for: of a kept pack, one job needs only a part.
    """
    subject, type_, node = _list(data)
    return Checked(str(subject), type_from_data(type_), Later(lambda: cast("Node", _made(node))))


def type_to_data(fact_type: FactType) -> Data:
    """A type as a list."""
    dimension = fact_type.dimension
    exponents: Data = None if dimension is None else list(dimension)
    return [fact_type.shape.value, exponents, list(fact_type.words), fact_type.kind]


def type_from_data(data: Data) -> FactType:
    """The type that `type_to_data` gave; equal ones are one."""
    shape, exponents, words, kind = _list(data)
    powers = None if exponents is None else tuple(map(_number, _list(exponents)))
    return _type(str(shape), powers, tuple(map(str, _list(words))), str(kind))


@cache
def _type(
    shape: str, exponents: tuple[float, ...] | None, words: tuple[str, ...], kind: str
) -> FactType:
    dimension = None if exponents is None else Dimension(*map(int, exponents))
    return FactType(Shape(shape), dimension, words, kind)


def _plain(field: object) -> Data:
    if isinstance(field, Base):
        return [type(field).__name__, *map(_plain, field.said())]
    if isinstance(field, FactType):
        return ["type", type_to_data(field)]
    if isinstance(field, tuple):
        return ["several", *map(_plain, field)]
    return cast("Data", field)  # what is left is a text, a number, a yes or no, or nothing


def _made(data: Data) -> object:
    if not isinstance(data, list):
        return data
    name, *fields = data
    if name == "type":
        return type_from_data(fields[0])
    made = [_made(field) for field in fields]
    return tuple(made) if name == "several" else _classes()[str(name)](*made)


@cache
def _classes() -> dict[str, type[Base]]:
    return {name: each for name, each in vars(tree).items() if isinstance(each, type)
            and issubclass(each, Base)}  # fmt: skip


def _list(data: Data) -> list[Data]:
    if not isinstance(data, list):
        raise ValueError("a list was expected")
    return data


def _number(data: Data) -> float:
    if not isinstance(data, int | float):
        raise ValueError("a number was expected")
    return data
