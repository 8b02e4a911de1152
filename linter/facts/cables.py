"""Cables, their ends in boxes, and the bored holes they run through."""

from __future__ import annotations

from itertools import product
from typing import TYPE_CHECKING

from linter.facts.conductors import CURRENT_CARRYING, feeds_receptacles, name_of
from linter.facts.given import Given, unknown
from linter.facts.knowing import any_holds, largest, smallest, total
from linter.facts.lays import put_lays
from linter.facts.made import Grouped, answer, complete, number, one, things
from linter.job.cables import AlongFraming, Bundled
from linter.units import TOLERANCE, Unknown
from linter.wiring.model import Role
from linter.wiring.sheaths import BOND_COLOURS, conductors_of

if TYPE_CHECKING:
    from collections.abc import Iterable

    from linter.facts.knowing import Number
    from linter.facts.made import Made, Site, Values
    from linter.job.cables import Cable, CableEnd, Hole
    from linter.vocabulary.model import Thing

_FIELDS = {
    "material": "material",
    "insulation_temperature": "insulation_temperature",
    "terminal_temperature": "terminal_temperature",
    "length": "length",
    "support_spacing": "support_spacing",
    "is_fished": "fished",
    "bend_radius": "bend_radius",
    "width": "width",
    "cables_under_staple": "cables_under_staple",
    "has_splice_outside_box": "splice_outside_box",
}
_END_FIELDS = {
    "free_length": "free_length",
    "length_outside": "length_outside",
    "sheath_inside": "sheath_inside",
    "fastened_at": "fastened_at",
    "is_clamped": "clamped",
    "shares_clamp_with": "shares_clamp_with",
}
_HOLE_FIELDS = {
    "distance_to_edge": "distance_to_edge",
    "is_plated": "plated",
    "is_notch": "notch",
    "is_in_metal": "metal",
    "has_bushing": "bushing",
    "cables": "cables",
}


def cable_of(site: Site, made: Made, cable: Cable) -> Thing:
    """The facts of a cable that the job states."""
    given = Given("cable", cable.name, cable, _FIELDS)
    _put_sheath(given, cable)
    _put_terminal_marking(given, cable)
    for field in ("material", "insulation_temperature"):
        given.put(f"{field}_is_stated", cable.says(field), field)
    _put_outdoors(given, made, cable)
    given.put("is_home_run", not site.job.panels.keys().isdisjoint((cable.from_, cable.to)))
    _put_framing(given, cable)
    put_lays(given, cable)
    _put_bundle(given, site, cable)
    given.put("bored_holes_are_stated", True if cable.holes is not None else None, "holes")
    _put_ambient(given, made, cable)
    given.put("staple_most_cables", _staple_limit(site, cable))
    return given.thing(f"cable {cable.name}, {cable.from_} to {cable.to}")


def _put_terminal_marking(given: Given, cable: Cable) -> None:
    """Whether terminals are marked with a temperature; none is meant where none is stated."""
    field, fact = "terminal_temperature", "terminal_temperature_is_marked"
    is_open = cable.says(field) and cable.terminal_temperature is None
    stated = cable.terminal_temperature is not None
    given.put(fact, given.own_unknown(field) if is_open else stated, field)


def _put_sheath(given: Given, cable: Cable) -> None:
    sheath, conductors = cable.sheath, conductors_of(cable)
    given.put("type", sheath.type or None if sheath is not None else None, "sheath")
    given.put("size", None if sheath is None else sheath.size, "sheath")
    given.put("has_bond", None, "sheath")
    given.put("insulated_conductors", None, "sheath")
    given.put("bond_size", cable.bond, "bond")
    if conductors is None:
        return
    bonds = [each for each in conductors if each.colour in BOND_COLOURS]
    given.put("has_bond", bool(bonds) or cable.armour_is_bond, "sheath")
    given.put("insulated_conductors", sum(each.insulated for each in conductors), "sheath")
    if bonds and cable.bond is None:
        given.put("bond_size", bonds[0].size, "sheath")


def _put_framing(given: Given, cable: Cable) -> None:
    """How the cable runs along framing; where it does not, there is nothing to measure."""
    along = cable.along_framing
    runs = along if along is None else along is not False
    given.put("runs_along_framing", runs, "along_framing")
    stated = along if isinstance(along, AlongFraming) else None
    given.put("distance_to_face", stated.distance_to_face if stated else None, "along_framing")
    given.put("is_plated_along_framing", stated.plated if stated else None, "along_framing")


def _put_bundle(given: Given, site: Site, cable: Cable) -> None:
    """What runs side by side with it; a cable that does not say so runs alone."""
    bundle = cable.bundled
    if isinstance(bundle, Bundled):
        given.put("bundled_conductors", bundle.conductors, "bundled")
        given.put("bundled_switched_neutrals", bundle.switched_neutrals, "bundled")
        given.put("bundled_cables", bundle.cables, "bundled")
        given.put("bundle_length", bundle.length, "bundled")
        given.put("bundle_is_in_sealed_hole", bundle.sealed, "bundled")
        return
    alone = bundle is False or not cable.says("bundled")
    given.put("bundled_conductors", _own_conductors(site, cable) if alone else None, "bundled")
    given.put("bundled_switched_neutrals", 0, "bundled")
    given.put("bundled_cables", 1 if alone else None, "bundled")
    given.put("bundle_length", 0.0 if alone else None, "bundled")
    given.put("bundle_is_in_sealed_hole", False if alone else None, "bundled")


