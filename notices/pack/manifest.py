"""The list of a pack's own files, by which a later build knows what it may replace."""

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
"""What file managers leave in every folder that is looked at: nobody's work, may go."""


@dataclass(frozen=True)
class Entry:
    """One file of the pack."""

    name: str
    sha256: str
    bytes: int
    media_type: str
    source: str = ""
    """Digest of what it was made from, where making it again takes long."""
    said: str = ""
    """Digest of what it says, whichever notice it belongs to; empty for a record."""
    imprint: Imprint | None = None
    """The notice that last changed it, which is printed on it; None for a record."""

    @property
    def number(self) -> str:
        """Of the notice that is printed on it; empty for a record."""
        return self.imprint.edition.number if self.imprint else ""

    def to_json(self) -> dict[str, object]:
        """Return it as it is written, without what is empty."""
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
        """Read what `to_json` wrote; raises ValueError, KeyError or TypeError where it did not."""
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
    """Which of a club's notices a pack is."""

    number: str = ""
    """As it is printed on each document."""
    version: int = 1
    """How many notices there have been with this one."""
    replaces: str = ""
    """Number of the notice in whose place it comes; empty for the first."""
    begun: str = ""
    """When the first of them was issued."""
    after_draft: bool = False
    """Whether that which it replaces was to be approved."""


UNNUMBERED = Notice()
"""Of a pack that is nobody's notice, such as one for a try."""


@dataclass(frozen=True)
class Manifest:
    """What a pack holds, in the order of the names; the manifest itself is not in it."""

    version: str
    """Of the program."""
    issued: dt.date
    files: tuple[Entry, ...]
    made_from: str = ""
    """Digest of the plan, the day and all that made the pack out of them."""
    notice: Notice = UNNUMBERED

    def to_bytes(self) -> bytes:
        """Return the manifest as the JSON that is written."""
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
    """How a folder departs from its manifest; each part holds sorted names."""

    missing: tuple[str, ...]
    changed: tuple[str, ...]
    unlisted: tuple[str, ...]

    @property
    def any(self) -> bool:
        """Whether there is any at all."""
        return bool(self.missing or self.changed or self.unlisted)


def check_name(name: str) -> str:
    """Return the name if every file system takes it as a plain file name.

    Raises
    ------
    ValueError
        If it has a separator in it, is hidden, or means something else to some system.
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
    """List the files.

    Raises
    ------
    ValueError
        If a name is unsafe, is that of the manifest, or occurs twice (large and small letters
        are the same to many file systems).
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
        If it is not a manifest of ours.
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
    """Yield the files of a pack that nobody has worked on since.

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
    """Compare what lies in a folder with its manifest, byte by byte."""
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
    """Tell whether nobody has put anything into the folder."""
    return all(path.name in _FURNITURE for path in folder.iterdir())


def _same(path: Path, entry: Entry) -> bool:
    if path.is_symlink() or not path.is_file() or path.stat().st_size != entry.bytes:
        return False
    with path.open("rb") as stream:
        return hashlib.file_digest(stream, "sha256").hexdigest() == entry.sha256


def _digest(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()
