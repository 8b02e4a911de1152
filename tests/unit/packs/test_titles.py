"""Titles of rules in a further language, as a manifest states them."""

import pytest

from linter.packs.assemble import assemble
from linter.packs.data import pack_from_data, pack_to_data
from linter.text import Refused
from tests.cases.small_packs import BASE, COUNTY, edited, texts_of

TITLE = 'extends: nothing\ntitles: {fr: {%s: "Titre"}}'


def titled(rule: str) -> dict[str, object]:
    return {"edit": {"pack.yaml": {"from": "extends: nothing", "to": TITLE % rule}}}


def test_a_layer_keeps_the_titles_of_the_pack_below() -> None:
    texts = texts_of(edited(titled("wire-end-long-enough")))
    for layers in ([], [COUNTY]):
        pack = assemble(texts, BASE, layers)
        assert pack.titles == {"fr": {"wire-end-long-enough": "Titre"}}
        assert pack_from_data(pack_to_data(pack)).titles == pack.titles


def test_a_title_of_no_rule_is_refused_with_the_nearest_name() -> None:
    with pytest.raises(Refused) as caught:
        assemble(texts_of(edited(titled("wire-end-long-enuf"))), BASE)
    (refusal,) = caught.value.refusals
    assert '"wire-end-long-enuf" is not a rule' in refusal.found
    assert refusal.nearest == ("wire-end-long-enough",)


def test_a_pack_without_titles_has_none() -> None:
    assert assemble(texts_of(edited({})), BASE).titles == {}
