import io
import json
import sys
from pathlib import Path

import pytest

from linter.audit import judging
from linter.cli.addresses import Finder
from tests.unit.cli.running import BOATHOUSE, PACKS, Runner, sound

ONLY_UNKNOWN = sound().replace("at_to: {free_length: 7 in}", "at_to: {free_length: unknown}")
ONLY_FINDING = sound().replace("at_from: {free_length: 7 in}", "at_from: {free_length: 4 in}")


def save(name: str, text: str) -> None:
    path = Path(name)
    path.parent.mkdir(exist_ok=True)
    path.write_text(text, encoding="utf-8")


def test_nothing_outstanding_is_status_0(precover: Runner) -> None:
    save("a.yaml", sound())
    assert precover("audit", "a.yaml", "--packs", PACKS).status == 0


def test_findings_are_status_1_and_told_on_standard_output(precover: Runner) -> None:
    ran = precover("audit", "boathouse.yaml", "--packs", PACKS)
    assert (ran.status, ran.err) == (1, "")
    assert "4 in; 6 in is needed" in ran.out


def test_what_cannot_be_told_is_status_3(precover: Runner) -> None:
    save("a.yaml", ONLY_UNKNOWN)
    ran = precover("audit", "a.yaml", "--packs", PACKS)
    assert ran.status == 3
    assert "free length at 1 box: settles" in ran.out


@pytest.mark.parametrize(
    ("text", "weight", "status"),
    [
        (ONLY_FINDING, "advice", 1),
        (ONLY_FINDING, "violation", 1),
        (ONLY_FINDING, "danger", 0),
        (ONLY_UNKNOWN, "violation", 3),
        (ONLY_UNKNOWN, "danger", 0),
    ],
)
def test_the_status_looks_at_the_weight_that_counts_and_above(
    precover: Runner, text: str, weight: str, status: int
) -> None:
    save("a.yaml", text)
    assert precover("audit", "a.yaml", "--hold-on", weight, "--packs", PACKS).status == status


def test_a_refused_file_is_status_65_and_the_others_are_still_audited(precover: Runner) -> None:
    save("broken.yaml", BOATHOUSE.replace("holds: receptacle", "holds: recepticle", 1))
    ran = precover("audit", "broken.yaml", "boathouse.yaml", "--packs", PACKS)
    assert ran.status == 65
    assert "recepticle" in ran.err
    assert "Nearest: receptacle." in ran.err
    assert "4 in; 6 in is needed" in ran.out
    assert "1 file was not audited" in ran.out


def test_every_mistake_of_every_file_is_said_in_one_run(precover: Runner) -> None:
    wrong = BOATHOUSE.replace("to: top, at_to", "to: tip, at_to").replace(
        "room: loft", "room: lift"
    )
    save("a.yaml", wrong)
    save("b.yaml", wrong)
    said = precover("audit", "a.yaml", "b.yaml", "--packs", PACKS).err
    for words in ("a.yaml", "b.yaml", '"tip"', '"lift"'):
        assert words in said


def test_a_file_that_is_not_there_is_refused_with_the_nearest_name(precover: Runner) -> None:
    ran = precover("audit", "boathose.yaml", "--packs", PACKS)
    assert ran.status == 65
    assert "boathose.yaml:1:1  there is no such file." in ran.err
    assert "Nearest: boathouse.yaml." in ran.err


def test_a_file_that_is_no_text_is_refused_where_it_stops_being_one(precover: Runner) -> None:
    Path("a.yaml").write_bytes(b"precover: 1\njob: {name: \xff}\n")
    ran = precover("audit", "a.yaml", "--packs", PACKS)
    assert ran.status == 65
    assert "a.yaml:2:13  a character here is not written in UTF-8." in ran.err


def test_a_job_whose_pack_is_unknown_is_refused_at_its_line(precover: Runner) -> None:
    save("a.yaml", BOATHOUSE.replace("pack: example-boathouse", "pack: example-boathose"))
    ran = precover("audit", "a.yaml", "--packs", PACKS)
    assert ran.status == 65
    assert 'a.yaml:3:30  "example-boathose" is not a rule pack at hand.' in ran.err
    assert "Nearest: example-boathouse" in ran.err


