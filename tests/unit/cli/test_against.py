"""What counts against an earlier audit, and the README's way to check a repository of job files."""

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import jsonschema
import pytest

from linter.resources import schemas_dir
from tests.outside.test_sarif import valid
from tests.unit.cli.running import BOATHOUSE, PACKS, ROOT, Runner

SHORTER = BOATHOUSE.replace("at_from: {free_length: 4 in}", "at_from: {free_length: 3 in}")
LONG = BOATHOUSE.replace("at_from: {free_length: 4 in}", "at_from: {free_length: 7 in}")
SHORT_TOP = BOATHOUSE.replace("at_to: {free_length: unknown}", "at_to: {free_length: 5 in}")
JOB, BEFORE = Path("boathouse.yaml"), Path("before.json")


def before(precover: Runner, text: str = BOATHOUSE) -> None:
    JOB.write_text(text, "utf-8")
    BEFORE.write_text(precover("audit", str(JOB), "--form", "json", "--packs", PACKS).out, "utf-8")


def against(precover: Runner, text: str, *words: str) -> tuple[int, str]:
    JOB.write_text(text, "utf-8")
    ran = precover("audit", str(JOB), "--against", str(BEFORE), "--packs", PACKS, *words)
    return ran.status, ran.said if not words else ran.out


def sign(precover: Runner) -> None:
    words = ("not-a-defect", "--at", "bench", "--because", "Spliced.", "--by", "O.")
    assert precover("signoff", str(JOB), *words, "--packs", PACKS).status == 0


def test_what_was_found_before_is_told_in_short_and_does_not_count(precover: Runner) -> None:
    before(precover)
    status, said = against(precover, "# a remark\n" + BOATHOUSE)
    assert status == 0
    assert "KNOWN BEFORE" in said
    assert "Against before.json: 0 new, 0 changed and 3 known; 0 no longer found." in said
    assert "CANNOT BE TOLD YET" not in said


def test_what_is_new_counts(precover: Runner) -> None:
    before(precover)
    status, said = against(precover, SHORT_TOP)
    assert status == 1
    assert "New: not counted in before.json." in said
    assert "3 new, 0 changed and 3 known" in said


def test_what_rests_on_other_facts_counts_and_says_what_was_told(precover: Runner) -> None:
    before(precover)
    status, said = against(precover, SHORTER)
    assert status == 1
    assert "Changed since before.json: Black of k2 in bench leaves 4 in; 6 in is needed." in said


def test_what_is_put_right_is_said_to_be_gone(precover: Runner) -> None:
    before(precover)
    status, said = against(precover, LONG)
    assert status == 0
    assert "NO LONGER FOUND" in said
    assert "3 no longer found." in said


def test_what_could_be_told_and_cannot_any_more_is_status_3(precover: Runner) -> None:
    before(precover, SHORT_TOP)
    status, said = against(precover, BOATHOUSE)
    assert status == 3
    assert "3 checks could be told then, and cannot now." in said
    assert "CANNOT BE TOLD YET" in said


def test_a_finding_whose_sign_off_is_taken_back_is_new(precover: Runner) -> None:
    before(precover)
    sign(precover)
    before(precover)
    assert against(precover, BOATHOUSE)[0] == 0
    Path("boathouse.sign-off.yaml").unlink()
    status, said = against(precover, BOATHOUSE)
    assert status == 1
    assert "New: not counted in before.json." in said


def test_a_new_finding_that_is_signed_does_not_count(precover: Runner) -> None:
    before(precover, LONG)
    JOB.write_text(BOATHOUSE, "utf-8")
    sign(precover)
    assert against(precover, BOATHOUSE)[0] == 0


def test_a_file_that_was_not_audited_then_is_new_as_a_whole(precover: Runner) -> None:
    before(precover)
    Path("loft.yaml").write_text(BOATHOUSE, "utf-8")
    ran = precover("audit", ".", "--against", str(BEFORE), "--packs", PACKS)
    assert ran.status == 1
    assert "boathouse.yaml: nothing new outstanding loft.yaml: 3 violations" in ran.said


