"""Laws of quantities: what is written is read again; inches or millimetres change nothing."""

import contextlib
import math

from hypothesis import given
from hypothesis import strategies as st

from linter.units import (
    AREA,
    DIMENSIONS_BY_NAME,
    IMPERIAL,
    LENGTH,
    METRIC,
    NUMBER,
    TEMPERATURE,
    NotAQuantity,
    read_quantity,
    unit_names,
    write_in,
    write_quantity,
)

# A short decimal keeps three decimals, or three figures below 0.1; all of these are kept exactly.
kept = st.one_of(
    st.integers(min_value=100, max_value=10_000_000).map(lambda n: f"{n / 1000:.3f}"),
    st.integers(min_value=100, max_value=999).map(lambda n: f"0.00{n}"),
    st.just("0"),
)
signs = st.sampled_from(["", "-"])
units = st.sampled_from(
    [
        (dimension, unit)
        for dimension in DIMENSIONS_BY_NAME.values()
        for unit in (unit_names(dimension) if dimension != NUMBER else ("", "%"))
        if unit not in ("AWG", "ft in")
    ]
)
dimensions = st.sampled_from(list(DIMENSIONS_BY_NAME.values()))


@given(signs, kept, units)
def test_what_is_written_short_is_read_again_as_the_same(sign, number, dimension_unit) -> None:
    dimension, unit = dimension_unit
    first = read_quantity(f"{sign}{number} {unit}", dimension)
    again = read_quantity(write_quantity(first.value, dimension, unit), dimension)
    # Where a unit has a zero of its own, subtracting it costs some of the last bits.
    near = 1e-5 if dimension == TEMPERATURE else 0.0
    assert math.isclose(first.value, again.value, rel_tol=1e-9, abs_tol=near)


@given(st.sampled_from([f"{n}/0" for n in range(1, 5)] + [str(n) for n in range(1, 41)]))
def test_a_wire_size_is_written_as_it_was_read(size) -> None:
    area = read_quantity(f"{size} AWG").value
    assert write_quantity(area, AREA, "AWG") == f"{size} AWG"
    assert write_quantity(area * 1.01, AREA, "AWG") != f"{size} AWG"


@given(st.floats(min_value=1e-8, max_value=1e9), dimensions)
def test_what_is_written_in_a_chosen_unit_is_within_its_last_figure(value, dimension) -> None:
    last = 0.001 if dimension == TEMPERATURE else 0.0
    for choice in (METRIC, IMPERIAL):
        again = read_quantity(write_in(value, dimension, choice), dimension)
        assert math.isclose(again.value, value, rel_tol=0.0051, abs_tol=last)


@given(st.integers(min_value=1, max_value=12_000))
def test_inches_or_millimetres_change_nothing(tenths) -> None:
    inches = read_quantity(f"{tenths / 10} in")
    millimetres = read_quantity(f"{tenths * 254 / 100:.2f} mm")
    assert inches == millimetres
    assert not inches < millimetres
    assert inches <= millimetres
    assert not inches > millimetres


@given(st.integers(min_value=0, max_value=200), st.integers(min_value=0, max_value=191))
def test_feet_and_inches_are_the_same_as_inches(feet, sixteenths) -> None:
    length = read_quantity(f"{feet} ft {sixteenths // 16} {sixteenths % 16}/16 in", LENGTH)
    assert length == read_quantity(f"{feet * 12 + sixteenths / 16} in", LENGTH)
    if sixteenths % 2 == 0:  # an eighth of an inch is three decimals
        assert length == read_quantity(write_quantity(length.value, LENGTH, "in"))
        assert length == read_quantity(write_quantity(length.value, LENGTH, "ft in"))


@given(st.text(max_size=80))
def test_arbitrary_text_is_read_or_refused(text) -> None:
    with contextlib.suppress(NotAQuantity):
        assert math.isfinite(read_quantity(text).value)


@given(st.text(alphabet="0123456789 .-/'\"#eAWGftinmlCk³½,+", max_size=14))
def test_text_that_looks_like_a_quantity_is_read_or_refused(text) -> None:
    with contextlib.suppress(NotAQuantity):
        assert math.isfinite(read_quantity(text).value)
