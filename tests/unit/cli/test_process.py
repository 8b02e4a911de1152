"""What only a process of its own can show: statuses, pipes, terminals, encodings, caches."""

import os
import pty
import re
import subprocess
import sys
from pathlib import Path

import pytest

from tests.golden.fresh import ROOT, run_fresh
from tests.unit.cli.running import PACKS, sound

JOB = "tests/golden/boathouse.yaml"
AUDIT = ("audit", JOB, "--packs", PACKS)


@pytest.mark.parametrize(
    ("words", "status"),
    [(AUDIT, 1), (("audit", "nowhere.yaml"), 65), (("aduit",), 64), (("--help",), 0)],
)
def test_the_process_exits_with_the_status(
    words: tuple[str, ...], status: int, tmp_path: Path
) -> None:
    assert run_fresh(words, tmp_path).status == status


def test_nothing_outstanding_exits_with_0(tmp_path: Path) -> None:
    job = tmp_path / "sound.yaml"
    job.write_text(sound(), encoding="utf-8")
    assert run_fresh(("audit", str(job), "--packs", PACKS), tmp_path).status == 0


def test_what_the_output_cannot_spell_is_shown_as_its_number(tmp_path: Path) -> None:
    job = tmp_path / "job.yaml"
    job.write_text(sound().replace("name: Boathouse", "name: Bådehus"), encoding="utf-8")
    ran = run_fresh(("audit", str(job), "--packs", PACKS), tmp_path, PYTHONIOENCODING="ascii")
    assert ran.status == 0
    assert b"B\\xe5dehus" in ran.out


def test_a_reader_that_goes_away_is_no_mistake_and_no_all_clear(tmp_path: Path) -> None:
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "XDG_CACHE_HOME": str(tmp_path)}
    command = [sys.executable, "-m", "linter", *AUDIT, "--form", "json"]
    reader, writer = os.pipe()
    os.close(reader)
    with os.fdopen(writer, "wb") as closed:
        done = subprocess.run(  # noqa: S603  our own program
            command, cwd=ROOT, env=environment, stdout=closed, stderr=subprocess.PIPE, check=False
        )
    assert (done.returncode, done.stderr) == (1, b"")


def _on_a_terminal(cache: Path, **more: str) -> str:
    """What an audit writes to a terminal."""
    terminal, behind = pty.openpty()
    environment = {key: value for key, value in os.environ.items() if key != "NO_COLOR"}
    environment |= {"PYTHONPATH": str(ROOT), "XDG_CACHE_HOME": str(cache)}
    environment |= {"TERM": "xterm-256color", "COLUMNS": "80", **more}
    process = subprocess.Popen(  # noqa: S603  our own program
        [sys.executable, "-m", "linter", *AUDIT], cwd=ROOT, env=environment, stdout=behind
    )
    os.close(behind)
    written = b""
    try:
        while part := os.read(terminal, 65536):
            written += part
    except OSError:
        pass  # a terminal says so when the other side is gone
    process.wait()
    os.close(terminal)
    return written.decode()


def test_a_terminal_gets_colour_unless_it_asks_for_none(tmp_path: Path) -> None:
    plain = run_fresh(AUDIT, tmp_path).out.decode()
    coloured = _on_a_terminal(tmp_path).replace("\r\n", "\n")
    assert "\x1b[" in coloured
    without = re.sub(r"\x1b\[[0-9;]*m", "", coloured)
    assert [row.rstrip() for row in without.splitlines()] == plain.splitlines()
    assert _on_a_terminal(tmp_path, NO_COLOR="1").replace("\r\n", "\n") == plain


@pytest.mark.parametrize("unusable", ["a file", "open to others"])
def test_a_cache_that_cannot_be_used_changes_nothing(tmp_path: Path, unusable: str) -> None:
    good = run_fresh(AUDIT, tmp_path / "good")
    cache = tmp_path / "bad"
    if unusable == "a file":
        cache.write_text("not a folder", encoding="utf-8")
    else:
        (cache / "precover").mkdir(parents=True)
        (cache / "precover").chmod(0o777)
    assert run_fresh(AUDIT, cache) == good
