"""The line of a file in which something stands, with a caret below the spot."""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence

WIDEST = 72
"""Columns of a line that are shown; a longer one is cut around the spot."""
TAB_STOP = 4
_CUT = "…"
_HIDDEN = "·"


def excerpt(line: str, column: int, widest: int = WIDEST) -> tuple[str, str]:
    """Return the line as it is to be shown, and the line with the caret to go below it.

    Parameters
    ----------
    line
        As it stands in the file, without its end.
    column
        Of the spot, in characters from 1; behind the end it stands for the end.
    widest
        How many columns of a terminal the line may take.

    Returns
    -------
    tuple of str
        Tabs are written out as spaces, and what a terminal would obey is shown as a dot.
    """
    # Whoever writes a megabyte into one line waits for a look around the spot only.
    first = max(0, column - 1 - 2 * widest)
    shown = _cells(line[first : column - 1 + 2 * widest])
    spot = min(max(column - 1 - first, 0), len(shown))
    start, end = _window(shown, spot, widest)
    before = _CUT if first or start else ""
    after = _CUT if end < len(shown) or column - 1 + 2 * widest < len(line) else ""
    text = "".join(shown[start:end])
    return f"{before}{text}{after}".rstrip(), " " * (len(before) + _width(shown[start:spot])) + "^"


def _cells(text: str) -> list[str]:
    """Return what is shown for each character."""
    cells: list[str] = []
    at = 0
    for character in text:
        if character == "\t":
            cell = " " * (TAB_STOP - at % TAB_STOP)
        elif character.isprintable() or unicodedata.category(character) == "Zs":
            cell = character
        else:
            cell = _HIDDEN
        cells.append(cell)
        at += _width([cell])
    return cells


def _width(cells: Sequence[str]) -> int:
    """Return how many columns of a terminal the cells take."""
    return sum(_columns(character) for cell in cells for character in cell)


def _columns(character: str) -> int:
    if unicodedata.combining(character) or unicodedata.category(character) in ("Mn", "Me"):
        return 0
    return 2 if unicodedata.east_asian_width(character) in "WF" else 1


def _window(cells: Sequence[str], spot: int, widest: int) -> tuple[int, int]:
    """Return the first cell to show and the one after the last, so that the spot is among them."""
    if _width(cells) <= widest:
        return 0, len(cells)
    room = widest - 2  # for the two signs of cutting
    start = spot
    while start > 0 and _width(cells[start - 1 : spot]) <= room // 2:
        start -= 1
    end = start
    while end < len(cells) and _width(cells[start : end + 1]) <= room:
        end += 1
    while start > 0 and _width(cells[start - 1 : end]) <= room:
        start -= 1
    return start, end
