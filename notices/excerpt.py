"""The line of a file that a finding is about, with a caret below the spot."""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence

WIDEST = 72
"""Columns of a line that are shown; a longer line is cut around the spot."""
TAB_STOP = 4
_CUT = "…"
_HIDDEN = "·"


def excerpt(line: str, column: int, widest: int = WIDEST) -> tuple[str, str]:
    """Return the line as shown on a terminal, and the line with the caret below it.

    Parameters
    ----------
    line
        Line of the file, without its line end.
    column
        Column of the spot, in characters from 1; beyond the end it means the end.
    widest
        Columns of a terminal that the line may take.

    Returns
    -------
    tuple of str
        Both lines. Tabs become spaces, and control characters become dots.
    """
    # Only the part around the spot is looked at: a line may be a megabyte long.
    first = max(0, column - 1 - 2 * widest)
    shown = _cells(line[first : column - 1 + 2 * widest])
    spot = min(max(column - 1 - first, 0), len(shown))
    start, end = _window(shown, spot, widest)
    before = _CUT if first or start else ""
    after = _CUT if end < len(shown) or column - 1 + 2 * widest < len(line) else ""
    text = "".join(shown[start:end])
    return f"{before}{text}{after}".rstrip(), " " * (len(before) + _width(shown[start:spot])) + "^"


def _cells(text: str) -> list[str]:
    """Return the text shown for each character."""
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
    """Return the number of columns of a terminal that the cells take."""
    return sum(_columns(character) for cell in cells for character in cell)


def _columns(character: str) -> int:
    if unicodedata.combining(character) or unicodedata.category(character) in ("Mn", "Me"):
        return 0
    return 2 if unicodedata.east_asian_width(character) in "WF" else 1


def _window(cells: Sequence[str], spot: int, widest: int) -> tuple[int, int]:
    """Return the index of the first cell to show, and the one after the last, around the spot."""
    if _width(cells) <= widest:
        return 0, len(cells)
    room = widest - 2  # for an ellipsis at each end
    start = spot
    while start > 0 and _width(cells[start - 1 : spot]) <= room // 2:
        start -= 1
    end = start
    while end < len(cells) and _width(cells[start : end + 1]) <= room:
        end += 1
    while start > 0 and _width(cells[start - 1 : end]) <= room:
        start -= 1
    return start, end
