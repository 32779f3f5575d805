"""A file that is replaced: whole at every moment, with the old beside it."""

from __future__ import annotations

import errno
import os
import signal
import subprocess
from pathlib import Path

import pytest

from notices.disk import replace_file, too_late_to_stop
from notices.errors import EditFault
from tests.killed import run_killed

OLD, NEW = b"old " * 5000, b"new " * 6000

READY = """
from pathlib import Path
from notices.disk import replace_file
from notices.errors import EditFault

path = Path(sys.argv[2])
before = path.read_bytes()
"""


def killed_at(step: int, path: Path) -> subprocess.CompletedProcess[str]:
    return run_killed(step, READY, 'replace_file(path, before, b"new " * 6000, EditFault)', path)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "plan.yaml"
    path.write_bytes(OLD)
    return path


def test_the_new_takes_the_place_of_the_old_which_stays_beside_it(path: Path) -> None:
    path.chmod(0o640)
    backup = replace_file(path, OLD, NEW, EditFault)
    assert (path.read_bytes(), backup.read_bytes()) == (NEW, OLD)
    assert path.stat().st_mode & 0o777 == 0o640
    assert sorted(entry.name for entry in path.parent.iterdir()) == ["plan.yaml", "plan.yaml.bak"]


@pytest.mark.skipif(os.name == "nt", reason="no SIGKILL")
def test_a_run_killed_at_any_step_leaves_the_old_file_or_the_new_one(path: Path) -> None:
    done = killed_at(0, path)
    assert done.returncode == 0, done.stderr
    steps = int(done.stdout)
    assert steps >= 10
    seen = set()
    for step in range(1, steps + 1):
        path.write_bytes(OLD)
        path.with_name("plan.yaml.bak").unlink(missing_ok=True)
        assert killed_at(step, path).returncode == -9
        assert path.read_bytes() in (OLD, NEW)
        seen.add(path.read_bytes())
        backup = path.with_name("plan.yaml.bak")
        assert not backup.exists() or backup.read_bytes() == OLD
        replace_file(path, path.read_bytes(), NEW, EditFault)
        assert len(list(path.parent.iterdir())) == 2
    assert seen == {OLD, NEW}


@pytest.mark.parametrize(
    ("code", "words"),
    [
        (errno.ENOSPC, "The disk is full, so"),
        (errno.EROFS, "Notices may not write"),
        (errno.EIO, "could not be written"),
    ],
)
def test_what_the_system_refuses_is_said_in_one_line_and_undone(
    path: Path, monkeypatch: pytest.MonkeyPatch, code: int, words: str
) -> None:
    def refuse(_handle: int) -> None:
        raise OSError(code, os.strerror(code))

    monkeypatch.setattr(os, "fsync", refuse)
    with pytest.raises(EditFault, match=words) as told:
        replace_file(path, OLD, NEW, EditFault)
    assert "\n" not in str(told.value)
    assert path.read_bytes() == OLD
    assert [entry.name for entry in path.parent.iterdir()] == ["plan.yaml"]


def test_somebody_else_was_quicker(path: Path) -> None:
    with pytest.raises(EditFault, match="Somebody has just changed"):
        replace_file(path, b"what was read", NEW, EditFault)
    assert path.read_bytes() == OLD


def test_a_link_stays_a_link(path: Path) -> None:
    link = path.with_name("link.yaml")
    link.symlink_to(path)
    replace_file(link, OLD, NEW, EditFault)
    assert link.is_symlink()
    assert path.read_bytes() == NEW


def test_what_takes_a_moment_is_not_broken_off() -> None:
    with too_late_to_stop():
        signal.raise_signal(signal.SIGINT)
    with pytest.raises(KeyboardInterrupt):
        signal.raise_signal(signal.SIGINT)
