"""Quantities as people write them, read into base units.

The reader knows how numbers and units are written; whether a length may be negative, say, is for
the caller to judge. A wire size is read as an area.
"""

import re
from functools import cache, lru_cache

from linter.text import join_words, nearest
from linter.units.dimensions import AREA, LENGTH, NUMBER, VOLTAGE, Dimension
from linter.units.quantities import Quantity
from linter.units.trade import PLAIN, spellings, unit_named, unit_names, units_on_a_tape
from linter.units.wire import awg_area, awg_number

LONGEST_TEXT = 60
_LARGEST = 1e15
_INCHES_IN_A_FOOT = 12
# Other fractions are no fractions: 120/240 V is two voltages, 12/3 a cable.
_PARTS = frozenset({2, 3, 4, 8, 16, 32, 64})
_EXAMPLES = {"length": "6 in", "area": "12 AWG or 2.5 mm2", "temperature": "30 C"}
# What a phone or a word processor makes of plain signs; the degree sign says nothing by itself.
_SIGNS = str.maketrans(
    {
        "\u2212": "-", "\u2013": "-", "\u00b7": " ", "\u22c5": " ", "\u00b0": "",
        "\u00b2": "2", "\u00b3": "3", "\u2033": '"', "\u201d": '"', "\u2032": "'", "\u2019": "'",
        "\u03a9": "ohm", "\u2126": "ohm", "\u00a0": " ", "\u202f": " ",
        "\u00bc": " 1/4", "\u00bd": " 1/2", "\u00be": " 3/4",
        "\u215b": " 1/8", "\u215c": " 3/8", "\u215d": " 5/8", "\u215e": " 7/8",
    }
)  # fmt: skip


class NotAQuantity(ValueError):
    """The text is no quantity, or not of the dimension asked for; the caller adds the place."""

    def __init__(self, found: str, expected: str, mend: str, nearest: tuple[str, ...] = ()) -> None:
        self.found, self.expected, self.mend, self.nearest = found, expected, mend, nearest
        super().__init__(found)


@lru_cache(maxsize=4096)
def read_quantity(text: str, dimension: Dimension | None = None) -> Quantity:
    """The quantity that `text` states, of `dimension` where one is asked for.

    Raises `NotAQuantity` with what was found, expected, near, and how to mend it.

    >>> [read_quantity(each).value for each in ('6"', "150 mm", "1-1/4 in", "80 %")]
    [0.1524, 0.15, 0.03175, 0.8]
    >>> str(read_quantity("1/0 AWG").dimension)
    'area'
    """
    plain = _plain(text, dimension)
    quantity = _wire_size(text, plain) or _feet_and_inches(text, plain, dimension)
    if quantity is None:
        quantity = _number_and_unit(text, plain, dimension)
    if dimension is not None and quantity.dimension != dimension:
        raise _other_dimension(text, quantity.dimension, dimension)
    return quantity


@cache
def _number_pattern() -> re.Pattern[str]:
    number = r"\d+(?:[ -]+\d+/\d+|/\d+|(?:\.\d+)?(?:[eE][+-]?\d{1,3}(?![\w.]))?)|\.\d+"
    return re.compile(rf"([+-]?)\s*({number})(?![\d.,])\s*(.*)", re.ASCII | re.DOTALL)


def _plain(text: str, dimension: Dimension | None) -> str:
    if len(text) > LONGEST_TEXT:
        shown = f'"{text[:20]}…" is too long for a quantity.'
        raise NotAQuantity(shown, _expected(dimension), "write one number and its unit")
    plain = " ".join(text.translate(_SIGNS).split())
    if "," in plain:
        raise _comma(text, plain, dimension)
    return plain


def _number_and_unit(text: str, plain: str, dimension: Dimension | None) -> Quantity:
    match = _number_pattern().fullmatch(plain)
    if match is None:
        raise _no_number(text, dimension)
    number, spelling = _number(text, match[1], match[2], dimension), match[3].strip()
    unit = unit_named(spelling) if spelling else PLAIN
    if unit is None:
        raise _unknown_unit(text, spelling, dimension)
    return _quantity(text, unit.to_base(number), unit.dimension)


def _wire_size(text: str, plain: str) -> Quantity | None:
    """`12 AWG`, `AWG 12`, `#12`, `1/0 AWG`; None where no gauge is spoken of."""
    lower = plain.lower()
    name = lower.removeprefix("#").removeprefix("no.").removesuffix("awg").removeprefix("awg")
    if name == lower:
        return None
    number = awg_number(name.strip().removeprefix("#").strip())
    if number is None:
        raise NotAQuantity(
            f'"{text}" is not a wire size.',
            "a gauge from 40 AWG to 1 AWG, or 1/0 AWG to 4/0 AWG",
            "write the size as printed on the sheath, such as 12 AWG; above 4/0 use kcmil",
        )
    return _quantity(text, awg_area(number), AREA)


