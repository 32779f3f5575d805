"""Files written whole or not at all, and what the system says about it in words."""

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
"""What the name of a file as it was before ends in."""


def replace_file(path: Path, before: bytes, after: bytes, fault: type[NoticesError]) -> Path:
    """Put new content in the place of a file's, and keep the old beside it.

    Whoever looks sees the old or the new file whole, even if this run is killed on the way; what
    it then leaves is a file with a name of ours, which the next run writes anew.

    Parameters
    ----------
    path
        The file; a link is followed.
    before
        What was read from it. If it holds something else by now, somebody is at work on it.
    after
        What it is to hold.
    fault
        Raised if it cannot be done; the file is then as it was.

    Returns
    -------
    Path
        The copy of the file as it was.
    """
    with faults_in_words(path, fault, "save the file in another folder"):
        real = path.resolve()
        if real.read_bytes() != before:
            raise fault(f"Somebody has just changed {path}; look at it and try again")
        backup = real.with_name(real.name + BACKUP)
        with too_late_to_stop():
            _write_beside(real, backup, before)
            _write_beside(real, real, after)
        # Both files are in place; that this cannot be hastened to the disk undoes nothing.
        with contextlib.suppress(OSError):
            settle(real.parent)
    return path.with_name(backup.name)


def _write_beside(like: Path, target: Path, content: bytes) -> None:
    """Write a file with the permissions of another under a name of ours, then rename it."""
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
    """Finish what takes a moment, even if somebody breaks off just now (Ctrl-C).

    So whoever is told that nothing was written can rely on it.
    """
    try:
        before = signal.signal(signal.SIGINT, signal.SIG_IGN)
    except ValueError:  # only the main thread hears of it
        yield
        return
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)


def settle(folder: Path) -> None:
    """See to it that the names in a folder outlive a power cut (POSIX fsync on a folder)."""
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
    """Turn what the system says into a sentence with a remedy.

    Parameters
    ----------
    target
        What is written, as the person named it.
    fault
        What to raise.
    otherwise
        What the person can do instead.
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
