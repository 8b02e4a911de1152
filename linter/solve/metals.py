"""The resistance of a conductor from its metal, area, length and temperature.

Direct-current resistance of solid wire: up to 1/0 AWG (50 mm2) at 50 or 60 Hz the reactance and the
skin effect are below what the lengths of cables are known to; strands add about 2 %, left out.

Sources, from memory: annealed copper, IEC 60028: 1/58 ohm mm2/m at 20 C, 0.00393 per kelvin; hard
drawn aluminium, IEC 60889: 0.028264 ohm mm2/m, 0.00403 per kelvin; copper-clad aluminium wire of
one tenth copper, ASTM B566 class 10A: 0.02676 ohm mm2/m, 0.00403 per kelvin (doubt: a maximum).
Checked in tests/outside/solve_wires.yaml against printed tables of copper wire.
"""

from __future__ import annotations

from typing import NamedTuple

AT_20_C = 293.15
SQUARE_MILLIMETRE = 1e-6


class Metal(NamedTuple):
    """Resistivity at 20 C in ohm metres, and its change per kelvin from there."""

    resistivity: float
    per_kelvin: float


METALS = {
    "copper": Metal(SQUARE_MILLIMETRE / 58, 0.00393),
    "aluminium": Metal(0.028264 * SQUARE_MILLIMETRE, 0.00403),
    "copper-clad aluminium": Metal(0.02676 * SQUARE_MILLIMETRE, 0.00403),
}


def resistance(metal: Metal, area: float, length: float, temperature: float) -> float:
    """The resistance of a wire in ohms; square metres, metres and kelvin.

    >>> round(resistance(METALS["copper"], 2.5e-6, 100.0, 293.15), 4)
    0.6897
    >>> round(resistance(METALS["copper"], 2.5e-6, 100.0, 348.15), 4)  # 75 C
    0.8387
    """
    warm = metal.resistivity * (1 + metal.per_kelvin * (temperature - AT_20_C))
    return warm * length / area
