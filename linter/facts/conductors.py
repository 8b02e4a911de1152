"""Conductors of cables: what each is used as, its size, which breaker it is on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.given import unknown
from linter.facts.knowing import any_holds, largest
from linter.facts.made import Grouped, complete, number, one, things
from linter.units import Unknown
from linter.vocabulary.model import Thing, value_of
from linter.wiring.model import Role
from linter.wiring.sheaths import BOND_COLOURS

if TYPE_CHECKING:
    from collections.abc import Iterable
    from typing import TypeAlias

    from linter.facts.doubts import Doubts
    from linter.facts.knowing import Number, YesNo
    from linter.facts.made import Made, Site
    from linter.units import Quantity
    from linter.wiring.model import CablePart, Passing, Use, WireEnd

    Wire: TypeAlias = CablePart | Passing | WireEnd

_HOTS = (Role.HOT, Role.SWITCHED_HOT, Role.TRAVELLER)
CURRENT_CARRYING = (Role.NEUTRAL, *_HOTS)
SIZE_FACTS = ("size", "bond_size")  # of a cable: of its other conductors, and of its bond
_WORDS = {role: role.value for role in Role}
_OF_THE_CABLE = {
    "material": "material",
    "insulation_temperature": "insulation_temperature",
    "terminal_temperature": "terminal_temperature",
    "terminal_temperature_is_marked": "terminal_temperature_is_marked",
    "ambient": "ambient",
    "bundled_conductors": "bundled_conductors",
}


def name_of(cable: str, colour: str) -> str:
    """The name of a conductor, as the make-up of boxes writes it.

    >>> name_of("k1", "black")
    'k1.black'
    """
    return f"{cable}.{colour}"


def role_of(wire: Wire) -> str | Unknown:
    """What a conductor is used as."""
    if wire.use.role is Role.UNKNOWN:
        return unknown("conductor", name_of(wire.cable, wire.colour), "role")
    return _WORDS[wire.use.role]


def is_used_as(wire: Wire, *roles: Role) -> YesNo:
    """Whether a conductor is used as one of these."""
    if wire.use.role is Role.UNKNOWN:
        return unknown("conductor", name_of(wire.cable, wire.colour), "role")
    return wire.use.role in roles


def size_of(cable: str, colour: str, size: Quantity | None) -> Number:
    """The size of a conductor; one not known hangs on the sheath, or on the size of the bond."""
    return size.value if size is not None else unknown("cable", cable, size_fact(colour))


def size_fact(colour: str) -> str:
    """The fact of its cable that tells the size of a conductor of that colour."""
    return "bond_size" if colour in BOND_COLOURS else "size"


def size_is_usual(made: Made, wire: Wire) -> bool:
    """Whether the size of a conductor rests on a usual value of its cable."""
    return size_fact(wire.colour) in made.thing("cable", wire.cable).usual


def conductor_of(cable: Thing, part: CablePart) -> Thing:
    """The facts of a conductor that follow from its cable."""
    values: dict[str, object] = {
        fact: value_of(cable, of_cable) for fact, of_cable in _OF_THE_CABLE.items()
    }
    values |= {
        "cable": cable,
        "colour": part.colour,
        "size": size_of(cable.ref, part.colour, part.size),
        "is_insulated": part.insulated,
        "role": role_of(part),
    }
    return Thing(
        "conductor",
        name_of(cable.ref, part.colour),
        cable.place,
        values,
        label=f"{part.colour} of {cable.ref}",
        written=_written(cable, size_fact(part.colour)),
        usual=_usual(cable, size_fact(part.colour)),
        assumed={
            fact: cable.assumed[of] for fact, of in _OF_THE_CABLE.items() if of in cable.assumed
        },
    )


def _written(cable: Thing, size: str) -> dict[str, str]:
    same = {fact: cable.written[of] for fact, of in _OF_THE_CABLE.items() if of in cable.written}
    return same | ({"size": cable.written[size]} if size in cable.written else {})


def _usual(cable: Thing, size: str) -> frozenset[str]:
    same = {fact for fact, of in _OF_THE_CABLE.items() if of in cable.usual}
    return frozenset(same | ({"size"} if size in cable.usual else set()))


def link_conductors(site: Site, made: Made, doubts: Doubts) -> None:
    """The circuits of conductors, the breakers they are on, what runs beside them, their ends."""
    ends = Grouped((one(each, "conductor").ref, each) for each in made.all("wire_end"))
    panel_ends = Grouped((one(each, "conductor").ref, each) for each in made.all("panel_end"))
    for parts in site.wiring.parts.values():
        for part in parts:
            conductor = made.thing("conductor", name_of(part.cable, part.colour))
            breakers = breakers_at(site, made, part)
            circuits = circuits_of(made, part.use)
            doubt = False if breakers or part.use.role is Role.BOND else doubts.at_ends(part.ends)
            links = {
                "circuits": circuits,
                "breaker_rating": doubt if isinstance(doubt, Unknown) else rating_of(breakers),
                "is_on_a_breaker": bool(breakers) or doubt,
                "feeds_receptacles": feeds_receptacles(circuits),
                "other_conductors_are_in_cable": _has_its_return(part, parts),
                "ends": ends.under(conductor.ref),
                "panel_ends": panel_ends.under(conductor.ref),
            }
            complete(conductor, links)


def circuits_of(made: Made, use: Use) -> tuple[Thing, ...]:
    """The circuit that a conductor of this use belongs to."""
    circuit = made.by_ref("circuit").get(use.circuit or "")
    return (circuit,) if circuit is not None else ()


def breakers_at(site: Site, made: Made, part: CablePart) -> tuple[Thing, ...]:
    """The breakers that reach a conductor; a neutral is on the breakers of its circuit."""
    if part.use.role is Role.NEUTRAL:
        return made.in_order(
            each for circuit in circuits_of(made, part.use) for each in things(circuit, "breakers")
        )
    if part.use.role is Role.BOND:
        return ()
    poles = site.trace.hots_at(part.ends[0])
    return made.of("breaker", (f"{pole.panel} {pole.space}" for pole in poles))


def rating_of(breakers: Iterable[Thing]) -> Number:
    """The largest rating of the breakers; 0 A where there is none."""
    return largest((number(each, "rating") for each in breakers), 0.0)


def feeds_receptacles(circuits: Iterable[Thing]) -> YesNo:
    """Whether one of the circuits has more than one place to plug in."""
    counts = (number(circuit, "receptacle_count") for circuit in circuits)
    return any_holds(each if isinstance(each, Unknown) else each > 1 for each in counts)


def _has_its_return(part: CablePart, beside: Iterable[CablePart]) -> YesNo:
    """Whether the current of a conductor comes back in the same cable.

    Neutral comes back on any hot, switched hot or traveller of its circuit, a hot on any conductor
    of its circuit that carries current; of two travellers and of two switched hots of one group,
    one alone carries at a time, so that they are no way back for each other.
    """
    carries = is_used_as(part, *CURRENT_CARRYING)
    if carries is not True:
        return carries if isinstance(carries, Unknown) else True
    return any_holds(_comes_back_on(part.use, other) for other in beside if other is not part)


def _comes_back_on(use: Use, other: CablePart) -> YesNo:
    carries = is_used_as(other, *(_HOTS if use.role is Role.NEUTRAL else CURRENT_CARRYING))
    if carries is not True:
        return carries
    is_other_hot = use.role is not other.use.role or use.pole != other.use.pole
    return is_other_hot and other.use.circuit == use.circuit


def sheath_is_known(cable: Thing) -> YesNo:
    """Whether the conductors of a cable are known at all; if not, what that hangs on."""
    count = number(cable, "insulated_conductors")
    return count if isinstance(count, Unknown) else True


def all_known(cables: Iterable[Thing]) -> YesNo:
    """Whether the conductors of all the cables are known."""
    unknowns = [each for each in map(sheath_is_known, cables) if isinstance(each, Unknown)]
    return any_holds(unknowns) if unknowns else True
