"""What answers took as none, because the job says nothing of it."""

from functools import cache
from pathlib import Path

from linter.audit.audit import audit
from linter.audit.findings import Audit
from linter.cli.shelf import Shelf
from linter.jobfile import read_job

STUDIO = Path(__file__).resolve().parents[3] / "examples/pottery-studio"
PUT_RIGHT = (STUDIO / "put-right.yaml").read_text(encoding="utf-8")


@cache
def shelf() -> Shelf:
    return Shelf()


def taken(text: str, *edits: tuple[str, str]) -> dict[str, tuple[str, ...]]:
    """What was taken as none, with the things."""
    return {each.noun: each.things for each in audited(text, *edits).assumed}


def audited(text: str, *edits: tuple[str, str]) -> Audit:
    for old, new in edits:
        assert old in text
        text = text.replace(old, new)
    job = read_job(text, "studio.yaml")
    return audit(job, shelf().pack_of(job))


def test_of_a_job_that_says_it_all_nothing_is_taken() -> None:
    assert taken(PUT_RIGHT) == {}


def test_what_is_left_out_is_told_of_the_things_whose_answers_took_it() -> None:
    told = taken(PUT_RIGHT, (", bundled: no", ""), (", tub: no}", "}"))
    assert set(told) == {"bundles", "tubs"}
    assert len(told["bundles"]) > 20
    assert told["tubs"] == ("kitchenette", "wash-niche", "throwing-room", "loft", "porch")


def test_a_room_that_no_rule_asked_about_is_not_told() -> None:
    rooms = taken(PUT_RIGHT, (", tub: no}", "}"))["tubs"]
    assert "stairs" not in rooms


def test_what_is_unknown_besides_hides_nothing_that_was_taken() -> None:
    told = audited(
        PUT_RIGHT, ("{sink: no, ", "{"), ("distance_to_sink: 5 ft", "distance_to_sink: unknown")
    )
    assert told.cannot_tell["danger"] == 0
    assert "sinks" in {each.noun for each in told.assumed}


def test_a_finding_says_what_was_taken_for_it() -> None:
    short = (
        "  hall-light: {room: hall, at: [11 ft, 10 ft 6 in], form: round, volume: 20.5 in3",
        "  hall-light: {volume: 3 in3, room: hall, form: round",
    )
    told = audited(PUT_RIGHT, short, (", hickeys: 0, terminal_blocks: 0}", "}"))
    (found,) = [each for each in told.findings if each.rule == "box-has-room"]
    assert found.assumed == ("hickeys", "terminal blocks")
    said = audited(PUT_RIGHT, short).findings
    assert [each.assumed for each in said if each.rule == "box-has-room"] == [()]
