"""Names as they can stand in addresses, identities and file names."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable

LONGEST = 60
"""Letters of a name that are kept: what becomes the name of a file fits any disk."""

ALL = "all"
"""Stands where a figure is for all greens of a work, or for all works of a plan."""


def slug(name: str, otherwise: str = "club") -> str:
    """Return a name in small letters, digits and hyphens.

    Parameters
    ----------
    name
        Any name; letters without their accents stay, what else is foreign goes.
    otherwise
        What to say where nothing is left.
    """
    # An apostrophe makes no other name, however it was typed or set.
    joined = re.sub("['’]", "", name)
    plain = unicodedata.normalize("NFKD", joined).encode("ascii", "ignore").decode()
    hyphened = re.sub(r"[^a-z0-9]+", "-", plain.lower()).strip("-")
    return hyphened[:LONGEST].rstrip("-") or otherwise


def distinct_slugs(names: Iterable[str], otherwise: str) -> dict[str, str]:
    """Return a slug for each name, no two alike and none that reads "all"."""
    taken = {ALL}
    found: dict[str, str] = {}
    for name in names:
        base = candidate = slug(name, otherwise)
        number = 1
        while candidate in taken:
            number += 1
            candidate = f"{base}-{number}"
        taken.add(candidate)
        found[name] = candidate
    return found
