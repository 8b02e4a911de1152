"""Currents, voltages and losses of a network, solved."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple, TypeAlias

from linter.solve.elimination import Elimination
from linter.solve.network import Load, Network, Unsteady, Wire
from linter.solve.parts import Parts, parts_of
from linter.solve.scenario import Constant
from linter.units import Unknown

if TYPE_CHECKING:
    from collections.abc import Mapping

    from linter.solve.parts import Reason

Value: TypeAlias = "float | Unknown"

# Loads of constant power: rounds at the most, and the change in volts, as a share of the rated
# voltage, below which the last round counts as steady.
ROUNDS = 300
STEADY = 1e-12
# Below this share of its rated voltage such a load draws as a resistor does.
STALLED = 0.01


class Between(NamedTuple):
    """The voltage between two terminals of an outlet, in volts, the first against the second."""

    one: str
    other: str
    volts: Value


@dataclass(frozen=True, slots=True)
class Flows:
    """A network solved. What hangs on something not known is an `Unknown` that names it.

    Amperes, volts, watts. A load of constant power for which no steady state was found makes its
    part unknown, because of `Unsteady`.
    """

    network: Network
    volts: tuple[float, ...]
    parts: Parts
    by_name: Mapping[str, Wire]
    draws: tuple[float, ...]

    def current(self, name: str) -> Value:
        """The current in a conductor ("k1.black"), from the end at `from` to the end at `to`."""
        wire = self.by_name[name]
        unknown = self._unknown(wire.one, wire.other)
        if unknown is not None:
            return unknown
        across = self.volts[wire.one] - self.volts[wire.other]
        if wire.ohms is None:
            return Unknown(wire.missing) if across else 0.0
        return across / wire.ohms

    def breaker_current(self, panel: str, space: int, pole: int = 0) -> Value:
        """The current out of a pole of a breaker, through all the conductors on it."""
        on_it = self.network.breakers.get((panel, space, pole), ())
        return _sum([_times(self.current(name), sign) for name, sign in on_it])

    def potential(self, name: str) -> Value:
        """The potential of an id of the wiring against the neutral of the supply.

        What hangs on no source has 0 V, as a tester that draws a little would read.
        """
        node = self.network.nodes[name]
        unknown = self._unknown(node)
        return self.volts[node] if unknown is None else unknown

    def is_driven(self, name: str) -> bool:
        """Whether an id hangs on a source at all, be it through loads."""
        node = self.network.nodes[name]
        return node in self.network.held or self.parts.of[node] in self.parts.driven

    def between(self, one: str, other: str) -> Value:
        """The voltage of one id against another; 0 V where either hangs on no source."""
        nodes = self.network.nodes[one], self.network.nodes[other]
        unknown = self._unknown(*nodes)
        if unknown is not None:
            return unknown
        if not (self.is_driven(one) and self.is_driven(other)):
            return 0.0
        return self.volts[nodes[0]] - self.volts[nodes[1]]

    def outlet(self, device: str) -> tuple[Between, ...]:
        """The voltages of an outlet: from its hots to its neutral, and between its hots."""
        pairs = self.network.outlets[device]
        return tuple(Between(one, other, self.between(one, other)) for one, other in pairs)

    def draw(self, number: int) -> Value:
        """The current of a load, by its place in the network's loads, from its first terminal."""
        load = self.network.loads[number]
        unknown = self._unknown(load.one, load.other)
        return self.draws[number] if unknown is None else unknown

    def loss(self, name: str) -> Value:
        """What a conductor turns into heat."""
        wire, amperes = self.by_name[name], self.current(name)
        if isinstance(amperes, Unknown):
            return amperes
        return amperes**2 * (wire.ohms or 0.0)

    @property
    def losses(self) -> Value:
        """What all conductors turn into heat."""
        return _sum([self.loss(name) for name in self.by_name])

    @property
    def drawn(self) -> Value:
        """The power that all loads draw."""
        volts, loads = self.volts, self.network.loads
        return _sum(
            [
                _times(self.draw(n), volts[load.one] - volts[load.other])
                for n, load in enumerate(loads)
            ]
        )

    def _unknown(self, *nodes: int) -> Unknown | None:
        """What makes the potentials of nodes unknown, if anything does."""
        because: set[Reason] = set(self.network.everywhere)
        for node in nodes:
            because.update(self.parts.unknown.get(self.parts.of[node], ()))
        return Unknown(because) if because else None


