"""The look of a pack: one palette for paper, mail and web pages.

References
----------
W3C, Web Content Accessibility Guidelines 2.2: relative luminance and contrast ratio; success
criterion 1.4.3 asks for 4.5:1.
"""

from __future__ import annotations

from dataclasses import dataclass

LEAST_CONTRAST = 4.5
"""WCAG 2.2, success criterion 1.4.3."""

_STEP = 0.03
"""Share of the way to black or white by which a colour moves at a time until it is readable."""


@dataclass(frozen=True, slots=True)
class Look:
    """Colours of a pack; their contrast is tested, and no meaning rests on colour alone."""

    ink: str = "#1b2b2b"
    """Text and lines."""
    quiet: str = "#52605f"
    """Lesser text; 6:1 on paper and more than 4.5:1 on sand."""
    paper: str = "#ffffff"
    sand: str = "#f3ead6"
    """Background of what matters most; prints as a light grey."""
    ground: str = "#ece6d8"
    """Background around the sheet on a screen."""
    line: str = "#d9ccae"
    """Lines between rows."""
    accent: str = "#7a4a1e"
    """Headings and links."""
    rule: str = "#b98a4a"
    """Lines between parts; carries no meaning."""
    head: str = "#1b2b2b"
    """Background of the head of a page or email."""
    on_head: str = "#e6d8b8"
    """Lesser text on the head; the title there is white."""
    accent_in_the_dark: str = "#e3bf86"
    """Headings and links in dark mode."""
    warn: str = "#8c1d18"
    """Colour that marks a draft, always beside the word DRAFT."""


HOUSE = Look()
"""Our own look, for a club that sets no colour."""

DARK_GROUND = "#26312f"
"""Lightest background of text in dark mode."""


def look_of(colour: str) -> Look:
    """Return the look of a club with a colour of its own.

    The colour appears in the head of pages and emails, in lines and, as a tint, behind what matters
    most. Where text is set in it or on it, it is darkened until readable, see `is_darkened`.

    Parameters
    ----------
    colour
        Colour of the club, such as "#1b4d3e".
    """
    sand, ground = _mixed(HOUSE.paper, colour, 0.1), _mixed("#f0eeea", colour, 0.07)
    on_head = _mixed(HOUSE.paper, colour, 0.12)
    return Look(
        sand=sand,
        ground=ground,
        line=_mixed(HOUSE.paper, colour, 0.28),
        accent=_until(colour, "#000000", (HOUSE.paper, sand, ground)),
        rule=colour,
        head=_until(colour, "#000000", (HOUSE.paper, on_head)),
        on_head=on_head,
        accent_in_the_dark=_until(colour, "#ffffff", (DARK_GROUND,)),
    )


def is_darkened(colour: str) -> bool:
    """Tell whether text in a colour would be hard to read, so that a darker one is used."""
    return look_of(colour).accent != colour


def contrast(one: str, other: str) -> float:
    """Return the contrast ratio of two colours, from 1 to 21."""
    low, high = sorted((_luminance(one), _luminance(other)))
    return (high + 0.05) / (low + 0.05)


def _luminance(colour: str) -> float:
    parts = (part / 255 for part in _parts(colour))
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _until(colour: str, towards: str, others: tuple[str, ...]) -> str:
    share, found = 0.0, colour
    while min(contrast(found, other) for other in others) < LEAST_CONTRAST:
        share += _STEP
        found = _mixed(colour, towards, share)
    return found


def _mixed(one: str, other: str, share: float) -> str:
    """Return a mixture of two colours, with a share from 0 to 1 of the other."""
    mixed = (
        round(a + (b - a) * min(share, 1.0))
        for a, b in zip(_parts(one), _parts(other), strict=True)
    )
    return "#" + "".join(f"{part:02x}" for part in mixed)


def _parts(colour: str) -> tuple[int, int, int]:
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)
