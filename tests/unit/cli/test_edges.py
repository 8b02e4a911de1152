from pathlib import Path

import pytest

from linter.cli import packs_list, shelf
from linter.cli.run import run
from linter.cli.shelf import cache_folder
from linter.cli.status import Status, worst
from tests.unit.cli.running import Runner


@pytest.mark.parametrize(
    ("variables", "platform", "folder"),
    [
        ({"XDG_CACHE_HOME": "/kept", "HOME": "/home/ada"}, "linux", "/kept/precover"),
        ({"HOME": "/home/ada"}, "linux", "/home/ada/.cache/precover"),
        ({"HOME": "/Users/ada"}, "darwin", "/Users/ada/Library/Caches/precover"),
        ({"XDG_CACHE_HOME": "kept", "HOME": "/home/ada"}, "linux", None),
        ({}, "linux", None),
    ],
)
def test_the_cache_lies_where_the_platform_has_such_things(
    monkeypatch: pytest.MonkeyPatch, variables: dict[str, str], platform: str, folder: str | None
) -> None:
    for name in ("XDG_CACHE_HOME", "HOME", "USERPROFILE", "LOCALAPPDATA"):
        monkeypatch.delenv(name, raising=False)
    for name, value in variables.items():
        monkeypatch.setenv(name, value)
    monkeypatch.setattr(shelf.sys, "platform", platform)
    assert cache_folder() == (Path(folder) if folder else None)


def test_our_fault_weighs_most_and_a_refused_file_more_than_a_finding() -> None:
    others = [Status.NOTHING_OUTSTANDING, Status.CANNOT_TELL, Status.FINDINGS, Status.REFUSED]
    for number, status in enumerate(others):
        assert worst(others[: number + 1]) is status
    assert worst([*others, Status.OUR_FAULT]) is Status.OUR_FAULT
    assert worst([]) is Status.NOTHING_OUTSTANDING


def test_a_person_who_interrupts_gets_no_traceback(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def interrupted(*_: object) -> object:
        raise KeyboardInterrupt

    monkeypatch.setattr(packs_list, "tell_apart", interrupted)
    assert run(["packs", "list"]) == 130
    assert capsys.readouterr().err == ""


def test_a_file_too_large_to_be_a_job_is_refused(
    precover: Runner, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("linter.cli.files.LARGEST", 10)
    ran = precover("audit", "boathouse.yaml")
    assert ran.status == 65
    assert "this file is too large to be a job" in ran.err


def test_a_name_that_begins_with_a_hyphen_follows_two_hyphens(precover: Runner) -> None:
    Path("--help").write_text("precover: 1\n", encoding="utf-8")
    ran = precover("audit", "--", "--help")
    assert ran.status == 65
    assert "--help:1:1" in ran.err
