"""Options and fixtures that several folders of tests share."""

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--renew-golden",
        action="store_true",
        help="write outputs over those saved in tests/golden, to be reviewed as a diff",
    )


@pytest.fixture
def renew_golden(request: pytest.FixtureRequest) -> bool:
    """Whether saved outputs are to be renewed rather than compared."""
    return bool(request.config.getoption("--renew-golden"))
