"""An earlier notice on disk: a pack, or a bare plan."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from notices.errors import EarlierFault
from notices.pack.manifest import (
    MANIFEST,
    Differences,
    Manifest,
    compare_folder,
    files_as_written,
    read_manifest,
)
from notices.rendering.files import RenderedFile

PLAN = "plan.json"


@dataclass(frozen=True)
class Earlier:
    """An earlier plan, with the manifest and calendars if it lies in a pack."""

    plan: Path
    """Plan file to load."""
    manifest: Manifest | None = None
    """Manifest of the pack; None for a bare plan."""
    calendars: Mapping[str, bytes] = field(default_factory=dict)
    """Calendars of the pack by file name."""

    def files(self) -> Mapping[str, RenderedFile]:
        """Return the unedited files of the pack by name."""
        if self.manifest is None:
            return {}
        return {file.name: file for file in files_as_written(self.plan.parent, self.manifest)}

    @property
    def issued(self) -> dt.date | None:
        """Day of issue of the pack; None for a bare plan, which names its own."""
        return self.manifest.issued if self.manifest else None


def find_earlier(path: Path) -> Earlier:
    """Find the plan in a pack's folder; any other file is taken as a plan.

    Raises
    ------
    EarlierFault
        If it is a folder and no pack.
    """
    if not path.is_dir():
        return Earlier(path)
    try:
        manifest = read_manifest((path / MANIFEST).read_bytes())
        calendars = {
            entry.name: (path / entry.name).read_bytes()
            for entry in manifest.files
            if entry.media_type == "text/calendar"
        }
    except (OSError, ValueError):
        raise EarlierFault(
            f"{path} is not a pack of Notices; name a plan file, or a folder that "
            "notices build has written"
        ) from None
    if not (path / PLAN).is_file():
        raise EarlierFault(f"{path} has lost its {PLAN}; name the plan file itself")
    return Earlier(path / PLAN, manifest, calendars)


@dataclass(frozen=True)
class Found:
    """A pack that a notice number leads to."""

    folder: Path
    manifest: Manifest
    departs: Differences
    """Differences between the folder and its manifest."""
    standing: tuple[str, ...]
    """Files with this number in the pack of a later notice; empty if the pack itself has the number."""


def find_number(folder: Path, number: str) -> tuple[Found, ...]:
    """Find packs with a notice number, or with files of that number, in a folder and its subfolders.

    Returns them sorted by path.

    Raises
    ------
    EarlierFault
        If there is none, or no such folder.
    """
    if not folder.is_dir():
        raise EarlierFault(f"{folder} is not a folder; name the one in which the packs lie")
    packs = []
    known: set[str] = set()
    for path in sorted(folder.rglob(MANIFEST)):
        try:
            manifest = read_manifest(path.read_bytes())
        except (OSError, ValueError):
            continue
        own = manifest.notice.number
        known |= {own, *(entry.number for entry in manifest.files)}
        bearing = tuple(entry.name for entry in manifest.files if entry.number == number.strip())
        if own == number.strip() or bearing:
            departs = compare_folder(path.parent, manifest)
            standing = () if own == number.strip() else bearing
            packs.append(Found(path.parent, manifest, departs, standing))
    if not packs:
        others = ", ".join(sorted(filter(None, known))) or "none"
        raise EarlierFault(f"No pack in {folder} has the number {number}; there are: {others}")
    return tuple(packs)
