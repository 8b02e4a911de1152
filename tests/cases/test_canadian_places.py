"""One Canadian job and several days of the permit: the place tells the edition that holds."""

from functools import cache
from pathlib import Path
from typing import Any

import pytest

from linter.audit.audit import audit
from linter.cli.shelf import Shelf
from linter.jobfile import read_job
from linter.packs.model import Pack
from linter.text import Refused
from tests.seeded.edits import edited, load

ROOT = Path(__file__).resolve().parents[2]
CABIN = ROOT / "examples/lake-cabin/cabin.yaml"
PROVINCE, CITY = "ca-example-kelshore", "ca-example-port-ansel"

# Fourteen outlets on a circuit of 20 A; a freezer in the galley; 1.4 m between staples; a deck on
# a circuit of 20 A.
FOURTEEN = [
    {"at": f"boxes.x{n}", "to": {"room": "shop", "holds": {"receptacle": {"rating": "20 A"}}}}
    for n in range(12)
] + [
    {
        "at": f"cables.x-{n}",
        "to": {
            "sheath": "12/2 NMD90",
            "from": f"x{n - 1}" if n else "shop-saw",
            "to": f"x{n}",
            "length": "2 m",
        },
    }
    for n in range(12)
]
FREEZER = [{"at": "boxes.fridge.holds.receptacle.serves", "to": "freezer"}]
STAPLES = [{"at": "cables.k30.support_spacing", "to": "1.4 m"}]
DECK = [
    {"at": "panel.breakers.17.rating", "to": "20 A"},
    {"at": "cables.k50.sheath", "to": "12/2 NMD90"},
    {"at": "boxes.deck-outlet.holds.receptacle.rating", "to": "20 A"},
]


@cache
def shelf() -> Shelf:
    return Shelf()


def audited(place: str, day: str, edits: list[dict[str, Any]]) -> tuple[Pack, set[str]]:
    """The pack that holds at the place on that day, and the rules it finds broken in the cabin."""
    job = load(CABIN)
    del job["job"]["pack"]
    job["job"] |= {"place": place, "permit_date": day}
    read = read_job(edited(job, {"edits": edits}), "cabin.yaml")
    pack = shelf().pack_of(read)
    return pack, {each.rule for each in audit(read, pack).findings}


@pytest.mark.parametrize(
    ("place", "day", "edits", "pack", "broken"),
    [
        (PROVINCE, "2022-09-30", FOURTEEN, "ca-cec-2018", {"circuit-has-few-outlets"}),
        (PROVINCE, "2022-10-01", FOURTEEN, PROVINCE, set()),
        (
            PROVINCE,
            "2022-09-30",
            FREEZER,
            "ca-cec-2018",
            {"receptacle-circuits-arc-fault-protected"},
        ),
        (PROVINCE, "2022-10-01", FREEZER, PROVINCE, set()),
        (CITY, "2023-03-31", STAPLES, PROVINCE, set()),
        (CITY, "2023-04-01", STAPLES, CITY, {"cable-fastened-along-run"}),
        (CITY, "2024-06-30", DECK, CITY, set()),
        (CITY, "2024-07-01", DECK, CITY, {"outdoor-circuit-is-small"}),
    ],
)
def test_the_day_of_the_permit_tells_what_is_found(
    place: str, day: str, edits: list[dict[str, Any]], pack: str, broken: set[str]
) -> None:
    holding, plain = audited(place, day, [])
    held, found = audited(place, day, edits)
    assert holding.id == held.id == pack
    assert found - plain == broken


def test_before_the_first_act_no_edition_holds() -> None:
    with pytest.raises(Refused):
        audited(PROVINCE, "2019-05-31", [])
