"""The loads that together bring the most current into one conductor.

By superposition: each load alone, and those whose currents in the conductor go one way. For a
neutral that two legs share these are the loads of one leg. What they bring together is then solved,
as is everything at once (with a neutral lost, loads in series bring what none brings alone), and
the larger is the worst. In a meshed network with loads of very unlike drops another set could be
larger by as much as loads change each other's current.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.solve.flows import solve
from linter.solve.parts import parts_of
from linter.units import Unknown

if TYPE_CHECKING:
    from linter.solve.flows import Flows, Value
    from linter.solve.network import Load, Network


class Worst(NamedTuple):
    """The loads that are on, and the current in the conductor then, with its sign."""

    loads: tuple[Load, ...]
    current: Value


def worst_for(network: Network, conductor: str) -> Worst:
    """The most current that any set of the network's loads brings into a conductor.

    Raises `KeyError` for a conductor that the network does not have.
    """
    near = around(network, conductor)
    flows = solve(near)
    everything = Worst(near.loads, flows.current(conductor))
    if isinstance(everything.current, Unknown):
        return everything
    alone = [(load, _with(near, (load,)).current(conductor)) for load in near.loads]
    sets = [
        tuple(
            load
            for load, amperes in alone
            if not isinstance(amperes, Unknown) and amperes * sign > 0
        )
        for sign in (1, -1)
    ]
    tried = [everything]
    tried += [Worst(loads, _with(near, loads).current(conductor)) for loads in sets]
    return max(tried, key=_size)


def around(network: Network, conductor: str) -> Network:
    """The part of a network that a conductor lies in, with its own nodes and loads only."""
    of = parts_of(network).of
    wire = {each.name: each for each in network.wires}[conductor]
    mine = {of[wire.one], of[wire.other]} - {-1}
    wires = tuple(w for w in network.wires if {of[w.one], of[w.other]} & mine or w is wire)
    loads = tuple(load for load in network.loads if {of[load.one], of[load.other]} & mine)
    return network._replace(wires=wires, loads=loads)


def _with(network: Network, loads: tuple[Load, ...]) -> Flows:
    return solve(network._replace(loads=loads))


def _size(worst: Worst) -> float:
    return 0.0 if isinstance(worst.current, Unknown) else abs(worst.current)
