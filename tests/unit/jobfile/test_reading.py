"""Several mistakes in one file; usual values; places."""

from pathlib import Path

import pytest

from linter.jobfile import read_job
from linter.text import Place, Refusal, Refused

SOUND = (Path(__file__).parents[2] / "cases" / "jobs" / "boathouse.yaml").read_text("utf-8")


def refusals_of(text: str) -> tuple[Refusal, ...]:
    with pytest.raises(Refused) as caught:
        read_job(text, "boathouse.yaml")
    return caught.value.refusals


def changed(*changes: tuple[str, str]) -> str:
    text = SOUND
    for old, new in changes:
        assert text.count(old) == 1
        text = text.replace(old, new)
    return text


def test_mistakes_of_every_kind_come_out_in_one_run_in_file_order() -> None:
    refusals = refusals_of(
        changed(
            ("stage: made up", "stage: madeup"),
            ("support_spacing: 4 ft", "support_spacing: 4 feets"),
            ("hoist: {breakers: [2]", "hoist: {breakers: [8]"),
            ("bench-right: {room: slip, ", "bench-right: {"),
            ("deck-outlet: {room: deck", "deck-outlet: {room: dek"),
            ("k2: {from: bench-left, to: loft-joint", "k2: {from: bench-left, to: lofty"),
            ("[k2.white, k3.white]", "[k2.whit, k3.white]"),
            ("[{outlet: bench-right, at: 6 ft}]", "[{outlet: bench-wrong, at: 6 ft}]"),
        )
    )
    assert [each.place.line for each in refusals] == [3, 11, 28, 39, 40, 50, 55, 71]
    assert [each.place for each in refusals] == sorted(each.place for each in refusals)


def test_what_refers_to_a_thing_that_could_not_be_read_is_not_held_against_the_writer() -> None:
    """The names of a misspelt group, of broken things and of things written wrong are known."""
    for old, new in (
        ("rooms:", "roms:"),
        ("circuits:", "circits:"),
        ("boxes:", "boxs:"),
        ("cables:", "cabels:"),
        ("panel:\n", "pannel:\n"),
        ("    5: {rating: 15 A, serves: Lights}", "    5: 15 A"),
        ("k3: {from: loft-joint, to", "k3: {from: loft-joint, too"),
        ("sheath: 10/2 NM-B, from", "sheath: 10/12 NM-B, marks: {red: black}, form"),
    ):
        text = SOUND.replace(old, new, 1)
        assert text != SOUND
        found = [each.found for each in refusals_of(text)]
        assert len(found) <= 2, found
        assert not any("of this job" in each for each in found), found


def test_no_more_than_fifty_are_shown() -> None:
    rooms = "\n".join(f"  b{n}: {{room: nowhere-{n}}}" for n in range(60))
    text = f"precover: 1\njob: {{name: x}}\nsupplies: {{s: {{}}}}\nboxes:\n{rooms}\n"
    with pytest.raises(Refused) as caught:
        read_job(text, "long.yaml")
    assert len(caught.value.refusals) == 60
    assert str(caught.value).endswith("10 more are not shown.")


def test_a_name_that_is_missing_is_said_once_and_where_it_is_spoken_of_again() -> None:
    (refusal,) = refusals_of(changed(("  slip: {use: boathouse", "  slipway: {use: boathouse")))
    assert refusal.found == '"slip" is no room of this job'
    assert refusal.place == Place("boathouse.yaml", 16, 9)
    assert refusal.also is not None
    assert refusal.also[0] == Place("boathouse.yaml", 37, 11)
    assert "and 7 more times below" in refusal.also[1]


def test_a_usual_value_is_known_to_be_one_and_where_it_stands() -> None:
    job = read_job(SOUND, "boathouse.yaml")
    box = job.boxes["doors"]  # type: ignore[index]
    assert "material" in box.usual
    assert "volume" not in box.usual
    assert box.place_of("material") == Place("boathouse.yaml", 10, 19)
    assert box.place_of("volume").line == 42


def test_a_huge_file_is_refused_before_it_is_parsed() -> None:
    (refusal,) = refusals_of("#" * 20_000_001)
    assert "more than 20000000 characters" in refusal.found


def test_places_count_characters_not_bytes() -> None:
    text = "precover: 1\njob: {name: Bootshütte Süd, stage: pullt}\nsupplies: {s: {}}\n"
    (refusal,) = refusals_of(text)
    assert (refusal.place.line, refusal.place.column) == (2, 36)
