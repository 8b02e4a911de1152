"""Tables as such: what is wrong with them is said, and their shape is what an expression needs."""

import pytest

from linter.language.tables import How, Key, Table, table_faults
from linter.units import CURRENT, POWER, VOLTAGE
from linter.vocabulary.shorthand import COUNT, TEXT, quantity
from tests.cases.language_world import TABLES

WATTS = quantity(POWER)
FACTOR = (("factor", COUNT),)


def key(how: How, name: str = "load") -> Key:
    return Key(name, WATTS, how)


@pytest.mark.parametrize("table", TABLES.values(), ids=TABLES)
def test_a_sound_table_has_no_faults(table: Table) -> None:
    assert table_faults(table) == ()


@pytest.mark.parametrize(
    ("table", "fault"),
    [
        (Table("demand", (key("band"),), FACTOR, ()), "the table has no rows"),
        (Table("demand", (key("band"),), FACTOR, ((1.0, 1.0), (1.0, 2.0))), "two rows have"),
        (Table("demand", (key("tiers"),), FACTOR, ((10.0, 1.0),)), "does not begin at 0"),
        (Table("demand", (key("tiers"), key("band", "other")), FACTOR, ((0.0, 0.0, 1.0),)),
         "tiers stand only in the last key"),
        (Table("demand", (Key("use", TEXT, "band"),), FACTOR, (("kiln", 1.0),)), "is no size"),
    ],
    ids=["no rows", "one row twice", "a late tier", "tiers first", "words in bands"],
)  # fmt: skip
def test_a_fault_is_said(table: Table, fault: str) -> None:
    assert any(fault in each for each in table_faults(table))


def test_tiers_of_a_power_by_a_factor_give_a_power() -> None:
    table = Table("demand", (key("tiers"),), FACTOR, ((0.0, 1.0),))
    assert table.shape.columns == {"factor": WATTS}


def test_tiers_of_a_current_by_a_voltage_give_a_power() -> None:
    keys = (Key("load", quantity(CURRENT), "tiers"),)
    table = Table("demand", keys, (("at", quantity(VOLTAGE)),), ((0.0, 1.0),))
    assert table.shape.columns == {"at": WATTS}
