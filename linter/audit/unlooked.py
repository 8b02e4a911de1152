"""What a job states and no rule of the pack looks at: silence about it must not read as "checked".

A value is looked at if a fact that is stated at its place is relied on by a rule or measure of the
pack, of any stage, or if a fact that follows from it is. What only says how things hang together
(names, ends of cables, circuits) goes into the wiring and is looked at with it.
"""

from __future__ import annotations

from itertools import chain
from typing import TYPE_CHECKING

from linter.audit.findings import Unlooked
from linter.facts.readings import is_of_bond
from linter.text import nearest

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.facts import Facts
    from linter.job.jobs import Job
    from linter.job.records import LookedAt, Reading
    from linter.job.stated import Stated
    from linter.packs.model import Pack
    from linter.text import Place

KindFact = tuple[str, str]


# What goes into the wiring, or is words for people; by the kind of model.
_NOT_FACTS = {
    "Supply": "name kind voltage rating is_usual note",
    "Panel": "name spaces legs breakers make_up at note",
    "Breaker": "poles tied_to leg note",
    "Circuit": "breakers panel note",
    "Room": "name basins lit_by at size note",
    "Basin": "outlet",
    "Run": "name room outlets breaks note",
    "OutletAt": "outlet",
    "Break": "what",
    "Stair": "name room lights note",
    "Door": "name room to lights note",
    "Box": "room holds make_up connector at note",
    "Device": "name circuit load through neutral_through split type common controls note kind",
    "Site": "note",
    "Raceway": "name note",
    "Cable": "name from_ to sheath conductors circuit carries leg_of for_ through at_from at_to "
    "holes note",
    "CableEnd": "marks enters",
    "Hole": "",
    "Appliance": "name outlets note",
    "WholeDwelling": "floors note",
    "Floor": "name note",
    "Service": "in_job note",
    "Electrode": "name note",
    "Pipe": "name note",
}
# Facts that are looked at through one which is worked out from them.
_THROUGH: dict[KindFact, tuple[KindFact, ...]] = {
    ("receptacle", "places"): (("circuit", "receptacle_count"),),
    ("cable", "length"): (("circuit", "voltage_drop"), ("circuit", "home_run_length")),
    ("breaker", "rating"): (
        ("circuit", "rating"),
        ("cable", "breaker_rating"),
        ("conductor", "breaker_rating"),
    ),
    ("breaker", "serves"): (("breaker", "has_directory_entry"),),
    ("breaker", "is_ground_fault"): (
        ("receptacle", "has_ground_fault_protection"),
        ("circuit", "is_ground_fault_at_panel"),
    ),
    ("breaker", "is_arc_fault"): (
        ("outlet", "has_arc_fault_protection"),
        ("circuit", "is_arc_fault_at_panel"),
    ),
    ("room", "is_finished"): (("dwelling", "floor_area"),),
    ("room", "area"): (("dwelling", "floor_area"),),
    ("room", "ambient"): (("cable", "ambient"),),
    ("room", "has_sink"): (("receptacle", "room_has_sink"),),
    ("room", "has_tub"): (("receptacle", "room_has_tub"),),
    ("cable", "bond_size"): (("box", "wire_ends"),),
    ("cable", "size"): (("wire_end", "size"),),
    ("device", "is_ground_fault"): (("receptacle", "has_ground_fault_protection"),),
    ("device", "is_arc_fault"): (("outlet", "has_arc_fault_protection"),),
    ("appliance", "load"): (("circuit", "fixed_load"), ("appliance", "current")),
    ("appliance", "voltage"): (("appliance", "current"), ("circuit", "voltage_drop")),
    ("appliance", "is_continuous"): (("circuit", "continuous_load"),),
    ("appliance", "is_fixed"): (("circuit", "fixed_load"),),
    ("panel", "main_rating"): (("dwelling", "service_rating"),),
    ("run", "length"): (("stretch", "length"),),
    ("run", "form"): (("stretch", "form"),),
    ("run", "depth"): (("run", "area"), ("stretch", "depth")),
    ("run", "height"): (("placed_outlet", "above_surface"), ("placed_outlet", "below_surface")),
    ("run_break", "position"): (("stretch", "length"),),
    ("run_break", "width"): (("stretch", "length"),),
    ("placed_outlet", "position"): (("placed_outlet", "from_start"),),
    ("room", "storey"): (("storey", "alarms"), ("dwelling", "storeys_are_stated")),
    ("room", "is_attached"): (("dwelling", "has_attached_garage"),),
    ("room", "is_reached_from_grade"): (("receptacle", "is_reached_from_grade"),),
    ("receptacle", "mounting"): (("placed_outlet", "mounting"),),
}


def unlooked(
    job: Job, facts: Facts, pack: Pack, idle: Iterable[LookedAt] = ()
) -> tuple[Unlooked, ...]:
    """What no rule looks at, in file order of the first place of each.

    `idle` are records of the walk-through that are of no item of the pack, or of no thing of it.
    """
    used = _used(pack)
    looked = _looked_at(facts, used)
    found: dict[KindFact, dict[Place, None]] = {}
    for of, key, place in chain(
        _values(job), _records(job, used), _looks(idle, pack), _days(job, pack)
    ):
        if place not in looked:
            found.setdefault((of, key), {})[place] = None
    listed = [Unlooked(of, key, tuple(places)) for (of, key), places in found.items()]
    return tuple(sorted(listed, key=lambda each: (each.places[0].line, each.places[0].column)))


