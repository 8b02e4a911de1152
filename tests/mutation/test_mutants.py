"""Mutants of packs: whatever is changed in a rule, a measure or a limit, some proof notices."""

import pytest

from linter.packs.assemble import assemble
from tests.cases.shipped_packs import base_of, shipped_packs, with_layer
from tests.cases.small_packs import BASE, COUNTY, edited, texts_of
from tests.mutation.mutants import mutants_of

# Mutants that change nothing, each with the reason.
ALIKE = {
    "limit no_area: 0.0 to -1.0": "less than nothing is rounded up to nothing",
    "white-traveller-is-avoided: where part left out: conductor.colour is one of neutral_colours": (
        "the limit that is left out is yes, and a rule is not at rest by it before a layer turns it"
    ),
    "is_near_sink: has_sink part left out: receptacle.room_has_sink": (
        "in this edition a way out of the room ends the cord, so the sink is that of the room"
    ),
    "limit small_heater_current: 13.3 to 10.64": (
        "from 10.64 A to 13.3 A, half as much again comes up to 20 A in the table of breakers, too"
    ),
}


@pytest.mark.parametrize("name", [text.id for text in shipped_packs()])
def test_no_mutant_of_a_shipped_pack_survives(name: str) -> None:
    mutants = list(mutants_of(with_layer(name), name))
    # A layer may only renumber, set rows or change weights: there is nothing in it to mutate.
    assert mutants or base_of(name) != name
    survivors = [mutant.change for mutant in mutants if mutant.survives()]
    assert not [change for change in survivors if change not in ALIKE]


@pytest.mark.parametrize("layer", [BASE, COUNTY])
def test_no_mutant_of_the_examples_survives(layer: str) -> None:
    mutants = list(mutants_of(assemble(texts_of(edited({})), BASE, [layer]), layer))
    assert mutants
    assert not [mutant.change for mutant in mutants if mutant.survives()]


def test_a_missing_proof_lets_a_mutant_survive() -> None:
    breaks = "      - breaks: {wire_end.free_length: 5.9 in}\n"
    case = {"edit": {"wire-ends.yaml": {"from": breaks, "to": ""}}}
    mutants = mutants_of(assemble(texts_of(edited(case)), BASE), BASE)
    assert [mutant.change.partition(":")[0] for mutant in mutants if mutant.survives()] == [
        "limit least_free_length"
    ]
