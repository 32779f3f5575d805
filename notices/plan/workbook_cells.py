"""The cells of a workbook as plain values, sheet by sheet."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from notices.findings import Place
from notices.plan.workbook_file import BROKEN, Cell, look_through
from notices.plan.workbook_values import read_values

CellValue = str | float | int | bool | dt.date | dt.datetime | dt.time | dt.timedelta
"""An empty cell is an empty text."""

_SHOWN_CELLS = 30


@dataclass(frozen=True, slots=True)
class SheetCells:
    """What stands in one sheet."""

    file: str
    name: str
    hidden: bool
    rows: Sequence[tuple[int, Sequence[CellValue]]]
    """Number of each row that holds anything, and its cells from column A on."""
    formulas: frozenset[Cell] = frozenset()
    merged: frozenset[Cell] = frozenset()

    def place(self, row: int, column: int) -> Place:
        """Return the place of a cell, with what else stands in its row."""
        cells = next((cells for number, cells in self.rows if number == row), ())
        shown = [shown_value(cell) for cell in cells[:_SHOWN_CELLS]]
        before = sum(len(text) + 3 for text in shown[: column - 1] if text)
        text = " | ".join(text for text in shown if text)
        return Place(self.file, row, column, text, self.name, before + 1)


def shown_value(value: CellValue) -> str:
    """Return a value as a line about its row shows it."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float) and value.is_integer():
        return f"{value:.0f}"
    if isinstance(value, dt.datetime) and value.time() == dt.time():
        return str(value.date())
    return " ".join(str(value).split())


def read_cells(data: bytes, file: str) -> Mapping[str, SheetCells]:
    """Return every sheet of a workbook with its cells, in the order of the workbook.

    Raises
    ------
    Refusal
        When it may not be opened, or cannot be read.
    """
    book = look_through(data)
    return {
        name: SheetCells(
            file,
            name,
            not shown,
            [
                (number, cells)
                for number, cells in enumerate(rows, start=1)
                if any(cell != "" for cell in cells)
            ],
            book.formulas.get(name, frozenset()),
            book.merged.get(name, frozenset()),
        )
        for name, shown, rows in read_values(book.data, BROKEN)
    }
