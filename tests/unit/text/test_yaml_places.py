"""YAML with places: JSON's types, where everything stands, and what is said of slips."""

import pytest

from linter.text import Refused
from linter.text.yaml_places import DEEPEST, read_places

TEXT = """\
# a comment
name: "Boathouse"
open: yes
at: 12:30
size: 1.50
count: 3
none: null
empty:
list: [a, 2, true]
folded: one
  two
block: |
  first and
  second
"""


def test_only_jsons_types_are_told_apart() -> None:
    assert read_places(TEXT, "f.yaml").plain() == {
        "name": "Boathouse", "open": "yes", "at": "12:30", "size": 1.5, "count": 3, "none": None,
        "empty": None, "list": ["a", 2, True], "folded": "one two", "block": "first and\nsecond\n",
    }  # fmt: skip


@pytest.mark.parametrize(
    "word", ["on", "no", "~", "012", "1_000", "0x1f", ".5", "+1", "1e999", "NaN", "9" * 40]
)
def test_what_json_would_not_read_stays_text(word: str) -> None:
    assert read_places(f"a: {word}", "f.yaml").plain() == {"a": word}


def test_numbers_keep_the_words_they_were_written_in() -> None:
    node = read_places(TEXT, "f.yaml")
    assert (node.fields["size"].value, node.fields["size"].text) == (1.5, "1.50")


def test_keys_and_values_know_their_places() -> None:
    node = read_places(TEXT, "f.yaml")
    assert str(node.keys["at"]) == "f.yaml:4:1"
    assert str(node.fields["at"].place) == "f.yaml:4:5"
    assert str(node.at(["list", 2]).place) == "f.yaml:9:14"


def test_text_knows_where_its_first_character_stands() -> None:
    fields = read_places(TEXT, "f.yaml").fields
    assert str(fields["name"].text_place) == "f.yaml:2:8"
    assert str(fields["open"].text_place) == "f.yaml:3:7"
    assert str(fields["block"].text_place) == "f.yaml:13:3"
    assert fields["folded"].text_place is None


def test_a_path_that_ends_early_gives_the_last_node_on_it() -> None:
    node = read_places(TEXT, "f.yaml")
    assert node.at(["list", 9]) == node.fields["list"]
    assert node.at(["nowhere"]) == node


def test_places_count_characters() -> None:
    node = read_places('größe: {"ø": ☃☃, b: x}', "f.yaml")
    assert str(node.at(["größe", "b"]).place) == "f.yaml:1:21"


def test_json_is_read() -> None:
    assert read_places('{"a": [1, "b", null, false]}', "f.json").plain() == {
        "a": [1, "b", None, False]
    }


SLIPS = [
    ("a: b: c\n", "1:5", "A colon stands where none can be"),
    ("a: 1\n b: 2\n", "2:3", "A colon stands where none can be"),
    ("a: [1, 2\n", "1:4", "A list in brackets is not closed"),
    ("a: {b: 1\nc: 2\n", "1:4", "A map in braces is not closed"),
    ('a: "x\nb: 1\n', "1:4", "A quotation mark is opened here and not closed"),
    ("key: 'it's'\n", "1:10", "This line does not fit the lines above it"),
    ('a: "x\\q"\n', "1:4", "A backslash stands in double quotation marks"),
    ("a:\n\t- b\n", "2:1", "A tab stands here"),
    ("- a\nb\n", "3:1", "A colon is missing after a key"),
    ("a: - b\n", "1:4", "A list begins in the middle of a line"),
    ("- a\n-b: 1\n", "2:1", "This line does not fit the list above it"),
    ("a: @x\n", "1:4", "A character stands here that no plain value begins with"),
    ("a: | x\n b\n", "1:6", "A literal block begins wrongly"),
    ("a: &x 1\n", "1:4", 'A mark for repeating, "x", stands here'),
    ("a: *x\n", "1:4", 'A mark for repeating, "x", stands here'),
    ("a: !!int 1\n", "1:4", "A tag"),
    ("a: 1\na: 2\n", "2:1", '"a" is stated twice'),
    (": 1", "1:1", "This line does not fit the lines above it"),
    ("? [a]\n: b\n", "1:3", "A list or map stands where a key is expected"),
    ("{? : 1}", "1:4", "A key is missing here"),
    ("a: ]", "1:4", "A value is missing"),
    ("{a: 1}}", "1:7", "Text stands after the end of the document"),
    ("%YAML 3.0\n---\na: 1", "1:1", "The file begins with a line for other readers"),
    ("---\na: 1\n---\nb: 1\n", "3:1", "A second document begins here"),
    ("", "1:1", "There is nothing in the file"),
    ("# only a comment\n", "1:1", "There is nothing in the file"),
    ("a: \x07b", "1:4", "A character that cannot be seen stands here: U+0007"),
    ("a: \ud800", "1:4", "A character that cannot be seen stands here: U+D800"),
    ("[" * 100_000, "1:1001", "Lists and maps stand in each other too deep"),
    ("{a: " * 1000, f"1:{4 * DEEPEST + 1}", f"stand in each other more than {DEEPEST} deep"),
    ("- " * 100_000, f"1:{2 * DEEPEST + 1}", f"stand in each other more than {DEEPEST} deep"),
]


@pytest.mark.parametrize(("text", "place", "words"), SLIPS, ids=[repr(s[0][:20]) for s in SLIPS])
def test_a_slip_is_said_in_words_of_the_trade(text: str, place: str, words: str) -> None:
    with pytest.raises(Refused) as refused:
        read_places(text, "f.yaml")
    [refusal] = refused.value.refusals
    assert str(refusal.place) == f"f.yaml:{place}"
    assert words in refusal.render()


def test_a_doubled_key_names_the_first() -> None:
    with pytest.raises(Refused, match=r"First stated at f\.yaml:1:1"):
        read_places("a: 1\nb: 2\na: 3\n", "f.yaml")


def test_many_repeats_are_refused_together() -> None:
    with pytest.raises(Refused) as refused:
        read_places("a: 1\na: 2\nb: 1\nb: 2\n", "f.yaml")
    assert len(refused.value.refusals) == 2


def test_a_mark_of_byte_order_is_passed_over() -> None:
    assert str(read_places("\ufeffa: 1", "f.yaml").keys["a"]) == "f.yaml:1:1"
