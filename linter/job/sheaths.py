"""What is printed on the sheath of a cable, read: size, conductors, type, with or without bond."""

import re
from functools import cache, lru_cache
from typing import NamedTuple

from linter.job.catalogue import (
    ANY,
    ANY_METRIC,
    bond_of,
    bond_size_of,
    colours_of,
    is_armoured,
    jackets,
)
from linter.units import AREA, NotAQuantity, Quantity, read_quantity

ARMOUR = "armour"
_SIZES = ("18", "16", "14", "12", "10", "8", "6", "4", "3", "2", "1", "1/0", "2/0", "3/0", "4/0")
_METRIC_SIZES = ("0.5", "0.75", "1", "1.5", "2.5", "4", "6", "10", "16", "25", "35", "50")
_LONGEST = 60


class Sheath(NamedTuple):
    """A sheath's printing.

    `size` is that of the insulated conductors; `colours` are the usual ones of the insulated
    conductors of such a cable, in the trade's order; `type` is empty if the printing names none;
    `jacket` is the colour of the sheath, where that tells what is in it; `usual` the entry of the
    catalogue that holds where that of its type says nothing.
    """

    size: Quantity
    colours: tuple[str, ...]
    type: str
    has_bond: bool
    written: str
    jacket: str = ""
    usual: str = ANY

    def __str__(self) -> str:
        return self.written

    @property
    def bond(self) -> str:
        """What its bond is, by its colour or as armour; empty without one.

        >>> read_sheath("12/2 NM-B").bond, read_sheath("12/2 MC").bond, read_sheath("12/2 AC").bond
        ('bare', 'green', 'armour')
        """
        return bond_of(self.type, self.jacket, self.usual) if self.has_bond else ""

    @property
    def bond_size(self) -> Quantity | None:
        """The size of its bond, as such cables are made; None where makers differ."""
        return bond_size_of(self.type, self.jacket, self.size, self.usual)

    @property
    def is_armour(self) -> bool:
        """Whether it is of metal, wound or formed around the conductors.

        >>> read_sheath("12/2 MC").is_armour, read_sheath("12/2 NM-B").is_armour
        (True, False)
        """
        return is_armoured(self.type, self.jacket, self.usual)


@lru_cache(maxsize=256)
def read_sheath(text: str) -> Sheath:
    """The sheath whose printing is `text`.

    Raises `NotAQuantity` with what was found, expected, and how to mend it.

    >>> sheath = read_sheath("14/3 NM-B")
    >>> str(sheath.size), sheath.colours, sheath.type, sheath.has_bond
    ('14 AWG', ('black', 'red', 'white'), 'NM-B', True)
    >>> read_sheath("12-2 NM-B without ground").has_bond, read_sheath("12/2 NM-B w/G").has_bond
    (False, True)
    >>> sheath = read_sheath("NYM-J 3x1.5")
    >>> str(sheath.size), sheath.colours, sheath.bond
    ('1.5 mm2', ('brown', 'blue'), 'green-yellow')
    """
    plain = " ".join(text.split())
    metric = _METRIC.fullmatch(plain) if len(plain) <= _LONGEST else None
    if metric is not None:
        return _read_metric(text, metric)
    match = _pattern().fullmatch(plain) if len(plain) <= _LONGEST else None
    colours = _colours(match) if match else None
    if match is None or colours is None:
        raise NotAQuantity(
            f'"{text[:_LONGEST]}" is not the printing of a sheath.',
            "size, conductors and type (of metric cable as in 3G2.5), such as 12/2 NM-B or "
            "14/3 NM-B without ground",
            "copy size, number of insulated conductors (1 to 4, or 2/2) and type from the sheath; "
            "of metric cable all conductors, then G with a green-yellow one or x without, then mm2",
        )
    if match["size"] not in _SIZES:
        raise _no_such_size(plain, match)
    size = read_quantity(f"{match['size']} AWG", AREA)
    has_bond = not (match["bond"] or "").lower().startswith(("without", "w/o"))
    return Sheath(size, colours, _type(match), has_bond, text.strip(), _jacket(match))


_METRIC = re.compile(
    r"(?:(?P<type>[A-Z][\w-]*) )?(?P<count>\d) ?(?P<mark>[gx\u00d7]) ?(?P<size>\d+(?:[.,]\d+)?)"
    r"(?: ?mm[2²])?",
    re.ASCII | re.IGNORECASE,
)


def _read_metric(text: str, match: re.Match[str]) -> Sheath:
    """A printing in square millimetres: all conductors are counted.

    G says that one is green-yellow, x that none is, but for a type that ends in -J.
    Source: HD 361 S3, for the mark; known from memory.
    """
    size = match["size"].replace(",", ".")
    if size not in _METRIC_SIZES:
        raise NotAQuantity(
            f"No cable is made of {size} mm2.",
            f"one of the sizes {', '.join(_METRIC_SIZES)}, such as 3G2.5",
            "read the size on the sheath again",
        )
    has_bond = match["mark"] in "gG" or _type(match).endswith("-J")
    count = f"{match['count']}{'G' if has_bond else 'x'}"
    colours = colours_of(_type(match), "", count, ANY_METRIC)
    if colours is None:
        raise NotAQuantity(
            f'"{text.strip()}": no cable of {match["count"]} conductors is known with these signs.',
            "2x, 3x, 4x, 3G, 4G or 5G, such as 3G2.5",
            "read the number on the sheath again",
        )
    area = read_quantity(f"{size} mm2", AREA)
    return Sheath(area, colours, _type(match), has_bond, text.strip(), usual=ANY_METRIC)


def _type(match: re.Match[str]) -> str:
    return (match["type"] or "").upper()


def _jacket(match: re.Match[str]) -> str:
    return (match["jacket"] or "").lower()


def _no_such_size(plain: str, match: re.Match[str]) -> NotAQuantity:
    """No cable is made of such a size; the two beside it are named, the larger wire last."""
    number = int(match["size"])
    beside = [each for each in _SIZES if each.isdecimal() and abs(int(each) - number) == 1]
    near = tuple(
        plain[: match.start("size")] + each + plain[match.end("size") :] for each in beside
    )
    return NotAQuantity(
        f"No cable is made of {number} AWG.",
        f"one of the sizes {', '.join(_SIZES)}, such as 12/2 NM-B",
        "read the size on the sheath again",
        near,
    )


def _colours(match: re.Match[str]) -> tuple[str, ...] | None:
    count = "/".join(str(int(each)) for each in (match["count"], match["more"]) if each)
    return colours_of(_type(match), _jacket(match), count)


@cache
def _pattern() -> re.Pattern[str]:
    return re.compile(
        r"#?(?P<size>[1-4]/0(?=-)|\d{1,2})(?: AWG)? ?[/-] ?(?P<count>\d)(?:[/-](?P<more>\d))?"
        r"(?: (?P<type>(?!wi?th|w/|wg\b)[A-Za-z][\w-]*))?"
        rf"(?: (?P<jacket>{'|'.join(sorted(jackets()))})(?: (?:jacket|sheath))?)?"
        r"(?: (?P<bond>wg|(?:without|with|w/o|w/) ?(?:ground|gnd|bond|g)))?",
        re.ASCII | re.IGNORECASE,
    )
