"""Write a pack to disk, whole or not at all.

Everything is written into a folder beside the target, which then changes places with it. Two
names beside the target are ours, and mean something to the next run if this one is killed:

    .NAME.notices-new    a folder being written or deleted: always rubbish
    .NAME.notices-old    the whole old pack, while there is no target
"""

from __future__ import annotations

import contextlib
import datetime as dt
import hashlib
import json
import os
import shutil
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from notices.disk import faults_in_words, settle, too_late_to_stop
from notices.errors import PackFault
from notices.makers import makers
from notices.pack import exchange
from notices.pack.manifest import (
    MANIFEST,
    UNNUMBERED,
    Notice,
    build_manifest,
    compare_folder,
    files_as_written,
    is_empty,
    read_manifest,
)
from notices.rendering.files import RenderedFile

_NAMED = 5
"""Files that a message names before it counts the rest."""


@dataclass(frozen=True)
class PackReport:
    """Changes that `write_pack` made to a folder, as sorted names."""

    target: Path
    written: tuple[str, ...]
    """Every file of the pack, or none if every byte was there already."""
    changed: tuple[str, ...]
    """Files that are new or differ from before; empty only if nothing was touched."""
    removed: tuple[str, ...]
    """Files of the earlier pack that this one no longer has."""


def write_pack(
    files: Sequence[RenderedFile],
    target: Path,
    *,
    version: str,
    issued: dt.date,
    made_from: str = "",
    notice: Notice = UNNUMBERED,
) -> PackReport:
    """Make a folder hold these files and a manifest, and nothing else.

    Parameters
    ----------
    files
        Files of the pack without the manifest, in any order.
    target
        Folder to write: a new or empty one, or a pack that this program wrote and nobody has
        changed since.
    version
        Version of this program, for the manifest.
    issued
        Day of issue, for the manifest.
    made_from
        Digest of everything the pack was made from, for `is_current`.
    notice
        Place of the pack among the club's notices, for the manifest.

    Returns
    -------
    PackReport
        Changes to the folder.

    Raises
    ------
    PackFault
        If the folder cannot be written or holds somebody else's work. It is left as it was.
    ValueError
        If a file name is unsafe or occurs twice.
    """
    manifest = build_manifest(
        files, version=version, issued=issued, made_from=made_from, notice=notice
    ).to_bytes()
    pack = {file.name: file.content for file in files} | {MANIFEST: manifest}
    pack = dict(sorted(pack.items()))
    with faults_in_words(target, PackFault, "name another folder"):
        place = _Place.at(target)
        with _alone(place.parent):
            place.restore()
            old = _what_is_there(place.target, target)
            place.clear()
            if old == pack:
                return PackReport(target, (), (), ())
            _replace(place, pack, old)
    before = old or {}
    changed = (name for name, content in pack.items() if before.get(name) != content)
    return PackReport(
        target, tuple(pack), tuple(changed), tuple(sorted(before.keys() - pack.keys()))
    )


def made_from(plan: Mapping[str, object], issued: dt.date, *others: str) -> str:
    """Return a digest of everything that determines the bytes of a pack."""
    text = json.dumps(plan, ensure_ascii=False, sort_keys=True)
    parts = [text, issued.isoformat(), makers(), *others]
    return hashlib.sha256("\0".join(parts).encode()).hexdigest()


def is_current(target: Path, made_from: str) -> bool:
    """Tell whether a folder holds the pack with this digest, untouched."""
    try:
        manifest = read_manifest((target / MANIFEST).read_bytes())
        return manifest.made_from == made_from and not compare_folder(target, manifest).any
    except (OSError, ValueError):
        return False


def known_files(target: Path) -> dict[str, RenderedFile]:
    """Return the files of an earlier pack that can be reused, by source digest.

    There are none if the folder holds no pack or cannot be read: `write_pack` reports later whether
    it may be written.
    """
    try:
        manifest = read_manifest((target / MANIFEST).read_bytes())
        return {file.source: file for file in files_as_written(target, manifest) if file.source}
    except (OSError, ValueError):
        return {}


