"""How far the voltage at each outlet lies below what arrives there with nothing on."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from linter.solve.flows import solve
from linter.units import Unknown

if TYPE_CHECKING:
    from collections.abc import Iterator

    from linter.solve.flows import Flows, Value


class Drop(NamedTuple):
    """The voltage between two terminals of an outlet with nothing on, and how much is lost of it.

    `drop` is below nought where the voltage rises, as on the lighter leg of a multiwire circuit.
    """

    outlet: str
    one: str
    other: str
    unloaded: Value
    drop: Value

    @property
    def share(self) -> Value:
        """The drop as a share of the voltage with nothing on; 0 at a dead outlet."""
        if isinstance(self.drop, Unknown):
            return self.drop
        if isinstance(self.unloaded, Unknown):
            return self.unloaded
        return self.drop / self.unloaded if self.unloaded else 0.0


def drops_of(flows: Flows) -> tuple[Drop, ...]:
    """The drop at every outlet, at each pair of its terminals, in the order of the job file.

    The largest of a circuit is the drop to its farthest outlet.
    """
    unloaded = solve(flows.network._replace(loads=()))
    return tuple(_drops(flows, unloaded))


def _drops(flows: Flows, unloaded: Flows) -> Iterator[Drop]:
    for outlet in flows.network.outlets:
        pairs = zip(unloaded.outlet(outlet), flows.outlet(outlet), strict=True)
        for (one, other, before), (_, _, after) in pairs:
            if isinstance(before, Unknown) or isinstance(after, Unknown):
                unknown = after if isinstance(after, Unknown) else before
                yield Drop(outlet, one, other, before, unknown)
            else:
                size = abs(before) - abs(after) if before * after >= 0 else abs(before) + abs(after)
                yield Drop(outlet, one, other, abs(before), size)
