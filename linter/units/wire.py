"""American Wire Gauge: the diameter and the area of a size.

Source: ASTM B258, a geometric series of 39 steps from 0.005 in (36) to 0.460 in (4/0).
Checked in tests/outside/awg.yaml.
"""

import math
from functools import cache

_INCH = 0.0254
LARGEST, SMALLEST = -3, 40  # 4/0 is written as -3 here, 1/0 as 0
_LIKE = 1e-6  # two areas within one part in a million are one size


@cache
def awg_diameter(number: int) -> float:
    """The diameter of a solid wire in metres; 1/0 is number 0, 2/0 is -1, 4/0 is -3.

    >>> round(awg_diameter(36) / 0.0254, 6), round(awg_diameter(-3) / 0.0254, 6)
    (0.005, 0.46)
    """
    return float(0.005 * 92 ** ((36 - number) / 39) * _INCH)


@cache
def awg_area(number: int) -> float:
    """The area of a wire size in square metres; kept, so that one size is one float.

    >>> round(awg_area(12) * 1e6, 3)
    3.309
    """
    return math.pi / 4 * awg_diameter(number) ** 2


def awg_number(name: str) -> int | None:
    """The number of a size by its name ("12", "2/0"); None where there is no such size.

    >>> awg_number("12"), awg_number("1/0"), awg_number("5/0")
    (12, 0, None)
    """
    noughts, slash, rest = name.partition("/")
    if not (noughts.isascii() and noughts.isdigit() and len(noughts) < 3):  # noqa: PLR2004  2 digits
        return None
    if slash:
        number = 1 - int(noughts) if rest == "0" and noughts != "0" else SMALLEST + 1
    else:
        number = int(noughts)
    return number if LARGEST <= number <= SMALLEST else None


def awg_name(area: float) -> str | None:
    """The name of the size that has this area in square metres, if one has.

    >>> awg_name(awg_area(12)), awg_name(awg_area(-1)), awg_name(2.5e-6)
    ('12', '2/0', None)
    """
    for number in range(LARGEST, SMALLEST + 1):
        if math.isclose(awg_area(number), area, rel_tol=_LIKE):
            return str(number) if number > 0 else f"{1 - number}/0"
    return None
