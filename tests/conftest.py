"""Options for the whole of the tests."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import settings

from tests.documents.building import EXAMPLES, NAMES, BuiltPack, build

if "CI" not in os.environ:  # there hypothesis has a profile of its own, without deadline too
    # Time is measured in tests/benchmarks, never in a test: a busy machine must not fail one.
    settings.register_profile("by hand", deadline=None)
    settings.load_profile("by hand")


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--renew",
        action="store_true",
        help="write expected files anew instead of comparing with them; then read the diff",
    )


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    # What builds every example is built by one process, whichever tests ask for it.
    for item in items:
        for shared in ("packs", "distributions"):
            if shared in getattr(item, "fixturenames", ()):
                item.add_marker(pytest.mark.xdist_group(shared))


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


@pytest.fixture(scope="session")
def packs(tmp_path_factory: pytest.TempPathFactory) -> dict[str, BuiltPack]:
    """Every example, built once into a folder and read back from it."""
    folder = tmp_path_factory.mktemp("packs")
    return {name: build(EXAMPLES / name / "plan.yaml", out=folder / name) for name in NAMES}


@pytest.fixture(scope="session", params=NAMES)
def pack(request: pytest.FixtureRequest, packs: dict[str, BuiltPack]) -> BuiltPack:
    """One example after the other."""
    name: str = request.param
    return packs[name]


WORKING = [
    name for name in NAMES if "\nworks:" in (EXAMPLES / name / "plan.yaml").read_text("utf-8")
]
"""The clubs that work on greens; one only closes some."""


@pytest.fixture(scope="session", params=WORKING)
def working_pack(request: pytest.FixtureRequest, packs: dict[str, BuiltPack]) -> BuiltPack:
    """One example with works after the other."""
    name: str = request.param
    return packs[name]
