"""Tables of us-nec-2023 against print and formula: tests/outside/pack_tables.yaml."""

import math
from typing import Any

import pytest

from linter.units import AREA, CURRENT, TEMPERATURE, VOLUME
from tests.outside.path import base, pack, table

PRINT = table("pack_tables.yaml")


def rows_of(name: str) -> list[tuple[Any, ...]]:
    """The rows of a table of the pack: keys, then columns, in base units."""
    return list(pack().library.tables[name].rows)


def look_up(name: str, *keys: Any, column: str = "") -> Any:
    """A column of a table at those keys, as the pack looks it up; the first where none is named."""
    library = pack().library
    return library.column(name, column or library.tables[name].columns[0][0])(keys)


def test_every_ambient_correction_is_that_of_the_formula() -> None:
    printed = PRINT["ambient_correction"]
    normal = base(printed["table_ambient"], TEMPERATURE)
    tolerance = printed["tolerance"] + 1e-9
    rows = rows_of("ambient_correction")
    assert len(rows) == printed["rows"]
    for rating, ambient, factor in rows:
        expected = math.sqrt((rating - ambient) / (rating - normal))
        assert math.isclose(factor, expected, abs_tol=tolerance), (rating, ambient)


def test_the_columns_of_a_size_stand_to_each_other_as_the_formula_says() -> None:
    printed = PRINT["columns"]
    normal, coolest = (base(text, TEMPERATURE) for text in (printed["table_ambient"], "60 C"))
    least = base(printed["from"], AREA) * (1 - 1e-9)
    amperes = {row[:3]: row[3] for row in rows_of("ampacity") if row[0] >= least}
    for (size, metal, column), found in amperes.items():
        ratio = math.sqrt((column - normal) / (coolest - normal))
        expected = amperes[size, metal, coolest] * ratio
        assert math.isclose(found, expected, rel_tol=printed["tolerance"]), (size, metal, column)


def test_the_adjustment_for_bundles_is_that_of_print() -> None:
    for row in PRINT["bundle_adjustment"]["rows"]:
        for conductors in row["conductors"]:
            found = look_up("bundle_adjustment", float(conductors))
            assert math.isclose(found * 100, row["percent"]), conductors


@pytest.mark.parametrize("metal", ["copper", "aluminium"])
def test_the_ampacities_are_those_of_print(metal: str) -> None:
    printed = PRINT["ampacity"][metal]
    columns = [base(f"{each} C", TEMPERATURE) for each in (60, 75, 90)]
    for size, amperes in printed.items():
        found = [look_up("ampacity", base(size, AREA), metal, column) for column in columns]
        assert found == amperes, size
    assert len([row for row in rows_of("ampacity") if row[1] == metal]) == 3 * len(printed)


def test_copper_clad_aluminium_has_the_ampacities_of_aluminium() -> None:
    rows = {row[:3]: row[3] for row in rows_of("ampacity")}
    clad = {
        (size, "aluminium", column): amperes
        for (size, metal, column), amperes in rows.items()
        if metal == "copper-clad aluminium"
    }
    assert clad == {key: value for key, value in rows.items() if key[1] == "aluminium"}


def test_the_volumes_of_conductors_are_those_of_print_in_both_units() -> None:
    printed = PRINT["conductor_volume"]
    tolerance = base(printed["tolerance"], VOLUME)
    for size, (inches, centimetres) in printed["rows"].items():
        found = look_up("conductor_volume", base(size, AREA))
        assert math.isclose(found, base(inches, VOLUME), rel_tol=1e-9), size
        assert math.isclose(found, base(centimetres, VOLUME), abs_tol=tolerance), size
    assert len(rows_of("conductor_volume")) == len(printed["rows"])


def test_the_volumes_of_boxes_are_those_of_print() -> None:
    printed = PRINT["box_volumes"]["rows"]
    for box, (volume, _) in printed.items():
        found = look_up("trade_size_volume", box)
        assert math.isclose(found, base(volume, VOLUME), rel_tol=1e-9), box
    assert {row[0] for row in rows_of("trade_size_volume")} == set(printed)


def test_as_many_conductors_go_into_a_box_as_print_counts() -> None:
    printed = PRINT["box_volumes"]
    for box, (_, counts) in printed["rows"].items():
        volume = look_up("trade_size_volume", box)
        each = [look_up("conductor_volume", base(size, AREA)) for size in printed["sizes"]]
        assert [math.floor(volume / one + 1e-9) for one in each] == counts, box


def test_the_bonds_are_those_of_print() -> None:
    for rating, sizes in PRINT["least_bond"]["rows"].items():
        for metal, size in zip(("copper", "aluminium"), sizes, strict=True):
            found = look_up("least_bond", base(rating, CURRENT), column=metal)
            assert math.isclose(found, base(size, AREA), rel_tol=1e-9), (rating, metal)


@pytest.mark.parametrize("metal", ["copper", "aluminium"])
def test_the_breakers_of_small_conductors_are_those_of_print(metal: str) -> None:
    for size, rating in PRINT["small_conductor_breaker"][metal].items():
        found = look_up("small_conductor_breaker", base(size, AREA), metal)
        assert found == base(rating, CURRENT), size


def test_the_next_standard_rating_is_that_of_print() -> None:
    ratings = PRINT["standard_breaker"]["ratings"]
    for lower, rating in zip([0, *ratings], ratings, strict=False):
        for amperes in (lower + 0.1, rating):
            assert look_up("standard_breaker", float(amperes)) == rating, amperes
