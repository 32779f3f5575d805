"""How high the page of a day is in each size of letters, so that the largest is found without trial."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from notices.documents.model import Section
from notices.drawings.lettering import lines_of, width_of
from notices.wording.blocks import Block, Bullets, Heading, KeyFacts, Paragraph, Table

MM = 25.4 / 72
"""One point [mm]."""

WIDE, HIGH = 180.0, 263.0
"""What a page has room for between its margins [mm]."""

HEAD, DRAFT = 19.5, 9.5
"""What stands above the first day: whose sheet it is, what it replaces, and that it is a draft [mm]."""

LINE_TO_WRITE_ON = 8.25
"""Height of one [mm]."""

SERIF = 1.08
"""How much wider the letters of a day are than those that `width_of` measures."""


SPACING = {"": (1.36, 1.0), "snug": (1.3, 0.6), "tight": (1.24, 0.25)}
"""Height of a line in parts of its letters, and how much of the usual distances is kept."""


@dataclass(frozen=True, slots=True)
class Size:
    """One way to set a day; ``day-sheet.html.j2`` has the same under its style."""

    points: int
    spacing: str = ""
    to_write_on: int = 3

    @property
    def style(self) -> str:
        """Its classes."""
        full = "full" if self.to_write_on == 1 else ""
        return " ".join(filter(None, (f"size-{self.points}", self.spacing, full)))

    @property
    def em(self) -> float:
        """Size of the letters [mm]."""
        return self.points * MM

    @property
    def line(self) -> float:
        """Height of a line [mm]."""
        return SPACING[self.spacing][0] * self.em

    def gap(self, usual: float) -> float:
        """Return a distance [mm], given the usual one in parts of a letter."""
        return SPACING[self.spacing][1] * usual * self.em


SIZES = (
    *(Size(points) for points in (13, 12, 11, 10)),
    Size(10, "snug"),
    Size(10, "tight"),
    Size(10, "tight", to_write_on=1),
    Size(9, "tight"),
    Size(9, "tight", to_write_on=1),
)
"""Largest first."""


@dataclass(frozen=True, slots=True)
class _Box:
    """A block as it is set [mm]; of two distances that meet, the larger one counts."""

    height: float
    above: float
    below: float


def height_of(section: Section, size: Size, *, to_write_on: bool) -> float:
    """Return how high the page of a section is [mm].

    Parameters
    ----------
    section, size
        What is set, and in which size.
    to_write_on
        Whether lines to write on stand at its end.
    """
    boxes = [_day(section.heading, size), *(_box(block, size) for block in section.blocks)]
    if to_write_on:
        lines = _heading(Heading("Notes"), size)
        height = lines.height + size.to_write_on * LINE_TO_WRITE_ON
        boxes.append(_Box(height + lines.below, lines.above, 0))
    between = sum(max(a.below, b.above) for a, b in pairwise(boxes))
    return sum(box.height for box in boxes) + between


def _day(heading: str, size: Size) -> _Box:
    letters = 1.9 * size.em
    lines = len(lines_of(heading, WIDE / SERIF, letters, bold=True))
    return _Box(3.2 + 1.2 * letters * lines, 0, 0.15 * letters)


def _box(block: Block, size: Size) -> _Box:
    match block:
        case Paragraph():
            gap = size.gap(0.4)
            return _Box(_lines(block.text, WIDE, size) * size.line, gap, gap)
        case Bullets():
            width = WIDE - 1.6 * size.em
            texts = ["".join(run.text for run in item) for item in block.items]
            between = size.gap(0.2) * (len(texts) - 1)
            lines = sum(_lines(text, width, size) for text in texts)
            gap = size.gap(0.4)
            return _Box(lines * size.line + between, gap, gap)
        case KeyFacts():
            return _facts(block, size)
        case Table():
            return _table(block, size)
        case Heading():
            return _heading(block, size)
        case _:
            message = f"no page of a day has a {type(block).__name__}"
            raise TypeError(message)


def _heading(block: Heading, size: Size) -> _Box:
    letters = 1.1 * size.em
    lines = len(lines_of(block.text, WIDE, letters, bold=True))
    return _Box(1.25 * letters * lines + 0.4, 1.1 * size.gap(0.9), 0.15 * size.em)


def _facts(block: KeyFacts, size: Size) -> _Box:
    wide = WIDE - 6.6 - 9.5 * size.em
    lines = [
        max(_lines(row.text, wide, size), _lines(row.label, 9.5 * size.em, size, bold=True))
        for row in block.rows
    ]
    rows = sum(lines) * size.line + 2 * size.gap(0.16) * len(lines)
    ends = 2 * (size.gap(0.4) - size.gap(0.16)) + 0.6
    gap = size.gap(0.5)
    return _Box(rows + ends, gap, gap)


def _table(block: Table, size: Size) -> _Box:
    caption, gap = size.line + size.gap(0.25), size.gap(0.5)
    if block.halves:
        middle = (len(block.rows) + 1) // 2
        halves = ([block.head, *block.rows[:middle]], [block.head, *block.rows[middle:]])
        height = max(_rows(half, 0.48 * WIDE, size) for half in halves)
        return _Box(caption + height + 2 * gap, 0, 0)  # two boxes keep their distances within
    return _Box(caption + _rows([block.head, *block.rows], WIDE, size), gap, gap)


def _rows(rows: Sequence[Sequence[str]], wide: float, size: Size) -> float:
    """Return the height of a table's rows, the first one its head."""
    beside = 2 * 0.45 * size.em
    columns = [width - beside for width in _columns(rows, wide, beside, size)]
    lines = sum(
        max(
            _lines(cell, width, size, bold=not n or not number)
            for n, (cell, width) in enumerate(zip(row, columns, strict=True))
        )
        for number, row in enumerate(rows)
    )
    return lines * size.line + len(rows) * (2 * size.gap(0.24) + 0.25) + 0.15


def _columns(rows: Sequence[Sequence[str]], wide: float, beside: float, size: Size) -> list[float]:
    """Share the width among columns as CSS 2.1 (17.5.2.2) suggests, and WeasyPrint does."""
    least, most = [], []
    for n in range(len(rows[0])):
        cells = [(row[n], not n or not number) for number, row in enumerate(rows)]
        words = [(word, bold) for cell, bold in cells for word in cell.split(" ")]
        least.append(beside + max(width_of(word, size.em, bold=bold) for word, bold in words))
        most.append(beside + max(width_of(cell, size.em, bold=bold) for cell, bold in cells))
    if sum(most) <= wide:
        return [width * wide / sum(most) for width in most]
    share = max(0.0, (wide - sum(least)) / (sum(most) - sum(least)))
    return [low + share * (high - low) for low, high in zip(least, most, strict=True)]


def _lines(text: str, wide: float, size: Size, *, bold: bool = False) -> int:
    """Count the lines of a text; an empty cell has one too."""
    return len(lines_of(text, wide, size.em, bold=bold))
