"""Quantities and dimensions: what may be added and compared, and what they are called."""

import pytest

from linter.units import (
    AREA,
    CURRENT,
    DIMENSIONS_BY_NAME,
    FORCE,
    IMPERIAL,
    LENGTH,
    NUMBER,
    POWER,
    RESISTANCE,
    RESISTANCE_PER_LENGTH,
    TORQUE,
    VOLTAGE,
    VOLUME,
    Dimension,
    Quantity,
    UnlikeDimensions,
    read_quantity,
    unit_names,
    write_in,
    write_quantity,
)

SIX_INCHES = read_quantity("6 in")
TWENTY_AMPS = read_quantity("20 A")


def test_dimensions_multiply_and_divide() -> None:
    assert LENGTH * AREA == VOLUME
    assert LENGTH**2 == AREA
    assert VOLTAGE * CURRENT == POWER
    assert VOLTAGE / CURRENT == RESISTANCE
    assert RESISTANCE / LENGTH == RESISTANCE_PER_LENGTH
    assert FORCE * LENGTH == TORQUE
    assert LENGTH / LENGTH == NUMBER


@pytest.mark.parametrize(
    ("dimension", "words"),
    [
        (VOLUME, "volume"),
        (POWER / AREA, "power per area"),
        (RESISTANCE_PER_LENGTH, "resistance per length"),
        (LENGTH**4, "length to the power 4"),
        (
            CURRENT**2 / FORCE / LENGTH**3,
            "current to the power 2 per length to the power 3 and force",
        ),
    ],
)
def test_a_dimension_is_called_by_trade_words(dimension: Dimension, words: str) -> None:
    assert str(dimension) == words


def test_no_two_names_are_one_dimension() -> None:
    assert len(set(DIMENSIONS_BY_NAME.values())) == len(DIMENSIONS_BY_NAME)


def test_lengths_add_and_compare() -> None:
    assert SIX_INCHES + read_quantity("50 mm") == read_quantity("202.4 mm")
    assert read_quantity("0 in") == SIX_INCHES - SIX_INCHES
    assert read_quantity("153 mm") > SIX_INCHES
    assert read_quantity("152.4 mm") <= SIX_INCHES
    assert not read_quantity("152.4 mm") < SIX_INCHES


def test_how_it_was_written_is_kept_but_does_not_count() -> None:
    assert str(read_quantity("1-1/4 in")) == "1-1/4 in"
    assert read_quantity("1-1/4 in") == read_quantity("1.25 inch")
    assert hash(read_quantity("1-1/4 in")) == hash(read_quantity("1.25 inch"))


def test_volts_times_amperes_are_watts() -> None:
    assert read_quantity("120 V") * TWENTY_AMPS == read_quantity("2.4 kW")
    assert read_quantity("2.4 kW") / 2 == read_quantity("1200 VA")
    assert str(read_quantity("120 V") * TWENTY_AMPS) == "2400 W"


def test_inches_and_amperes_neither_add_nor_compare() -> None:
    with pytest.raises(UnlikeDimensions, match="length and current"):
        SIX_INCHES + TWENTY_AMPS
    with pytest.raises(UnlikeDimensions):
        SIX_INCHES - TWENTY_AMPS
    with pytest.raises(UnlikeDimensions):
        assert SIX_INCHES < TWENTY_AMPS
    with pytest.raises(UnlikeDimensions):
        assert SIX_INCHES >= TWENTY_AMPS
    assert SIX_INCHES != TWENTY_AMPS
    assert SIX_INCHES != 0.1524


def test_a_quantity_cannot_be_changed() -> None:
    with pytest.raises(AttributeError):
        SIX_INCHES.value = 1.0  # type: ignore[misc]  # that it cannot be done is what is tested


@pytest.mark.parametrize(
    ("text", "unit", "written"),
    [
        ("222 in", "ft in", "18 ft 6 in"),
        ("18 ft", "ft in", "18 ft"),
        ("5 in", "ft in", "5 in"),
        ("0 in", "ft in", "0 in"),
        ("-30 in", "ft in", "-2 ft 6 in"),
        ("11.99999 in", "ft in", "1 ft"),
        ("222 in", "ft", "18.5 ft"),
        ("3.30877 mm2", "AWG", "12 AWG"),
        ("2.5 mm2", "AWG", "2.5 mm2"),
        ("250 kcmil", "AWG", "250 kcmil"),
        ("86 F", "C", "30 C"),
        ("0.8", "%", "80 %"),
        ("3 VA/ft2", "VA/ft2", "3 VA/ft2"),
    ],
)
def test_a_value_is_written_in_the_unit_asked_for(text: str, unit: str, written: str) -> None:
    quantity = read_quantity(text)
    assert write_quantity(quantity.value, quantity.dimension, unit) == written


@pytest.mark.parametrize("unit", ["A", "furlong", ""])
def test_a_length_is_not_written_in_a_unit_of_something_else(unit: str) -> None:
    with pytest.raises(ValueError, match="no unit of length"):
        write_quantity(1.0, LENGTH, unit)


@pytest.mark.parametrize(
    ("value", "dimension", "metric", "imperial"),
    [
        (0.0508, LENGTH, "50.8 mm", "2 in"),
        (12.192, LENGTH, "12.192 m", "40 ft"),
        (37.161216, AREA, "37.1612 m2", "400 ft2"),
        (18 * 16.387064e-6, VOLUME, "294.9672 mL", "18 in3"),
        (0.01, RESISTANCE_PER_LENGTH, "10 ohm/km", "3.048 ohm/kft"),
    ],
)
def test_a_choice_of_units_suits_small_and_large(
    value: float, dimension: Dimension, metric: str, imperial: str
) -> None:
    assert write_in(value, dimension) == metric
    assert write_in(value, dimension, IMPERIAL) == imperial


def test_units_are_named_for_each_dimension() -> None:
    for dimension in DIMENSIONS_BY_NAME.values():
        for unit in unit_names(dimension):
            assert write_quantity(1.0, dimension, unit)
    assert "AWG" in unit_names(AREA)
    assert "ohm/kft" in unit_names(RESISTANCE_PER_LENGTH)


def test_a_value_made_by_hand_is_written_in_metric_units() -> None:
    assert str(Quantity(0.02, LENGTH)) == "20 mm"
