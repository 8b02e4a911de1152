"""Which answers give which outcome, told at the boundaries and beside them."""

import pytest

from linter.audit.answers import along_counts, along_scale, along_steps, among_words
from linter.units import IMPERIAL, LENGTH, VOLUME, read_quantity, same_value, write_in


def metres(value: float) -> str:
    return f"{value:g} m"


def count(value: float) -> str:
    return f"{value:.0f}"


@pytest.mark.parametrize("hints", [[0.15], []], ids=["at a limit", "at a value worked out"])
def test_one_boundary_that_belongs_to_the_upper_side(hints: list[float]) -> None:
    told = along_scale(LENGTH, hints, metres, lambda x: "met" if x >= 0.15 else "broken")
    assert told == (("0.15 m or more", "met"), ("less than 0.15 m", "broken"))


def test_a_value_alone_has_its_outcome_where_only_rows_of_a_table_have_one() -> None:
    told = along_scale(LENGTH, [1.0, 2.0], metres, lambda x: {1.0: "met", 2.0: "broken"}.get(x, ""))
    assert told == ((metres(1.0), "met"), (metres(2.0), "broken"))


def test_a_boundary_that_was_looked_for_belongs_to_its_side_though_comparisons_give_way() -> None:
    bend = 5 * 0.42 * 0.0254
    told = along_scale(LENGTH, [], str, lambda x: "met" if x >= bend * (1 - 1e-9) else "broken")
    assert told == ((f"{round(bend, 7)} or more", "met"), (f"less than {round(bend, 7)}", "broken"))


def test_one_value_that_is_unlike_all_others() -> None:
    told = along_scale(LENGTH, [1.0], metres, lambda x: "broken" if x == 1.0 else "met")
    assert told == (("any other answer", "met"), (metres(1.0), "broken"))


def test_an_outcome_that_changes_and_changes_back_between_hints() -> None:
    told = along_scale(LENGTH, [1.0, 2.0], metres, lambda x: "broken" if 1 <= x < 2 else "met")
    assert {outcome for _, outcome in told} == {"met", "broken"}


@pytest.mark.parametrize("hints", [[1.35], []], ids=["at a limit", "at a value worked out"])
def test_one_boundary_that_belongs_to_the_lower_side(hints: list[float]) -> None:
    told = along_scale(LENGTH, hints, metres, lambda x: "met" if x <= 1.35 else "broken")
    assert told == (("1.35 m or less", "met"), ("more than 1.35 m", "broken"))


def test_two_boundaries_give_a_stretch_between_them() -> None:
    told = along_scale(LENGTH, [1, 2], metres, lambda x: "broken" if 1 <= x < 2 else "met")
    assert told == (("2 m or more", "met"), ("less than 1 m", "met"), ("1 m to 2 m", "broken"))


def test_where_no_answer_changes_anything_any_answer_is_told() -> None:
    assert along_scale(LENGTH, [1], metres, lambda _: "met") == (("any answer", "met"),)
    assert along_steps([0, 1], count, lambda _: "broken") == (("any answer", "broken"),)


def test_what_an_answer_leaves_untold_is_not_claimed() -> None:
    told = along_scale(LENGTH, [1], metres, lambda x: "met" if x >= 1 else "")
    assert told == (("1 m or more", "met"),)


def test_counts_are_told_one_by_one() -> None:
    told = along_steps([0, 1, 2, 3, 4], count, lambda x: "met" if x in (1, 2) else "broken")
    assert told == (("1 to 2", "met"), ("0", "broken"), ("3 or more", "broken"))


@pytest.mark.parametrize("limit", [0, 12, 13, 40, 999])
def test_counts_far_beyond_those_tried_one_by_one_are_told(limit: int) -> None:
    told = along_counts([], count, lambda x: "met" if x <= limit else "broken")
    met = f"0 to {limit}" if limit else "0"
    assert told == ((met, "met"), (f"{limit + 1} or more", "broken"))


def test_counts_between_two_limits_are_found_at_the_limits() -> None:
    told = along_counts([20, 25], count, lambda x: "met" if 20 <= x <= 25 else "broken")
    assert told == (("20 to 25", "met"), ("0 to 19", "broken"), ("26 or more", "broken"))


def test_words_of_one_outcome_stand_together() -> None:
    words = ("kitchen", "hall", "bathroom")
    told = among_words(words, words, lambda x: "met" if x == "hall" else "broken")
    assert told == (("hall", "met"), ("kitchen, bathroom", "broken"))


def test_a_boundary_without_a_hint_is_the_value_that_is_told() -> None:
    marked = read_quantity("13.2 in3").value

    def is_room(volume: object) -> str:
        assert isinstance(volume, float)
        return "met" if volume > marked or same_value(volume, marked) else "broken"

    def write(volume: float) -> str:
        return write_in(volume, VOLUME, IMPERIAL)

    assert along_scale(VOLUME, [], write, is_room) == (
        ("13.2 in3 or more", "met"),
        ("less than 13.2 in3", "broken"),
    )
