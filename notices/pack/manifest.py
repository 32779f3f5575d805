"""The manifest of a pack: its own files, by which a later build knows what it may replace."""

from __future__ import annotations

import datetime as dt
import hashlib
import json
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any, Self

from notices.documents.model import Imprint
from notices.rendering.files import RenderedFile

MANIFEST = "manifest.json"
_MADE_BY = "notices"
_LONGEST_NAME = 200

_UNSAFE = re.compile(r'[/\\<>:"|?*\x00-\x1f\x7f]')
_DEVICES = re.compile(r"(con|prn|aux|nul|com[0-9]|lpt[0-9])(\..*)?", re.IGNORECASE)

_FURNITURE = {".DS_Store", "Thumbs.db", "desktop.ini"}
"""Files that file managers leave in every folder; nobody's work, so they may be deleted."""


@dataclass(frozen=True)
class Entry:
    """One file of the pack."""

    name: str
    sha256: str
    bytes: int
    media_type: str
    source: str = ""
    """Digest of everything it was made from; empty if it is quick to make again."""
    said: str = ""
    """Digest of its content without number and date of the notice; empty for a record."""
    imprint: Imprint | None = None
    """Imprint printed on it, of the notice that last changed it; None for a record."""

    @property
    def number(self) -> str:
        """Number of the notice printed on it; empty for a record."""
        return self.imprint.edition.number if self.imprint else ""

    def to_json(self) -> dict[str, object]:
        """Return the entry as JSON, without empty values."""
        record: dict[str, object] = {
            "name": self.name,
            "sha256": self.sha256,
            "bytes": self.bytes,
            "media_type": self.media_type,
            "source": self.source,
            "said": self.said,
        }
        if self.imprint is not None:
            replaces = self.imprint.replaces
            record |= {
                "notice": self.number,
                "version": self.imprint.edition.version,
                "replaces": replaces.number if replaces else "",
            }
        return {key: value for key, value in record.items() if value != ""}

    @classmethod
    def from_json(cls, record: Mapping[str, Any]) -> Self:
        """Read what `to_json` wrote; raises ValueError, KeyError or TypeError for anything else."""
        number = str(record.get("notice", ""))
        return cls(
            check_name(str(record["name"])),
            str(record["sha256"]),
            int(record["bytes"]),
            str(record["media_type"]),
            str(record.get("source", "")),
            str(record.get("said", "")),
            Imprint.numbered(number, str(record.get("replaces", ""))) if number else None,
        )


@dataclass(frozen=True)
class Notice:
    """Place of a pack among the notices of its club."""

    number: str = ""
    """Number as printed on each document."""
    version: int = 1
    """Count of notices so far, this one included."""
    replaces: str = ""
    """Number of the notice it replaces; empty for the first."""
    begun: str = ""
    """Day of issue of the first notice."""
    after_draft: bool = False
    """Whether the notice it replaces was a draft."""


UNNUMBERED = Notice()
"""Notice of a pack that is issued to nobody, such as a trial."""


@dataclass(frozen=True)
class Manifest:
    """List of a pack's files, sorted by name, without the manifest itself."""

    version: str
    """Version of the program."""
    issued: dt.date
    files: tuple[Entry, ...]
    made_from: str = ""
    """Digest of the plan, the day of issue, and the program and libraries that made the pack."""
    notice: Notice = UNNUMBERED

    def to_bytes(self) -> bytes:
        """Return the manifest as a JSON file."""
        record = {
            "made_by": _MADE_BY,
            "version": self.version,
            "issued": self.issued.isoformat(),
            "notice": asdict(self.notice),
            "made_from": self.made_from,
            "files": [entry.to_json() for entry in self.files],
        }
        return (json.dumps(record, ensure_ascii=False, indent=2) + "\n").encode("utf-8")


@dataclass(frozen=True)
class Differences:
    """Differences between a folder and its manifest, as sorted names."""

    missing: tuple[str, ...]
    changed: tuple[str, ...]
    unlisted: tuple[str, ...]

    @property
    def any(self) -> bool:
        """Whether the folder differs at all."""
        return bool(self.missing or self.changed or self.unlisted)