def solve(network: Network) -> Flows:
    """Currents and voltages of a network, part by part; cost grows with its size.

    Loads of constant power are let in as the difference from their rated resistance, round by
    round, until no voltage changes by more than `STEADY`.
    """
    parts = parts_of(network)
    volts = [parts.still.get(part, 0.0) for part in parts.of]
    for node, potential in network.held.items():
        volts[node] = potential
    unknown = dict(parts.unknown)
    for part, (edges, loads) in _by_part(network, parts).items():
        matrix = Elimination(edges, network.held)
        found, moving = _settled(network.held, matrix, loads)
        for node, potential in found.items():
            volts[node] = potential
        if moving:
            unsteady = {Unsteady(load.name) for load in moving}
            unknown[part] = unknown.get(part, frozenset()) | unsteady
    draws = tuple(_draw(load, volts[load.one] - volts[load.other]) for load in network.loads)
    by_name = {wire.name: wire for wire in network.wires}
    return Flows(network, tuple(volts), parts._replace(unknown=unknown), by_name, draws)


_Edge = tuple[int, int, float]


def _by_part(network: Network, parts: Parts) -> dict[int, tuple[list[_Edge], list[Load]]]:
    """The edges of each part in which something can flow, and its loads of constant power."""
    found: dict[int, tuple[list[_Edge], list[Load]]] = {}
    of, still = parts.of, parts.still
    for wire in network.wires:
        part = max(of[wire.one], of[wire.other])
        if part >= 0 and part not in still:
            edges = found.setdefault(part, ([], []))[0]
            edges.append((wire.one, wire.other, 1 / (wire.ohms or 1.0)))
    for load in network.loads:
        part = max(of[load.one], of[load.other])
        if part >= 0 and load.watts:
            edges, powers = found.setdefault(part, ([], []))
            edges.append((load.one, load.other, load.siemens))
            if load.constant is Constant.POWER:
                powers.append(load)
    return found


def _settled(
    held: Mapping[int, float], matrix: Elimination, powers: list[Load]
) -> tuple[dict[int, float], list[Load]]:
    """The potentials of a part with its loads of constant power, and those that do not settle."""
    volts = matrix.potentials(held)
    moving = powers
    for _ in range(ROUNDS if powers else 0):
        injected: dict[int, float] = {}
        before = [_across(load, held, volts) for load in powers]
        for load, across in zip(powers, before, strict=True):
            more = _draw(load, across) - load.siemens * across
            injected[load.one] = injected.get(load.one, 0.0) - more
            injected[load.other] = injected.get(load.other, 0.0) + more
        volts = matrix.potentials(held, injected)
        moving = [
            load
            for load, across in zip(powers, before, strict=True)
            if abs(_across(load, held, volts) - across) > STEADY * load.volts
        ]
        if not moving:
            break
    return volts, moving


def _across(load: Load, held: Mapping[int, float], volts: Mapping[int, float]) -> float:
    one, other = (held[n] if n in held else volts[n] for n in (load.one, load.other))
    return one - other


def _draw(load: Load, across: float) -> float:
    """The current of a load at a voltage."""
    if not load.watts:
        return 0.0
    if load.constant is Constant.POWER and abs(across) >= STALLED * load.volts:
        return load.watts / across
    return load.siemens * across


def _times(amperes: Value, by: float) -> Value:
    return amperes if isinstance(amperes, Unknown) else amperes * by


def _sum(values: list[Value]) -> Value:
    unknown = [each for each in values if isinstance(each, Unknown)]
    if unknown:
        return Unknown(frozenset().union(*(each.because for each in unknown)))
    return sum((each for each in values if not isinstance(each, Unknown)), 0.0)
