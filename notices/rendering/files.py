"""What rendering hands on: a file that exists in memory only."""

from __future__ import annotations

from dataclasses import dataclass

from notices.documents.model import Imprint


@dataclass(frozen=True)
class RenderedFile:
    """One finished file of a pack; nothing after this stage changes a byte of it."""

    name: str
    """Plain file name, without folders."""
    media_type: str
    """What it is, as IANA registers it, such as "application/pdf"."""
    content: bytes
    source: str = ""
    """Digest of all that it was made from, where making it again takes long."""
    said: str = ""
    """Digest of what it says, whichever notice it belongs to; empty for a record."""
    imprint: Imprint | None = None
    """The notice that it belongs to; None for a record."""
