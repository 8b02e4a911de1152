"""Ends of conductors, in boxes and in panels: what they are used as, marked as, joined to."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.facts.conductors import (
    SIZE_FACTS,
    circuits_of,
    is_used_as,
    name_of,
    role_of,
    size_fact,
    size_of,
)
from linter.facts.given import unknown
from linter.facts.knowing import all_hold, any_holds
from linter.facts.made import complete
from linter.facts.panels import GROUND_FAULT, breakers_of, panel_label
from linter.job.stated import CircuitId, PanelId
from linter.trace.solid import NEUTRAL_SPOTS
from linter.units import Unknown
from linter.vocabulary.kinds.wires import MARKINGS
from linter.vocabulary.model import Thing, value_of
from linter.wiring.model import Role, Spot

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from linter.facts.knowing import YesNo
    from linter.facts.made import Made, Site, Values
    from linter.job.cables import Cable, CableEnd
    from linter.text import Place
    from linter.wiring.model import CablePart, PanelLanding, WireEnd

MEASURED = ("free_length", "length_outside")
_OF_MARKS = (("marked_as", "marks"),)
_ON_BARS = frozenset({*NEUTRAL_SPOTS, Spot.BOND_BAR})
_NOT_MARKED, _OTHER = "not marked", "other colour"


def ends_of(site: Site, made: Made, cable: Cable) -> Iterable[Thing]:
    """The ends of the conductors of a cable: wire ends in boxes, panel ends in panels."""
    parts = site.wiring.parts[cable.name]
    shared = [_facts(site, made, part) for part in parts]
    in_boxes = made.by_ref("box")
    for which, (end, box) in enumerate(((cable.at_from, cable.from_), (cable.at_to, cable.to))):
        side = _wire_side if box in in_boxes else _panel_side
        here = side(made, cable, end, box)
        for part, facts in zip(parts, shared, strict=True):
            wire_end = site.wiring.wire_ends[part.ends[which]]
            own = _own_facts(site, made, here.kind, wire_end)
            yield _end(here, wire_end, facts | here.values | own)


class _Side(NamedTuple):
    """What the ends of all conductors at one end of a cable have in common.

    `written` and `usual` are given for conductors that have the size of the cable, and for bonds.
    """

    kind: str
    where: str
    model: CableEnd
    values: Values
    stated_at: Mapping[str, Place]
    written: Mapping[str, Mapping[str, str]]
    usual: Mapping[str, frozenset[str]]


def _wire_side(made: Made, cable: Cable, end: CableEnd, box: str) -> _Side:
    cable_end = made.thing("cable_end", f"{cable.name}@{box}")
    values: Values = {fact: value_of(cable_end, fact) for fact in MEASURED}
    values |= {"box": made.thing("box", box), "cable_end": cable_end}
    measured = {fact: text for fact, text in cable_end.written.items() if fact in MEASURED}
    usual = cable_end.usual & set(MEASURED)
    return _side("wire_end", box, end, values, _Notes(made, cable, measured, usual))


def _panel_side(made: Made, cable: Cable, end: CableEnd, panel: str) -> _Side:
    values: Values = {"panel": made.thing("panel", panel), "cable": made.thing("cable", cable.name)}
    where = panel_label(panel)
    return _side("panel_end", where, end, values, _Notes(made, cable, {}, frozenset()))


class _Notes(NamedTuple):
    """What is written of one end of a cable, and usual of it, apart from the sizes."""

    made: Made
    cable: Cable
    written: dict[str, str]
    usual: frozenset[str]


def _side(kind: str, where: str, end: CableEnd, values: Values, notes: _Notes) -> _Side:
    fields = (*((fact, fact) for fact in values if fact in MEASURED), *_OF_MARKS)
    stated = {fact: end.field_places[of] for fact, of in fields if of in end.field_places}
    marks = {fact for fact, of in _OF_MARKS if of in end.usual}
    cable = notes.made.thing("cable", notes.cable.name)
    written = {
        size: notes.written | ({"size": cable.written[size]} if size in cable.written else {})
        for size in SIZE_FACTS
    }
    usual = {
        size: notes.usual | marks | ({"size"} if size in cable.usual else set())
        for size in SIZE_FACTS
    }
    return _Side(kind, where, end, values, stated, written, usual)


def _end(side: _Side, wire_end: WireEnd, values: Values) -> Thing:
    size = size_fact(wire_end.colour)
    marks = side.model.marks
    values["marked_as"] = (
        unknown(side.kind, wire_end.id, "marked_as")
        if marks is None
        else _marking(marks.get(wire_end.colour))
    )
    return Thing(
        side.kind,
        wire_end.id,
        side.model.place,
        values,
        label=f"{wire_end.colour} of {wire_end.cable} in {side.where}",
        written=side.written[size],
        stated_at=side.stated_at,
        usual=side.usual[size],
    )


def _own_facts(site: Site, made: Made, kind: str, wire_end: WireEnd) -> Values:
    """Where a conductor ends; of one whose use is not known, that hangs on its use."""
    use = is_used_as(wire_end)
    if kind == "wire_end":
        connected = wire_end.id in site.wiring.ended_in
        capped = wire_end.id in site.capped
        return {"is_connected": connected or use, "is_capped": not connected and (capped or use)}
    landing = site.wiring.panel_landings.get(wire_end.id)
    spliced = wire_end.id in site.wiring.ended_in
    on_breaker = landing is not None and landing.spot is Spot.BREAKER
    where = f"{landing.panel} {landing.space}" if landing is not None else ""
    breakers = (made.thing("breaker", where),) if on_breaker else ()
    is_on_own = not on_breaker or where in _own_breakers(site, wire_end, where)
    as_asked = _is_as_its_breaker_asks(site, wire_end, landing)
    on_neutral = _is_bond_on_neutral(site, wire_end)
    return {
        "is_connected": landing is not None or spliced or use,
        "breakers": breakers,
        "is_on_its_breaker": use if isinstance(use, Unknown) else is_on_own,
        "neutral_ends_as_its_breaker_asks": use if isinstance(use, Unknown) else as_asked,
        "is_bond_on_neutral": use if isinstance(use, Unknown) else on_neutral,
    }


def _own_breakers(site: Site, wire_end: WireEnd, where: str) -> Iterable[str]:
    """The breakers of the circuit that a conductor belongs to; any, if it belongs to none."""
    circuit = site.job.circuits.get(CircuitId(wire_end.use.circuit or ""))
    return map(str, circuit.breakers) if circuit is not None else (where,)


def _is_as_its_breaker_asks(site: Site, end: WireEnd, landing: PanelLanding | None) -> YesNo:
    """Whether a neutral ends on its ground-fault breaker, or on no breaker but one of its own."""
    circuit = site.job.circuits.get(CircuitId(end.use.circuit or ""))
    is_neutral = end.use.role is Role.NEUTRAL
    if landing is None or circuit is None or landing.spot not in _ON_BARS or not is_neutral:
        return True
    own = breakers_of(site.job, [each for each in circuit.breakers if each.panel == landing.panel])
    if landing.spot is Spot.BREAKER_NEUTRAL:
        return landing.space in {each.space for each in own}
    if any(GROUND_FAULT in (each.protection or ()) for each in own):
        return False
    unsure = [each for each in own if each.protection is None]
    is_stated = site.job.panels[PanelId(landing.panel)].make_up is not None
    if not (unsure and is_stated):
        return True  # derived by what is known of the breaker
    return unknown("breaker", f"{unsure[0].panel} {unsure[0].space}", "is_ground_fault")


def _is_bond_on_neutral(site: Site, wire_end: WireEnd) -> bool:
    """Whether a bond ends with the neutrals of a panel in which they are apart from the bonds."""
    landing = site.wiring.panel_landings.get(wire_end.id)
    is_with_neutrals = landing is not None and landing.spot in NEUTRAL_SPOTS
    return wire_end.bond and is_with_neutrals and site.trace.has_only_neutral(wire_end.id)


def _marking(colour: str | None) -> str:
    """The word for a marking; of two colours, such as white with a stripe, the first tells."""
    if colour is None:
        return _NOT_MARKED
    first = colour.partition("-")[0]
    return first if first in MARKINGS else _OTHER


def _facts(site: Site, made: Made, part: CablePart) -> Values:
    """What the ends of a conductor have in common."""
    return {
        "conductor": made.thing("conductor", name_of(part.cable, part.colour)),
        "colour": part.colour,
        "size": size_of(part.cable, part.colour, part.size),
        "is_insulated": part.insulated,
        "is_bond": is_used_as(part, Role.BOND),
        "role": role_of(part),
        "supplies_switch": _supplies_switch(site, part),
        "comes_from_switch": is_used_as(part, Role.SWITCHED_HOT),
    }


def _supplies_switch(site: Site, part: CablePart) -> YesNo:
    """Whether a hot goes to a switch whose switched hot or travellers come back beside it."""
    is_hot = is_used_as(part, Role.HOT)
    if is_hot is False:
        return False
    beside = (each for each in site.wiring.parts[part.cable] if each is not part)
    return all_hold((is_hot, any_holds(_comes_back(site, part, each) for each in beside)))


def _comes_back(site: Site, part: CablePart, other: CablePart) -> YesNo:
    is_switched = is_used_as(other, Role.SWITCHED_HOT, Role.TRAVELLER)
    if is_switched is not True:
        return is_switched
    switches = site.groups.switches.get(other.use.group or "", ())
    far = _far_boxes(site, part)
    return any(switch.box in far for switch in switches)


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
