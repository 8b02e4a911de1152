"""What flows: currents, voltages and losses of a wiring, with stated loads and what-if faults.

In come a job and its wiring, with a scenario (which loads, switches, supply, faults); out goes a
`Network` of resistors, and solved, `Flows`. Physics only, with own code alone. What is not known (a
length, a load) makes unknown what hangs on it, and nothing else.

    flows = solve(network_of(job, wiring))   # everything on, on the usual supply
    flows.current("k1.white")                # amperes, from the end at `from` to that at `to`
    flows.outlet("sink-left")                # volts between its terminals
    lost = with_fault(EVERYTHING_ON, Open("sink-left", Role.NEUTRAL))
    solve(network_of(job, wiring, lost)).outlet("sink-left")

What is named here is imported when it is asked for: an audit that needs no more than the resistance
of a wire does without the rest.
"""

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from linter.solve.build import network_of
    from linter.solve.drops import Drop, drops_of
    from linter.solve.flows import Between, Flows, solve
    from linter.solve.network import Missing, Network, NotThere, Unsteady
    from linter.solve.scenario import (
        EVERYTHING_ON,
        WARM,
        Apart,
        Constant,
        Draw,
        Loose,
        OnLeg,
        Open,
        Scenario,
        SupplyNeutralLost,
        TakenOut,
        Touching,
        draw_of_ohms,
        with_fault,
    )
    from linter.solve.worst import Worst, worst_for

__all__ = [
    "EVERYTHING_ON",
    "WARM",
    "Apart",
    "Between",
    "Constant",
    "Draw",
    "Drop",
    "Flows",
    "Loose",
    "Missing",
    "Network",
    "NotThere",
    "OnLeg",
    "Open",
    "Scenario",
    "SupplyNeutralLost",
    "TakenOut",
    "Touching",
    "Unsteady",
    "Worst",
    "draw_of_ohms",
    "drops_of",
    "network_of",
    "solve",
    "with_fault",
    "worst_for",
]

_IN = {
    "build": ("network_of",),
    "drops": (
        "Drop",
        "drops_of",
    ),
    "flows": (
        "Between",
        "Flows",
        "solve",
    ),
    "network": (
        "Missing",
        "Network",
        "NotThere",
        "Unsteady",
    ),
    "scenario": (
        "EVERYTHING_ON",
        "WARM",
        "Apart",
        "Constant",
        "Draw",
        "Loose",
        "OnLeg",
        "Open",
        "Scenario",
        "SupplyNeutralLost",
        "TakenOut",
        "Touching",
        "draw_of_ohms",
        "with_fault",
    ),
    "worst": (
        "Worst",
        "worst_for",
    ),
}


def __getattr__(name: str) -> object:
    """What the package names, from the module that has it."""
    for module, names in _IN.items():
        if name in names:
            return getattr(import_module(f"{__name__}.{module}"), name)
    raise AttributeError(f"module {__name__} has no attribute {name}")
