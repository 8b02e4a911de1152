"""Nearest names, lists, numbers, inert text."""

import math

import pytest

from linter.text import clean, join_words, nearest, write_number


@pytest.mark.parametrize(
    ("word", "found"),
    [
        ("recepticle", ("receptacle",)),  # one letter changed
        ("swtich", ("switch",)),  # neighbours swapped
        ("Luminaire", ("luminaire",)),  # a capital
        ("swich", ("switch",)),  # one letter missed
        ("kiln", ()),
        ("", ()),
        ("s" * 1000, ()),
    ],
)
def test_the_nearest_name_is_found(word: str, found: tuple[str, ...]) -> None:
    assert nearest(word, ["receptacle", "switch", "luminaire", "splice only"]) == found


def test_at_most_three_names_the_nearest_first() -> None:
    assert nearest("bench-1", ["bench-23", "bench-2", "bench", "bench-3", "bench-4"]) == (
        "bench-2",
        "bench-3",
        "bench-4",
    )


def test_a_word_that_shares_no_letter_is_not_near() -> None:
    assert nearest("x", ["m"]) == ()


@pytest.mark.parametrize(
    ("words", "joined"),
    [([], ""), (["hot"], "hot"), (["hot", "bond"], "hot or bond"), (list("abc"), "a, b or c")],
)
def test_a_list_reads_aloud(words: list[str], joined: str) -> None:
    assert join_words(words, "or") == joined


@pytest.mark.parametrize(
    ("x", "written"),
    [
        (18.0, "18"),
        (2.25, "2.25"),
        (1 / 3, "0.3333"),
        (0.1 + 0.2, "0.3"),
        (1e6, "1000000"),
        (20.0, "20"),
        (0.09999, "0.1"),
        (0.0052108, "0.00521"),
        (-0.0001234, "-0.000123"),
        (-0.0, "0"),
        (3e-12, "3e-12"),
        (math.nan, "not a number"),
        (math.inf, "without limit"),
        (-math.inf, "without limit below"),
    ],
)
def test_a_number_is_short_and_looks_exact(x: float, written: str) -> None:
    assert write_number(x) == written


def test_clean_text_is_left_alone() -> None:
    assert clean("Töpferei, 2.5 mm², 陶") == "Töpferei, 2.5 mm², 陶"


@pytest.mark.parametrize("bad", ["\x00", "\x1b", "\x9b", "\u200b", "\u202e", "\u2066", "\ud800"])
def test_what_steers_or_hides_is_made_visible(bad: str) -> None:
    shown = clean(f"a{bad}b")
    assert shown.isprintable()
    assert "\\" in shown
    assert shown.encode("utf-8")


def test_an_unusual_space_is_a_space() -> None:
    assert clean("6\u00a0in") == "6 in"
