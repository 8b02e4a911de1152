"""What differs between two job files, said of each thing."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from linter.job.changes import Change, changes
from linter.text.yaml_places import read_places
from tests.unit.cli.running import BOATHOUSE


def told(before: str, after: str) -> list[str]:
    """Each change in one line."""
    found = changes(read_places(before, "a.yaml"), read_places(after, "b.yaml"))
    return [f"{each.thing}: {words(each)}" for each in found]


def words(change: Change) -> str:
    if change.what != "changed":
        return change.what
    return ", ".join(f"{name} {was or '-'} > {now or '-'}" for name, was, now in change.differences)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("stage: made up", "stage: covered", ["the job: stage made up > covered"]),
        ("volume: 11.5 in3", "volume: 12 in3", ["box bench: volume 11.5 in3 > 12 in3"]),
        ("volume: 11.5 in3, ", "", ["box bench: volume 11.5 in3 > -"]),
        ("free_length: 4 in", "free_length: 101.6 mm", []),
        ("free_length: 4 in", "free_length: 5 in", ["cable k2: at bench: free length 4 in > 5 in"]),
        ("free_length: 7 in", "free_length: 8 in", ["usual values: cable free length 7 in > 8 in"]),
        ("rating: 20 A", "rating: 15 A", ["breaker 1: rating 20 A > 15 A"]),
        ("room: slip\n  breakers", "room: loft\n  breakers", ["the panel: room slip > loft"]),
        ("  k4:", "  k5: {from: top, to: winch}\n  k4:", ["cable k5: added"]),
        ("  loft: {use: workshop}\n", "", ["room loft: gone"]),
        ("holds: receptacle}\n  bench", "holds: {receptacle: {rating: 20 A}}}\n  bench",
         ["box top: holds receptacle rating - > 20 A, holds receptacle > -"]),
        ("use: boathouse", "use: workshop", ["room slip: use boathouse > workshop"]),
        ("cables:", "readings:\n  - {test: polarity, outlet: top, result: no hot}\ncables:",
         ["reading of polarity at top: result no hot: added"]),
    ],
)  # fmt: skip
def test_an_edit_is_told_of_the_thing_it_is_made_to(old: str, new: str, said: list[str]) -> None:
    assert old in BOATHOUSE
    assert told(BOATHOUSE, BOATHOUSE.replace(old, new, 1)) == said


def test_of_two_panels_the_breakers_are_told_apart() -> None:
    one = "panels: {shed: {breakers: {1: {rating: 20 A}}}, loft: {breakers: {1: {rating: 20 A}}}}"
    other = one.replace("20 A}}}}", "15 A}}}}")
    assert told(one, other) == ["breaker 1 of panel loft: rating 20 A > 15 A"]


@given(st.randoms())
def test_the_order_of_things_is_no_change(random: object) -> None:
    lines = [line for line in BOATHOUSE.splitlines() if line.startswith("  k")]
    shuffled = list(lines)
    random.shuffle(shuffled)  # type: ignore[attr-defined]
    assert told(BOATHOUSE, BOATHOUSE.replace("\n".join(lines), "\n".join(shuffled))) == []


def test_what_is_added_one_way_is_gone_the_other() -> None:
    more = BOATHOUSE.replace("  k4:", "  k5: {from: top, to: winch}\n  k4:")
    assert told(more, BOATHOUSE) == ["cable k5: gone"]
