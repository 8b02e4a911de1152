"""Floors, the service, electrodes and piping: as stated, and how they hang together."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from linter.facts.given import Given
from linter.facts.made import complete, one, things
from linter.job.stated import PanelId

if TYPE_CHECKING:
    from linter.facts.made import Made, Site
    from linter.job.service import Electrode, Floor, Pipe, Service
    from linter.vocabulary.model import Thing

SERVICE = "service"
_FLOOR = {"level": "level", "area": "area", "inside_area": "inside_area"}
_SERVICE = {
    "conductor_size": "conductor",
    "conductor_material": "material",
    "neutral_size": "neutral",
    "terminal_temperature": "terminal_temperature",
    "disconnect_count": "disconnects",
    "disconnects_are_grouped": "grouped",
    "disconnects_are_apart": "own_enclosures",
    "disconnect_place": "disconnect_place",
    "disconnect_is_reachable": "disconnect_reachable",
    "inside_length": "inside_length",
    "has_emergency_disconnect": "emergency_disconnect",
    "emergency_disconnect_is_marked": "emergency_marked",
    "surge_protector": "surge_protector",
    "surge_current": "surge_current",
    "has_main_bonding_jumper": "main_bonding_jumper",
    "electrode_conductor_size": "electrode_conductor",
    "electrode_conductor_material": "electrode_conductor_material",
    "electrode_conductor_is_unbroken": "electrode_conductor_unbroken",
    "electrode_conductor_is_in_metal": "electrode_conductor_in_metal",
    "raceway_is_bonded_at_both_ends": "raceway_bonded",
    "has_ringed_knockouts": "ringed_knockouts",
    "has_bonding_bushings": "bonding_bushings",
    "bonding_terminals": "bonding_terminals",
    "has_footing_steel": "footing_steel",
    "service_count": "services",
    "drop_over_ground": "drop_over_ground",
    "drop_over_drive": "drop_over_drive",
    "drop_over_roof": "drop_over_roof",
    "attachment_height": "attachment_height",
}
_DROPS = {
    "has_overhead_drop": "drop_over_ground",
    "crosses_a_drive": "drop_over_drive",
    "crosses_a_roof": "drop_over_roof",
}
_ELECTRODE = {
    "type": "type",
    "length": "length",
    "in_earth": "in_earth",
    "is_flush": "flush",
    "distance_to_next": "distance_to_next",
    "is_joined": "joined",
    "conductor_size": "conductor",
    "conductor_material": "material",
    "clamp_is_listed": "clamp_listed",
    "resistance": "resistance",
    "distance_inside": "distance_inside",
}
_PIPE = {
    "carries": "carries",
    "material": "material",
    "is_bonded": "bonded",
    "bond_size": "bond",
    "bond_material": "bond_material",
    "bond_can_be_reached": "bond_can_be_reached",
    "is_bridged": "bridged",
    "metal_in_earth": "metal_in_earth",
}


def floor_of(floor: Floor) -> Thing:
    """The facts of a floor; it counts unless the job says that it is left out."""
    given = Given("floor", floor.name, floor, _FLOOR)
    given.put("is_left_out", floor.left_out if floor.says("left_out") else False, "left_out")
    return given.thing(f"the {floor.name} floor")


def services_of(service: Service | None) -> tuple[Thing, ...]:
    """The service with what the job states of it; none where it is no part of the job."""
    if service is None or service.in_job is False:
        return ()
    given = Given(SERVICE, SERVICE, service, _SERVICE)
    given.put("disconnect_room", None, "disconnect_room")
    for fact, field in _DROPS.items():
        given.put(fact, service.says(field), field)
    return (given.thing("the service"),)


def electrode_of(electrode: Electrode) -> Thing:
    """The facts of an electrode that the job states."""
    return Given("electrode", electrode.name, electrode, _ELECTRODE).thing(electrode.name)


def pipe_of(pipe: Pipe) -> Thing:
    """The facts of a system of piping that the job states."""
    label = f"the {pipe.name} pipe" if pipe.name == pipe.carries else pipe.name
    return Given("pipe", pipe.name, pipe, _PIPE).thing(label)


def link_services(site: Site, made: Made) -> None:
    """What belongs to the service, and what the electrodes and pipes of one building are."""
    electrodes, pipes, services = (made.all(kind) for kind in ("electrode", "pipe", SERVICE))
    for service in services:
        links: dict[str, object] = {
            "electrodes": electrodes,
            "pipes": pipes,
            "panels": made.all("panel"),
            "dwellings": made.all("dwelling"),
        }
        stated = site.job.service
        if stated is not None and stated.disconnect_room is not None:
            links["disconnect_room"] = made.thing("room", stated.disconnect_room)
        complete(service, links)
    for electrode in electrodes:
        others = tuple(each for each in electrodes if each is not electrode)
        complete(electrode, {"others": others})
    for pipe in pipes:
        complete(pipe, {"electrodes": electrodes, "services": services})


def link_whole_feeders(site: Site, made: Made) -> None:
    """Which cables are the feeder by which all of the dwelling is fed."""
    feeders = {one(wire, "cable").ref for panel in made.all("panel") for wire in _feeder_of(panel)}
    beginning = Counter(
        panel
        for circuit in site.job.circuits.values()
        for panel in {each.panel for each in circuit.breakers}
    )
    for cable in made.all("cable"):
        panels = {
            one(breaker, "panel").ref
            for circuit in things(cable, "circuits")
            for breaker in things(circuit, "breakers")
        }
        alone = bool(panels) and all(beginning[PanelId(panel)] == 1 for panel in panels)
        complete(cable, {"feeds_whole_dwelling": cable.ref in feeders and alone})


def _feeder_of(panel: Thing) -> tuple[Thing, ...]:
    return things(panel, "feeder_conductors")
