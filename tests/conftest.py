"""Options for the whole of the tests."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--renew",
        action="store_true",
        help="write expected files anew instead of comparing with them; then read the diff",
    )


@pytest.fixture
def matches(request: pytest.FixtureRequest) -> Callable[[Path, str], None]:
    """Compare a text with a committed file, or write the file when asked to by --renew."""

    def compare(expected: Path, text: str) -> None:
        if request.config.getoption("--renew"):
            expected.write_text(text, encoding="utf-8")
            return
        assert expected.exists(), f"{expected.name} is missing: write it, or run pytest --renew"
        known = expected.read_text(encoding="utf-8")
        assert text == known, f"{expected.name} differs: run pytest --renew, then read the diff"

    return compare
