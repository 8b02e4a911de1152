"""The conductors of a cable: colour, size, whether insulated, whether meant as a bond."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from linter.job.cables import Cable
    from linter.units import Quantity

BOND_COLOURS = frozenset({"bare", "green", "green-yellow"})
_WHITES = frozenset({"white", "grey", "white-red", "white-black", "white-blue"})
_BLUE, _BROWN, _BLACK, _GREY = "blue", "brown", "black", "grey"


class Conductor(NamedTuple):
    """One conductor of a cable: colour, whether it is insulated, size (None: not known)."""

    colour: str
    insulated: bool
    size: Quantity | None


class Colours(NamedTuple):
    """The colours of a cable by what they are usually for, each in the order of the sheath."""

    hots: tuple[str, ...]
    neutrals: tuple[str, ...]
    bonds: tuple[str, ...]


def conductors_of(cable: Cable) -> tuple[Conductor, ...] | None:
    """The conductors of a cable, in the order of its sheath; None where nothing tells them."""
    if cable.colours is None:
        return None
    sheath = cable.sheath
    size = sheath.size if sheath is not None else None
    bond = cable.bond or (sheath.bond_size if sheath is not None else None)
    return tuple(
        Conductor(each, each != "bare", bond if each in BOND_COLOURS else size)
        for each in cable.colours
    )


@lru_cache(maxsize=256)
def sort_colours(colours: tuple[str, ...]) -> Colours:
    """The colours parted into those for hots, for neutrals and for bonds.

    Blue is a neutral's colour beside brown, and a hot's elsewhere; grey is a hot's beside brown and
    black.

    >>> sort_colours(("black", "red", "white", "bare")).hots
    ('black', 'red')
    >>> sort_colours(("brown", "blue", "green-yellow")).neutrals
    ('blue',)
    >>> sort_colours(("brown", "black", "grey", "green-yellow")).hots
    ('brown', 'black', 'grey')
    """
    whites = _WHITES
    if _BROWN in colours and "white" not in colours:
        whites = whites | {_BLUE}
        whites = whites - {_GREY} if _BLACK in colours else whites
    return Colours(
        hots=tuple(each for each in colours if each not in whites | BOND_COLOURS),
        neutrals=tuple(each for each in colours if each in whites),
        bonds=tuple(each for each in colours if each in BOND_COLOURS),
    )
