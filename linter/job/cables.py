"""Cables from box to box, their two ends, how they run and what their conductors carry."""

from typing import Annotated, Literal

from linter.job.sheaths import ARMOUR, Sheath, read_sheath
from linter.job.stated import BoxId, CableId, CircuitId, EndId, ReadAs, Stated
from linter.job.values import Area, Count, Length, Temperature, YesNo


def _sheath(value: object) -> Sheath:
    sheath = read_sheath(value) if isinstance(value, str) else value
    if isinstance(sheath, Sheath):
        return sheath
    raise ValueError(f"{value!r} is no sheath")


SheathPrinting = Annotated[Sheath, ReadAs(_sheath)]


class CableEnd(Stated):
    """A cable where it enters a box; `marks`: the colour that a conductor is re-marked with.

    No mark at all is an empty mapping; None is unknown. `enters` is the side of the box that it
    enters at, as one stands before it.
    """

    free_length: Length | None = None
    length_outside: Length | None = None
    sheath_inside: Length | None = None
    stripped: YesNo | None = True
    fastened_at: Length | None = None
    cable_to_support: Length | None = None
    clamped: YesNo | None = None
    shares_clamp_with: Count | None = 0
    marks: dict[str, str] | None = None
    enters: str | None = None


class Hole(Stated):
    """A bored hole or a notch that the cable runs through."""

    distance_to_edge: Length | None = None
    plated: YesNo | None = None
    notch: YesNo | None = False
    metal: YesNo | None = False
    bushing: YesNo | None = None
    cables: Count | None = 1


class AlongFraming(Stated):
    """The cable runs along a stud, joist or rafter."""

    distance_to_face: Length | None = None
    plated: YesNo | None = None


class Bundled(Stated):
    """The cable runs side by side with others: its worst stretch."""

    cables: Count | None = None
    conductors: Count | None = None
    switched_neutrals: Count | None = 0
    length: Length | None = None
    sealed: YesNo | None = None


class OverAttic(Stated):
    """The cable runs over the joists of an attic, or across its rafters within reach."""

    reached_by: str | None = None
    distance_to_hatch: Length | None = None
    guarded: YesNo | None = None


class UnderJoists(Stated):
    """The cable is fastened to the underside of joists; `board` says on a running board."""

    board: YesNo | None = None


class Exposed(Stated):
    """The cable runs in the open, where blows may reach it."""

    guarded: YesNo | None = None


class ReturnAir(Stated):
    """The cable runs in a stud or joist space that carries air back to the furnace."""

    crosses: YesNo | None = None


class Underground(Stated):
    """The cable runs in the ground; `up_to` and `down_to` say how far it is guarded where it rises.

    `under` is what lies above it; where nothing rises, `up_to` is left out.
    """

    method: str | None = None
    cover: Length | None = None
    under: str | None = "yard"
    backfilled: YesNo | None = None
    seen: YesNo | None = None
    rises: YesNo | None = True
    guarded_up_to: Length | None = None
    guarded_down_to: Length | None = None


class UnderRoof(Stated):
    """The cable runs close below the deck of a roof; `metal` says of corrugated sheet metal."""

    distance: Length | None = None
    metal: YesNo | None = False


class Passage(Stated):
    """A box that the cable's conductors pass through uncut, and the length of the loop in it."""

    box: BoxId
    loop: Length | None = None


class Cable(Stated):
    """A cable; `from_` and `to` are boxes or panels, `for_` is what it controls.

    `carries` is a named pattern, "unknown", or a role for each colour, as written. `along_framing`
    and `bundled` are False where the cable does not run so, and None where that is unknown.
    """

    name: CableId
    from_: EndId
    to: EndId
    sheath: SheathPrinting | None = None
    conductors: tuple[str, ...] | None = None
    bond: Area | None = None
    material: str | None = None
    insulation_temperature: Temperature | None = None
    terminal_temperature: Temperature | None = None
    circuit: CircuitId | None = None
    carries: str | dict[str, str] = "feed"
    leg_of: Count | None = None
    for_: str | None = None
    length: Length | None = None
    support_spacing: Length | None = None
    fished: YesNo | None = None
    bend_radius: Length | None = None
    width: Length | None = None
    along_framing: AlongFraming | Literal[False] | None = None
    holes: tuple[Hole, ...] | None = None
    outdoors: YesNo | None = None
    ambient: Temperature | None = None
    bundled: Bundled | Literal[False] | None = None
    cables_under_staple: Count | None = None
    splice_outside_box: YesNo | None = None
    over_attic: OverAttic | Literal[False] | None = False
    under_joists: UnderJoists | Literal[False] | None = False
    exposed: Exposed | Literal[False] | None = False
    return_air: ReturnAir | Literal[False] | None = False
    underground: Underground | Literal[False] | None = False
    under_roof: UnderRoof | Literal[False] | None = False
    through: tuple[Passage, ...] = ()
    at_from: CableEnd
    at_to: CableEnd
    note: str | None = None

    @property
    def ends(self) -> tuple[str, str]:
        """The boxes or panels at which it begins and ends."""
        return (self.from_, self.to)

    @property
    def colours(self) -> tuple[str, ...] | None:
        """All its conductors by colour, the bond last; None where that is unknown."""
        if self.conductors is not None:
            return self.conductors
        if self.sheath is None:
            return None
        bond = self.sheath.bond
        return self.sheath.colours + ((bond,) if bond not in ("", ARMOUR) else ())

    @property
    def armour_is_bond(self) -> bool:
        """Whether its bond is its armour, which no conductor in a box shows."""
        return self.sheath is not None and self.sheath.bond == ARMOUR
