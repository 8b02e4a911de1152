"""One Chromium for all tests of this folder: starting it is what takes time."""

import os
from collections.abc import Iterator

import pytest

from tests.browser.chromium import HOW_TO_INSTALL, Browser, chromium


@pytest.fixture(scope="session")
def browser(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Browser]:
    """A running Chromium; without one these tests are left out, and in CI they fail."""
    program = chromium()
    if program is None and not os.environ.get("CI"):
        pytest.skip(HOW_TO_INSTALL)
    assert program is not None, HOW_TO_INSTALL
    with Browser(program, tmp_path_factory.mktemp("profile")) as running:
        yield running
