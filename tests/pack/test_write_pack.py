from __future__ import annotations

import ctypes
import datetime as dt
import errno
import hashlib
import json
import os
import shutil
import signal
import stat
import subprocess
import sys
import tempfile
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any, NoReturn

import pytest

from notices.documents.model import Imprint
from notices.errors import PackFault
from notices.pack import exchange, write
from notices.pack.manifest import build_manifest, check_name, read_manifest
from notices.pack.write import PackReport, is_current, known_files, made_from, write_pack
from notices.programme.model import Edition
from notices.rendering.files import RenderedFile
from tests.killed import run_killed

ISSUED = dt.date(2026, 9, 14)

NOBODY = 65534
"""The user that owns nothing, by long custom."""


def files(**contents: str) -> list[RenderedFile]:
    return [
        RenderedFile(f"{name}.txt", "text/plain", content.encode())
        for name, content in contents.items()
    ]


OLD = files(board="old board", email="old email", same="as ever")
NEW = files(board="new board", handout="new handout", same="as ever")


def write_it(contents: list[RenderedFile], target: Path, *, issued: dt.date = ISSUED) -> PackReport:
    return write_pack(contents, target, version="1.2", issued=issued)


def read(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def whole(contents: list[RenderedFile]) -> dict[str, bytes]:
    manifest = build_manifest(contents, version="1.2", issued=ISSUED).to_bytes()
    return {file.name: file.content for file in contents} | {"manifest.json": manifest}


@pytest.fixture(params=["one step", "two steps"])
def steps(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> str:
    if request.param == "two steps":
        monkeypatch.setattr(exchange, "exchange", lambda _one, _other: False)
    return str(request.param)


@pytest.fixture
def target(tmp_path: Path) -> Path:
    return tmp_path / "pack"


def test_a_new_folder_holds_the_files_and_a_manifest(target: Path) -> None:
    report = write_it(OLD, target)
    assert read(target) == whole(OLD)
    names = ("board.txt", "email.txt", "manifest.json", "same.txt")
    assert report == PackReport(target, names, names, ())
    assert os.listdir(target.parent) == ["pack"]  # noqa: PTH208


def test_the_manifest_is_sorted_and_complete(target: Path) -> None:
    write_it(list(reversed(OLD)), target)
    record = json.loads((target / "manifest.json").read_text("utf-8"))
    assert list(record) == ["made_by", "version", "issued", "notice", "made_from", "files"]
    assert record["made_by"] == "notices"
    assert record["version"] == "1.2"
    assert record["issued"] == "2026-09-14"
    assert [entry["name"] for entry in record["files"]] == ["board.txt", "email.txt", "same.txt"]
    assert record["files"][0] == {
        "name": "board.txt",
        "sha256": hashlib.sha256(b"old board").hexdigest(),
        "bytes": 9,
        "media_type": "text/plain",
    }


def test_what_was_made_before_is_found_by_what_it_was_made_from(target: Path) -> None:
    made = RenderedFile("board.pdf", "application/pdf", b"%PDF", source="abc")
    write_it([made, RenderedFile("a.txt", "text/plain", b"a")], target)
    assert known_files(target) == {"abc": made}
    (target / "board.pdf").write_bytes(b"%PDF mended by hand")
    assert known_files(target) == {}
    assert known_files(target.with_name("nowhere")) == {}


def test_a_pack_is_current_while_nothing_has_changed(target: Path) -> None:
    source = made_from({"club": "Fallow Moor"}, ISSUED)
    assert source != made_from({"club": "Fallow Moor"}, ISSUED + dt.timedelta(days=1))
    assert source != made_from({"club": "Fallow Moor"}, ISSUED, "since another")
    assert not is_current(target, source)
    write_pack(OLD, target, version="1.2", issued=ISSUED, made_from=source)
    assert is_current(target, source)
    assert not is_current(target, made_from({"club": "Fallow Down"}, ISSUED))
    (target / "board.txt").unlink()
    assert not is_current(target, source)


def test_the_same_files_in_any_order_and_place_give_the_same_bytes(tmp_path: Path) -> None:
    write_it(OLD, tmp_path / "a")
    write_it(OLD[::-1], tmp_path / "b")
    assert read(tmp_path / "a") == read(tmp_path / "b")


@pytest.mark.usefixtures("steps")
def test_a_second_build_replaces_the_first(target: Path) -> None:
    write_it(OLD, target)
    report = write_it(NEW, target)
    assert read(target) == whole(NEW)
    assert report.written == ("board.txt", "handout.txt", "manifest.json", "same.txt")
    assert report.changed == ("board.txt", "handout.txt", "manifest.json")
    assert report.removed == ("email.txt",)
    assert [path.name for path in target.parent.iterdir()] == ["pack"]


@pytest.mark.usefixtures("steps")
def test_an_unchanged_file_keeps_its_time(target: Path) -> None:
    write_it(OLD, target)
    os.utime(target / "same.txt", (1_000_000_000, 1_000_000_000))
    write_it(NEW, target)
    assert (target / "same.txt").stat().st_mtime == 1_000_000_000


def test_an_unchanged_build_touches_nothing(target: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write_it(OLD, target)
    before = [(path, path.stat()) for path in (target, *target.iterdir())]
    monkeypatch.setattr(write, "_replace", lambda *_: pytest.fail("something was written"))
    assert write_it(OLD, target) == PackReport(target, (), (), ())
    for path, was in before:
        now = path.stat()
        assert (now.st_ino, now.st_mtime_ns, now.st_ctime_ns) == (
            was.st_ino,
            was.st_mtime_ns,
            was.st_ctime_ns,
        )


def test_another_date_of_issue_changes_the_manifest_alone(target: Path) -> None:
    write_it(OLD, target)
    assert write_it(OLD, target, issued=dt.date(2026, 9, 15)).changed == ("manifest.json",)


@pytest.mark.usefixtures("steps")
def test_an_empty_folder_is_filled(target: Path) -> None:
    target.mkdir()
    (target / ".DS_Store").write_bytes(b"of the Finder")
    write_it(OLD, target)
    assert read(target) == whole(OLD)


def test_a_file_that_was_thrown_away_comes_back(target: Path) -> None:
    write_it(OLD, target)
    (target / "email.txt").unlink()
    report = write_it(OLD, target)
    assert report.changed == ("email.txt",)
    assert read(target) == whole(OLD)


def test_a_link_is_followed_and_stays(target: Path, tmp_path: Path) -> None:
    link = tmp_path / "link"
    link.symlink_to(target, target_is_directory=True)
    write_it(OLD, link)
    write_it(NEW, link)
    assert link.is_symlink()
    assert read(target) == whole(NEW)


def test_anyone_may_read_it_whom_umask_allows(target: Path) -> None:
    earlier = os.umask(0o027)
    try:
        write_it(OLD, target)
    finally:
        os.umask(earlier)
    assert stat.S_IMODE(target.stat().st_mode) == 0o750
    assert stat.S_IMODE((target / "board.txt").stat().st_mode) == 0o640


@pytest.mark.usefixtures("steps")
def test_the_folder_keeps_the_permissions_it_was_given(target: Path) -> None:
    write_it(OLD, target)
    target.chmod(0o705)
    write_it(NEW, target)
    assert stat.S_IMODE(target.stat().st_mode) == 0o705


# Refusals: nothing is touched, and the sentence says what to do.


def refused(target: Path, *words: str) -> None:
    before = sorted(str(path) for path in target.parent.rglob("*"))
    with pytest.raises(PackFault) as caught:
        write_it(NEW, target)
    message = str(caught.value)
    for word in words:
        assert word in message
    assert "\n" not in message
    assert sorted(str(path) for path in target.parent.rglob("*")) == before


def test_a_file_in_the_way_is_refused(target: Path) -> None:
    target.write_text("mine")
    refused(target, "is a file, not a folder", "name another folder")
    assert target.read_text() == "mine"


def test_a_folder_of_somebody_else_is_refused(target: Path) -> None:
    target.mkdir()
    (target / "holiday.jpg").write_text("mine")
    refused(target, "not a pack of Notices", "empty folder")


@pytest.mark.parametrize(
    "manifest",
    [
        "",
        "[]",
        "3",
        "null",
        "{}",
        "[" * 100_000,
        '{"made_by": "another program", "files": []}',
        '{"made_by": "notices", "version": "1", "issued": "2026-13-01", "files": []}',
        '{"made_by": "notices", "version": "1", "issued": 20260914, "files": []}',
        '{"made_by": "notices", "version": "1", "issued": "2026-09-14", "files": [{"name": "a"}]}',
        (
            '{"made_by": "notices", "version": "1", "issued": "2026-09-14", "files": '
            '[{"name": "../plan.yaml", "sha256": "", "bytes": 0, "media_type": ""}]}'
        ),
    ],
    ids=range(11),
)
def test_a_folder_with_another_manifest_is_refused(target: Path, manifest: str) -> None:
    target.mkdir()
    (target / "manifest.json").write_text(manifest)
    refused(target, "not a pack of Notices")


def test_a_folder_called_manifest_is_refused(target: Path) -> None:
    (target / "manifest.json").mkdir(parents=True)
    refused(target, "not a pack of Notices")


def test_a_file_that_somebody_added_is_refused_by_name(target: Path) -> None:
    write_it(OLD, target)
    (target / "minutes.docx").write_text("mine")
    refused(target, "minutes.docx", "move that elsewhere")


def test_a_folder_that_somebody_added_is_refused_by_name(target: Path) -> None:
    write_it(OLD, target)
    (target / "photographs").mkdir()
    refused(target, "photographs")


def test_many_added_files_are_counted(target: Path) -> None:
    write_it(OLD, target)
    for number in range(8):
        (target / f"{number}.jpg").write_text("mine")
    refused(target, "4.jpg and 3 more")


def longer(path: Path) -> None:
    path.write_text("improved by hand")


def same_length(path: Path) -> None:
    path.write_text("OLD BOARD")


def link(path: Path) -> None:
    path.unlink()
    path.symlink_to(path.with_name("same.txt"))


def folder(path: Path) -> None:
    path.unlink()
    path.mkdir()


@pytest.mark.parametrize("change", [longer, same_length, link, folder])
def test_a_file_that_somebody_changed_is_refused_by_name(
    target: Path, change: Callable[[Path], None]
) -> None:
    write_it(OLD, target)
    change(target / "board.txt")
    refused(target, "Somebody has changed board.txt", "move the changed version elsewhere")


def test_a_missing_parent_is_refused(tmp_path: Path) -> None:
    with pytest.raises(PackFault, match="does not exist; make it first"):
        write_it(NEW, tmp_path / "no" / "pack")
    assert list(tmp_path.iterdir()) == []


def test_a_parent_that_is_a_file_is_refused(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("mine")
    with pytest.raises(PackFault, match="does not exist; make it first"):
        write_it(NEW, tmp_path / "file" / "pack")


def test_the_root_is_refused() -> None:
    with pytest.raises(PackFault, match="whole disk"):
        write_it(NEW, Path("/"))


def test_the_current_folder_is_refused(target: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    target.mkdir()
    monkeypatch.chdir(target)
    refused(target, "the folder that you are in")


def test_a_parent_that_may_not_be_written_is_refused() -> None:
    # Root may write everywhere, so the pack is written by somebody else, in a folder of /tmp
    # that anybody can reach.
    with tempfile.TemporaryDirectory() as scratch:
        parent = Path(scratch)
        parent.chmod(0o555)
        child = os.fork()
        if child == 0:
            if os.geteuid() == 0:
                os.setuid(NOBODY)
            try:
                refused(parent / "pack", "may not write", "permissions")
            except BaseException:  # noqa: BLE001, a child must not run pytest's own ending
                os._exit(1)
            os._exit(0)
        assert os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == 0
        parent.chmod(0o755)


@pytest.mark.parametrize(
    ("code", "words"),
    [
        (errno.EACCES, "may not write"),
        (errno.EROFS, "may not write"),
        (errno.ENOSPC, "The disk is full"),
        (errno.EIO, "could not be written"),
    ],
)
@pytest.mark.parametrize("existing", [True, False])
def test_what_the_system_refuses_is_said_in_words_and_undone(
    target: Path,
    monkeypatch: pytest.MonkeyPatch,
    code: int,
    words: str,
    existing: bool,
) -> None:
    if existing:
        write_it(OLD, target)

    def fail(_handle: int) -> NoReturn:
        raise OSError(code, os.strerror(code))

    monkeypatch.setattr(os, "fsync", fail)
    refused(target, words)
    assert not existing or read(target) == whole(OLD)


def test_a_name_too_long_for_the_disk_is_refused(tmp_path: Path) -> None:
    with pytest.raises(PackFault, match="name another folder"):
        write_it(NEW, tmp_path / ("x" * 300))


def test_a_failed_second_step_puts_the_old_pack_back(
    target: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_it(OLD, target)
    monkeypatch.setattr(exchange, "exchange", lambda _one, _other: False)
    rename = Path.rename

    def fail_for_the_new_one(self: Path, other: Path) -> Path:
        if self.name.endswith("-new"):
            raise OSError(errno.EBUSY, "busy")
        return rename(self, other)

    monkeypatch.setattr(Path, "rename", fail_for_the_new_one)
    refused(target, "busy")
    assert read(target) == whole(OLD)


@pytest.mark.parametrize("existing", [True, False])
def test_a_pack_that_is_broken_off_leaves_nothing(
    target: Path, monkeypatch: pytest.MonkeyPatch, *, existing: bool
) -> None:
    if existing:
        write_it(OLD, target)
    before = read(target) if existing else None
    monkeypatch.setattr(os, "fsync", lambda _handle: signal.raise_signal(signal.SIGINT))
    with pytest.raises(KeyboardInterrupt):
        write_it(NEW, target)
    assert (read(target) if existing else None) == before
    assert [path.name for path in target.parent.iterdir()] == [target.name] * existing


def test_changing_places_is_not_broken_off(
    target: Path, monkeypatch: pytest.MonkeyPatch, steps: str
) -> None:
    assert steps
    write_it(OLD, target)
    rename, change = Path.rename, exchange.exchange

    def stopped_while_renaming(self: Path, other: Path) -> Path:
        signal.raise_signal(signal.SIGINT)
        return rename(self, other)

    def stopped_while_changing(one: Path, other: Path) -> bool:
        signal.raise_signal(signal.SIGINT)
        return change(one, other)

    monkeypatch.setattr(Path, "rename", stopped_while_renaming)
    monkeypatch.setattr(exchange, "exchange", stopped_while_changing)
    write_it(NEW, target)
    assert read(target) == whole(NEW)
    assert [path.name for path in target.parent.iterdir()] == [target.name]


# Changing places.


@pytest.mark.skipif(sys.platform != "linux", reason="only Linux has the single step")
def test_the_single_step_works_here_or_says_that_it_does_not(tmp_path: Path) -> None:
    for name in ("a", "b"):
        (tmp_path / name).mkdir()
        (tmp_path / name / name).touch()
    if exchange.exchange(tmp_path / "a", tmp_path / "b"):
        assert (tmp_path / "a" / "b").exists()
        assert (tmp_path / "b" / "a").exists()
    else:
        assert (tmp_path / "a" / "a").exists()


@pytest.mark.skipif(sys.platform != "linux", reason="only Linux has the single step")
def test_the_single_step_reports_what_went_wrong(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError):
        exchange.exchange(tmp_path / "a", tmp_path / "b")


@pytest.mark.skipif(sys.platform != "linux", reason="only Linux has the single step")
@pytest.mark.parametrize("code", [None, errno.EINVAL, errno.ENOSYS])
def test_where_there_is_no_single_step_two_are_taken(
    target: Path, monkeypatch: pytest.MonkeyPatch, code: int | None
) -> None:
    write_it(OLD, target)
    monkeypatch.setattr(ctypes, "CDLL", lambda *_, **__: stub(code))
    monkeypatch.setattr(ctypes, "get_errno", lambda: code)
    write_it(NEW, target)
    assert read(target) == whole(NEW)
    assert [path.name for path in target.parent.iterdir()] == ["pack"]


def stub(code: int | None) -> Any:
    class Function:
        def __call__(self, *_: object) -> int:
            return -1

    class Library:
        pass

    library = Library()
    if code is not None:
        library.renameat2 = Function()  # type: ignore[attr-defined]
    return library


# What a killed run leaves behind.


def test_an_old_pack_left_aside_is_restored(target: Path) -> None:
    write_it(OLD, target)
    target.rename(target.with_name(".pack.notices-old"))
    report = write_it(OLD, target)
    assert report.changed == ()
    assert [path.name for path in target.parent.iterdir()] == ["pack"]


def test_an_old_pack_is_not_cleared_while_the_target_is_in_doubt(target: Path) -> None:
    write_it(OLD, target)
    target.rename(target.with_name(".pack.notices-old"))
    target.write_text("mine")
    refused(target, "is a file")
    assert read(target.with_name(".pack.notices-old")) == whole(OLD)


def test_only_our_own_leftovers_for_this_target_are_cleared(target: Path) -> None:
    others = [
        ".other.notices-new",
        ".pack.notices-newer",
        "pack.notices-new",
        ".pack",
        ".pack.notices-new.zip",
    ]
    for name in (*others, ".pack.notices-new", ".pack.notices-old"):
        (target.parent / name).mkdir()
        (target.parent / name / "rubbish").touch()
    write_it(NEW, target.with_name("elsewhere"))
    assert (target.parent / ".pack.notices-new").is_dir()
    (target.parent / ".pack.notices-old" / "rubbish").unlink()
    write_it(NEW, target)
    assert sorted(path.name for path in target.parent.iterdir()) == sorted(
        [*others, "elsewhere", "pack"]
    )


READY = """
import datetime as dt
from pathlib import Path
from notices.pack import exchange
from notices.pack.write import write_pack
from notices.rendering.files import RenderedFile

way, target = sys.argv[2], Path(sys.argv[3])
if way == "two steps":
    exchange.exchange = lambda one, other: False
files = [
    RenderedFile("board.txt", "text/plain", b"new board"),
    RenderedFile("handout.txt", "text/plain", b"new handout"),
    RenderedFile("same.txt", "text/plain", b"as ever"),
]
"""

GO = 'write_pack(files, target, version="1.2", issued=dt.date(2026, 9, 14))'


@pytest.mark.skipif(os.name == "nt", reason="no SIGKILL")
@pytest.mark.parametrize(
    ("way", "existing"),
    [("one step", False), ("one step", True), ("two steps", True)],
)
def test_a_run_killed_at_any_step_leaves_the_old_pack_or_the_new_one(
    tmp_path: Path,
    way: str,
    existing: bool,
) -> None:
    (tmp_path / "whole").mkdir()
    target = tmp_path / "whole" / "pack"
    if existing:
        write_it(OLD, target)
    done = run_killed(0, READY, GO, way, target)
    assert done.returncode == 0, done.stderr
    steps = int(done.stdout)
    assert steps > 20
    seen: set[str] = set()
    for step in range(1, steps + 1):
        parent = tmp_path / str(step)
        parent.mkdir()
        target = parent / "pack"
        if existing:
            write_it(OLD, target)
        assert run_killed(step, READY, GO, way, target).returncode == -9
        if target.exists():
            assert read(target) in (whole(OLD), whole(NEW))
            seen.add("new" if read(target) == whole(NEW) else "old")
        elif existing:
            # The one moment between two steps: the old pack stands aside, whole.
            assert way == "two steps"
            assert read(parent / ".pack.notices-old") == whole(OLD)
            seen.add("aside")
        else:
            seen.add("none")
        # Half the time the next run has the same to write, half the time something else.
        following = NEW if step % 2 else OLD
        write_it(following, target)
        assert read(target) == whole(following)
        assert [path.name for path in parent.iterdir()] == ["pack"]
        shutil.rmtree(parent)
    assert seen == {"new"} | ({"old"} if existing else {"none"}) | (
        {"aside"} if way == "two steps" else set()
    )


@pytest.mark.skipif(sys.platform == "win32", reason="no locks on folders")
def test_two_builds_at_once_take_turns(target: Path) -> None:
    code = (
        "import sys, datetime as dt; from pathlib import Path;"
        "from notices.pack.write import write_pack; from notices.rendering.files import RenderedFile\n"
        "for n in range(20):\n"
        "    write_pack([RenderedFile('a.txt', 'text/plain', f'{sys.argv[2]} {n}'.encode())],"
        " Path(sys.argv[1]), version='1.2', issued=dt.date(2026, 9, 14))"
    )
    both = [
        subprocess.Popen([sys.executable, "-c", code, str(target), who], stderr=subprocess.PIPE)
        for who in ("first", "second")
    ]
    for process in both:
        _, complaints = process.communicate(timeout=60)
        assert process.returncode == 0, complaints
    assert [path.name for path in target.parent.iterdir()] == ["pack"]


# Names.


@pytest.mark.parametrize(
    "name",
    [
        "",
        ".",
        "..",
        "../plan.yaml",
        "a/b",
        "a\\b",
        "/etc/passwd",
        "c:evil",
        ".hidden",
        "a\nb",
        "a\0b",
        "trailing.",
        "trailing ",
        "CON",
        "nul.txt",
        "x" * 201,
        "é" * 101,
    ],
)
def test_an_unsafe_name_is_refused(target: Path, name: str) -> None:
    with pytest.raises(ValueError, match="not a safe file name"):
        write_it([RenderedFile(name, "text/plain", b"")], target)
    assert not target.exists()


@pytest.mark.parametrize("name", ["a", "board-notice-a4.pdf", "Übersicht 1.html", "console.txt"])
def test_an_ordinary_name_is_taken(name: str) -> None:
    assert check_name(name) == name


@pytest.mark.parametrize("names", [("a.txt", "a.txt"), ("a.txt", "A.txt"), ("Manifest.json",)])
def test_a_name_that_occurs_twice_is_refused(target: Path, names: tuple[str, ...]) -> None:
    with pytest.raises(ValueError, match="two files of the pack"):
        write_it([RenderedFile(name, "text/plain", b"") for name in names], target)


def test_a_manifest_is_read_as_it_was_written() -> None:
    first, second = Edition(dt.date(2026, 8, 1)), Edition(ISSUED, 2)
    files = [
        OLD[0],
        replace(OLD[1], said="a1", imprint=Imprint(first)),
        replace(OLD[2], said="b2", imprint=Imprint(second, first)),
    ]
    manifest = build_manifest(files, version="1.2", issued=ISSUED)
    assert read_manifest(manifest.to_bytes()) == manifest
    record = json.loads(manifest.to_bytes())["files"]
    assert [(entry.get("notice"), entry.get("version")) for entry in record] == [
        (None, None),
        ("20260801-1", 1),
        (f"{ISSUED:%Y%m%d}-2", 2),
    ]


@pytest.mark.parametrize("number", ["first", "2026-1", "20260801", "20260801-", "20261301-1"])
def test_a_manifest_with_no_number_of_a_notice_is_refused(number: str) -> None:
    file = replace(OLD[0], imprint=Imprint(Edition(ISSUED)))
    written = build_manifest([file], version="1.2", issued=ISSUED).to_bytes()
    right = f'"notice": "{ISSUED:%Y%m%d}-1"'.encode()
    assert right in written
    with pytest.raises(ValueError, match="is not the number of a notice"):
        read_manifest(written.replace(right, f'"notice": "{number}"'.encode()))
