"""Editions laid on each other: which edition is cited, what is not confirmed, what is held."""

import pytest

from linter.audit.judging import in_force
from linter.packs.assemble import assemble
from linter.packs.model import Pack, Unsure
from linter.packs.prove import cases_of, failing_cases, prove
from linter.text import Refused
from tests.cases.small_packs import BASE, COUNTY, GUILD, Files, edited, texts_of, with_guild

MANIFEST = (
    "pack: {id}\ntitle: Later\njurisdiction: Lakeland\ndocument: Boathouse Wiring Code\n"
    'edition: "{edition}"\nextends: {on}\nversion: 0.1.0\n{more}'
)
WEIGHT_OF_ROOM = "violation"


def editions(later: str, more: str = "", on: str = BASE) -> Pack:
    """The example code with a later edition on it, which says what is given."""
    files = with_guild(later)
    if not later:
        del files[GUILD]["own.yaml"]
    files[GUILD]["pack.yaml"] = MANIFEST.format(id=GUILD, edition="2030", on=on, more=more)
    return assemble(texts_of(files), GUILD)


def cited(pack: Pack, rule: str = "box-has-room") -> tuple[str, str, str]:
    clause = pack.rule(rule).clause
    return clause.id, clause.edition, clause.unconfirmed_in


def test_what_a_later_edition_takes_over_is_cited_in_it() -> None:
    pack = editions("")
    assert cited(pack) == ("3-1", "2030", "")
    assert pack.rule("box-has-room").history.clause.edition == "2021"
    assert {each.history.cited[0].edition for each in pack.limits.values()} == {"2030"}


def test_a_layer_of_another_document_leaves_the_edition() -> None:
    assert cited(assemble(texts_of(edited({})), BASE, [COUNTY])) == ("3-1", "2021", "")


@pytest.mark.parametrize(("more", "edition"), [("", ""), (', edition: "2024"', "2024")])
def test_a_clause_of_another_document_has_no_edition_but_its_own(more: str, edition: str) -> None:
    files = edited({})
    own = f"{{id: R314.3, known: read, document: Residential book{more}"
    files[BASE]["boxes.yaml"] = files[BASE]["boxes.yaml"].replace("{id: 3-1, known: read", own)
    clause = assemble(texts_of(files), BASE).rule("box-has-room").clause
    assert (clause.document, clause.edition) == ("Residential book", edition)


def test_what_is_not_confirmed_is_held_to_advice_and_cited_where_it_was_known_to_hold() -> None:
    pack = editions("", "inherited: not confirmed\n")
    rule = pack.rule("box-has-room")
    assert cited(pack) == ("3-1", "2021", "Boathouse Wiring Code 2030")
    assert (rule.weight, rule.stated_weight) == ("advice", WEIGHT_OF_ROOM)
    assert rule.unsure == (Unsure("rule", "box-has-room", "not confirmed for this edition"),)


def test_a_layer_of_another_document_may_say_that_what_it_takes_over_is_not_confirmed() -> None:
    files = with_guild("")
    del files[GUILD]["own.yaml"]
    files[GUILD]["pack.yaml"] += "inherited: not confirmed\n"
    pack = assemble(texts_of(files), GUILD)
    assert cited(pack) == ("3-1", "2021", "Guild book 3")
    assert pack.rule("box-has-room").weight == "advice"


def test_what_is_confirmed_weighs_what_it_weighed() -> None:
    confirms = "confirms:\n  - {rules: [box-has-room], clause: {id: 3-4, known: memory}}\n"
    pack = editions(confirms, "inherited: not confirmed\n")
    assert cited(pack) == ("3-4", "2030", "")
    assert (pack.rule("box-has-room").weight, pack.rule("box-has-room").unsure) == (
        WEIGHT_OF_ROOM,
        (),
    )
    assert pack.rule("wire-end-long-enough").weight == "advice"


