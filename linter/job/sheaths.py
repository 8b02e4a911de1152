"""What is printed on the sheath of a cable, read: size, conductors, type, with or without bond."""

import re
from functools import cache, lru_cache
from typing import NamedTuple

from linter.units import AREA, NotAQuantity, Quantity, read_quantity

BARE = "bare"
_COLOURS = {
    (1,): ("black",),
    (2,): ("black", "white"),
    (3,): ("black", "red", "white"),
    (4,): ("black", "red", "blue", "white"),
    (2, 2): ("black", "white", "red", "white-red"),
}
_LONGEST = 60


class Sheath(NamedTuple):
    """A sheath's printing.

    `size` is that of the insulated conductors; `colours` are the usual ones of the insulated
    conductors of such a cable, in the trade's order; `type` is empty if the printing names none.
    """

    size: Quantity
    colours: tuple[str, ...]
    type: str
    has_bond: bool
    written: str

    def __str__(self) -> str:
        return self.written


@lru_cache(maxsize=256)
def read_sheath(text: str) -> Sheath:
    """The sheath whose printing is `text`.

    Raises `NotAQuantity` with what was found, expected, and how to mend it.

    >>> sheath = read_sheath("14/3 NM-B")
    >>> str(sheath.size), sheath.colours, sheath.type, sheath.has_bond
    ('14 AWG', ('black', 'red', 'white'), 'NM-B', True)
    >>> read_sheath("12-2 NM-B without ground").has_bond
    False
    """
    plain = " ".join(text.split())
    match = _pattern().fullmatch(plain) if len(plain) <= _LONGEST else None
    colours = _colours(match) if match else None
    if match is None or colours is None:
        raise NotAQuantity(
            f'"{text[:_LONGEST]}" is not the printing of a sheath.',
            "size, conductors and type, such as 12/2 NM-B or 14/3 NM-B without ground",
            "copy size, number of insulated conductors (1 to 4, or 2/2) and type from the sheath",
        )
    size = read_quantity(f"{match['size']} AWG", AREA)
    return Sheath(size, colours, match["type"] or "", match["bond"] != "without", text.strip())


def _colours(match: re.Match[str]) -> tuple[str, ...] | None:
    counts = tuple(int(each) for each in (match["count"], match["more"]) if each)
    return _COLOURS.get(counts)


@cache
def _pattern() -> re.Pattern[str]:
    return re.compile(
        r"(?P<size>[1-4]/0(?=-)|\d{1,2})(?: AWG)? ?[/-] ?(?P<count>\d)(?:[/-](?P<more>\d))?"
        r"(?: (?P<type>(?!with)[A-Za-z][\w-]*))?(?: (?P<bond>with|without) (?:ground|bond))?",
        re.ASCII,
    )
