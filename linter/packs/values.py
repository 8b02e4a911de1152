"""Values of packs: what `of` means, quantities, yes and no, words; and how they are written."""

from collections.abc import Mapping

from linter.text import Refusal, nearest
from linter.text.yaml_places import Node
from linter.units import (
    AREA,
    DIMENSIONS_BY_NAME,
    METRIC,
    Dimension,
    NotAQuantity,
    UnitChoice,
    read_quantity,
)
from linter.vocabulary.model import FactType, Shape
from linter.vocabulary.shorthand import TEXT, YES_NO, quantity, word

WIRE = "wire"
NOTHING = "none"
_YES_NO = {"yes": True, "true": True, "no": False, "false": False}


def type_named(name: str) -> FactType:
    """The type that `of` or `gives` names; a word column learns its words from its rows.

    >>> type_named("wire") == type_named("area")
    True
    """
    if name in ("text", "yes or no", "word", "words"):
        return {"text": TEXT, "yes or no": YES_NO}.get(name, word())
    return quantity(AREA if name == WIRE else DIMENSIONS_BY_NAME[name])


def read_value(node: Node, type_: FactType) -> float | str | bool:
    """The value of a scalar of a type, in base units; raises `NotAQuantity` with what to say."""
    match type_.shape:
        case Shape.QUANTITY:
            return read_quantity(node.text, type_.dimension).value
        case Shape.YES_NO:
            return _read_yes_no(node)
        case _ if type_.words and node.text not in type_.words:
            raise NotAQuantity(
                f'"{node.text}" is not one of its words',
                f"one of: {', '.join(type_.words)}",
                "write one of these words",
                nearest(node.text, type_.words),
            )
        case _:
            return node.text


def refusal_of(error: NotAQuantity, node: Node) -> Refusal:
    """What is said of a value that cannot be read, at its place."""
    return Refusal(node.place, error.found, error.expected, error.mend, error.nearest)


def unit_choice(units: Mapping[str, str]) -> UnitChoice:
    """The units in which a pack writes results: its own choice, and metric units beside it.

    >>> from linter.units import AREA, LENGTH
    >>> choice = unit_choice({"wire": "mm2", "length": "mm"})
    >>> choice[AREA], choice[LENGTH]
    ('mm2', 'mm')
    """
    return {**METRIC, **{dimension_named(name): unit for name, unit in units.items()}}


def dimension_named(name: str) -> Dimension:
    """The dimension whose unit a pack may choose; sizes of wire stand for areas."""
    return AREA if name == WIRE else DIMENSIONS_BY_NAME[name]


def _read_yes_no(node: Node) -> bool:
    if node.text not in _YES_NO:
        raise NotAQuantity(f'"{node.text}" is neither yes nor no', "yes or no", "write yes or no")
    return _YES_NO[node.text]
