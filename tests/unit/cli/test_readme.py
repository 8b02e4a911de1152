"""What the README promises a new user, run as they would run it."""

import json
import re
from pathlib import Path

from tests.unit.cli.running import ROOT, Runner

README = (ROOT / "README.md").read_text(encoding="utf-8")


def _block(mark: str) -> str:
    """The block of code that stands after a mark."""
    found = re.search(rf"<!-- {mark} -->\n```\w+\n(.*?)```", README, re.DOTALL)
    assert found, mark
    return found.group(1)


def _broken(told: str) -> set[str]:
    return {finding["rule"] for finding in json.loads(told)["files"][0]["findings"]}


def test_the_first_job_has_the_two_mistakes_that_are_named(precover: Runner) -> None:
    Path("net-shed.yaml").write_text(_block("first job"), encoding="utf-8")
    ran = precover("audit", "net-shed.yaml", "--form", "json")
    assert ran.status == 1
    assert _broken(ran.out) == {"breaker-protects-the-wire", "wire-end-long-enough"}


def test_put_right_as_told_the_first_job_only_asks(precover: Runner) -> None:
    mended = _block("first job").replace("20 A", "15 A").replace(", at_to: {free_length: 5 in}", "")
    Path("net-shed.yaml").write_text(mended, encoding="utf-8")
    ran = precover("audit", "net-shed.yaml")
    assert ran.status == 3
    assert "CANNOT BE TOLD YET" in ran.out


def test_the_make_up_of_a_box_of_the_first_job_is_told(precover: Runner) -> None:
    Path("net-shed.yaml").write_text(_block("first job"), encoding="utf-8")
    ran = precover("makeup", "net-shed.yaml", "door")
    assert ran.status == 0
    assert "pigtail" in ran.out


def test_every_command_of_the_table_is_one(precover: Runner) -> None:
    for words in re.findall(r"^\| `precover ([a-z ]+?)(?: [A-Z\[].*?)?` \|", README, re.MULTILINE):
        ran = precover(*words.split(), "--help")
        assert ran.status == 0, words
        assert words.split()[-1] in ran.out


def test_the_two_set_up_commands_are_one_line_each() -> None:
    assert _block("try").count("\n") == 1
    assert _block("test").count("\n") == 1
    assert "examples/pottery-studio/as-pulled.yaml" in _block("try")
