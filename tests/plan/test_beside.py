"""What a plan names lies beside it, and nothing else is opened."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from notices.plan.beside import read_beside
from notices.plan.refusal import Refusal


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "secret.txt").write_text("secret", "utf-8")
    plan = tmp_path / "club"
    (plan / "old").mkdir(parents=True)
    (plan / "fixtures.ics").write_text("ours", "utf-8")
    (plan / "old" / "fixtures.ics").write_text("last year's", "utf-8")
    return plan


def read(folder: Path, name: str, largest: int = 100) -> bytes:
    return read_beside(
        folder, name, what="a calendar", largest=largest, otherwise="export fewer years"
    )


def test_a_file_beside_the_plan_is_read(folder: Path) -> None:
    assert read(folder, "fixtures.ics") == b"ours"


@pytest.mark.parametrize(
    "name",
    [
        *("../secret.txt", "..", ".", "/etc/hostname", "old/fixtures.ics", "./fixtures.ics"),
        *("..\\secret.txt", "C:secret.txt", "C:\\secret.txt", "\\\\host\\share", "a:b"),
        "file:///etc/hostname",
    ],
)
def test_a_path_is_no_name(folder: Path, name: str) -> None:
    with pytest.raises(Refusal, match="a calendar must lie beside the plan"):
        read(folder, name)


def test_a_link_is_followed_within_the_folder_and_nowhere_else(folder: Path) -> None:
    (folder / "good.ics").symlink_to("fixtures.ics")
    (folder / "older.ics").symlink_to(folder / "old" / "fixtures.ics")
    assert read(folder, "good.ics") == b"ours"
    assert read(folder, "older.ics") == b"last year's"
    (folder / "out.ics").symlink_to("../secret.txt")
    (folder / "out-by-two.ics").symlink_to("out.ics")
    (folder / "device.ics").symlink_to("/dev/zero")
    (folder / "lost.ics").symlink_to("/nowhere/at/all")
    for name in ("out.ics", "out-by-two.ics", "device.ics", "lost.ics"):
        with pytest.raises(Refusal, match="must lie beside the plan"):
            read(folder, name)


def test_a_folder_that_is_a_link_itself_is_the_plan_s_folder(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "link").symlink_to(folder)
    assert read(tmp_path / "link", "fixtures.ics") == b"ours"
    (folder / "good.ics").symlink_to("fixtures.ics")
    assert read(tmp_path / "link", "good.ics") == b"ours"


def test_what_would_never_end_is_not_opened(folder: Path) -> None:
    os.mkfifo(folder / "pipe.ics")
    (folder / "circle.ics").symlink_to("circle.ics")
    for name in ("pipe.ics", "old", "circle.ics", "a\0b", "x" * 5000):
        with pytest.raises(Refusal):
            read(folder, name)


def test_a_large_file_is_refused(folder: Path) -> None:
    (folder / "fixtures.ics").write_bytes(b" " * 101)
    assert len(read(folder, "fixtures.ics", largest=101)) == 101
    with pytest.raises(Refusal, match=r"is larger than .*: export fewer years"):
        read(folder, "fixtures.ics", largest=100)
    (folder / "fixtures.ics").write_bytes(b" " * 5_000_001)
    with pytest.raises(Refusal, match="is larger than 5 MB"):
        read(folder, "fixtures.ics", largest=5_000_000)


def test_a_missing_file_may_have_a_namesake(folder: Path) -> None:
    with pytest.raises(
        Refusal, match=r'"fixture.ics" beside the plan: did you mean "fixtures.ics"'
    ):
        read(folder, "fixture.ics")