def test_layers_are_applied(precover: Runner) -> None:
    save("a.yaml", sound().replace("stage:", "layers: [example-boathouse-county], stage:"))
    ran = precover("audit", "a.yaml", "--packs", PACKS)
    assert ran.status == 1
    assert "7 in; 8 in is needed" in ran.out
    assert "9-2 of Reedmere County Code 2022" in " ".join(ran.out.split())


def test_a_folder_stands_for_its_job_files_and_says_what_it_leaves_out(precover: Runner) -> None:
    save("saved/b.yaml", sound())
    save(
        "saved/a.json",
        '{"precover": 1, "job": {"name": "Winch hut", "pack": "example-boathouse", '
        '"stage": "pulled"}, "supplies": {"shore": {"voltage": "120 V"}}}',
    )
    save("saved/shopping.yaml", "staples: 2 boxes\n")
    save("saved/notes.txt", "precover: 1\n")
    ran = precover("audit", "saved", "--packs", PACKS)
    assert ran.status == 0
    assert ran.out.index("saved/a.json") < ran.out.index("saved/b.yaml")
    assert "saved/shopping.yaml is left out" in ran.err
    assert "notes.txt" not in ran.err


def test_a_folder_without_a_job_file_is_refused(precover: Runner) -> None:
    Path("empty").mkdir()
    ran = precover("audit", "empty", "--packs", PACKS)
    assert ran.status == 65
    assert "this folder holds no job file" in ran.err


def test_a_file_named_twice_is_audited_once(precover: Runner) -> None:
    ran = precover("audit", "boathouse.yaml", "boathouse.yaml", "--packs", PACKS)
    assert ran.out.count("Boathouse, made up") == 1


def test_a_hyphen_stands_for_standard_input(
    precover: Runner, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(BOATHOUSE.encode())))
    ran = precover("audit", "-", "--packs", PACKS)
    assert ran.status == 1
    assert "at standard input:" in ran.out


def test_the_json_form_holds_the_same_findings(precover: Runner) -> None:
    ran = precover("audit", "--form", "json", "boathouse.yaml", "--packs", PACKS)
    document = json.loads(ran.out)
    assert ran.status == 1
    assert document["counts"]["violation"] == len(
        [each for each in document["files"][0]["findings"] if each["weight"] == "violation"]
    )


def test_control_characters_of_a_job_do_not_reach_the_terminal(precover: Runner) -> None:
    save("a.yaml", BOATHOUSE.replace("name: Boathouse", 'name: "Boat\\e[2J\\u202ehouse"'))
    for form in ("text", "json"):
        ran = precover("audit", "a.yaml", "--form", form, "--packs", PACKS)
        assert "\x1b" not in ran.out + ran.err
        assert "\u202e" not in ran.out + ran.err


def test_a_mistake_of_ours_is_status_70_and_names_rule_and_subject(
    precover: Runner, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*_: object) -> object:
        def judge(_: object) -> object:
            raise ZeroDivisionError("by hand")

        return judge

    save("b.yaml", BOATHOUSE.replace("room: loft", "room: lift"))
    monkeypatch.setattr(judging, "judging", broken)
    ran = precover("audit", "b.yaml", "boathouse.yaml", "--packs", PACKS)
    assert ran.status == 70
    assert "While judging the rule box-has-room for box top." in ran.err
    assert "While auditing boathouse.yaml." in ran.err
    assert "ZeroDivisionError: by hand" in ran.err
    assert '"lift"' in ran.err
    assert "Traceback" not in ran.err


def test_a_row_that_a_table_lacks_is_said_with_what_was_looked_up(precover: Runner) -> None:
    save("a.yaml", sound().replace("sheath: 12/2 NM-B, free", "sheath: 10/2 NM-B, free"))
    ran = precover("audit", "a.yaml", "--packs", PACKS)
    assert ran.status == 3
    assert "no row in conductor volume for 10 AWG at all 3 boxes: holds up 3 checks" in ran.said
    assert "box-has-room: 3 checks" in ran.said


