"""Boxes: what the job states of them, and what they hold."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.conductors import all_known
from linter.facts.given import Given, word_of
from linter.facts.knowing import all_hold, any_holds
from linter.facts.made import Grouped, answer, complete, one, things
from linter.facts.rooms import GARAGE, is_used_as
from linter.units import Unknown
from linter.vocabulary.shorthand import NOT_STATED

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from linter.facts.knowing import YesNo
    from linter.facts.made import Made, Site, Values
    from linter.job.boxes import Box
    from linter.vocabulary.model import Thing
    from linter.wiring.model import BoxWiring, Wiring

_FIELDS = {
    "gangs": "gangs",
    "form": "form",
    "marked_volume": "volume",
    "trade_size": "trade_size",
    "added_volume": "added_volume",
    "fixture_studs": "fixture_studs",
    "hickeys": "hickeys",
    "terminal_blocks": "terminal_blocks",
    "depth": "depth",
    "set_back": "set_back",
    "height": "height",
    "open_holes": "open_holes",
    "can_be_reached": "can_be_reached",
    "has_cover": "cover",
    "is_made_up": "made_up",
    "is_listed_for_fan": "fan_rated",
    "is_listed_for_luminaire": "luminaire_rated",
    "is_for_wet_place": "wet_rated",
    "is_marked_first_outlet": "first_outlet_mark",
    "is_fire_rated": "fire_rated",
    "is_listed_for_floor": "floor_rated",
    "has_added_support": "added_support",
    "marked_weight": "holds_up_to",
    "holds_low_voltage": "low_voltage",
    "has_divider": "divider",
}
_METAL, _COMBUSTIBLE = "metal", "combustible"
_EXTERNAL, _INTERNAL = "external", "internal"


def box_of(site: Site, made: Made, box: Box) -> Thing:
    """The facts of a box that the job states."""
    given = Given("box", box.name, box, _FIELDS)
    room = made.thing("room", box.room)
    given.put("room", room)
    apart = None if box.says("in_fire_separation") else is_used_as(room, GARAGE) is not False
    separates = box.in_fire_separation if apart is None else None if apart else False
    given.put("is_in_fire_separation", separates, "in_fire_separation")
    if separates is None and not box.says("fire_rated"):
        given.put("is_fire_rated", given.values["is_in_fire_separation"])
    given.put("is_metal", _is(box.material, _METAL), "material")
    given.put("volume_is_marked", box.volume is not None or box.trade_size is None)
    given.put("surface_burns", _is(box.surface, _COMBUSTIBLE), "surface")
    opening = box.opening
    given.put("smallest_opening", None if opening is None else opening.smallest, "opening")
    given.put("largest_opening", None if opening is None else opening.largest, "opening")
    given.put("has_cable_clamps", None if box.clamps is None else box.clamps != 0, "clamps")
    given.put("internal_clamps", _internal_clamps(site, box), "clamps")
    given.put("is_bonded", _is_bonded(site, box), "bond_screw")
    given.put("depth_is_stated", box.says("depth"), "depth")
    for fact, place in (("is_in_ceiling", "ceiling"), ("is_in_floor", "floor")):
        given.put(fact, _is(box.mounted, place), "mounted")
    given.put("fastening", word_of(box, "fastened_by"), "fastened_by")
    given.put("stage", site.job.stage or NOT_STATED)
    return given.thing(f"box {box.name}")


def _is(word: str | None, wanted: str) -> bool | None:
    return None if word is None else word == wanted


def _internal_clamps(site: Site, box: Box) -> int | None:
    """The number stated; or none, or one for each cable that enters, uncut ones too."""
    if box.clamps == _EXTERNAL:
        return 0
    if box.clamps == _INTERNAL:
        return site.entering[box.name]
    return box.clamps if isinstance(box.clamps, int) else None


def _is_bonded(site: Site, box: Box) -> bool | None:
    """Whether a screw that bonds end on bonds it; whether armour does is to be looked at."""
    by_screw = _is_bonded_by_screw(site, box)
    return None if by_screw is False and box.name in site.armoured else by_screw


def _is_bonded_by_screw(site: Site, box: Box) -> bool | None:
    if box.material is not None and box.material != _METAL:
        return False
    if not box.bond_screw or box.material is None:
        return box.bond_screw if box.material == _METAL else None
    here = site.wiring.boxes[box.name]
    bonds = {site.trace.piece_of(end.id) for end in here.wire_ends if end.bond}
    return any(not each.device and site.trace.piece_of(each.id) in bonds for each in here.terminals)


def link_boxes(site: Site, made: Made) -> None:
    """What is in each box, and what follows from its joints."""
    cable_ends, wire_ends, devices, joints, passing = (
        Grouped((one(each, "box").ref, each) for each in made.all(kind))
        for kind in ("cable_end", "wire_end", "device", "joint", "passing_wire")
    )
    for box in made.all("box"):
        here = site.wiring.boxes[box.ref]
        ends = wire_ends.under(box.ref)
        entering = cable_ends.under(box.ref)
        sheaths = all_known(one(each, "cable") for each in entering)
        held = devices.under(box.ref)
        links: Values = {
            "cable_ends": entering,
            "wire_ends": sheaths if isinstance(sheaths, Unknown) else ends,
            "bond_ends": _bond_ends(ends, sheaths),
            "passing_wires": passing.under(box.ref),
            "devices": held,
            "joints": joints.under(box.ref),
            "has_splice": _has_splice(here, ends, entering, sheaths),
            "bonds_are_joined": _bonds_are_joined(site.wiring, ends, sheaths),
            "needs_device_bond": any(answer(each, "has_bond_terminal") for each in held),
        }
        complete(box, links)


def link_box_circuits(made: Made) -> None:
    """The circuits of which boxes hold conductors; conductors know theirs by now."""
    in_box = Grouped(
        (one(wire, "box").ref, circuit)
        for kind in ("wire_end", "passing_wire")
        for wire in made.all(kind)
        for circuit in things(one(wire, "conductor"), "circuits")
    )
    for box in made.all("box"):
        complete(box, {"circuits": made.in_order(in_box.under(box.ref))})


def _bond_ends(ends: Sequence[Thing], sheaths: YesNo) -> tuple[Thing, ...] | Unknown:
    """The bonds among wire ends; unknown where a sheath is, or what a conductor is used as."""
    if isinstance(sheaths, Unknown):
        return sheaths
    unsure = any_holds(_unknown_uses(ends))
    if isinstance(unsure, Unknown):
        return unsure
    return tuple(end for end in ends if answer(end, "is_bond") is True)


def _unknown_uses(ends: Iterable[Thing]) -> list[YesNo]:
    return [use for use in (answer(end, "is_bond") for end in ends) if isinstance(use, Unknown)]


def _has_splice(
    here: BoxWiring, ends: Sequence[Thing], entering: Sequence[Thing], sheaths: YesNo
) -> YesNo:
    """Whether conductors of cables are joined; where several end, an unknown leaves it open."""
    groups = [each.wire_ends for each in here.joints] + [each.wire_ends for each in here.landings]
    found = any(len(each) > 1 for each in groups)
    if len(entering) <= 1:
        return found
    sheath = sheaths if isinstance(sheaths, Unknown) else False
    return any_holds([found, sheath, *_unknown_uses(ends)])


def _bonds_are_joined(wiring: Wiring, ends: Iterable[Thing], sheaths: YesNo) -> YesNo:
    """Whether all bonds among the wire ends come together in one joint or on one terminal."""
    listed = list(ends)
    bonds = [end.ref for end in listed if answer(end, "is_bond") is True]
    joined = len(bonds) <= 1 or (
        all(bond in wiring.ended_in for bond in bonds)
        and len({wiring.ended_in[bond] for bond in bonds}) == 1
    )
    return all_hold([joined, sheaths, *_unknown_uses(listed)])