@dataclass(frozen=True)
class _Place:
    """Paths of the target and of the two names beside it, all on one file system."""

    target: Path
    new: Path
    parked: Path

    @property
    def parent(self) -> Path:
        return self.target.parent

    @classmethod
    def at(cls, target: Path) -> _Place:
        # A link is followed, so that its target is renamed and the link stays.
        real = target.resolve()
        if not real.name:
            raise PackFault(f"{target} is a whole disk; name a folder on it")
        if real == Path.cwd():
            # The exchange would leave the person in a folder that is deleted.
            raise PackFault(f"{target} is the folder that you are in; name another one")
        if not real.parent.is_dir():
            raise PackFault(
                f"The folder {target.parent} does not exist; make it first or name another one"
            )
        return cls(
            real,
            real.with_name(f".{real.name}.notices-new"),
            real.with_name(f".{real.name}.notices-old"),
        )

    def restore(self) -> None:
        """Put back the old pack if a run died between the two steps."""
        if self.parked.is_dir() and not self.target.exists():
            self.parked.rename(self.target)
            settle(self.parent)

    def clear(self) -> None:
        """Delete what earlier runs left; only once the target is known to be a pack or free."""
        for path in (self.new, self.parked):
            if path.is_dir() and not path.is_symlink():
                if path == self.parked:
                    # It takes the name for rubbish while it is still whole.
                    path = path.rename(self.new)  # noqa: PLW2901
                shutil.rmtree(path)


def _what_is_there(place: Path, asked: Path) -> dict[str, bytes] | None:
    """Return the files of the pack to replace, or None if there is no folder.

    Raises
    ------
    PackFault
        If the folder holds somebody else's work.
    """
    if not place.exists():
        return None
    if not place.is_dir():
        raise PackFault(f"{asked} is a file, not a folder; name another folder for the pack")
    if is_empty(place):
        return {}
    try:
        manifest = read_manifest((place / MANIFEST).read_bytes())
    except (FileNotFoundError, IsADirectoryError, ValueError):
        raise PackFault(
            f"{asked} holds files that are not a pack of Notices; name a new or an empty folder"
        ) from None
    found = compare_folder(place, manifest)
    if found.unlisted:
        raise PackFault(
            f"{asked} also holds {_listed(found.unlisted)}, which Notices did not write and will "
            "not delete; move that elsewhere or name another folder"
        )
    if found.changed:
        raise PackFault(
            f"Somebody has changed {_listed(found.changed)} in {asked}; move the changed version "
            "elsewhere (put lasting changes into the plan or the templates) or name another folder"
        )
    names = [entry.name for entry in manifest.files if entry.name not in found.missing]
    return {name: (place / name).read_bytes() for name in sorted([*names, MANIFEST])}


def _replace(place: _Place, pack: dict[str, bytes], old: dict[str, bytes] | None) -> None:
    try:
        # Not tempfile, whose folders are closed to everyone else: umask decides here.
        place.new.mkdir()
        if old is not None:
            shutil.copymode(place.target, place.new)
        for name, content in pack.items():
            _write(place.new / name, content)
            if old is not None and old.get(name) == content:
                # An unchanged file keeps its time, so that programs that copy newer files skip it.
                shutil.copystat(place.target / name, place.new / name)
        settle(place.new)
        with too_late_to_stop():
            if old is None:
                place.new.rename(place.target)
            elif not exchange.exchange(place.new, place.target):
                exchange.replace_in_two_steps(place.new, place.target, place.parked)
            # The pack is in place even if its name cannot be flushed to the disk.
            with contextlib.suppress(OSError):
                settle(place.parent)
            shutil.rmtree(place.new, ignore_errors=True)  # the old pack
    finally:
        # After a failure this is the new pack. If it cannot be deleted now, the next run tries
        # again.
        shutil.rmtree(place.new, ignore_errors=True)


def _write(path: Path, content: bytes) -> None:
    with path.open("xb") as stream:
        stream.write(content)
        stream.flush()
        os.fsync(stream.fileno())


@contextlib.contextmanager
def _alone(folder: Path) -> Iterator[None]:
    """Keep other builds out meanwhile: they would take our unfinished folder for rubbish.

    The lock is on the folder itself: it leaves no file, and ends with the process.
    """
    try:
        import fcntl  # noqa: PLC0415 - not on Windows
    except ImportError:
        yield
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        with contextlib.suppress(OSError):  # network disks without locks
            fcntl.flock(handle, fcntl.LOCK_EX)
        yield
    finally:
        os.close(handle)


def _listed(names: Sequence[str]) -> str:
    shown = ", ".join(names[:_NAMED])
    rest = len(names) - _NAMED
    return f"{shown} and {rest} more" if rest > 0 else shown
