"""What was issued before: a pack, or a plan alone."""

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
    read_manifest,
)

PLAN = "plan.json"


@dataclass(frozen=True)
class Earlier:
    """An earlier plan, and where it is a pack what else is known of it."""

    plan: Path
    """The file to load."""
    manifest: Manifest | None = None
    """None for a plan alone."""
    calendars: Mapping[str, bytes] = field(default_factory=dict)
    """The pack's calendars by the names of their files."""

    @property
    def issued(self) -> dt.date | None:
        """When the pack was issued; a plan alone says so itself."""
        return self.manifest.issued if self.manifest else None


def find_earlier(path: Path) -> Earlier:
    """Find the plan in a pack's folder, or take a file for a plan.

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
    """A pack that bears a number."""

    folder: Path
    manifest: Manifest
    departs: Differences
    """How the folder differs from what was written."""


def find_number(folder: Path, number: str) -> tuple[Found, ...]:
    """Find the packs of a number in a folder and those below it, in the order of their names.

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
        known.add(manifest.notice.number)
        if manifest.notice.number == number.strip():
            packs.append(Found(path.parent, manifest, compare_folder(path.parent, manifest)))
    if not packs:
        others = ", ".join(sorted(filter(None, known))) or "none"
        raise EarlierFault(f"No pack in {folder} has the number {number}; there are: {others}")
    return tuple(packs)
