"""Ends of conductors, in boxes and in panels: what they are used as, marked as, joined to."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.conductors import (
    circuits_of,
    has_role,
    is_bond,
    name_of,
    role_of,
    size_fact,
    size_of,
)
from linter.facts.given import Given
from linter.facts.knowing import all_hold, any_holds, of_known
from linter.facts.made import complete
from linter.units import Unknown
from linter.vocabulary.kinds.wires import MARKINGS, MARKINGS_NOT_FOR_HOTS
from linter.wiring.model import Role, Spot

if TYPE_CHECKING:
    from collections.abc import Iterable

    from linter.facts.knowing import YesNo
    from linter.facts.made import Made, Site, Values
    from linter.job.cables import Cable, CableEnd
    from linter.vocabulary.model import Thing
    from linter.wiring.model import CablePart, WireEnd

_FIELDS = {"free_length": "free_length", "length_outside": "length_outside"}
_NOT_MARKED, _OTHER = "not marked", "other hot colour"
_FROM_SWITCHES = (Role.SWITCHED_HOT, Role.TRAVELLER)


def ends_of(site: Site, made: Made, cable: Cable) -> Iterable[Thing]:
    """The ends of the conductors of a cable: wire ends in boxes, panel ends in panels."""
    parts = site.wiring.parts[cable.name]
    in_boxes = made.by_ref("box")
    for which, (end, box) in enumerate(((cable.at_from, cable.from_), (cable.at_to, cable.to))):
        for part in parts:
            wire_end = site.wiring.wire_ends[part.ends[which]]
            facts = _facts(site, made, part, wire_end)
            if box in in_boxes:
                yield _wire_end(site, made, wire_end, end, facts)
            else:
                yield _panel_end(site, made, wire_end, end, facts)


def _wire_end(site: Site, made: Made, wire_end: WireEnd, end: CableEnd, facts: Values) -> Thing:
    given = Given("wire_end", wire_end.id, end, _FIELDS)
    given.values |= facts
    given.values["box"] = made.thing("box", wire_end.box)
    given.values["cable_end"] = made.thing("cable_end", f"{wire_end.cable}@{wire_end.box}")
    connected = wire_end.id in site.wiring.ended_in
    role = given.values["role"]
    unsure = role if isinstance(role, Unknown) else False
    given.values["is_connected"] = connected or unsure
    capped = wire_end.id in site.capped
    given.values["is_capped"] = not connected and (capped or unsure)
    return _finished(given, made, wire_end, wire_end.box)


def _panel_end(site: Site, made: Made, wire_end: WireEnd, end: CableEnd, facts: Values) -> Thing:
    given = Given("panel_end", wire_end.id, end, {})
    given.values |= facts
    given.values["panel"] = made.thing("panel", wire_end.box)
    given.values["cable"] = made.thing("cable", wire_end.cable)
    landing = site.wiring.panel_landings.get(wire_end.id)
    on_breaker = landing is not None and landing.spot is Spot.BREAKER
    where = f"{landing.panel} {landing.space}" if landing is not None else ""
    given.values["breakers"] = made.of("breaker", [where] if on_breaker else ())
    role = given.values["role"]
    unsure = role if isinstance(role, Unknown) else False
    given.values["is_connected"] = landing is not None or unsure
    place = "the panel" if wire_end.box == "panel" else f"panel {wire_end.box}"
    return _finished(given, made, wire_end, place)


def _finished(given: Given, made: Made, wire_end: WireEnd, place: str) -> Thing:
    """The thing, once marks and the size of its conductor are in."""
    marks = given.model.marks if hasattr(given.model, "marks") else None
    marked = None if marks is None else _marking(marks.get(wire_end.colour))
    given.put("marked_as", marked, "marks")
    own = given.own_unknown("marked_as")
    given.put("is_marked_as_hot", own if marked is None else marked not in MARKINGS_NOT_FOR_HOTS)
    given.rests_on("is_marked_as_hot", "marks")
    cable, size = made.thing("cable", wire_end.cable), size_fact(wire_end.colour)
    if size in cable.written:
        given.written["size"] = cable.written[size]
    if size in cable.usual:
        given.usual.add("size")
    return given.thing(f"{wire_end.colour} of {wire_end.cable} in {place}")


def _marking(colour: str | None) -> str:
    if colour is None:
        return _NOT_MARKED
    return colour if colour in MARKINGS else _OTHER


def _facts(site: Site, made: Made, part: CablePart, end: WireEnd) -> Values:
    """What the ends of a conductor have in common."""
    role = role_of(part.cable, part.colour, part.use)
    return {
        "conductor": made.thing("conductor", name_of(part.cable, part.colour)),
        "colour": part.colour,
        "size": size_of(part.cable, part.colour, part.size),
        "is_insulated": end.insulated,
        "is_bond": is_bond(part.cable, part.colour, part.use),
        "role": role,
        "supplies_switch": _supplies_switch(site, part),
        "comes_from_switch": has_role(role, Role.SWITCHED_HOT),
    }


def _supplies_switch(site: Site, part: CablePart) -> YesNo:
    """Whether a hot goes to a switch whose switched hot or travellers come back beside it."""
    role = role_of(part.cable, part.colour, part.use)
    if has_role(role, Role.HOT) is False:
        return False
    beside = [each for each in site.wiring.parts[part.cable] if each.colour != part.colour]
    back = any_holds(_comes_back(site, part, each) for each in beside)
    return all_hold((has_role(role, Role.HOT), back))


def _comes_back(site: Site, part: CablePart, other: CablePart) -> YesNo:
    role = role_of(other.cable, other.colour, other.use)

    def from_the_switch(_: str) -> bool:
        switches = site.groups.switches.get(other.use.group or "", ())
        far = _far_boxes(site, part)
        return any(switch.box in far for switch in switches)

    is_switched = has_role(role, *_FROM_SWITCHES)
    return of_known(role, from_the_switch) if is_switched is True else is_switched


def _far_boxes(site: Site, part: CablePart) -> set[str]:
    """The box at the end farther from the panel; both, where the trace does not tell them apart."""
    ends = [(site.trace.distance(each), site.wiring.wire_ends[each].box) for each in part.ends]
    (one, box), (other, other_box) = ends
    if one is None or other is None or one == other:
        return {box, other_box}
    return {box if one > other else other_box}


def link_ends(site: Site, made: Made) -> None:
    """The circuits that the ends of conductors belong to."""
    for kind in ("wire_end", "panel_end"):
        for thing in made.all(kind):
            use = site.wiring.wire_ends[thing.ref].use
            complete(thing, {"circuits": circuits_of(made, use)})
