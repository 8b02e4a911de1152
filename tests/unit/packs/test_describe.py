"""One rule laid open, with the layer and line behind each value it uses."""

import pytest

from linter.packs.assemble import assemble
from linter.packs.describe import describe, sentence_text, steps_of
from linter.packs.model import Pack
from tests.cases.small_packs import BASE, COUNTY, edited, texts_of


@pytest.fixture(scope="module")
def pack() -> Pack:
    return assemble(texts_of(edited({})), BASE, [COUNTY])


def test_a_rule_shows_what_it_uses_through_its_measure(pack: Pack) -> None:
    found = describe(pack, "box-has-room")
    assert found.where == "box.volume_is_marked"
    assert [each.name for each in found.limits] == [
        "bonds_counted_as_one", "no_bonds", "no_volume", "share_of_bonds",
    ]  # fmt: skip
    assert [each.table.name for each in found.tables] == ["conductor_volume"]
    assert [each.measure.name for each in found.measures] == ["fill"]
    assert ("wire_end", "size") in found.facts
    assert [each.outcome for each in found.proofs] == [
        "holds", "breaks", "does not apply", "cannot tell",
    ]  # fmt: skip


def test_a_row_and_a_limit_say_which_layer_they_came_from(pack: Pack) -> None:
    [table] = describe(pack, "box-has-room").tables
    layers = {row.written[0]: (row.origin.layer, row.clause.document) for row in table.rows}
    assert layers == {
        "14 AWG": (BASE, "Boathouse Wiring Code"),
        "12 AWG": (BASE, "Boathouse Wiring Code"),
        "10 AWG": (COUNTY, "Reedmere County Code"),
    }
    [limit] = describe(pack, "wire-end-long-enough").limits
    [amendment] = limit.history.amendments
    assert (limit.written, amendment.origin.layer, amendment.reason) == (
        "8 in", COUNTY, "Reedmere asks for longer ends.",
    )  # fmt: skip
    assert limit.history.origin.layer == BASE


def test_a_rule_of_which_a_layer_changes_only_proofs_keeps_its_clause(pack: Pack) -> None:
    found = describe(pack, "wire-end-long-enough")
    assert (found.rule.clause.document, found.rule.clause.id) == ("Boathouse Wiring Code", "4-2")
    [limit] = found.limits
    clause, origin = limit.history.cited
    assert (clause.document, clause.id, origin.layer) == ("Reedmere County Code", "9-2", COUNTY)
    assert clause.source is not None
    assert clause.source.title == "Notice 9 of the county"


def test_sentences_and_steps_are_shown_as_a_pack_states_them(pack: Pack) -> None:
    found = describe(pack, "wire-end-long-enough")
    assert found.say == "{wire_end} leaves {wire_end.free_length}; {least_free_length} is needed."
    assert sentence_text(found.rule.do) == found.do
    names = [name for name, _ in steps_of(pack.measures["box", "fill"])]
    assert names == ["conductors", "largest_bond", "more_bonds", "bonds", "total"]


def test_a_rule_that_is_not_there_is_no_rule(pack: Pack) -> None:
    with pytest.raises(KeyError):
        describe(pack, "spare-wire-end-capped")  # the county withdrew it
    assert [each.name for each in pack.withdrawn] == ["spare-wire-end-capped", "unused"]