def check_name(name: str) -> str:
    """Return the name if it is a plain file name on every file system.

    Raises
    ------
    ValueError
        If it contains a separator, is hidden, or has a special meaning on some system.
    """
    if (
        not name
        or name.startswith(".")  # also "." and ".."
        or name.endswith((".", " "))
        or _UNSAFE.search(name)
        or _DEVICES.fullmatch(name)
        or len(name.encode("utf-8")) > _LONGEST_NAME
    ):
        raise ValueError(f"{name!r} is not a safe file name")
    return name


def build_manifest(
    files: Sequence[RenderedFile],
    *,
    version: str,
    issued: dt.date,
    made_from: str = "",
    notice: Notice = UNNUMBERED,
) -> Manifest:
    """Return the manifest of the files.

    Raises
    ------
    ValueError
        If a name is unsafe, is that of the manifest, or occurs twice (many file systems ignore
        case).
    """
    seen = {MANIFEST.casefold()}
    for file in files:
        if check_name(file.name).casefold() in seen:
            raise ValueError(f"two files of the pack are called {file.name}")
        seen.add(file.name.casefold())
    entries = (
        Entry(
            file.name,
            _digest(file.content),
            len(file.content),
            file.media_type,
            file.source,
            file.said,
            file.imprint,
        )
        for file in sorted(files, key=lambda file: file.name)
    )
    return Manifest(version, issued, tuple(entries), made_from, notice)


def read_manifest(content: bytes) -> Manifest:
    """Read what `Manifest.to_bytes` wrote.

    Raises
    ------
    ValueError
        If it is not a manifest of Notices.
    """
    try:
        record = json.loads(content)
        if record["made_by"] != _MADE_BY:
            raise ValueError("somebody else's manifest")
        files = tuple(Entry.from_json(entry) for entry in record["files"])
        issued = dt.date.fromisoformat(record["issued"])
        made_from = str(record.get("made_from", ""))
        known = record.get("notice", {})
        notice = Notice(
            str(known.get("number", "")),
            int(known.get("version", 1)),
            str(known.get("replaces", "")),
            str(known.get("begun", "")),
            bool(known.get("after_draft", False)),
        )
        return Manifest(str(record["version"]), issued, files, made_from, notice)
    except (AttributeError, KeyError, TypeError, RecursionError) as error:
        raise ValueError("not a manifest") from error


def files_as_written(folder: Path, manifest: Manifest) -> Iterator[RenderedFile]:
    """Yield the files of a pack that nobody has changed since.

    Raises
    ------
    OSError
        If the folder cannot be read.
    """
    differences = compare_folder(folder, manifest)
    others = {*differences.changed, *differences.missing}
    for entry in manifest.files:
        if entry.name not in others:
            yield RenderedFile(
                entry.name,
                entry.media_type,
                (folder / entry.name).read_bytes(),
                entry.source,
                entry.said,
                entry.imprint,
            )


def compare_folder(folder: Path, manifest: Manifest) -> Differences:
    """Compare the files in a folder with its manifest, byte by byte."""
    listed = {entry.name: entry for entry in manifest.files}
    present = {path.name: path for path in folder.iterdir()}
    changed = (
        name
        for name, entry in listed.items()
        if name in present and not _same(present[name], entry)
    )
    return Differences(
        missing=tuple(sorted(listed.keys() - present.keys())),
        changed=tuple(sorted(changed)),
        unlisted=tuple(sorted(present.keys() - listed.keys() - _FURNITURE - {MANIFEST})),
    )


def is_empty(folder: Path) -> bool:
    """Tell whether the folder holds nothing but what file managers leave."""
    return all(path.name in _FURNITURE for path in folder.iterdir())


def _same(path: Path, entry: Entry) -> bool:
    if path.is_symlink() or not path.is_file() or path.stat().st_size != entry.bytes:
        return False
    with path.open("rb") as stream:
        return hashlib.file_digest(stream, "sha256").hexdigest() == entry.sha256


def _digest(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()
