from pathlib import Path

import pytest

from tests.unit.cli.running import BOATHOUSE, Runner, runner


@pytest.fixture
def precover(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> Runner:
    """Runs precover in a folder of its own, with a cache of its own."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    folder = tmp_path / "jobs"
    folder.mkdir()
    monkeypatch.chdir(folder)
    (folder / "boathouse.yaml").write_text(BOATHOUSE, encoding="utf-8")
    return runner(capsys)
