"""What is compiled: once, of nothing foreign, and the same for other limits only if made anew."""

import json
from typing import Any

import pytest

from linter.language import compile as compiling
from linter.language.checked import Checked
from linter.language.data import from_data, to_data
from linter.language.evaluate import evaluate
from linter.language.library import Library
from linter.language.tree import FactOf, Limit, Path, Variable
from linter.text import Refused
from linter.vocabulary.shorthand import COUNT, YES_NO
from tests.cases.language_world import checked, library, thing


def sources(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The sources that are compiled from now on."""
    seen: list[str] = []

    def remember(source: str, name: str, mode: str) -> Any:
        seen.append(source)
        return compile(source, name, mode)

    monkeypatch.setattr(compiling, "compile", remember, raising=False)
    return seen


def test_no_text_of_a_pack_reaches_the_source(monkeypatch: pytest.MonkeyPatch) -> None:
    seen = sources(monkeypatch)
    text = (
        'box.form is one of ("square", "octagon") or box.trade_size is "odd __import__(1)"'
        ' or box.room.use is one of damp_rooms or look up room_height at "kitchen" at least'
        " least_free_length or box.crowding at least share"
    )
    compiling.compile_need(checked(text), library())
    written = "\n".join(seen)
    assert written
    for foreign in ("square", "odd", "__import__", "damp_rooms", "room_height", "kitchen",
                    "least_free_length", "crowding", "share", "conductors", '"', "'"):  # fmt: skip
        assert foreign not in written


@pytest.mark.parametrize(
    "node",
    [
        FactOf(Variable("box", "box"), "box", "__class__"),
        FactOf(Variable("box", "box"), "box", "depth or __import__"),
        Path(("box", "depth")),
    ],
    ids=["a name of Python", "source", "a path"],
)
def test_what_was_not_checked_is_not_compiled(node: Any) -> None:
    with pytest.raises(ValueError, match="was not checked"):
        compiling.compile_value(Checked("box", COUNT, node), library())


def test_data_that_was_tampered_with_makes_no_source(monkeypatch: pytest.MonkeyPatch) -> None:
    seen = sources(monkeypatch)
    data = json.loads(json.dumps(to_data(checked("box.depth at least least_free_length"))))
    text = json.dumps(data).replace('"depth"', '"depth.__class__"')
    with pytest.raises(ValueError, match="was not checked"):
        compiling.compile_need(from_data(json.loads(text)), library())
    assert not seen


@pytest.mark.parametrize("data", [None, 3, "box", [], ["box"], ["box", 1, ["Word", "hot"]]])
def test_what_is_no_expression_as_data_is_said_so(data: Any) -> None:
    with pytest.raises((ValueError, KeyError)):
        from_data(data)


def test_an_expression_is_compiled_once(monkeypatch: pytest.MonkeyPatch) -> None:
    pack, need = library(), checked("box.marked_volume at least fill", expect=YES_NO)
    first = compiling.compile_rule(None, need, pack)
    seen = sources(monkeypatch)
    assert compiling.compile_rule(None, need, pack) is first
    assert not seen


def test_other_limits_are_another_library() -> None:
    need, box = checked("box.depth at least least_free_length"), thing("box", {"depth": "5 in"})
    pack = library()
    looser = Library({**pack.limits, "least_free_length": 0.1}, pack.tables, pack.measures)
    assert compiling.compile_need(need, pack)(box) is False
    assert compiling.compile_need(need, looser)(box) is True


def test_a_limit_that_is_no_ordinary_number_is_a_value() -> None:
    pack = library()
    endless = Library({**pack.limits, "share": float("inf")}, pack.tables, pack.measures)
    need = Checked("box", COUNT, Limit("share", COUNT))
    assert compiling.compile_value(need, endless)(thing("box", {})) == float("inf")


DEEP = {
    "not": ("not ", "box.is_metal", ""),
    "sums": ("box.gangs - (", "box.gangs", ")"),
    "quotients": ("box.gangs / (", "box.gangs", ")"),
    "comparisons": ("box.is_metal is (", "box.is_metal", ")"),
    "things": ("no e{n} of box.wire_ends has (", "box.is_metal", ")"),
    "choices": ("if box.is_metal then 1 else ", "2", ""),
    "sums over things": ("sum of box.gangs + (", "box.gangs", ") for e{n} of box.wire_ends"),
    "the larger": ("larger of (1, ", "box.gangs", ")"),
}


def nested(before: str, middle: str, after: str, levels: int) -> str:
    opened = "".join(before.format(n=level) for level in range(levels))
    closed = "".join(after.format(n=level) for level in reversed(range(levels)))
    return opened + middle + closed


@pytest.mark.parametrize("parts", DEEP.values(), ids=DEEP)
def test_what_is_read_is_compiled_and_worked_however_deep(parts: tuple[str, str, str]) -> None:
    box = thing("box", {"is_metal": True, "gangs": 2, "wire_ends": [{}]})
    worked = 0
    for levels in range(1, 50):
        try:
            expression = checked(nested(*parts, levels))
        except Refused:
            break
        quick = compiling.compile_value(expression, library())(box)
        assert quick == evaluate(expression, box, library())
        worked = levels
    assert 10 <= worked < 49