def test_json_and_sarif_tell_what_is_new(precover: Runner) -> None:
    before(precover)
    found = json.loads(against(precover, SHORTER, "--form", "json")[1])
    schema = json.loads((schemas_dir() / "findings.schema.json").read_text("utf-8"))
    jsonschema.validate(found, schema)
    (file,) = found["files"]
    assert {each["against"] for each in file["findings"]} == {"changed"}
    assert (file["outstanding"]["violation"], file["against"]["untold"]) == (3, 0)
    run = valid(against(precover, BOATHOUSE, "--form", "sarif")[1])
    states = {each["baselineState"] for each in run["results"] if each["kind"] == "fail"}
    assert states == {"unchanged"}


@pytest.mark.parametrize(
    "text",
    ["", "{", "[]", '{"precover_findings": 2}', '{"precover_findings": 1, "files": [{}]}',
     '{"precover_findings": 1, "files": [{"outcome": "audited", "file": "a", "findings": 3}]}'],
)  # fmt: skip
def test_what_holds_no_findings_is_refused(precover: Runner, text: str) -> None:
    BEFORE.write_text(text, "utf-8")
    ran = precover("audit", str(JOB), "--against", str(BEFORE), "--packs", PACKS)
    assert ran.status == 65
    assert "before.json:1:" in ran.err
    assert "this file holds no findings of an earlier audit" in ran.err
    assert ran.out == ""


def recipe() -> str:
    """The README's way to check a repository of job files."""
    readme = (ROOT / "README.md").read_text("utf-8")
    found = re.search(r"<!-- new findings only -->\n```sh\n(.*?)```", readme, re.DOTALL)
    assert found
    return found[1]


def test_the_recipe_fails_on_what_is_new_against_the_main_branch_alone(tmp_path: Path) -> None:
    """A repository that is thrown away: a branch that mends one thing, and one that breaks one."""
    home, work = tmp_path / "home.git", tmp_path / "work"
    bin_ = tmp_path / "bin"
    bin_.mkdir()
    program = bin_ / "precover"
    program.write_text(f'#!/bin/sh\nexec {sys.executable} -m linter "$@"\n', "utf-8")
    program.chmod(0o755)
    environment = {
        **os.environ, "PATH": f"{bin_}:{os.environ['PATH']}", "PYTHONPATH": str(ROOT),
        "XDG_CACHE_HOME": str(tmp_path / "cache"), "HOME": str(tmp_path),
        "GIT_CONFIG_GLOBAL": os.devnull, "GIT_CONFIG_SYSTEM": os.devnull,
        "GIT_AUTHOR_NAME": "O. Tarn", "GIT_AUTHOR_EMAIL": "tarn@example.org",
        "GIT_COMMITTER_NAME": "O. Tarn", "GIT_COMMITTER_EMAIL": "tarn@example.org",
    }  # fmt: skip

    def run(script: str) -> tuple[int, str]:
        command = ["/bin/sh", "-c", script]
        done = subprocess.run(  # noqa: S603  our own script, in a folder of our own
            command, cwd=work, env=environment, capture_output=True, text=True, check=False
        )
        return done.returncode, done.stdout + done.stderr

    def committed(text: str) -> None:
        (work / "jobs/boathouse.yaml").write_text(text, "utf-8")
        status, said = run("git add -A && git commit -qm change --allow-empty")
        assert status == 0, said

    (work / "jobs").mkdir(parents=True)
    packs = work / "jobs/packs"
    packs.mkdir()
    (packs / "example-boathouse").symlink_to(Path(PACKS) / "example-boathouse")
    assert run("git init -qb main .")[0] == 0
    committed(BOATHOUSE)
    assert (
        run(f"git clone -q --bare . {home} && git remote add origin {home} && git fetch -q")[0] == 0
    )
    checked = {}
    for name, text in (("same", BOATHOUSE), ("mended", LONG), ("broken", SHORT_TOP)):
        assert run(f"git checkout -q main && git checkout -qb {name}")[0] == 0
        committed(text)
        checked[name] = run(recipe())
    assert {name: status for name, (status, _) in checked.items()} == {
        "same": 0, "mended": 0, "broken": 1,
    }, checked  # fmt: skip
    assert "3 no longer found." in checked["mended"][1]
    assert "New: not counted in before.json." in checked["broken"][1]