def test_what_an_unconfirmed_edition_amends_or_renumbers_is_known_to_hold_in_it() -> None:
    amends = (
        "amends:\n  - {rule: box-has-room, need: box.marked_volume more than fill, "
        "clause: {id: 3-5, known: memory}, reason: Room.}\n"
        "renumbers:\n  - {rules: [wire-end-long-enough], clause: {id: 4-9, known: memory}}\n"
    )
    pack = editions(amends, "inherited: not confirmed\n")
    assert cited(pack) == ("3-5", "2030", "")
    assert cited(pack, "wire-end-long-enough") == ("4-9", "2030", "")


def test_a_later_layer_confirms_nothing_by_standing_on_an_unconfirmed_edition() -> None:
    files = with_guild("")
    del files[GUILD]["own.yaml"]
    files[GUILD]["pack.yaml"] = MANIFEST.format(
        id=GUILD, edition="2030", on=BASE, more="inherited: not confirmed\n"
    )
    files["newest"] = {"pack.yaml": MANIFEST.format(id="newest", edition="2033", on=GUILD, more="")}
    assert cited(assemble(texts_of(files), "newest")) == (
        "3-1",
        "2021",
        "Boathouse Wiring Code 2033",
    )


def test_a_limit_of_low_confidence_holds_the_rules_that_use_it_to_advice() -> None:
    low = (
        "amends:\n  - {limit: share_of_bonds, value: 0.5, "
        "clause: {id: 3-2, known: memory, confidence: low}, reason: Heard of it.}\n"
    )
    pack = editions(low)
    rule = pack.rule("box-has-room")
    assert (rule.weight, rule.stated_weight) == ("advice", WEIGHT_OF_ROOM)
    assert rule.unsure == (Unsure("limit", "share_of_bonds", "low confidence"),)
    assert pack.rule("wire-end-long-enough").weight == WEIGHT_OF_ROOM


def test_a_rule_of_low_confidence_is_held_however_it_is_numbered() -> None:
    files = with_low_rule(
        "renumbers:\n  - {rules: [box-has-room], clause: {id: 3-6, known: memory}}"
    )
    held = assemble(texts_of(files), BASE).rule("box-has-room")
    assert (held.weight, held.unsure[0].why) == ("advice", "low confidence")
    assert assemble(texts_of(files), GUILD).rule("box-has-room").unsure == held.unsure


def test_what_is_renumbered_was_read_where_it_was_read_before() -> None:
    pack = editions("renumbers:\n  - {rules: [box-has-room], clause: {id: 3-6, known: memory}}\n")
    clause = pack.rule("box-has-room").clause
    assert (clause.id, clause.edition, clause.known) == ("3-6", "2030", "read")
    assert clause.source == pack.rule("box-has-room").history.clause.source


def with_low_rule(later: str) -> Files:
    """The example code with a rule of low confidence, and a later edition on it."""
    low = "    clause: {id: 3-1, known: memory, confidence: low}\n    weight"
    sure = "    clause: {id: 3-1, known: read, source: handout-3}\n    weight"
    files = edited({"edit": {"boxes.yaml": {"from": sure, "to": low}}})
    manifest = MANIFEST.format(id=GUILD, edition="2030", on=BASE, more="")
    return files | {GUILD: {"pack.yaml": manifest, "own.yaml": later}}


AT_REST = """adds:
  limits:
    - {limit: boxes_are_whole_by_law, value: no, clause: {id: 5-1, known: memory}, meaning: asked}
  rules:
    - rule: box-has-no-open-hole
      about: box
      where: boxes_are_whole_by_law and box.is_metal
      need: box.open_holes is 0
      clause: {id: 5-1, known: memory}
      weight: violation
      say: "{box} has {box.open_holes} open holes."
      do: "Close them."
      given: {box.is_metal: yes}
      proofs:
        - holds: {box.open_holes: 0}
        - breaks: {box.open_holes: 1}
        - does not apply: {box.is_metal: no}
        - {cannot tell: {box.open_holes: unknown}, because: [box.open_holes]}
"""


def test_a_rule_rests_while_a_limit_says_no_and_its_cases_run_all_the_same() -> None:
    pack = editions(AT_REST)
    assert pack.rule("box-has-no-open-hole").at_rest_by == "boxes_are_whole_by_law"
    assert "box-has-no-open-hole" not in {each.name for each in in_force(pack.rules, None)}
    assert not prove(pack).failing


