"""Put one folder in another's place, so that everyone sees the whole old or the whole new one."""

from __future__ import annotations

import contextlib
import ctypes
import errno
import os
import sys
from pathlib import Path

_AT_FDCWD = -100
_RENAME_EXCHANGE = 2  # linux/fs.h
_NOT_HERE = {errno.ENOSYS, errno.EINVAL, errno.ENOTSUP}
"""Errors of an older kernel, or of a file system (NFS, FAT by way of FUSE), that cannot do it."""


def exchange(one: Path, other: Path) -> bool:
    """Swap the names of two folders in a single step, if the system can.

    Returns
    -------
    bool
        False if this system or file system has no such step; nothing has changed then.

    Raises
    ------
    OSError
        If the system has such a step, and refused it.
    """
    if sys.platform != "linux":
        return False
    library = ctypes.CDLL(None, use_errno=True)
    if not hasattr(library, "renameat2"):  # a C library older than glibc 2.28
        return False
    function = library.renameat2
    function.argtypes = [
        ctypes.c_int,
        ctypes.c_char_p,
        ctypes.c_int,
        ctypes.c_char_p,
        ctypes.c_uint,
    ]
    function.restype = ctypes.c_int
    result = function(_AT_FDCWD, os.fsencode(one), _AT_FDCWD, os.fsencode(other), _RENAME_EXCHANGE)
    if result == 0:
        return True
    code = ctypes.get_errno()
    if code in _NOT_HERE:
        return False
    raise OSError(code, os.strerror(code), str(other))


def replace_in_two_steps(new: Path, target: Path, parked: Path) -> None:
    """Put a folder in the target's place by way of a third name.

    Between the two steps there is no target; a run that dies there leaves the old folder under
    the third name, whole, and `write_pack` puts it back the next time. On return the old folder
    has the name of the new one.
    """
    target.rename(parked)
    try:
        new.rename(target)
    except BaseException:
        parked.rename(target)
        raise
    # Only a whole folder may bear the third name, so the old folder gives it up before it is
    # deleted. If the renaming fails, the pack is in place all the same, and the next run clears up.
    with contextlib.suppress(OSError):
        parked.rename(new)
