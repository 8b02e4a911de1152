"""A network of resistors, loads and nodes held at a potential: what is solved."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.solve.scenario import Constant

if TYPE_CHECKING:
    from collections.abc import Mapping


class Missing(NamedTuple):
    """A fact that a result hangs on: the kind of thing, its name, the fact."""

    kind: str
    ref: str
    fact: str


class Unsteady(NamedTuple):
    """A load of constant power for which the network has no steady state that was found."""

    load: str


class Fed(NamedTuple):
    """A node that a breaker (panel, space) feeds; whether it is known which leg that is on."""

    node: int
    breaker: tuple[str, int]
    leg_is_known: bool


class NotThere(LookupError):
    """A fault or a load is at a place of which the wiring knows nothing."""

    def __init__(self, name: str) -> None:
        self.name = name
        super().__init__(f"the wiring has no {name}")


class Wire(NamedTuple):
    """A resistor: a conductor ("k1.black"), a loose contact or a touch.

    None ohms are unknown because of `missing`.
    """

    name: str
    one: int
    other: int
    ohms: float | None
    missing: tuple[Missing, ...] = ()


class Load(NamedTuple):
    """A load between two nodes; None watts are unknown because of `missing`."""

    name: str
    outlet: str
    one: int
    other: int
    watts: float | None
    volts: float
    constant: Constant = Constant.IMPEDANCE
    missing: tuple[Missing, ...] = ()

    @property
    def siemens(self) -> float:
        """Its conductance at rated voltage; nought where its watts are unknown."""
        return (self.watts or 0.0) / self.volts**2


class Network(NamedTuple):
    """Nodes are numbered from 0 to `size`; `nodes` has the node of each id of the wiring.

    `held` gives the potential of those that the supply holds, in volts to its neutral. `doubts`:
    what is not known of the wiring at a node, and makes unknown all that hangs together with it;
    `everywhere`: what makes everything unknown. `outlets`: the pairs of terminals between which
    each outlet has a voltage. `breakers`: the wires on each pole (panel, space, pole), 1 where they
    lead away. `unstated`: outlets that serve something of which no load is stated, `unplaced`:
    appliances of which no outlet is known; neither draws anything here. `fed`: the first nodes
    behind breakers, where a supply has two legs.
    """

    nodes: Mapping[str, int]
    size: int
    held: Mapping[int, float]
    wires: tuple[Wire, ...]
    loads: tuple[Load, ...] = ()
    doubts: tuple[tuple[int, Missing], ...] = ()
    everywhere: frozenset[Missing] = frozenset()
    outlets: Mapping[str, tuple[tuple[str, str], ...]] = {}
    breakers: Mapping[tuple[str, int, int], tuple[tuple[str, int], ...]] = {}
    unstated: tuple[str, ...] = ()
    unplaced: tuple[str, ...] = ()
    fed: tuple[Fed, ...] = ()
