"""A job names a place and the day of its permit; the file of the place tells the pack."""

import json
from pathlib import Path

import pytest

from linter.cli.places import Places
from linter.cli.shelf import Shelf
from linter.packs.localities import read_locality
from linter.reports.pack_list import place_list
from linter.resources import rulesets_dir
from tests.unit.cli.running import BOATHOUSE, PACKS, Runner

HARBOUR = """place: harbour
title: "Harbour (an invented town)"
holds:
  - {pack: example-boathouse-county, from: 2024-07-01, by: Ordinance 2}
  - {pack: example-boathouse, from: 2021-03-01, by: Ordinance 1}
"""


def job_at(place: str, day: str = "") -> str:
    """The boathouse with a place and a day of permit instead of a pack."""
    dated = f", permit_date: {day}" if day else ""
    line = next(line for line in BOATHOUSE.split("\n") if line.startswith("job:"))
    new = line.replace("pack: example-boathouse", f"place: {place}{dated}")
    new = new.replace(", layers: [example-boathouse-county]", "")
    assert new != line
    return BOATHOUSE.replace(line, new)


@pytest.fixture
def town() -> str:
    """A folder with the packs of the boathouse and the file of the harbour."""
    folder = Path("town-packs")
    folder.mkdir()
    for pack in Path(PACKS).iterdir():
        (folder / pack.name).symlink_to(pack)
    (folder / "harbour.place.yaml").write_text(HARBOUR, encoding="utf-8")
    return str(folder)


def audited(precover: Runner, town: str, text: str) -> dict[str, object]:
    """The pack by which a job was audited, as JSON tells it."""
    Path("job.yaml").write_text(text, encoding="utf-8")
    ran = precover("audit", "job.yaml", "--packs", town, "--form", "json")
    pack: dict[str, object] = json.loads(ran.out)["files"][0]["pack"]
    return pack


@pytest.mark.parametrize(
    ("day", "pack"),
    [
        ("2021-03-01", "example-boathouse"),
        ("2024-06-30", "example-boathouse"),
        ("2024-07-01", "example-boathouse-county"),
        ("2031-01-01", "example-boathouse-county"),
    ],
)
def test_the_day_of_the_permit_tells_the_pack(
    precover: Runner, town: str, day: str, pack: str
) -> None:
    found = audited(precover, town, job_at("harbour", day))
    assert found["id"] == pack
    assert (found["chosen_by_place"], found["permit_date"]) == ("harbour", day)


def test_the_report_says_how_the_pack_was_chosen(precover: Runner, town: str) -> None:
    Path("job.yaml").write_text(job_at("harbour", "2024-07-01"), encoding="utf-8")
    ran = precover("audit", "job.yaml", "--packs", town)
    assert "(example-boathouse-county), which holds in harbour for a permit of 2024-07-01" in (
        ran.said
    )


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (job_at("harbour", "2021-02-28"), "is stated for a permit of 2021-02-28."),
        (job_at("harbour", "2021-02-28"), "from 2021-03-01 until 2024-06-30, or from 2024-07-01"),
        (job_at("harbor", "2024-07-01"), '"harbor" is not a place at hand.'),
        (job_at("harbor", "2024-07-01"), "Nearest: harbour."),
        (job_at("harbour"), "names a place, and not the day of its permit"),
        (
            job_at("harbour, pack: example-boathouse", "2024-07-01"),
            "names a pack and a place",
        ),
    ],
)
def test_a_place_that_tells_no_pack_is_refused(
    precover: Runner, town: str, text: str, said: str
) -> None:
    Path("job.yaml").write_text(text, encoding="utf-8")
    ran = precover("audit", "job.yaml", "--packs", town)
    assert ran.status == 65
    assert said in ran.said


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("from: 2024-07-01", "from: 2024-02-31", '"2024-02-31" is no day.'),
        ("by: Ordinance 1", "until: 2024-07-01, by: Ordinance 1", "then still does"),
        ("by: Ordinance 1", "until: 2020-01-01, by: Ordinance 1", "swap the two days"),
        ("place: harbour", "place: harbor", 'called "harbor", and its file "harbour"'),
        ("pack: example-boathouse-county", "pack: example-boathouse-cuonty", "is not a rule pack"),
        ("by: Ordinance 2", "bye: Ordinance 2", '"bye" is not a key here'),
    ],
)
def test_a_file_of_a_place_that_cannot_be_understood_is_refused_in_its_place(
    precover: Runner, town: str, old: str, new: str, said: str
) -> None:
    text = HARBOUR.replace(old, new)
    assert text != HARBOUR
    Path(town, "harbour.place.yaml").write_text(text, encoding="utf-8")
    Path("job.yaml").write_text(job_at("harbour", "2024-07-01"), encoding="utf-8")
    ran = precover("audit", "job.yaml", "--packs", town)
    assert ran.status == 65
    assert "town-packs/harbour.place.yaml:" in ran.err
    assert said in ran.said


def test_the_list_of_packs_shows_places() -> None:
    harbour = read_locality(HARBOUR, "harbour.place.yaml", "harbour")
    said = " ".join(span.text for line in place_list([harbour]) for span in line.spans)
    assert "Harbour (an invented town), a place" in said
    held = "for permits from 2021-03-01 until 2024-06-30: example-boathouse, by Ordinance 1"
    assert held in said


def test_a_place_beside_the_job_is_found(precover: Runner, town: str) -> None:
    Path(town).rename("packs")
    Path("job.yaml").write_text(job_at("harbour", "2024-07-01"), encoding="utf-8")
    ran = precover("audit", "job.yaml")
    assert "(example-boathouse-county), which holds in harbour" in ran.said


def test_a_place_is_no_job_in_a_folder_of_jobs(precover: Runner, town: str) -> None:
    ran = precover("audit", ".", "--packs", town)
    assert "town-packs/harbour.place.yaml is left out: it tells of a place, it is not a job." in (
        ran.said
    )


def test_the_invented_places_that_ship_name_packs_that_ship() -> None:
    places, packs = Places(rulesets_dir(), "rulesets"), set(Shelf().names)
    found = {name: places.named(name) for name in places.files}
    assert {span.pack for each in found.values() for span in each.spans} <= packs
    city = found["us-example-tollen-quay"]
    days = ("2018-06-30", "2021-12-31", "2022-12-31", "2023-01-01")
    assert [span and span.pack for span in map(city.at, days)] == [
        None, "us-nec-2017", "us-example-marren", "us-example-tollen-quay",
    ]  # fmt: skip
