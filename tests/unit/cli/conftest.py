from pathlib import Path

import pytest

from tests.unit.cli.running import BOATHOUSE, Runner, runner


@pytest.fixture(scope="session")
def kept_packs(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A cache for all of these tests: to put every pack together anew takes seconds."""
    return tmp_path_factory.mktemp("kept")


@pytest.fixture
def precover(
    capsys: pytest.CaptureFixture[str],
    tmp_path: Path,
    kept_packs: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> Runner:
    """Runs precover in a folder of its own, with the packs that these tests keep."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(kept_packs))
    folder = tmp_path / "jobs"
    folder.mkdir()
    monkeypatch.chdir(folder)
    (folder / "boathouse.yaml").write_text(BOATHOUSE, encoding="utf-8")
    return runner(capsys)
