"""All facts of a job: first every thing with what is stated of it, then what ties them together."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from linter.facts.appliances import (
    appliance_of,
    link_appliances,
    link_receptacle_appliances,
)
from linter.facts.arc_faults import link_first_outlets
from linter.facts.boxes import box_of, link_box_circuits, link_boxes
from linter.facts.building import link_building, make_building
from linter.facts.cables import (
    bored_holes_of,
    cable_ends_of,
    cable_of,
    link_cable_ends,
    link_cables,
)
from linter.facts.circuits import circuit_of, link_circuit_wires, link_circuits
from linter.facts.conductors import conductor_of, link_conductors
from linter.facts.devices import device_of, link_devices
from linter.facts.doubts import Doubts
from linter.facts.dwelling import dwelling_of
from linter.facts.fixtures import fixtures_of, link_fixtures
from linter.facts.joints import joint_of, link_joints, passing_wire_of
from linter.facts.made import Made, Site
from linter.facts.outlets import (
    link_outlets,
    link_receptacles,
    outlet_of,
    receptacle_of,
)
from linter.facts.panels import breaker_of, link_breakers, link_panels, panel_of
from linter.facts.raceways import raceway_of
from linter.facts.rooms import GARAGE, link_rooms, room_of
from linter.facts.runs import make_runs
from linter.facts.service import (
    electrode_of,
    floor_of,
    link_services,
    link_whole_feeders,
    pipe_of,
    services_of,
)
from linter.facts.switches import link_switches, switch_of
from linter.facts.traced import link_what_is_traced
from linter.facts.veils import veil
from linter.facts.wire_ends import ends_of, link_ends
from linter.job.devices import Receptacle, Switch
from linter.vocabulary.kinds import KINDS
from linter.wiring.groups import Groups

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.job.jobs import Job
    from linter.trace.trace import Trace
    from linter.vocabulary.model import Thing
    from linter.wiring.model import Wiring


class Facts:
    """The things of a job, by kind and in file order, with the values of all their facts."""

    __slots__ = ("_made", "things")

    def __init__(self, made: Made) -> None:
        self._made = made
        self.things: Mapping[str, tuple[Thing, ...]] = {kind: made.all(kind) for kind in KINDS}

    def thing(self, kind: str, ref: str) -> Thing:
        """The thing of that kind and name; `KeyError` if there is none."""
        return self._made.thing(kind, ref)


def facts_of(job: Job, wiring: Wiring, trace: Trace) -> Facts:
    """The values of the vocabulary for all things of a job; cost grows with the size of the job."""
    site = _site(job, wiring, trace)
    made = Made(KINDS)
    _make_what_is_stated(site, made)
    _make_what_is_wired(site, made)
    _link(site, made)
    return Facts(made)


def _site(job: Job, wiring: Wiring, trace: Trace) -> Site:
    entering = Counter(
        str(box)
        for cable in job.cables.values()
        for box in (cable.from_, cable.to, *(each.box for each in cable.through))
    )
    capped = frozenset(each.wire_end for each in wiring.capped)
    armoured = {
        str(box) for cable in job.cables.values() if cable.armour_is_bond for box in cable.ends
    }
    return Site(job, wiring, trace, Groups(job), entering, capped, frozenset(armoured))


def _make_what_is_stated(site: Site, made: Made) -> None:
    job = site.job
    devices = tuple(device for box in job.boxes.values() for device in box.holds)
    made.add(map(room_of, job.rooms.values()))
    made.add(map(floor_of, job.dwelling.floors.values()))
    made.add(services_of(job.service))
    made.add(map(electrode_of, job.electrodes.values()))
    made.add(map(pipe_of, job.pipes.values()))
    made.add(map(raceway_of, job.raceways.values()))
    made.add(map(appliance_of, job.appliances.values()))
    has_garage = any(each.use in (GARAGE, None) for each in job.rooms.values())
    made.add(panel_of(each, has_garage=has_garage) for each in job.panels.values())
    made.add(
        breaker_of(made, panel, each)
        for panel in job.panels.values()
        for each in panel.breakers.values()
    )
    made.add(circuit_of(site, made, each) for each in job.circuits.values())
    made.add(box_of(site, made, each) for each in job.boxes.values())
    made.add(device_of(site, made, each) for each in devices)
    made.add(outlet_of(site, made, each) for each in devices if not isinstance(each, Switch))
    made.add(receptacle_of(site, made, each) for each in devices if isinstance(each, Receptacle))
    made.add(switch_of(site, made, each) for each in devices if isinstance(each, Switch))
    for fixtures in fixtures_of(site, made):
        made.add(fixtures)
    make_runs(site, made)
    make_building(site, made)


def _make_what_is_wired(site: Site, made: Made) -> None:
    job, wiring = site.job, site.wiring
    for cable in job.cables.values():
        made.add((cable_of(site, made, cable),))
        made.add(cable_ends_of(made, cable))
        made.add(bored_holes_of(made, cable))
        thing = made.thing("cable", cable.name)
        made.add(conductor_of(thing, part) for part in wiring.parts[cable.name])
        made.add(ends_of(site, made, cable))
    made.add(joint_of(site, made, each) for box in wiring.boxes.values() for each in box.joints)
    made.add(passing_wire_of(made, each) for each in wiring.passing)


def _link(site: Site, made: Made) -> None:
    """Each step needs only what the steps before it have linked."""
    doubts = Doubts(site)
    link_boxes(site, made)
    link_breakers(site, made)
    link_devices(site, made, doubts)
    link_outlets(site, made, doubts)
    link_circuits(site, made)
    link_receptacles(made)
    link_conductors(site, made, doubts)
    link_cables(made)
    link_cable_ends(made)
    link_ends(site, made)
    link_joints(site, made)
    link_switches(site, made, doubts)
    link_box_circuits(made)
    link_appliances(site, made)
    link_receptacle_appliances(site, made)
    link_circuit_wires(made)
    link_first_outlets(site, made)
    link_fixtures(site, made, doubts)
    link_rooms(site, made)
    link_panels(site, made)
    link_whole_feeders(site, made)
    link_building(site, made)
    made.add((dwelling_of(site, made),))
    link_services(site, made)
    link_what_is_traced(site, made, doubts)
    if site.trace.uncertain_boxes:
        veil(made, doubts)