def _own_conductors(site: Site, cable: Cable) -> Number:
    """Its own conductors that carry current in use: neither bonds nor spares."""
    if conductors_of(cable) is None:
        return unknown("cable", cable.name, "insulated_conductors")
    return total(
        unknown("conductor", name_of(part.cable, part.colour), "role")
        if part.use.role is Role.UNKNOWN
        else float(part.use.role in CURRENT_CARRYING)
        for part in site.wiring.parts[cable.name]
    )


def _put_ambient(given: Given, made: Made, cable: Cable) -> None:
    """The highest temperature around it: as stated, or else of the warmest room it ends in."""
    given.put("ambient", cable.ambient, "ambient")
    if cable.ambient is not None or cable.says("ambient"):
        return
    boxes = made.by_ref("box")
    rooms = [one(boxes[end], "room") for end in (cable.from_, cable.to) if end in boxes]
    own = given.own_unknown("ambient")
    given.put("ambient", largest((number(room, "ambient") for room in rooms), own))
    if any("ambient" in room.usual for room in rooms):
        given.usual.add("ambient")


def _put_outdoors(given: Given, made: Made, cable: Cable) -> None:
    """Where it lies; a usual value cannot speak for a cable that ends outdoors, damp or wet."""
    given.put("is_outdoors", cable.outdoors, "outdoors")
    if cable.outdoors is not False or "outdoors" not in cable.usual:
        return
    boxes = made.by_ref("box")
    rooms = [one(boxes[end], "room") for end in (cable.from_, cable.to) if end in boxes]
    is_damp = any_holds(
        answer(room, fact) for room in rooms for fact in ("is_outdoors", "is_damp", "is_wet")
    )
    for room, fact in product(rooms, ("is_damp", "is_wet")):
        given.assumed |= {"is_outdoors": room.assumed[fact]} if fact in room.assumed else {}
    if is_damp is not False:
        own = given.own_unknown("is_outdoors")
        given.values["is_outdoors"] = own if is_damp is True else is_damp
        given.usual.discard("is_outdoors")


def _staple_limit(site: Site, cable: Cable) -> Number | None:
    """The fewest cables that a listed staple may hold, of those that are listed for this size."""
    if cable.sheath is None:
        return None
    size = cable.sheath.size.value
    staples = [
        each
        for each in site.job.products.staples.values()
        if each.largest_size is None or size <= each.largest_size.value * (1 + TOLERANCE)
    ]
    own = unknown("cable", cable.name, "staple_most_cables")
    return smallest(
        (own if each.most_cables is None else float(each.most_cables) for each in staples), own
    )


def cable_ends_of(made: Made, cable: Cable) -> Iterable[Thing]:
    """The ends of a cable that are in boxes."""
    boxes = made.by_ref("box")
    for end, box in ((cable.at_from, cable.from_), (cable.at_to, cable.to)):
        if box in boxes:
            yield _cable_end(made, cable, end, box)


def _cable_end(made: Made, cable: Cable, end: CableEnd, box: str) -> Thing:
    given = Given("cable_end", f"{cable.name}@{box}", end, _END_FIELDS)
    _put_cable_to_support(given, end)
    given.put("is_stripped", end.stripped, "stripped")
    given.put("cable", made.thing("cable", cable.name))
    given.put("box", made.thing("box", box))
    return given.thing(f"cable {cable.name} at {box}")


def _put_cable_to_support(given: Given, end: CableEnd) -> None:
    """The cable up to its first support; where nothing is said of slack, the straight distance."""
    field = "cable_to_support" if end.says("cable_to_support") else "fastened_at"
    length = end.cable_to_support if field == "cable_to_support" else end.fastened_at
    unknown_as = given.own_unknown(field) if length is None else length
    given.put("cable_to_support", unknown_as, field)


def bored_holes_of(made: Made, cable: Cable) -> Iterable[Thing]:
    """The bored holes and notches of a cable."""
    for count, hole in enumerate(cable.holes or (), 1):
        yield _bored_hole(made, cable, hole, count)


def _bored_hole(made: Made, cable: Cable, hole: Hole, count: int) -> Thing:
    given = Given("bored_hole", f"{cable.name}/{count}", hole, _HOLE_FIELDS)
    given.put("cable", made.thing("cable", cable.name))
    kind = "notch" if hole.notch else "bored hole"
    return given.thing(f"{kind} {count} of cable {cable.name}")


def link_cables(made: Made) -> None:
    """The conductors and ends of cables, their circuits and breakers; conductors know theirs."""
    conductors, ends, holes = (
        Grouped((one(each, "cable").ref, each) for each in made.all(kind))
        for kind in ("conductor", "cable_end", "bored_hole")
    )
    for cable in made.all("cable"):
        own = conductors.under(cable.ref)
        circuits = made.in_order(each for wire in own for each in things(wire, "circuits"))
        sheath = number(cable, "insulated_conductors")
        reached = [answer(wire, "is_on_a_breaker") for wire in own]
        ratings = [number(wire, "breaker_rating") for wire in own]
        not_known = sheath if isinstance(sheath, Unknown) else None
        links: Values = {
            "conductors": own if not_known is None else not_known,
            "ends": ends.under(cable.ref),
            "bored_holes": holes.under(cable.ref),
            "circuits": circuits,
            "is_on_a_breaker": any_holds(reached) if not_known is None else not_known,
            "breaker_rating": largest(ratings, 0.0) if not_known is None else not_known,
            "feeds_receptacles": feeds_receptacles(circuits),
        }
        complete(cable, links)


def link_cable_ends(made: Made) -> None:
    """The wire ends at each cable end."""
    wires = Grouped((one(each, "cable_end").ref, each) for each in made.all("wire_end"))
    for end in made.all("cable_end"):
        sheath = number(one(end, "cable"), "insulated_conductors")
        known = not isinstance(sheath, Unknown)
        complete(end, {"wire_ends": wires.under(end.ref) if known else sheath})
