from pathlib import Path

from tests.unit.cli.running import BOATHOUSE, PACKS, Runner

EXAMPLES = ("example-boathouse", "example-boathouse-county", "--packs", PACKS)


def test_two_packs_of_one_line_are_compared_name_by_name(precover: Runner) -> None:
    ran = precover("packs", "compare", *EXAMPLES)
    assert ran.status == 0
    assert "1 rule more, 1 rule fewer, 1 limit fewer, 1 limit stated otherwise" in ran.said
    assert "Only in example-boathouse-county rule box-holes-closed, violation; 9-1" in ran.said
    assert "example-boathouse: 6 in example-boathouse-county: 8 in" in ran.said
    assert "row 10 AWG: example-boathouse: nothing example-boathouse-county: 2.6 in3" in ran.said


def test_a_pack_and_itself_do_not_differ(precover: Runner) -> None:
    ran = precover("packs", "compare", "us-nec-2023", "us-nec-2023")
    assert (ran.status, ran.out) == (0, "From us-nec-2023 to us-nec-2023: nothing differs.\n")


def test_packs_without_a_common_layer_are_compared_by_subject(precover: Runner) -> None:
    ran = precover("packs", "compare", "us-nec-2023", "example-boathouse", "--packs", PACKS)
    assert "they share no layer, so they are compared by subject" in ran.said
    assert "least_free_length = 6 in" in ran.said
    # A subject that one of them leaves out is shown as such.
    assert "example-boathouse: nothing" in ran.said


def test_a_saved_job_is_told_what_adopting_would_change(precover: Runner, tmp_path: Path) -> None:
    job = BOATHOUSE.replace("  bench: {", "  bench: {open_holes: 1, ")
    (tmp_path / "jobs" / "holed.yaml").write_text(job, encoding="utf-8")
    said = precover("packs", "compare", *EXAMPLES, "--job", "holed.yaml").said
    assert "Added by example-boathouse-county violation: Box bench has 1 open hole" in said
    assert "leaves 4 in; 8 in is needed" in said
    # What only one of them asks of a job that does not say it.
    untold = "Cannot be told under example-boathouse-county box-holes-closed: top and winch"
    assert untold in said
    back = (*reversed(EXAMPLES[:2]), *EXAMPLES[2:])
    said = precover("packs", "compare", *back, "--job", "holed.yaml").said
    assert "Removed: example-boathouse-county alone says violation: Box bench has 1" in said
    assert "No longer asked for by example-boathouse box-holes-closed: top and winch" in said


def test_adopting_itself_changes_nothing(precover: Runner) -> None:
    both = ("example-boathouse", "example-boathouse", "--packs", PACKS)
    said = precover("packs", "compare", *both, "--job", "boathouse.yaml").said
    assert "if example-boathouse is adopted, no finding is added, removed or changed; " in said


def test_a_job_that_cannot_be_read_is_refused_and_the_others_are_told(
    precover: Runner, tmp_path: Path
) -> None:
    (tmp_path / "jobs" / "broken.yaml").write_text("precover: 1\nboxs: {}\n", encoding="utf-8")
    ran = precover("packs", "compare", *EXAMPLES, "--job", "broken.yaml", "--job", "boathouse.yaml")
    assert ran.status == 65
    assert "broken.yaml:2:1" in ran.err
    assert "boathouse.yaml: " in ran.out


def test_other_than_two_packs_are_not_compared(precover: Runner) -> None:
    assert precover("packs", "compare", "us-nec-2023").status == 64
    assert "No pack is named" in precover("packs", "compare").err
