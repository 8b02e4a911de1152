"""What is written into a YAML file stands where it is meant, and all else stays, byte for byte."""

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from linter.text import Refused
from linter.text.yaml_edits import CannotEdit, with_item, with_value
from linter.text.yaml_places import Node, read_places

JOB = """\
# The net shed, as pulled.
cables:   # in file order
  home: {from: panel,  to: door}   # the run home
  up:
    from: door
    at_to: {free_length: 5 in} # short!

    length: "12 ft"
readings:
  - {test: polarity, outlet: bench, result: correct}   # on the first day
# the end
"""


def changed(old: str, new: str) -> list[str]:
    """The lines of the new text that are not in the old one, in order."""
    rest = old.splitlines(keepends=True)
    found = []
    for line in new.splitlines(keepends=True):
        if line in rest:
            rest = rest[rest.index(line) + 1 :]
        else:
            found.append(line)
    return found


@pytest.mark.parametrize(
    ("path", "value", "lines"),
    [
        (["cables", "home", "to"], "lamp", ["  home: {from: panel,  to: lamp}   # the run home\n"]),
        (["cables", "up", "length"], "11 ft", ["    length: 11 ft\n"]),
        (["cables", "up", "fished"], "yes", None),
        (
            ["cables", "up", "at_to", "clamped"],
            "no",
            ["    at_to: {free_length: 5 in, clamped: no} # short!\n"],
        ),
        (
            ["readings", 0, "result"],
            "no bond",
            ["  - {test: polarity, outlet: bench, result: no bond}   # on the first day\n"],
        ),
        (["cables", "home", "at_from"], {"free_length": "7 in"}, None),
    ],
)
def test_a_value_is_written_where_it_is_meant(
    path: list[str | int], value: str, lines: list[str] | None
) -> None:
    new = with_value(JOB, path, value)
    assert read_places(new, "").at(path).plain() == value
    assert len(changed(JOB, new)) == 1
    assert lines is None or [each.replace("'", "") for each in changed(JOB, new)] == lines


def test_an_item_is_written_at_the_end_of_its_list() -> None:
    new = with_item(JOB, ["readings"], {"test": "polarity", "outlet": "door", "result": "no hot"})
    assert len(changed(JOB, new)) == 1
    assert new.startswith(JOB.removesuffix("# the end\n"))


def test_a_list_that_is_not_there_is_made() -> None:
    new = with_item("a: 1  # one\n", ["said"], {"by": "O. Tarn"})
    assert new.startswith("a: 1  # one\n")
    assert read_places(new, "").plain() == {"a": 1, "said": [{"by": "O. Tarn"}]}


@pytest.mark.parametrize("path", [["cables", "home", "to", "x"], [0], ["cables", "up"]])
def test_what_says_something_is_not_written_over(path: list[str | int]) -> None:
    with pytest.raises(CannotEdit):
        with_value(JOB, path, "lamp")


def test_line_ends_of_another_system_stay() -> None:
    new = with_value(JOB.replace("\n", "\r\n"), ["cables", "home", "length"], "12 ft")
    assert new.count("\n") == new.count("\r\n")


def ways(node: Node, way: tuple[str | int, ...] = ()) -> Iterator[list[str | int]]:
    """The way to each value of a file, and one to a new key in each of its maps."""
    if node.fields:
        yield [*way, "new"]
    for step, inner in [*node.fields.items(), *enumerate(node.items)]:
        yield from ways(inner, (*way, step))
    if not node.fields and not node.items:
        yield list(way)


def shared(one: str, other: str) -> int:
    """How many characters two texts have in common at their beginning."""
    pairs = enumerate(zip(one, other, strict=False))
    return next((at for at, (a, b) in pairs if a != b), min(len(one), len(other)))


STUDIO = Path(__file__).parents[3] / "examples/pottery-studio/as-pulled.yaml"
FORMS = {
    "the lines of one system": lambda text: text,
    "the lines of another": lambda text: text.replace("\n", "\r\n"),
    "JSON": lambda text: json.dumps(read_places(text, "").plain(), indent=2),
    "a mark of byte order": lambda text: f"\ufeff{text}",
}


@pytest.mark.parametrize("form", FORMS)
def test_each_value_of_a_whole_job_can_be_written_and_nothing_else_moves(form: str) -> None:
    text = FORMS[form](STUDIO.read_text(encoding="utf-8"))
    root = read_places(text, "")
    for way in list(ways(root))[::23]:
        new = with_value(text, way, "7-1/2 in")
        start = shared(text, new)
        end = shared(text[:start:-1], new[:start:-1])
        was = root.at(way).text if way[-1] != "new" else ""
        assert len(text) - start - end <= len(was) + len('""') + 1


@given(st.text(max_size=40))
@example("yes")
@example("12:30")
@example("0x1f")
@example("12e3")
@example("a: b # c")
@example("one\ntwo\n")
@example("\u202eleft")
@example(" ' \" ")
def test_any_text_is_written_as_it_is_or_not_at_all(text: str) -> None:
    """Control characters may be in no YAML file, and so cannot be written into one."""
    try:
        new = with_item(JOB, ["readings"], {"test": "polarity", "note": text})
    except (CannotEdit, Refused):
        assert not text.isprintable()
        return
    root = read_places(new, "")
    assert root.at(["readings", 1, "note"]).plain() == text
    assert new.startswith(JOB.removesuffix("# the end\n"))
