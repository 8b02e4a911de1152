"""The dwelling as a whole: what is in it, its floors, its usual supply."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.facts.given import Given, unknown
from linter.facts.knowing import all_hold, any_holds, hanging_on, known, largest, negated, total
from linter.facts.made import answer, number
from linter.facts.rooms import DWELLING, GARAGE, is_split_phase, is_used_as
from linter.facts.sites import site_of
from linter.units import Unknown
from linter.vocabulary.model import value_of

if TYPE_CHECKING:
    from linter.facts.knowing import Number, YesNo
    from linter.facts.made import Made, Site
    from linter.job.dwelling import Supply
    from linter.job.jobs import Job
    from linter.vocabulary.model import Thing

_ALL_OF_KIND = {
    "rooms": "room",
    "floors": "floor",
    "panels": "panel",
    "boxes": "box",
    "cables": "cable",
    "circuits": "circuit",
    "breakers": "breaker",
    "outlets": "outlet",
    "receptacles": "receptacle",
    "switches": "switch",
    "appliances": "appliance",
    "services": "service",
    "electrodes": "electrode",
    "pipes": "pipe",
    "raceways": "raceway",
    "runs": "run",
    "stretches": "stretch",
    "luminaires": "luminaire",
    "alarms": "alarm",
    "storeys": "storey",
    "stairs": "stair",
    "doors": "door",
}


def dwelling_of(site: Site, made: Made) -> Thing:
    """The dwelling: all that is in it, and its usual supply."""
    job, supply = site.job, site.job.usual_supply
    given = Given(DWELLING, DWELLING, supply, {"supply_voltage": "voltage"})
    given.put("is_split_phase", is_split_phase(supply), "kind")
    given.put("service_rating", _service_rating(supply, made), "rating")
    for fact, kind in _ALL_OF_KIND.items():
        given.put(fact, made.all(kind))
    rooms = made.all("room")
    given.put("floor_area", total(map(_area_to_live_in, rooms)))
    given.put("has_kitchen", any_holds(is_used_as(room, "kitchen") for room in rooms))
    given.put("has_bathroom", any_holds(is_used_as(room, "bathroom") for room in rooms))
    given.put("has_bedroom", any_holds(is_used_as(room, "bedroom") for room in rooms))
    garages = (all_hold((is_used_as(each, GARAGE), answer(each, "is_attached"))) for each in rooms)
    given.put("has_attached_garage", any_holds(garages))
    given.put("has_laundry", _has_laundry(made))
    indoors = [each for each in rooms if value_of(each, "is_outdoors") is not True]
    has_names = bool(indoors) and known(value_of(each, "storey") for each in indoors)
    given.put("storeys_are_stated", True if has_names else None)
    given.put("doors_are_stated", True if job.doors else None)
    for part in (_whole(job, made), site_of(job, DWELLING)):
        given.values |= part.values
        given.written |= part.written
        given.stated_at |= part.stated_at
    thing = given.thing(job.name)
    thing.place = job.place
    return thing


def _whole(job: Job, made: Made) -> Given:
    """What the job says of the dwelling by itself, and of its floors."""
    dwelling, floors = job.dwelling, made.all("floor")
    fields = {"type": "type", "measured_over": "measured_over"}
    given = Given(DWELLING, DWELLING, dwelling, fields)
    given.put("burns_fuel", dwelling.fuel_burning, "fuel_burning")
    given.put("is_existing", dwelling.existing if dwelling.says("existing") else False, "existing")
    given.put("measured_demand", dwelling.measured_demand, "measured_demand")
    given.put("has_measured_demand", dwelling.says("measured_demand"), "measured_demand")
    for fact, of_floor in (("outside_area", "area"), ("inside_area", "inside_area")):
        stated = getattr(dwelling, fact)
        summed = _floors(floors, of_floor) if floors else None
        given.put(fact, stated if dwelling.says(fact) else summed, fact)
    service = job.service
    is_told = service is not None and service.in_job is not None
    is_told = is_told or (service is not None and bool(service.field_places.keys() - {"in_job"}))
    given.put("service_is_described", True if is_told else None)
    return given


def _floors(floors: tuple[Thing, ...], fact: str) -> Number:
    return total(_counted(answer(each, "is_left_out"), number(each, fact)) for each in floors)


def _counted(is_left_out: YesNo, area: Number) -> Number:
    if is_left_out is True:
        return 0.0
    return hanging_on((is_left_out, area)) if isinstance(is_left_out, Unknown) else area


def _has_laundry(made: Made) -> YesNo:
    """Whether anything is said to be for laundry; what a job leaves out is not, unknown is open."""
    said = [
        *(_is_for_laundry(each, "serves") for each in made.all("receptacle")),
        *(_is_for_laundry(each, "use") for each in made.all("circuit")),
    ]
    return any_holds((*said, *(is_used_as(room, "laundry") for room in made.all("room"))))


def _is_for_laundry(thing: Thing, fact: str) -> YesNo:
    found = is_used_as(thing, "laundry", fact=fact)
    return found if fact in thing.stated_at else found is True


def _service_rating(supply: Supply, made: Made) -> Number:
    if supply.rating is not None:
        return supply.rating.value
    own = unknown(DWELLING, DWELLING, "service_rating")
    mains = [number(panel, "main_rating") for panel in made.all("panel")]
    return largest(mains, own)


def _area_to_live_in(room: Thing) -> Number:
    counts = all_hold((answer(room, "is_finished"), negated(answer(room, "is_outdoors"))))
    area = number(room, "area")
    if counts is False:
        return 0.0
    return area if counts is True else hanging_on((counts, area))
