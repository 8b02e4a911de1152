"""Every rule of the 2023 pack is tripped by a row of the seeded tables, or it says here why not."""

from pathlib import Path

from linter.cli.shelf import Shelf
from tests.seeded.edits import load

NOT_TO_BE_TRIPPED = {
    "bored-holes-are-measured": "holes left out are none, so it can only be left open",
}


def test_every_rule_is_tripped_by_a_seeded_edit() -> None:
    tables = [load(path) for path in Path(__file__).parent.glob("*.yaml")]
    tripped = {each["rule"] for table in tables for row in table["rows"] for each in row["expect"]}
    rules = {rule.name for rule in Shelf().pack_named("us-nec-2023").rules}
    assert tripped & rules == rules - NOT_TO_BE_TRIPPED.keys()
    assert rules >= NOT_TO_BE_TRIPPED.keys()
