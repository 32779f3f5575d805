"""Write files whole or not at all, and put the system's errors into words."""

from __future__ import annotations

import contextlib
import errno
import os
import shutil
import signal
from collections.abc import Iterator
from pathlib import Path

from notices.errors import NoticesError

BACKUP = ".bak"
"""Suffix of the copy of a file as it was before."""


def replace_file(path: Path, before: bytes, after: bytes, fault: type[NoticesError]) -> Path:
    """Replace the content of a file, and keep the old content in a copy beside it.

    Everyone sees the whole old or the whole new file, even if this run is killed midway. It may
    then leave a file with a name of ours, which the next run overwrites.

    Parameters
    ----------
    path
        File to replace; a link is followed.
    before
        Content that was read from it. If it has changed since, somebody is at work on it.
    after
        New content.
    fault
        Error to raise if it cannot be done; the file is then as it was.

    Returns
    -------
    Path
        Copy of the file as it was.
    """
    with faults_in_words(path, fault, "save the file in another folder"):
        real = path.resolve()
        if real.read_bytes() != before:
            raise fault(f"Somebody has just changed {path}; look at it and try again")
        backup = real.with_name(real.name + BACKUP)
        with too_late_to_stop():
            _write_beside(real, backup, before)
            _write_beside(real, real, after)
        # Both files are in place even if their names cannot be flushed to the disk.
        with contextlib.suppress(OSError):
            settle(real.parent)
    return path.with_name(backup.name)


def _write_beside(like: Path, target: Path, content: bytes) -> None:
    """Write a file under a name of ours, with the permissions of another, then rename it."""
    new = target.with_name(f".{target.name}.notices-new")
    try:
        with new.open("wb") as stream:
            stream.write(content)
            stream.flush()
            os.fsync(stream.fileno())
        shutil.copymode(like, new)
        new.replace(target)
    except OSError:
        with contextlib.suppress(OSError):
            new.unlink()
        raise


@contextlib.contextmanager
def too_late_to_stop() -> Iterator[None]:
    """Ignore Ctrl-C for the moment that the last step takes.

    A person who is told that nothing was written can then rely on it.
    """
    try:
        before = signal.signal(signal.SIGINT, signal.SIG_IGN)
    except ValueError:  # only the main thread can set a signal
        yield
        return
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)


def settle(folder: Path) -> None:
    """Flush the names in a folder to the disk, to outlive a power cut (POSIX fsync on a folder)."""
    if os.name == "nt":  # there a folder cannot be opened
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    except OSError as error:
        if error.errno not in {errno.EINVAL, errno.ENOTSUP}:  # some network disks cannot
            raise
    finally:
        os.close(handle)


@contextlib.contextmanager
def faults_in_words(target: Path, fault: type[NoticesError], otherwise: str) -> Iterator[None]:
    """Turn an error of the system into a sentence with a remedy.

    Parameters
    ----------
    target
        File or folder that is written, as the person named it.
    fault
        Error to raise.
    otherwise
        Something that the person can do instead, as the end of a sentence.
    """
    try:
        yield
    except OSError as error:
        if error.errno in {errno.ENOSPC, errno.EDQUOT}:
            words = f"The disk is full, so {target} could not be written; make room and try again"
        elif error.errno in {errno.EACCES, errno.EPERM, errno.EROFS}:
            words = (
                f"Notices may not write {target}; change the permissions of its folder or "
                f"{otherwise}"
            )
        elif error.errno in {errno.ENAMETOOLONG, errno.ELOOP}:
            words = f"{target} is not a usable name; {otherwise}"
        else:
            words = (
                f"{target} could not be written ({error.strerror or error}); put that right or "
                f"{otherwise}"
            )
        raise fault(words) from error
