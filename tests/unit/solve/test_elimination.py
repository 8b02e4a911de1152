"""Nodes taken out one by one: small networks that a person can reckon."""

import pytest

from linter.solve.elimination import Elimination


def test_a_bridge_in_balance_has_nothing_between_its_middles() -> None:
    edges = [(0, 1, 1.0), (0, 2, 2.0), (1, 3, 0.5), (2, 3, 1.0), (1, 2, 7.0)]
    volts = Elimination(edges, {0, 3}).potentials({0: 90.0, 3: 0.0})
    assert volts == pytest.approx({1: 60.0, 2: 60.0})


def test_parallel_wires_count_as_one() -> None:
    edges = [(0, 1, 1.0), (1, 0, 2.0), (1, 2, 3.0)]
    volts = Elimination(edges, {0, 2}).potentials({0: 10.0, 2: 0.0})
    assert volts == pytest.approx({1: 5.0})


def test_a_wire_from_a_node_to_itself_changes_nothing() -> None:
    edges = [(0, 1, 1.0), (1, 1, 5.0), (1, 2, 1.0)]
    assert Elimination(edges, {0, 2}).potentials({0: 8.0, 2: 0.0}) == pytest.approx({1: 4.0})


def test_a_current_let_in_raises_a_node_by_its_way_out() -> None:
    volts = Elimination([(0, 1, 0.5), (1, 2, 0.5)], {0}).potentials({0: 0.0}, {2: 3.0})
    assert volts == pytest.approx({1: 6.0, 2: 12.0})


def test_what_hangs_on_nothing_is_at_nought() -> None:
    assert Elimination([(0, 1, 1.0), (1, 2, 1.0)], ()).potentials({}) == {0: 0.0, 1: 0.0, 2: 0.0}
