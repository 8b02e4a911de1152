"""The declaration of kinds and facts holds together, and reads as trade English."""

from keyword import iskeyword

import pytest

from linter.units import read_quantity
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.model import NOT_FACTS, Fact, Kind, Shape
from linter.vocabulary.reference import reference

FACTS = [
    pytest.param(kind, fact, id=f"{kind.name}.{fact.name}")
    for kind in KINDS.values()
    for fact in kind.facts
]


@pytest.mark.parametrize("kind", KINDS.values(), ids=lambda kind: kind.name)
def test_a_kind_names_each_fact_once(kind: Kind) -> None:
    names = [fact.name for fact in kind.facts]
    assert len(set(names)) == len(names)
    assert kind.name.isidentifier()
    assert kind.plural != kind.label


@pytest.mark.parametrize(("kind", "fact"), FACTS)
def test_a_fact_can_be_an_attribute_of_a_thing(kind: Kind, fact: Fact) -> None:
    assert fact.name.isidentifier()
    assert not iskeyword(fact.name)
    assert fact.name not in NOT_FACTS
    assert kind.fact(fact.name) is fact


@pytest.mark.parametrize(("kind", "fact"), FACTS)
def test_a_fact_says_what_it_means_and_how_to_learn_it(kind: Kind, fact: Fact) -> None:
    assert fact.meaning
    assert not fact.meaning.endswith(".")
    assert fact.meaning[0].islower() or fact.meaning.startswith("0"), kind.name
    assert not fact.ask or (fact.ask[0].isupper() and fact.ask.endswith("."))


@pytest.mark.parametrize(("kind", "fact"), FACTS)
def test_yes_no_facts_are_told_by_whether(kind: Kind, fact: Fact) -> None:
    is_yes_no = fact.type.shape is Shape.YES_NO
    assert fact.meaning.startswith("whether") == is_yes_no, kind.name


@pytest.mark.parametrize(("kind", "fact"), FACTS)
def test_the_example_of_a_fact_is_of_its_type(kind: Kind, fact: Fact) -> None:
    type_ = fact.type
    match type_.shape:
        case Shape.QUANTITY:
            assert read_quantity(fact.example, type_.dimension).dimension == type_.dimension
        case Shape.YES_NO:
            assert fact.example in ("yes", "no")
        case Shape.WORD:
            assert fact.example in type_.words
            assert len(set(type_.words)) == len(type_.words)
        case Shape.TEXT:
            assert fact.example
        case Shape.THING | Shape.THINGS:
            assert fact.example == ""
            assert type_.kind in KINDS, kind.name


def test_the_reference_has_a_row_for_every_fact() -> None:
    rows = [line for line in reference(KINDS.values()).splitlines() if line.startswith("| `")]
    assert len(rows) == len(FACTS)
    assert all(row.count("|") == 6 for row in rows)
