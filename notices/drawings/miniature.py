"""Sketches of documents for screens, which show their parts but not their words."""

from __future__ import annotations

import datetime as dt
from collections.abc import Collection, Sequence

from notices.drawings.palette import INK, LOAM, PAPER, QUIET, SAND
from notices.drawings.svg import Rect, document, rect
from notices.wording.blocks import (
    Block,
    Bullets,
    Heading,
    KeyFacts,
    Paragraph,
    Photo,
    Picture,
    Runs,
    Table,
)

WIDTH, HEIGHT, MARGIN = 84, 119, 8
"""A small sheet of paper, in the proportions of A4."""

HEAD, LINE = 16, 4.5
WORDS_A_LINE = 60
"""Letters of text for each line of the sketch."""


def miniature(title: str, blocks: Sequence[Sequence[Block]]) -> str:
    """Sketch a document: its head, and roughly a line for every line of its blocks."""
    parts = [
        rect(Rect(0, 0, WIDTH, HEAD), fill=INK),
        _line(6, min(1.0, len(title) / 40), PAPER, 3),
    ]
    y = HEAD + 7.0
    for section in blocks:
        for block in section:
            for share, colour in _lines(block):
                if y > HEIGHT - MARGIN:
                    return document(WIDTH, HEIGHT, title, "".join(parts))
                parts.append(_line(y, share, colour))
                y += LINE
        y += LINE / 2
    return document(WIDTH, HEIGHT, title, "".join(parts))


def calendar_miniature(days: Collection[dt.date]) -> str:
    """Sketch five weeks from the first of the days, with a mark on each that has an entry."""
    first = min(days, default=dt.date(2001, 1, 1))
    monday = first - dt.timedelta(days=first.weekday())
    side, step = 7, (WIDTH - 2 * MARGIN) / 7
    parts = [rect(Rect(0, 0, WIDTH, HEAD), fill=LOAM)]
    for number in range(35):
        x, y = MARGIN + number % 7 * step, HEAD + 14 + number // 7 * 16
        ground = INK if monday + dt.timedelta(days=number) in days else SAND
        parts.append(rect(Rect(x, y, side, side), fill=ground))
    return document(WIDTH, HEIGHT, "Calendar", "".join(parts))


def _lines(block: Block) -> list[tuple[float, str]]:
    """Return the lines of a block, each as its share of the width and its colour."""
    lines: list[tuple[float, str]] = []
    match block:
        case Paragraph(runs):
            lines = _of_length(_letters(runs))
        case Bullets(items):
            lines = [line for item in items for line in _of_length(_letters(item))]
        case Heading():
            lines = [(0.45, LOAM)]
        case KeyFacts(rows):
            lines = [line for row in rows for line in [(0.3, LOAM), *_of_length(len(row.text))]]
        case Table(rows=rows):
            lines = [(0.95, SAND), *((0.85, QUIET) for _ in rows)]
        case Picture() | Photo():
            lines = [(1.0, SAND)] * 6
    return lines


def _letters(runs: Runs) -> int:
    return sum(len(run.text) for run in runs)


def _of_length(letters: int) -> list[tuple[float, str]]:
    whole, rest = divmod(letters, WORDS_A_LINE)
    return [(1.0, QUIET)] * whole + [(max(0.2, rest / WORDS_A_LINE), QUIET)]


def _line(y: float, share: float, colour: str, thick: float = 1.8) -> str:
    return rect(Rect(MARGIN, y, (WIDTH - 2 * MARGIN) * share, thick), fill=colour)
