"""Every rule of a pack is tripped by a seeded edit of its own jobs, or it says here why not."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from linter.cli.shelf import Shelf
from linter.packs.model import Pack
from tests.seeded.edits import load

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
PACKS = ("us-nec-2023", "ca-cec-2021")
NOT_TO_BE_TRIPPED = {
    "service-is-described": "a job describes its service, or leaves it open",
    "bored-holes-are-measured": "holes left out are none, so it can only be left open",
    "walls-of-room-are-measured": "walls are stated or not measured, so it can only be left open",
    "walls-of-large-foyer-are-measured": "walls are stated or not measured, as above",
    "counters-of-room-are-measured": "counters are stated or not measured, as above",
    "outside-doors-are-stated": "doors are stated or not, as above",
    "stairs-are-described": "stairs are stated or not, as above",
    "storeys-are-stated": "storeys are stated or not, as above",
}


def _tripped(jurisdiction: str) -> Iterator[str]:
    """The rules tripped in tables whose sound job is judged by a pack of the jurisdiction."""
    for table in map(load, HERE.glob("*.yaml")):
        named = load(ROOT / table["base"])["job"]["pack"]
        if named.startswith(jurisdiction):
            yield from (each["rule"] for row in table["rows"] for each in row["expect"])


def _rules(pack: Pack) -> set[str]:
    return {rule.name for rule in pack.rules if not rule.at_rest_by}


@pytest.mark.parametrize("name", PACKS)
def test_every_rule_is_tripped_by_a_seeded_edit(name: str) -> None:
    rules = _rules(Shelf().pack_named(name))
    tripped = set(_tripped(name[:2]))
    assert tripped & rules == rules - NOT_TO_BE_TRIPPED.keys()


def test_what_is_not_to_be_tripped_is_a_rule() -> None:
    known = {rule for name in PACKS for rule in _rules(Shelf().pack_named(name))}
    assert known >= NOT_TO_BE_TRIPPED.keys()
