"""Wire sizes against published tables: tests/outside/awg.yaml."""

import math
from pathlib import Path
from typing import Any

import pytest
import yaml

from linter.units import AREA, RESISTANCE_PER_LENGTH, awg_diameter, read_quantity
from linter.units.wire import awg_number

TABLE: dict[str, Any] = yaml.safe_load(
    Path(__file__).with_name("awg.yaml").read_text(encoding="utf-8")
)
TOLERANCE = TABLE["tolerance"]
wires = pytest.mark.parametrize("wire", TABLE["wires"], ids=lambda wire: f"{wire['awg']} AWG")


@wires
def test_the_diameter_is_that_of_the_wire_table(wire: dict[str, Any]) -> None:
    number = awg_number(wire["awg"])
    assert number is not None
    mils = awg_diameter(number) / 25.4e-6
    assert math.isclose(mils, wire["diameter_mil"], rel_tol=TOLERANCE["diameter"])


@wires
def test_the_area_is_that_of_the_formula(wire: dict[str, Any]) -> None:
    area = read_quantity(f"{wire['awg']} AWG", AREA).value
    assert math.isclose(area * 1e6, wire["area_mm2"], rel_tol=TOLERANCE["area"])


@wires
def test_the_resistance_of_our_area_is_that_of_the_wire_table(wire: dict[str, Any]) -> None:
    area = read_quantity(f"{wire['awg']} AWG", AREA).value
    resistance = TABLE["resistivity_ohm_mm2_per_m"] * 1e-6 / area
    published = read_quantity(f"{wire['ohm_per_kft']} ohm/kft", RESISTANCE_PER_LENGTH)
    assert math.isclose(resistance, published.value, rel_tol=TOLERANCE["resistance"])


@pytest.mark.parametrize("wire", TABLE["at_75C"], ids=lambda wire: f"{wire['awg']} AWG")
def test_the_resistance_of_our_area_is_that_of_a_second_print(wire: dict[str, Any]) -> None:
    area = read_quantity(f"{wire['awg']} AWG", AREA).value
    warmed = 1 + TABLE["coefficient_per_K"] * (75 - 20)
    resistance = TABLE["resistivity_ohm_mm2_per_m"] * 1e-6 / area * warmed
    published = read_quantity(f"{wire['ohm_per_kft']} ohm/kft", RESISTANCE_PER_LENGTH)
    assert math.isclose(resistance, published.value, rel_tol=TOLERANCE["resistance_75C"])