def _used(pack: Pack) -> frozenset[KindFact]:
    """The facts that a pack relies on, also through measures, and those they follow from."""
    through = {base for base, others in _THROUGH.items() if not pack.looks_at.isdisjoint(others)}
    return pack.looks_at | through


def _looked_at(facts: Facts, used: frozenset[KindFact]) -> frozenset[Place]:
    return frozenset(
        place
        for kind, things in facts.things.items()
        for thing in things
        for fact, place in thing.stated_at.items()
        if (kind, fact) in used
    )


def _values(job: Job) -> Iterator[tuple[str, str, Place]]:
    """Each value that could be a fact: of which kind, its key, its place."""
    for of, name, models in _models(job):
        not_facts = frozenset(_NOT_FACTS[name].split())
        for model in models:
            for field, place in model.field_places.items():
                key = field.partition(".")[0]
                if key == field and key not in not_facts:
                    yield of, key.removesuffix("_"), place


def _models(job: Job) -> Iterator[tuple[str, str, Iterable[Stated]]]:
    """All that is stated of things, with what a person calls their kind."""
    yield "supply", "Supply", job.supplies.values()
    yield "dwelling", "WholeDwelling", (job.dwelling,)
    yield "floor", "Floor", job.dwelling.floors.values()
    yield "service", "Service", () if job.service is None else (job.service,)
    yield "electrode", "Electrode", job.electrodes.values()
    yield "pipe", "Pipe", job.pipes.values()
    yield "raceway", "Raceway", job.raceways.values()
    yield "site", "Site", (job.site,)
    yield "panel", "Panel", job.panels.values()
    for panel in job.panels.values():
        yield "breaker", "Breaker", panel.breakers.values()
    yield "circuit", "Circuit", job.circuits.values()
    yield "room", "Room", job.rooms.values()
    yield from _models_of_places(job)
    yield "box", "Box", job.boxes.values()
    for box in job.boxes.values():
        for device in box.holds:
            yield str(getattr(device, "kind", "device")), "Device", (device,)
    yield "cable", "Cable", job.cables.values()
    for cable in job.cables.values():
        yield "cable", "CableEnd", (cable.at_from, cable.at_to)
        yield "hole", "Hole", cable.holes or ()
    yield "appliance", "Appliance", job.appliances.values()


def _models_of_places(job: Job) -> Iterator[tuple[str, str, Iterable[Stated]]]:
    """What is stated of basins, runs of wall and counter, stairs and doors."""
    for room in job.rooms.values():
        yield "basin", "Basin", room.basins or ()
    for what, runs in (("wall", job.walls), ("counter", job.counters)):
        yield what, "Run", runs.values()
        for run in runs.values():
            yield f"outlet of {what}", "OutletAt", run.outlets or ()
            yield f"break of {what}", "Break", run.breaks
    yield "stair", "Stair", job.stairs.values()
    yield "door", "Door", job.doors.values()


def _records(job: Job, used: frozenset[KindFact]) -> Iterator[tuple[str, str, Place]]:
    """What is written down beside the things: readings."""
    for reading in job.readings:
        if not _is_fact(reading, used):
            yield "", f"readings of {reading.test}", reading.place


def _days(job: Job, pack: Pack) -> Iterator[tuple[str, str, Place]]:
    """The day of the permit, where neither the choice of the pack nor a rule of it asks for it."""
    asked = job.locality is not None or any(any(rule.permits) for rule in pack.rules)
    if job.permit_date is not None and not asked:
        yield "", "permit_date", job.place_of("permit_date")


def _looks(idle: Iterable[LookedAt], pack: Pack) -> Iterator[tuple[str, str, Place]]:
    """Records of no item, with the item that may be meant; or of no thing that an item is about."""
    items = [item.name for item in pack.items]
    for each in idle:
        near = nearest(each.item, items) if each.item not in items else ()
        meant = f", perhaps {near[0]}" if near else ""
        at = f" at {each.at}" if each.at else ""
        yield "", f"looked_at of {each.item}{at}{meant}", each.place


def _is_fact(reading: Reading, used: frozenset[KindFact]) -> bool:
    """Whether a rule asks for the fact that a reading comes to."""
    of = "device" if reading.outlet is not None else "circuit"
    match reading.test:
        case "polarity":
            return reading.outlet is not None and ("outlet", "polarity_reading") in used
        case "continuity":
            asked = ("outlet", "bond_resistance") in used
            return asked and reading.outlet is not None and is_of_bond(reading)
        case "insulation resistance":
            return reading.circuit is not None and ("circuit", "insulation_resistance") in used
        case "ground-fault trip":
            return (of, "trip_reading") in used
        case "arc-fault trip":
            return (of, "arc_fault_trip_reading") in used
        case _:
            return False