def test_a_layer_that_turns_the_limit_puts_the_rule_in_force() -> None:
    files = with_guild(AT_REST)
    turned = (
        "amends:\n  - {limit: boxes_are_whole_by_law, value: yes, "
        "clause: {id: 7, known: memory}, reason: The town asks it.}\n"
    )
    manifest = MANIFEST.format(id="town", edition="1", on=GUILD, more="")
    files["town"] = {"pack.yaml": manifest, "own.yaml": turned}
    pack = assemble(texts_of(files), "town")
    assert not pack.rule("box-has-no-open-hole").at_rest_by
    assert "box-has-no-open-hole" in {each.name for each in in_force(pack.rules, None)}
    assert not prove(pack).failing


def test_a_rule_that_rests_and_applies_after_all_is_told_by_its_cases() -> None:
    pack = editions(AT_REST)
    awake = pack._replace(library=pack.library.with_limit("boxes_are_whole_by_law", value=True))
    cases = cases_of(pack)["rule", "box", "box-has-no-open-hole"]
    assert {each.actual for each in failing_cases(awake, cases)} == {"it applies"}


def test_what_was_of_low_confidence_is_confirmed_in_a_later_edition() -> None:
    confirms = "confirms:\n  - {rules: [box-has-room], clause: {id: 3-1, known: memory}}\n"
    files = with_low_rule(confirms)
    assert assemble(texts_of(files), GUILD).rule("box-has-room").weight == WEIGHT_OF_ROOM


def test_the_proofs_of_a_layer_are_those_that_it_touches_and_no_failing_one_is_left_out() -> None:
    unproved = (
        "amends:\n  - {limit: least_free_length, value: 9 in, "
        "clause: {id: 1, known: memory}, reason: Longer.}\n"
    )
    pack = editions(unproved)
    whole, touched = prove(pack), prove(pack, GUILD)
    assert 0 < touched.cases < whole.cases
    assert touched.failing == whole.failing
    assert {each.name for each in touched.failing} == {"wire-end-long-enough"}


def test_a_row_that_a_layer_adds_and_no_case_looks_up_is_told_in_the_proofs_of_the_layer() -> None:
    unproved = (
        "amends:\n  - {table: conductor_volume, add: [[10 AWG, 2.6 in3]], "
        "clause: {id: 2, known: memory}, reason: More.}\n"
    )
    pack = editions(unproved)
    assert prove(pack, GUILD).failing == prove(pack).failing
    assert [each.name for each in prove(pack, GUILD).failing] == ["conductor_volume"]


WORDS = (
    "adds:\n  limits:\n    - {limit: wet_rooms, of: words, value: [kitchen, laundry], "
    "clause: {id: 6-1, known: memory}}\n"
)


def wet_rooms(change: str) -> tuple[str, ...]:
    """The list of words of a guild after a town amends it."""
    files = with_guild(WORDS)
    amends = (
        f"amends:\n  - {{limit: wet_rooms, {change}, clause: {{id: 1, known: memory}}, reason: x}}"
    )
    manifest = MANIFEST.format(id="town", edition="1", on=GUILD, more="")
    files["town"] = {"pack.yaml": manifest, "own.yaml": amends}
    value = assemble(texts_of(files), "town").limits["wet_rooms"].value
    assert isinstance(value, tuple)
    return value


def test_words_are_added_to_a_list_and_taken_from_it() -> None:
    assert wet_rooms("add: [bathroom]") == ("kitchen", "laundry", "bathroom")
    assert wet_rooms("add: [bathroom], remove: [kitchen]") == ("laundry", "bathroom")
    assert wet_rooms("remove: [kitchen, laundry]") == ()


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ("add: [kitchen]", '"kitchen" is among the words'),
        ("remove: [kitchn]", '"kitchn" is not among the words'),
        ("add: [hall], value: [kitchen]", "amended twice in this layer: its words"),
    ],
)
def test_a_word_that_is_there_already_or_is_not_is_refused(change: str, said: str) -> None:
    with pytest.raises(Refused, match=said):
        wet_rooms(change)
