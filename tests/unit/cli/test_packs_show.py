from tests.unit.cli.running import PACKS, Runner

COUNTY = ("--pack", "us-example-fernhollow-county")


def test_a_rule_is_shown_once_by_the_pack_that_stands_by_itself(precover: Runner) -> None:
    said = precover("packs", "show", "wire-end-long-enough", "--packs", PACKS).said
    assert said.count("wire-end-long-enough, violation, by") == 1
    assert "by example-boathouse About" in said
    assert precover("packs", "show", "wire-end-long-enough", *COUNTY).said.count("county") > 0


def test_a_rule_that_several_countries_have_is_shown_for_each(precover: Runner) -> None:
    said = precover("packs", "show", "wire-end-long-enough").said
    assert "wire-end-long-enough, violation, by ca-cec-2018" in said
    assert "wire-end-long-enough, violation, by us-nec-2017" in said
    assert "by ca-cec-2021 About" not in said


def test_a_pack_is_shown_as_its_rules_by_subject_with_their_clauses(precover: Runner) -> None:
    ran = precover("packs", "show", "us-nec-2023")
    assert ran.status == 0
    assert "\n  box fill\n    box-has-room: 314.16, violation\n" in ran.out


def test_a_clause_is_shown_as_the_rules_that_stand_on_it(precover: Runner) -> None:
    ran = precover("packs", "show", "210.8")
    assert ran.status == 0
    assert "room-receptacles-ground-fault-protected: 210.8(A), violation" in ran.out
    assert "box-has-room" not in ran.out


def test_a_rule_that_a_layer_took_away_is_told_with_the_reason(precover: Runner) -> None:
    said = precover("packs", "show", "outdoor-outlets-ground-fault-protected", *COUNTY).said
    assert "withdrawn by us-example-fernhollow-county, at rulesets/" in said
    assert "leaves wired outlets outdoors to the instructions of the equipment" in said


def test_a_name_that_is_no_rule_is_not_answered_with_all_names(precover: Runner) -> None:
    ran = precover("packs", "show", "nothing-of-the-kind")
    assert ran.status == 64
    assert "box-has-room" not in ran.err
    assert '"precover packs show ca-cec-2018" lists its rules' in ran.err
