"""What is known of each cable as a whole: its circuit, its hots, its control group."""

from __future__ import annotations

from typing import TYPE_CHECKING

from linter.job.stated import CableId
from linter.text import Refusal, join_words
from linter.wiring.carries import (
    FEED,
    SWITCHED,
    TWO_POLE_FEED,
    Carried,
    hots_named,
    needs_circuit,
    needs_group,
    needs_hot,
)
from linter.wiring.circuits import Ambiguous, Pole, Values, poles_of, spread
from linter.wiring.sheaths import sort_colours

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.job.cables import Cable
    from linter.job.jobs import Job
    from linter.wiring.groups import Groups

_NOT_STATED = ""  # the circuit of a home run that says none: a circuit like others, without a name


class Circuits:
    """The circuits of a job with their hots in order, and the way back from a space to its hot."""

    def __init__(self, job: Job) -> None:
        self.poles: dict[str, tuple[Pole, ...]] = {
            name: poles_of(job, circuit) for name, circuit in job.circuits.items()
        }
        self._by_space: dict[int, list[tuple[str, int, str]]] = {}
        for name, poles in self.poles.items():
            for number, pole in enumerate(poles):
                self._by_space.setdefault(pole.takes, []).append((name, number, pole.panel))

    def of_space(
        self, space: int, circuit: str | None, ends: tuple[str, str]
    ) -> tuple[str, int] | None:
        """The circuit and the number of the hot whose breaker takes a space.

        That of the cable's own circuit comes first, then that of a panel at its ends, then any;
        None where several are equally near, so that the order of the file does not choose.
        """
        found = self._by_space.get(space, [])
        nearest = min(((each[0] != circuit, each[2] not in ends) for each in found), default=None)
        hots = {each[:2] for each in found if (each[0] != circuit, each[2] not in ends) == nearest}
        return hots.pop() if len(hots) == 1 else None

    def breaker_count(self, circuit: str) -> int:
        """How many breakers a circuit begins at."""
        return len({(pole.panel, pole.space) for pole in self.poles[circuit]})


def known_of_cables(job: Job, groups: Groups) -> tuple[dict[str, Carried], list[Refusal]]:
    """What is known of every cable; a refusal for each whose circuit, hot or group is untold."""
    circuits = Circuits(job)
    cables = {str(name): cable for name, cable in job.cables.items()}
    live = {name: cable for name, cable in cables.items() if needs_circuit(cable.carries)}
    stated = _stated_circuits(job, live, circuits, groups)
    values, ambiguous = spread(live, stated, job.boxes.keys())
    refusals = [_which_circuit(cables[each.cable], each) for each in ambiguous]
    first = {name: _one(found) for name, found in values.items()}
    legs, more = _legs(job, circuits, first, {each.cable for each in ambiguous})
    refusals += more
    known: dict[str, Carried] = {}
    for name, cable in cables.items():
        group, refused = _group(cable, groups)
        refusals += refused
        known[name] = Carried(
            first.get(name) or None,
            legs.get(name, (0,)),
            group,
            _spaces(cable, circuits, first.get(name)),
        )
    return known, refusals


def _stated_circuits(
    job: Job, cables: Mapping[str, Cable], circuits: Circuits, groups: Groups
) -> dict[str, Values]:
    """The circuits of cables that say theirs, by name, by a space, or by the switch they serve."""
    stated: dict[str, Values] = {}
    for name, cable in cables.items():
        ends = cable.ends
        spaces = hots_named(cable.carries) + (() if cable.leg_of is None else (cable.leg_of,))
        found = [circuits.of_space(space, cable.circuit, ends) for space in spaces]
        named = {each[0] for each in found if each is not None}
        named |= {cable.circuit} if cable.circuit is not None else set()
        if not named and cable.for_ is not None:
            switches = groups.switches.get(groups.named(cable.for_), ())
            named = {switch.circuit for switch in switches if switch.circuit is not None}
        if not named and not job.panels.keys().isdisjoint(ends):
            named = {_NOT_STATED}
        if named:
            stated[name] = frozenset(named)
    return stated


def _one(values: Values) -> str:
    """The circuit that a cable's unnamed conductors belong to: the one, or the first by name."""
    return min(values)


