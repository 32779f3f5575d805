"""Options for the whole of the tests."""

from __future__ import annotations

import os
import signal
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from hypothesis import settings

from tests.documents.building import EXAMPLES, NAMES, BuiltPack, build

if TYPE_CHECKING:
    from xdist.remote import Producer
    from xdist.scheduler import LoadScopeScheduling
from tests.documents.on_paper import rows_watched

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


HOSTILE = "the worst plan"
"""The parameter by which tests of the one pack that is no example's are known."""

COSTLY = ("test_network.py", "test_packaging.py", "test_since.py")
"""Files whose tests share what takes long to set up."""


# pytest-xdist 3.8 does not see its own groups under pytest 9.2, so they are made here.
@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: Producer) -> LoadScopeScheduling:
    """Let a pack be built by one process, whichever tests ask for it."""
    from xdist.scheduler import LoadScopeScheduling  # noqa: PLC0415, where it is installed

    class ByWhatIsShared(LoadScopeScheduling):  # type: ignore[misc]  # it has no types
        def _split_scope(self, nodeid: str) -> str:
            path, _, test = nodeid.partition("::")
            parameters = test.partition("[")[2]
            built = next((name for name in (*NAMES, HOSTILE) if name in parameters), None)
            return built or (path if path.endswith(COSTLY) else nodeid)

    return ByWhatIsShared(config, log)


@pytest.fixture(scope="session", autouse=True)
def _heeds_ctrl_c() -> None:
    """Let tests break themselves off: what a shell starts in the background ignores the signal."""
    signal.signal(signal.SIGINT, signal.default_int_handler)


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


@pytest.fixture
def few_documents(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let a pack hold no more than an email and a calendar, for tests of what is around them."""
    # No other test needs to wait for these.
    from notices.documents import pack  # noqa: PLC0415
    from notices.documents.calendar import calendars  # noqa: PLC0415
    from notices.documents.mailings import member_emails  # noqa: PLC0415

    monkeypatch.setattr(pack, "ENTRIES", (member_emails, calendars))


@pytest.fixture(scope="session")
def packs(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], BuiltPack]:
    """Every example, built once into a folder and read back from it; for the two below alone."""
    folder = tmp_path_factory.mktemp("packs")
    return cache(lambda name: build_watched(EXAMPLES / name / "plan.yaml", folder / name))


@pytest.fixture(scope="session", params=[HOSTILE])
def hostile_pack(tmp_path_factory: pytest.TempPathFactory) -> BuiltPack:
    """The plan that nobody should write, built once; a warning of WeasyPrint would end it."""
    folder = tmp_path_factory.mktemp("packs")
    return build_watched(Path(__file__).parent / "hostile" / "plan.yaml", folder / "hostile")


def build_watched(plan: Path, out: Path) -> BuiltPack:
    """Build a pack and note beside it what the layout did to its tables."""
    with rows_watched(out.with_suffix(".rows")):
        return build(plan, out=out)


@pytest.fixture(scope="session", params=NAMES)
def pack(request: pytest.FixtureRequest, packs: Callable[[str], BuiltPack]) -> BuiltPack:
    """One example after the other, or those that a test names with `of`."""
    name: str = request.param
    return packs(name)


WORKING = [
    name for name in NAMES if "\nworks:" in (EXAMPLES / name / "plan.yaml").read_text("utf-8")
]
"""The clubs that work on greens; one only closes some."""


@pytest.fixture(scope="session", params=WORKING)
def working_pack(request: pytest.FixtureRequest, packs: Callable[[str], BuiltPack]) -> BuiltPack:
    """One example with works after the other."""
    name: str = request.param
    return packs(name)
