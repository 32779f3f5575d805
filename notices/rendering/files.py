"""A finished file in memory, which rendering hands to the pack."""

from __future__ import annotations

from dataclasses import dataclass

from notices.documents.model import Imprint


@dataclass(frozen=True)
class RenderedFile:
    """One finished file of a pack; nothing after this stage changes a byte of it."""

    name: str
    """Plain file name, without folders."""
    media_type: str
    """IANA media type, such as "application/pdf"."""
    content: bytes
    source: str = ""
    """Digest of everything it was made from; empty if it is quick to make again."""
    said: str = ""
    """Digest of its content without number and date of the notice; empty for a record."""
    imprint: Imprint | None = None
    """Imprint of the notice it belongs to; None for a record."""
