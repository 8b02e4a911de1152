"""Laws of the trace: what is found by search equals what is found by trying everything."""

from collections.abc import Iterable
from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from linter.trace.dominators import Dominators
from linter.trace.nets import Nets, Way
from linter.trace.reach import reached_from
from linter.wiring.model import Link, LinkKind, Role

MOST = 7
THROWS = (LinkKind.THROW_1, LinkKind.THROW_2)
vertices = st.integers(0, MOST - 1)
graphs = st.lists(st.lists(vertices, max_size=3), min_size=MOST, max_size=MOST)
kinds = st.sampled_from([*THROWS, LinkKind.CLOSED_WHEN_ON, LinkKind.LINE_TO_LOAD, None])
ties = st.lists(st.tuples(vertices, vertices, kinds, st.sampled_from("abc")), max_size=10)


def _reached(after: list[list[int]], start: int, without: int | None = None) -> set[int]:
    seen: set[int] = set()
    waiting = [start]
    while waiting:
        vertex = waiting.pop()
        if vertex not in seen and vertex != without:
            seen.add(vertex)
            waiting += after[vertex]
    return seen


@settings(max_examples=300, deadline=None)
@given(graphs)
def test_one_dominates_another_if_without_it_the_root_does_not_reach_it(
    after: list[list[int]],
) -> None:
    tree = Dominators(after, 0)
    reached = _reached(after, 0)
    for one, other in product(range(MOST), repeat=2):
        lost = other in reached and one in reached and other not in _reached(after, 0, one)
        assert tree.dominates(one, other) == lost
        assert (one in {*tree.before(other), other}) == lost or other not in reached


def _nets(tied: Iterable[tuple[int, int, LinkKind | None, str]]) -> Nets:
    ways: list[list[Way]] = [[] for _ in range(MOST)]
    for one, other, kind, device in tied:
        link = None if kind is None else Link(device, ("", ""), kind, Role.HOT)
        ways[one].append(Way(other, link))
        ways[other].append(Way(one, link, forward=False))
    return Nets({}, ways, frozenset())


@settings(max_examples=300, deadline=None)
@given(ties)
def test_a_source_reaches_what_some_setting_of_all_switches_lets_it_reach(
    tied: list[tuple[int, int, LinkKind | None, str]],
) -> None:
    expected: set[int] = set()
    for setting in product(THROWS, repeat=3):
        throws = dict(zip("abc", setting, strict=True))
        after: list[list[int]] = [[] for _ in range(MOST)]
        for one, other, kind, device in tied:
            if kind not in THROWS or throws[device] is kind:
                after[one].append(other)
                after[other].append(one)
        expected |= _reached(after, 0)
    assert reached_from(_nets(tied), [0]) == expected
