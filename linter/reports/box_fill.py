"""How full a box is by a pack that has the measures for it, in one line."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.language.evaluate import measure_of
from linter.packs.writing import writer_of
from linter.vocabulary.model import value_of

if TYPE_CHECKING:
    from linter.facts import Facts
    from linter.packs.model import Pack

_FILL, _VOLUME = ("box", "fill"), ("box", "usable_volume")
_MARKED = "marked_volume"  # all the volume there is to a pack without plaster rings and extensions


class Fill(NamedTuple):
    """What is used of the volume of a box, in its measure's unit, and that in one line."""

    used: float
    of: float
    line: str


def fill_of(pack: Pack, facts: Facts, box: str) -> Fill | None:
    """What is used of the volume and what is left; None where pack or job do not tell."""
    measures = pack.library.measures
    if _FILL not in measures:
        return None
    thing = facts.thing("box", box)
    used = measure_of(*_FILL, thing, pack.library)
    if _VOLUME in measures:
        of = measure_of(*_VOLUME, thing, pack.library)
    else:
        of = value_of(thing, _MARKED)
    if not isinstance(used, float | int) or not isinstance(of, float | int):
        return None
    write, type_ = writer_of(pack), measures[_FILL].type
    left = f"{write(abs(of - used), type_, None)} {'left' if of >= used else 'short'}"
    said = f"Fill: {write(used, type_, None)} used of {write(of, type_, None)}, {left}."
    return Fill(float(used), float(of), said)


def fill_line(pack: Pack, facts: Facts, box: str) -> str:
    """The same in one line; empty where pack or job do not tell."""
    fill = fill_of(pack, facts, box)
    return fill.line if fill is not None else ""
