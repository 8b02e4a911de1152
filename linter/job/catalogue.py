"""What makers put into cables, by the type printed on the sheath; read from the shipped page."""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from linter.resources import rulesets_dir
from linter.text.yaml_places import Node, read_places
from linter.units import AREA, Quantity, read_quantity, same_value

PAGE = "sheaths.yaml"
"""The page of the catalogue, beside the rule packs."""

ANY = "any"
"""The entry for what is printed in gauges, without a type or with one that is not listed."""

ANY_METRIC = "any metric"
"""The same for what is printed in square millimetres."""


class Make(NamedTuple):
    """How cables of one type are made, as far as one entry of the catalogue says.

    `conductors` has the colours of those that are no bond, by their number as printed (`2`, `2/2`,
    or `3G` and `2x` of metric cable, which counts its bond);
    `bond_sizes` pairs a size of those with the size of the bond.
    """

    conductors: dict[str, tuple[str, ...]]
    bond: str
    bond_sizes: tuple[tuple[Quantity, Quantity], ...]
    is_armoured: bool


def colours_of(type_: str, jacket: str, count: str, usual: str = ANY) -> tuple[str, ...] | None:
    """The colours of the insulated conductors; None where no such cable is made.

    `usual` is the entry for what that of the type leaves out.

    >>> colours_of("MC", "", "2"), colours_of("MC", "", "9")
    (('black', 'white'), None)
    """
    makes = _makes(type_, jacket, usual)
    return next((each.conductors[count] for each in makes if count in each.conductors), None)


def bond_of(type_: str, jacket: str, usual: str = ANY) -> str:
    """What the bond of such a cable is: `bare`, `green`, `green-yellow` or `armour`."""
    return next((each.bond for each in _makes(type_, jacket, usual) if each.bond), "")


def bond_size_of(type_: str, jacket: str, size: Quantity, usual: str = ANY) -> Quantity | None:
    """The size of the bond in a cable of that size; None where makers differ.

    >>> wire = read_quantity("12 AWG", AREA)
    >>> str(bond_size_of("MC", "", wire)), bond_size_of("MC", "", read_quantity("8 AWG", AREA))
    ('12 AWG', None)
    """
    sizes = next((each.bond_sizes for each in _makes(type_, jacket, usual) if each.bond_sizes), ())
    return next((bond for wire, bond in sizes if same_value(wire.value, size.value)), None)


def is_armoured(type_: str, jacket: str, usual: str = ANY) -> bool:
    """Whether the sheath of such a cable is of metal, wound or formed around the conductors."""
    return any(each.is_armoured for each in _makes(type_, jacket, usual))


def jackets() -> frozenset[str]:
    """The words for jackets that the catalogue tells apart."""
    return frozenset(jacket for _, jacket in _catalogue() if jacket)


def _makes(type_: str, jacket: str, usual: str) -> list[Make]:
    """The entries that speak of a type, the most particular first."""
    asked = dict.fromkeys(((type_, jacket), (type_, ""), (usual, "")))
    return [_catalogue()[each] for each in asked if each in _catalogue()]


@cache
def _catalogue() -> dict[tuple[str, str], Make]:
    """Every entry by type and jacket."""
    root = read_places((rulesets_dir() / PAGE).read_text(encoding="utf-8"), PAGE)
    return {
        (kind.text, entry.fields["jacket"].text if "jacket" in entry.fields else ""): _make(entry)
        for entry in root.fields["sheaths"].items
        for kind in entry.fields["types"].items
    }


def _make(entry: Node) -> Make:
    fields = entry.fields
    conductors = fields["conductors"].fields if "conductors" in fields else {}
    sizes = fields["bond_sizes"].fields if "bond_sizes" in fields else {}
    return Make(
        {count: tuple(each.text for each in node.items) for count, node in conductors.items()},
        fields["bond"].text if "bond" in fields else "",
        tuple((_wire(size), _wire(node.text)) for size, node in sizes.items()),
        "armoured" in fields,
    )


def _wire(text: str) -> Quantity:
    return read_quantity(text, AREA)