def beside(name: str, old: str = "", new: str = "") -> None:
    """Copies the example packs into a folder `packs` beside a job, one text of them changed."""
    for pack in sorted(Path(PACKS).iterdir()):
        for path in pack.glob("*.yaml"):
            copy = Path(name).parent / "packs" / pack.name / path.name
            copy.parent.mkdir(parents=True, exist_ok=True)
            copy.write_text(path.read_text(encoding="utf-8").replace(old, new), encoding="utf-8")


def test_packs_beside_the_job_file_are_looked_into(precover: Runner) -> None:
    save("town/a.yaml", BOATHOUSE)
    beside("town/a.yaml")
    ran = precover("audit", "town/a.yaml", "boathouse.yaml")
    assert ran.status == 65
    assert "4 in; 6 in is needed" in ran.out
    assert 'boathouse.yaml:3:30  "example-boathouse" is not a rule pack at hand' in ran.err
    assert "put yours into a folder packs beside the job file" in ran.err


def test_packs_that_are_named_hold_instead_of_those_beside(precover: Runner) -> None:
    save("town/a.yaml", BOATHOUSE)
    beside("town/a.yaml", "value: 6 in", "value: 5 in")
    assert "4 in; 5 in is needed" in precover("audit", "town/a.yaml").out
    assert "4 in; 6 in is needed" in precover("audit", "town/a.yaml", "--packs", PACKS).out


def test_a_pack_beside_the_job_does_not_take_the_name_of_one_that_comes_with_precover(
    precover: Runner,
) -> None:
    save("town/a.yaml", BOATHOUSE)
    beside("town/a.yaml")
    Path("town/packs/example-boathouse").rename("town/packs/us-nec-2023")
    ran = precover("audit", "town/a.yaml")
    assert ran.status == 65
    assert '"town/packs/us-nec-2023" has the name of a pack that comes with precover' in ran.err


def test_packs_within_a_folder_of_jobs_are_no_jobs(precover: Runner) -> None:
    save("town/a.yaml", BOATHOUSE)
    beside("town/a.yaml")
    ran = precover("audit", "town")
    assert ran.status == 1
    assert ran.err == (
        "town/packs/example-boathouse is left out: it is a rule pack, not a job.\n"
        "town/packs/example-boathouse-county is left out: it is a rule pack, not a job.\n"
    )


def test_the_working_is_brief_unless_the_words_of_the_rules_are_asked_for(
    precover: Runner,
) -> None:
    brief = precover("audit", "boathouse.yaml", "--packs", PACKS)
    assert "free length 4 in; least free length 6 in: short by 2 in" in brief.said
    full = precover("audit", "boathouse.yaml", "--packs", PACKS, "--working", "full")
    assert "wire_end.free_length at least least_free_length" in full.said
    assert precover("audit", "boathouse.yaml", "--working", "long").status == 64


def test_where_nothing_was_audited_no_row_of_noughts_is_shown(precover: Runner) -> None:
    save("broken.yaml", "precover: 2\n")
    ran = precover("audit", "broken.yaml", "--packs", PACKS)
    assert ran.status == 65
    assert ran.out.startswith("NOT AUDITED")
    assert "0 dangers" not in ran.out


def test_sarif_is_told_from_the_root_of_the_repository(precover: Runner) -> None:
    Path("../.git").mkdir()
    log = json.loads(precover("audit", "boathouse.yaml", "--form", "sarif", "--packs", PACKS).out)
    (fail, *_) = [each for each in log["runs"][0]["results"] if each["kind"] == "fail"]
    artifact = fail["locations"][0]["physicalLocation"]["artifactLocation"]
    assert artifact == {"uri": "jobs/boathouse.yaml", "uriBaseId": "ROOT"}


@pytest.mark.parametrize(
    ("name", "address"),
    [
        ("a b.yaml", "jobs/a%20b.yaml"),
        ("../jobs/./x.yaml", "jobs/x.yaml"),
        ("../../elsewhere/x.yaml", "x.yaml"),
        ("standard input", ""),
    ],
)
def test_an_address_tells_no_path_of_the_machine(precover: Runner, name: str, address: str) -> None:
    assert precover("--version").status == 0  # the folder of the test is where we are
    Path("../.git").mkdir()
    assert Finder()(name) == address
