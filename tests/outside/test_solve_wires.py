"""The resistance of wires against printed tables: tests/outside/solve_wires.yaml."""

from __future__ import annotations

from typing import Any

import pytest

from linter.solve.metals import METALS, resistance
from linter.units import AREA, LENGTH, TEMPERATURE, read_quantity
from tests.outside.path import table

TABLE: dict[str, Any] = table("solve_wires.yaml")
TOLERANCE = TABLE["tolerance"]
ROWS = [
    (at, str(size), ohms) for at in ("20 C", "75 C") for size, ohms in TABLE[f"at {at}"].items()
]


def _ohms(metal: str, size: str, at: str) -> float:
    area = read_quantity(f"{size} AWG", AREA).value
    length = read_quantity("1000 ft", LENGTH).value
    return resistance(METALS[metal], area, length, read_quantity(at, TEMPERATURE).value)


@pytest.mark.parametrize(("at", "size", "ohms"), ROWS)
def test_copper_wire_has_the_resistance_of_the_table(at: str, size: str, ohms: float) -> None:
    assert _ohms("copper", size, at) == pytest.approx(ohms, rel=TOLERANCE)


def test_aluminium_has_as_much_more_as_its_conductivity_says() -> None:
    ratio = _ohms("aluminium", "12", "20 C") / _ohms("copper", "12", "20 C")
    assert ratio == pytest.approx(TABLE["aluminium to copper at 20 C"], rel=TOLERANCE)
