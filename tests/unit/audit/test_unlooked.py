"""What a job states and no rule of the pack looks at is said, and nothing else is."""

from pathlib import Path

import pytest

from linter.audit.audit import audit
from linter.cli.shelf import Shelf
from linter.jobfile import read_job
from linter.packs.assemble import assemble
from linter.packs.pack_text import PackText
from tests.cases.shipped_packs import shipped_packs

ROOT = Path(__file__).parents[3]
PUT_RIGHT = (ROOT / "examples/pottery-studio/put-right.yaml").read_text(encoding="utf-8")
IN_THE_STUDIO = {
    "common_trip of breaker", "finished of room",
}  # fmt: skip


def _unlooked(text: str) -> dict[str, int]:
    job = read_job(text, "job.yaml")
    found = audit(job, Shelf().pack_of(job)).unlooked
    return {f"{each.key} of {each.of}" if each.of else each.key: len(each.places) for each in found}


def test_the_sound_studio_states_little_that_nobody_looks_at() -> None:
    assert set(_unlooked(PUT_RIGHT)) == IN_THE_STUDIO


@pytest.mark.parametrize(
    ("stated", "said"),
    [
        ("looked_at: [{item: burial depth, found: 4 in deep}]", {"looked_at of burial depth": 1}),
        ("readings: [{test: voltage, outlet: basin, voltage: 121 V}]", {"readings of voltage": 1}),
        ("readings: [{test: polarity, outlet: basin, result: no bond}]", {}),
        (
            "readings: [{test: polarity, circuit: loft, result: no bond}]",
            {"readings of polarity": 1},
        ),
    ],
)
def test_what_is_written_down_beside_things_is_said(stated: str, said: dict[str, int]) -> None:
    found = _unlooked(f"{PUT_RIGHT}\n{stated}\n")
    assert {key: found[key] for key in found.keys() - IN_THE_STUDIO} == said


LAYER = """
adds:
  rules:
    - rule: room-is-finished
      about: room
      need: room.is_finished
      clause: {id: "1", known: memory}
      weight: advice
      say: "{room} is not finished."
      do: "Finish it."
      proofs: [{holds: {room.is_finished: yes}}, {breaks: {room.is_finished: no}}]
"""
MANIFEST = """
pack: alder-cove
title: Alder Cove (invented)
jurisdiction: Alder Cove
document: Town code
edition: "1"
extends: us-nec-2023
version: 0.1.0
"""


def test_a_rule_of_a_layer_looks_at_more() -> None:
    text = PackText("alder-cove", {"alder-cove/pack.yaml": MANIFEST, "alder-cove/town.yaml": LAYER})
    job = read_job(PUT_RIGHT, "job.yaml")
    found = audit(job, assemble([*shipped_packs(), text], "alder-cove")).unlooked
    said = {f"{each.key} of {each.of}" for each in found}
    assert said == IN_THE_STUDIO - {"finished of room"}


def test_places_are_those_of_the_keys() -> None:
    job = read_job(PUT_RIGHT, "job.yaml")
    (trip,) = [e for e in audit(job, Shelf().pack_of(job)).unlooked if e.key == "common_trip"]
    line = PUT_RIGHT.split("\n")[trip.places[0].line - 1]
    assert line[trip.places[0].column - 1 :].startswith("yes")


def test_a_permit_date_beside_a_pack_chooses_nothing_and_is_said_so() -> None:
    dated = PUT_RIGHT.replace("stage: made up", "stage: made up, permit_date: 2026-03-02")
    job = read_job(dated.replace("us-nec-2023", "us-nec-2017"), "job.yaml")
    found = audit(job, Shelf().pack_of(job)).unlooked
    assert next((each.key, each.places[0].line) for each in found) == ("permit_date", 3)


def test_a_permit_date_that_a_rule_asks_for_is_looked_at() -> None:
    dated = PUT_RIGHT.replace("stage: made up", "stage: made up, permit_date: 2026-03-02")
    job = read_job(dated, "job.yaml")
    found = audit(job, Shelf().pack_of(job)).unlooked
    assert "permit_date" not in {each.key for each in found}
