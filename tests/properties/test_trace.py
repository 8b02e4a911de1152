"""Laws of the trace: what is found by search equals what is found by trying everything."""

from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from linter.trace.dominators import Dominators
from linter.trace.positions import Positions
from linter.trace.solid import Contact, Source, Sources
from linter.wiring.model import LinkKind, Role

MOST = 7
SWITCHES = ("a", "b", "c")
vertices = st.integers(0, MOST - 1)
graphs = st.lists(st.lists(vertices, max_size=3), min_size=MOST, max_size=MOST)
kinds = st.sampled_from([LinkKind.THROW_1, LinkKind.THROW_2, LinkKind.CLOSED_WHEN_ON])
ties = st.lists(st.tuples(vertices, vertices, kinds, st.sampled_from(SWITCHES)), max_size=10)


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


def _in_each_position(
    fed: dict[int, str], tied: list[tuple[int, int, LinkKind, str]], names: tuple[str, ...]
) -> list[list[frozenset[str]]]:
    """What reaches each vertex, by flooding the graph of every position of all switches."""
    found = []
    for position in range(1 << len(names)):
        after: list[list[int]] = [[] for _ in range(MOST)]
        for one, other, kind, device in tied:
            is_second = bool(position >> names.index(device) & 1)
            if (kind is not LinkKind.THROW_1) == is_second:
                after[one].append(other)
                after[other].append(one)
        found.append(
            [
                frozenset(fed[each] for each in _reached(after, vertex) if each in fed)
                for vertex in range(MOST)
            ]
        )
    return found


def _names(sources: Sources) -> frozenset[str]:
    return frozenset(each.circuit for each in sources)


@settings(max_examples=400, deadline=None)
@given(st.dictionaries(vertices, st.sampled_from("xyz")), ties)
def test_positions_are_those_found_by_flooding_every_position_of_all_switches(
    fed: dict[int, str], tied: list[tuple[int, int, LinkKind, str]]
) -> None:
    sources = {each: frozenset((Source(Role.HOT, name),)) for each, name in fed.items()}
    contacts = [Contact(device, kind, one, other) for one, other, kind, device in tied]
    found = Positions(sources, contacts)
    everything = _in_each_position(fed, tied, SWITCHES)
    for vertex in range(MOST):
        each_position = [reaching[vertex] for reaching in everything]
        assert _names(found.reach(vertex)) == frozenset().union(*each_position)
        number = found.group_of(vertex)
        switches = () if number is None else found.groups[number].switches
        at = [_names(each) for each in found.at(vertex)]
        bits = [SWITCHES.index(each) for each in switches]
        for position, expected in enumerate(each_position):
            own = sum((position >> bit & 1) << place for place, bit in enumerate(bits))
            assert at[own] == expected


def test_a_group_of_more_positions_than_stated_is_not_followed() -> None:
    contacts = [Contact(f"s{n}", LinkKind.CLOSED_WHEN_ON, n, n + 1) for n in range(4)]
    fed = {0: frozenset((Source(Role.HOT, "x"),))}
    assert [each.is_followed for each in Positions(fed, contacts, 16).groups] == [True]
    refused = Positions(fed, contacts, 8)
    assert [each.is_followed for each in refused.groups] == [False]
    assert _names(refused.reach(4)) == {"x"}
