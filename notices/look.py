"""The look of all that we print, send and show: one palette for paper, mail and page."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Look:
    """The few colours of a pack; contrast is tested, and meaning never rests on a colour."""

    ink: str = "#1b2b2b"
    """Text and lines."""
    quiet: str = "#52605f"
    """Lesser text; 6:1 on paper and more than 4.5:1 on sand."""
    paper: str = "#ffffff"
    sand: str = "#f3ead6"
    """Ground of what matters most; prints as a light grey."""
    ground: str = "#ece6d8"
    """Ground around the sheet on a screen."""
    line: str = "#d9ccae"
    """Lines between rows."""
    accent: str = "#7a4a1e"
    """Headings and links."""
    rule: str = "#b98a4a"
    """Lines that set parts off; carries no meaning."""
    head: str = "#1b2b2b"
    """Ground of the head of a page or message."""
    on_head: str = "#e6d8b8"
    """Lesser text on the head; the title there is white."""
    warn: str = "#8c1d18"
    """DRAFT, always beside the word."""


HOUSE = Look()
"""Our own look, where a club sets none."""