def _legs(
    job: Job, circuits: Circuits, circuit_of: Mapping[str, str], unclear: set[str]
) -> tuple[dict[str, tuple[int, ...]], list[Refusal]]:
    """The hots of its circuit that each cable has, in order."""
    cables: dict[str, dict[str, Cable]] = {}
    for name, circuit in circuit_of.items():
        if circuit and name not in unclear:
            cables.setdefault(circuit, {})[name] = job.cables[CableId(name)]
    legs: dict[str, tuple[int, ...]] = {}
    refusals: list[Refusal] = []
    for circuit, members in cables.items():
        if len(circuits.poles[circuit]) > 1:
            found, refused = _legs_of_circuit(job, circuits, circuit, members)
            legs |= found
            refusals += refused
    return legs, refusals


def _legs_of_circuit(
    job: Job, circuits: Circuits, circuit: str, members: Mapping[str, Cable]
) -> tuple[dict[str, tuple[int, ...]], list[Refusal]]:
    poles = circuits.poles[circuit]
    everything = frozenset(map(str, range(len(poles))))
    shares_neutral = circuits.breaker_count(circuit) > 1 or any(map(_has_neutral, members.values()))
    stated = {}
    for name, cable in members.items():
        own = _own_legs(cable, circuits, circuit)
        if own:
            stated[name] = frozenset(map(str, own))
        elif _has_all(cable, len(poles), shares_neutral):
            stated[name] = everything
    found, ambiguous = spread(members, stated, job.boxes.keys())
    unclear = {each.cable for each in ambiguous} | (members.keys() - found.keys())
    refusals = [
        _which_hot(members[name], poles)
        for name in members
        if name in unclear and needs_hot(members[name].carries)
    ]
    return {name: tuple(sorted(map(int, values))) for name, values in found.items()}, refusals


def _own_legs(cable: Cable, circuits: Circuits, circuit: str) -> tuple[int, ...]:
    """The hots that the cable itself says it has."""
    spaces = hots_named(cable.carries) + (() if cable.leg_of is None else (cable.leg_of,))
    found = [circuits.of_space(each, circuit, cable.ends) for each in spaces]
    return tuple(each[1] for each in found if each is not None and each[0] == circuit)


def _has_all(cable: Cable, poles: int, shares_neutral: bool) -> bool:
    """Whether the cable has all hots of its circuit: by its pattern and the number of its wires."""
    if cable.carries == TWO_POLE_FEED:
        return True
    if cable.carries not in (FEED, SWITCHED) or cable.colours is None:
        return False
    colours = sort_colours(cable.colours)
    if cable.carries == FEED and len(colours.hots) >= poles:
        return True
    return not shares_neutral and len(colours.hots + colours.neutrals) == poles


def _has_neutral(cable: Cable) -> bool:
    if not isinstance(cable.carries, str):
        return "neutral" in cable.carries.values()
    colours = sort_colours(cable.colours or ())
    return len(colours.hots) > 1 and bool(colours.neutrals) and cable.carries == FEED


def _group(cable: Cable, groups: Groups) -> tuple[str | None, list[Refusal]]:
    if not needs_group(cable.carries):
        return (groups.named(cable.for_) if cable.for_ is not None else None), []
    found = groups.of_cable(cable)
    if len(found) == 1:
        return found[0], []
    several = f"It can be {join_words(found, 'or')}" if found else "No switch at its ends tells it"
    return None, [
        Refusal(
            cable.place_of("carries"),
            f"What is switched by the conductors of cable {cable.name} cannot be told. {several}",
            "the outlet that its switch controls",
            f'write "for:" and the name of that outlet at cable {cable.name}',
        )
    ]


def _spaces(cable: Cable, circuits: Circuits, circuit: str | None) -> dict[int, tuple[str, int]]:
    ends = cable.ends
    found = {each: circuits.of_space(each, circuit, ends) for each in hots_named(cable.carries)}
    return {space: each for space, each in found.items() if each is not None}


def _which_circuit(cable: Cable, meeting: Ambiguous) -> Refusal:
    names = [each or "a home run without a circuit" for each in meeting.values]
    return Refusal(
        cable.place,
        f"The circuit of cable {cable.name} cannot be told: {join_words(names)} meet at its ends",
        "the circuit that this cable carries on",
        f'write "circuit:" and its name at cable {cable.name}',
    )


def _which_hot(cable: Cable, poles: tuple[Pole, ...]) -> Refusal:
    spaces = join_words([str(pole.takes) for pole in poles], "or")
    return Refusal(
        cable.place,
        f"Cable {cable.name} can carry on only some of the hots of its circuit; which is not said",
        f"the hot of space {spaces}",
        f'write "leg_of: {poles[-1].takes}", say, at cable {cable.name}; '
        'or "carries: two-pole feed" where it has no neutral',
    )