def _feet_and_inches(text: str, plain: str, dimension: Dimension | None) -> Quantity | None:
    """`18 ft 6 in`, `18' 6 1/2"`; None where not both are named."""
    first = _number_pattern().fullmatch(plain)
    if first is None or not first[3]:
        return None
    letters = first[3].lstrip("abcdefghijklmnopqrstuvwxyzFEOT'.")
    second = _number_pattern().fullmatch(letters.lstrip(" -"))
    if second is None or second[1] or not second[3]:
        return None
    feet_unit = unit_named(first[3][: len(first[3]) - len(letters)].strip())
    inch_unit = unit_named(second[3])
    if feet_unit is None or inch_unit is None or (feet_unit.name, inch_unit.name) != ("ft", "in"):
        return None
    feet = _number(text, "", first[2], dimension)
    inches = _number(text, "", second[2], dimension)
    if inches >= _INCHES_IN_A_FOOT:
        raise NotAQuantity(
            f'"{text}" has {second[2]} inches after the feet.',
            "less than 12 inches after the feet",
            "write the length in inches alone, or carry the whole feet over",
        )
    sign = -1 if first[1] == "-" else 1
    value = sign * inch_unit.to_base(feet * _INCHES_IN_A_FOOT + inches)
    return _quantity(text, value, LENGTH)


def _number(text: str, sign: str, digits: str, dimension: Dimension | None) -> float:
    """The number of `18`, `0.25`, `3/4`, `1 1/2` or `1-1/2`."""
    whole, slash, below = digits.partition("/")
    if not slash:
        value = float(digits)
    else:
        *wholes, above = whole.replace("-", " ").split()
        if int(above) >= int(below) or int(below) not in _PARTS:
            mend = "write the fraction as 3/4 or 1 1/2, or write one value as a decimal"
            if below == "0" and not wholes and dimension in (None, AREA):
                mend = f"write {digits} AWG for a wire size"
            if dimension == VOLTAGE and not wholes:
                raise _two_voltages(text, max(int(above), int(below)))
            shown = f'"{text}" has a fraction that is on no tape: {above}/{below}.'
            raise NotAQuantity(shown, _expected(dimension), mend)
        value = sum(map(int, wholes)) + int(above) / int(below)
    return -value if sign == "-" else value


def _two_voltages(text: str, higher: int) -> NotAQuantity:
    return NotAQuantity(
        f'"{text}" names two voltages.',
        "the higher of the two; the kind of the supply tells the voltage to neutral",
        f"write {higher} V",
        (f"{higher} V",),
    )


def _quantity(text: str, value: float, dimension: Dimension) -> Quantity:
    if not abs(value) <= _LARGEST:
        raise NotAQuantity(
            f'"{text}" is too large to be measured in a dwelling.',
            _expected(dimension),
            "count the digits again",
        )
    return Quantity(value, dimension, text.strip())


def _expected(dimension: Dimension | None) -> str:
    if dimension is None:
        return "a number with its unit, such as 6 in or 150 mm"
    if dimension == NUMBER:
        return "a number without a unit, or a percentage"
    article = "an" if str(dimension)[0] in "aeiou" else "a"
    units = unit_names(dimension)
    example = _EXAMPLES.get(str(dimension)) or (f"20 {units[0]}" if units else "")
    return f"{article} {dimension}, such as {example}" if example else f"{article} {dimension}"


def _unknown_unit(text: str, spelling: str, dimension: Dimension | None) -> NotAQuantity:
    if spelling.lower() in ("inf", "infinity", "nan") or spelling[0].isdigit():
        mend = "write one number, without spaces inside it, and its unit"
    else:
        mend = (
            f"write one of: {', '.join(units_on_a_tape(dimension))}"
            if dimension
            else ("write the unit as on a tape or a meter, such as in, mm, A or V")
        )
    near = nearest(spelling, spellings(dimension))
    return NotAQuantity(
        f'"{text}" has a unit that is not known: "{spelling}".', _expected(dimension), mend, near
    )


def _no_number(text: str, dimension: Dimension | None) -> NotAQuantity:
    return NotAQuantity(
        f'"{text}" does not begin with a number.' if text.strip() else "Nothing is written here.",
        _expected(dimension),
        'write the number and its unit, or "unknown" until it is measured',
    )


def _other_dimension(text: str, found: Dimension, wanted: Dimension) -> NotAQuantity:
    if found == NUMBER:
        names = units_on_a_tape(wanted)
        some = f"add the unit: {join_words(names, 'or')}" if names else "add the unit"
        return NotAQuantity(f'"{text}" has no unit.', _expected(wanted), some)
    mend = "write the number alone" if wanted == NUMBER else "check which value is meant here"
    return NotAQuantity(f'"{text}" states a {found}.', _expected(wanted), mend)


def _comma(text: str, plain: str, dimension: Dimension | None) -> NotAQuantity:
    pointed, joined = plain.replace(",", "."), plain.replace(",", "")
    mend = (
        f'write "{pointed}" if the comma marks decimals, "{joined}" if it groups thousands'
        if plain.count(",") == 1
        else f'write "{joined}"'
    )
    return NotAQuantity(f'"{text}" has a comma in the number.', _expected(dimension), mend)
