"""The power that a supply gives, summed over what leaves the nodes that it holds."""

from linter.solve import Flows
from linter.units import Unknown


def supplied(flows: Flows) -> float:
    """Watts, from currents and potentials alone."""
    network, total = flows.network, 0.0
    ends = [(wire.one, wire.other, flows.current(name)) for name, wire in flows.by_name.items()]
    ends += [(load.one, load.other, flows.draw(n)) for n, load in enumerate(network.loads)]
    for one, other, amperes in ends:
        assert not isinstance(amperes, Unknown)
        total += amperes * (network.held.get(one, 0.0) - network.held.get(other, 0.0))
    return total
