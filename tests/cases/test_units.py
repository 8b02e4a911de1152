"""Quantities as people write them: one row of tests/cases/units each."""

from pathlib import Path
from typing import Any

import pytest
import yaml

from linter.units import (
    AREA,
    DIMENSIONS_BY_NAME,
    NUMBER,
    NotAQuantity,
    Quantity,
    read_quantity,
    same_value,
)
from linter.units.trade import unit_named

TABLES = Path(__file__).with_name("units")


def rows(name: str) -> list[Any]:
    table = yaml.safe_load((TABLES / name).read_text(encoding="utf-8"))
    return [pytest.param(row, id=row["case"]) for row in table]


def expected_quantity(number: float | str, unit: str) -> Quantity:
    """By the table of factors alone; a wire size by its formula (ASTM B258)."""
    if unit == "AWG":
        n = 1 - int(str(number)[0]) if "/" in str(number) else int(number)
        inches = 0.005 * 92 ** ((36 - n) / 39)
        return Quantity(3.141592653589793 / 4 * (inches * 0.0254) ** 2, AREA)
    if not unit:
        return Quantity(float(number), NUMBER)
    known = unit_named(unit)
    assert known is not None
    return Quantity(float(number) * known.up / known.down + known.zero, known.dimension)


@pytest.mark.parametrize("row", rows("read.yaml"))
def test_what_people_write_is_read(row: dict[str, Any]) -> None:
    read = read_quantity(row["text"])
    assert read == expected_quantity(*row["is"])
    assert read.written == row["text"]
    assert read_quantity(row["text"], read.dimension) == read


@pytest.mark.parametrize("row", rows("refuse.yaml"))
def test_what_cannot_be_read_is_refused_with_words_that_help(row: dict[str, Any]) -> None:
    wanted = DIMENSIONS_BY_NAME[row["as"]] if "as" in row else None
    with pytest.raises(NotAQuantity) as caught:
        read_quantity(row["text"], wanted)
    refused = caught.value
    near = "; ".join(f"near {each}" for each in refused.nearest)
    said = "\n".join((refused.found, refused.expected, refused.mend, near))
    for words in row["says"]:
        assert words in said
    assert refused.found.endswith(".")
    assert refused.expected
    assert refused.mend


def test_same_value_is_near_in_proportion() -> None:
    assert same_value(1e-6, 1e-6 * (1 + 5e-10))
    assert not same_value(1e-6, 1e-6 * (1 + 5e-9))
