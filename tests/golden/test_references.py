"""The pages for those who write packs: generated ones as generated, and the layer that is shown.

The generated pages are renewed by `pytest tests/golden/test_references.py --renew-golden`.
"""

import re
from importlib.resources import files

import pytest

from linter.audit.audit import audit
from linter.jobfile import read_job
from linter.language.reference import language_reference
from linter.packs.assemble import assemble
from linter.packs.pack_text import PackText
from linter.packs.prove import prove
from linter.resources import rulesets_dir
from linter.vocabulary.kinds import KINDS
from linter.vocabulary.reference import reference
from tests.cases.shipped_packs import shipped_packs

_GENERATED = "This page is generated; `precover packs words` tells the same."
WORDS = f"""\
# What a rule may speak of

Kinds of thing and their facts. A rule is about one kind; it asks facts by path, such as
`wire_end.box.room.use`.
{_GENERATED}

{reference(KINDS.values())}
"""
GRAMMAR = files("linter.language").joinpath("grammar.lark").read_text(encoding="utf-8")
LANGUAGE = f"""\
# How conditions and values are written

From the whole expression down to the word, each with an example. This page is generated from the
grammar.

{language_reference(GRAMMAR)}"""
PAGES = {"WORDS.md": WORDS, "LANGUAGE.md": LANGUAGE}
LAYER = "us-example-alder-cove"
FROM_NOTHING = "example-skerrow"


@pytest.mark.parametrize("name", PAGES)
def test_a_generated_page_is_as_generated(name: str, renew_golden: bool) -> None:
    saved = rulesets_dir() / name
    if renew_golden:
        saved.write_text(PAGES[name], encoding="utf-8")
    assert saved.read_text(encoding="utf-8") == PAGES[name]


def shown_pack(name: str) -> PackText:
    """The files of a pack that the page for pack writers shows, as they stand there."""
    page = (rulesets_dir() / "README.md").read_text(encoding="utf-8")
    shown = re.findall(rf"`({name}/\w+\.yaml)`[^\n]*\n\n```yaml\n(.*?)```", page, re.DOTALL)
    return PackText(name, dict(shown))


def test_the_layer_that_is_shown_works_and_proves() -> None:
    layer = shown_pack(LAYER)
    assert [path.rpartition("/")[2] for path in layer.files] == ["pack.yaml", "town.yaml"]
    report = prove(assemble([*shipped_packs(), layer], LAYER))
    assert not [each.render() for each in report.failing]


def test_the_pack_from_nothing_that_is_shown_proves_and_finds_what_the_page_says() -> None:
    text = shown_pack(FROM_NOTHING)
    assert [path.rpartition("/")[2] for path in text.files] == ["pack.yaml", "cables.yaml"]
    pack = assemble([text], FROM_NOTHING)
    assert not [each.render() for each in prove(pack).failing]
    page = (rulesets_dir() / "README.md").read_text(encoding="utf-8")
    (shown,) = re.findall(r"`bait-shed\.yaml`:\n\n```yaml\n(.*?)```", page, re.DOTALL)
    audited = audit(read_job(shown, "bait-shed.yaml"), pack)
    found = sorted((each.rule, each.ref) for each in audited.findings)
    assert found == [("box-has-room", "bench"), ("breaker-suits-cable", "out")]
    assert not audited.open
    # Of what a rule looks at through what is worked out from it, nothing is said.
    assert "protection" not in {each.key for each in audited.unlooked}


def test_the_page_names_every_word_of_amendments_and_lookups() -> None:
    page = (rulesets_dir() / "README.md").read_text(encoding="utf-8")
    for word in ("set", "add", "remove", "exact", "next size up", "band", "tiers", "totals"):
        assert f"`{word}`" in page
