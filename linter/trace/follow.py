"""A circuit as a person follows it with a tester: from the panel outward, box by box."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.job.devices import Switch
from linter.wiring.legs import has_one_leg, leg_is_known, leg_of_pole
from linter.wiring.model import LinkKind, Role

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from linter.job.jobs import Job
    from linter.job.panel import Breaker, Panel
    from linter.job.stated import CircuitId
    from linter.trace.outlets import Place
    from linter.trace.trace import Trace
    from linter.wiring.model import BoxWiring, Wiring

MOST_SHOWN = 16  # positions of switches that a person goes through one by one
_THROWS = frozenset({LinkKind.THROW_1, LinkKind.THROW_2})


class Spot(NamedTuple):
    """A joint or terminal: what comes together there, and what reaches it.

    `reached_by` has sources in words; `sometimes`: only in some position of switches.
    """

    name: str
    conductors: tuple[str, ...]
    reached_by: tuple[str, ...]
    sometimes: bool


class Position(NamedTuple):
    """One position of switches, each with its word, and what an outlet shows in it."""

    switches: tuple[tuple[str, str], ...]
    seen: str


class Shown(NamedTuple):
    """What two terminals of an outlet show in each position of the switches.

    No positions where there are too many to go through one by one.
    """

    terminals: tuple[str, str]
    positions: tuple[Position, ...]


class Taken(NamedTuple):
    """An outlet: what protects it, which switches turn it, what it shows at each of its places."""

    device: str
    kind: str
    protected_by: tuple[str, ...]
    switches: tuple[str, ...]
    places: tuple[Shown, ...]


class Stop(NamedTuple):
    """A box on the way: how many cables from the panel it lies, and what is in it."""

    box: str
    room: str
    distance: int | None
    cables: tuple[str, ...]
    joints: tuple[Spot, ...]
    terminals: tuple[Spot, ...]
    capped: tuple[str, ...]
    outlets: tuple[Taken, ...]


class Start(NamedTuple):
    """Where a circuit begins: a breaker's pole, its leg, what it is, what is on it.

    The leg is empty where the job does not tell it, None where the supply has but one.
    `pole` is panel, space and pole from 0.
    """

    pole: tuple[str, int, int]
    breaker: str
    leg: str | None
    rating: str
    protection: tuple[str, ...]
    conductors: tuple[str, ...]


class Followed(NamedTuple):
    """A circuit from the panel outward, its boxes in the order in which one comes to them."""

    circuit: str
    starts: tuple[Start, ...]
    stops: tuple[Stop, ...]


class Follower:
    """Follows circuits of one job."""

    def __init__(self, job: Job, wiring: Wiring, trace: Trace) -> None:
        self._job, self._wiring, self._trace = job, wiring, trace
        self._throws = {link.device for link in wiring.links if link.kind in _THROWS}
        self._devices = {
            str(device.name): device for box in job.boxes.values() for device in box.holds
        }

    def circuit(self, name: CircuitId, boxes: Iterable[str] | None = None) -> Followed:
        """A circuit from the panel outward; of `boxes` only, where they are named."""
        wanted = self._boxes_of(name) if boxes is None else [*boxes]
        order = {box: number for number, box in enumerate(self._wiring.boxes)}
        stops = [self._stop(self._wiring.boxes[box], name) for box in wanted]
        stops.sort(key=lambda stop: (stop.distance is None, stop.distance or 0, order[stop.box]))
        return Followed(name, tuple(self._starts(name)), tuple(stops))

    def boxes_to(self, name: str) -> tuple[str, ...]:
        """The boxes on a shortest way from the panel to a box, or to what it is named for."""
        ends = {end.box for end in self._wiring.wire_ends.values()}
        if name not in ends:
            return (name,) if name in self._wiring.boxes else ()
        near = [end for end in self._wiring.boxes[name].wire_ends if end.use.role is Role.HOT]
        near = near or [*self._wiring.boxes[name].wire_ends]
        ways = [self._trace.path_to(end.id) for end in near]
        way = min((each for each in ways if each), key=len, default=())
        found = [self._wiring.wire_ends[each].box for each in way if each in self._wiring.wire_ends]
        return tuple(dict.fromkeys([*(b for b in found if b in self._wiring.boxes), name]))

    def _boxes_of(self, circuit: str) -> list[str]:
        return [
            name
            for name, box in self._wiring.boxes.items()
            if any(end.use.circuit == circuit for end in box.wire_ends)
            or any(
                circuit in self._wiring.circuit_of_device.get(each.device, ())
                for each in box.terminals
            )
        ]

    def _starts(self, circuit: CircuitId) -> Iterator[Start]:
        for ref in self._job.circuits[circuit].breakers:
            panel = self._job.panels[ref.panel]
            breaker = panel.breakers[ref.space]
            rating = "" if breaker.rating is None else breaker.rating.written
            for pole in range(breaker.poles):
                on_it = [
                    f"{self._wiring.wire_ends[wire].colour} of {self._wiring.wire_ends[wire].cable}"
                    for wire, landing in self._wiring.panel_landings.items()
                    if (landing.panel, landing.space, landing.pole) == (*ref, pole)
                ]
                where = "" if ref.panel == "panel" else f" of {ref.panel}"
                which = f"pole {pole + 1} of " if breaker.poles > 1 else ""
                yield Start(
                    (str(ref.panel), ref.space, pole),
                    f"{which}breaker {ref.space}{where}",
                    self._leg(breaker, panel, pole),
                    rating,
                    breaker.protection or (),
                    tuple(on_it),
                )

    def _leg(self, breaker: Breaker, panel: Panel, pole: int) -> str | None:
        if has_one_leg(self._job):
            return None
        return leg_of_pole(breaker, pole) if leg_is_known(breaker, panel) else ""

    def _stop(self, box: BoxWiring, circuit: str) -> Stop:
        distances = [self._trace.distance(end.id) for end in box.wire_ends]
        joints = [
            Spot(
                joint.id.rpartition("/")[2],
                (*map(self._wire, joint.wire_ends), *map(self._pigtail, joint.pigtails)),
                *self._reached(joint.id),
            )
            for joint in box.joints
        ]
        landings = [
            Spot(
                landing.terminal.replace("/", ", "),
                tuple(map(self._wire, landing.wire_ends)) + self._from_joint(landing.pigtail),
                *self._reached(landing.terminal),
            )
            for landing in box.landings
        ]
        held = dict.fromkeys(each.device for each in box.terminals if each.device)
        return Stop(
            box.box,
            str(self._job.boxes[box.box].room or ""),  # type: ignore[index]  # plain names
            min((each for each in distances if each is not None), default=None),
            tuple(dict.fromkeys(end.cable for end in box.wire_ends)),
            tuple(joints),
            tuple(landings),
            tuple(self._wire(each.wire_end) for each in box.capped),
            tuple(self._taken(name) for name in held if self._is_outlet(name, circuit)),
        )

    def _is_outlet(self, device: str, circuit: str) -> bool:
        circuits = self._wiring.circuit_of_device.get(device, ())
        on_it = circuit in circuits or not circuits
        return on_it and not isinstance(self._devices[device], Switch)

    def _wire(self, name: str) -> str:
        end = self._wiring.wire_ends[name]
        return f"{end.colour} of {end.cable}"

    def _pigtail(self, name: str) -> str:
        pigtail = self._wiring.pigtails[name]
        what = "lead" if pigtail.is_lead else "pigtail"
        return f"a {what} to {pigtail.terminal.replace('/', ', ')}"

    def _from_joint(self, pigtail: str | None) -> tuple[str, ...]:
        if pigtail is None:
            return ()
        return (f"joint {self._wiring.pigtails[pigtail].joint.rpartition('/')[2]}",)

    def _reached(self, name: str) -> tuple[tuple[str, ...], bool]:
        found = self._trace.sources_in_words(name)
        return found, self._trace.is_switched(name)

    def _taken(self, device: str) -> Taken:
        found = self._trace.outlet(device)
        protected = [
            each.device or f"breaker {(each.breaker or ('', 0))[1]}"
            for each in self._trace.protectors_of(device)
        ]
        return Taken(
            device,
            str(self._devices[device].kind),
            tuple(protected),
            found.switches,
            tuple(Shown(each.terminals, tuple(self._positions(each))) for each in found.places),
        )

    def _positions(self, place: Place) -> Iterator[Position]:
        if len(place.seen) > MOST_SHOWN:
            return
        for number, seen in enumerate(place.seen):
            words = tuple(
                (name, self._word(name, second=bool(number >> bit & 1)))
                for bit, name in enumerate(place.switches)
            )
            yield Position(words, seen.value)

    def _word(self, switch: str, *, second: bool) -> str:
        if switch in self._throws:
            return "throw 2" if second else "throw 1"
        return "on" if second else "off"
