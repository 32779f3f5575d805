"""Workbooks for tests: a plan written as one, and its cells changed afterwards."""

from __future__ import annotations

import functools
import io
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from openpyxl import load_workbook

import notices
from notices.convert.as_workbook import plan_as_workbook
from notices.errors import PlanFault
from notices.findings import Finding

PLAN: Mapping[str, Any] = {
    "club": {"name": "Tansy Down Golf Club"},
    "course": {"greens": [{"green": "1-9", "area": "400 m2"}]},
    "works": [
        {
            "operation": "hollow tining",
            "dates": "2027-08-16 to 2027-08-17",
            "greens": "1-9",
            "settings": {"depth": "60 mm"},
        }
    ],
}


BOOK = plan_as_workbook(PLAN)


@functools.cache
def _headings() -> Mapping[tuple[str, str], str]:
    """Return where what belongs to each heading stands: below it in a list, beside it in a form."""
    found: dict[tuple[str, str], str] = {}
    for worksheet in load_workbook(io.BytesIO(BOOK)).worksheets:
        for cells in worksheet.iter_rows():
            for cell in cells:
                below = f"{cell.coordinate.rstrip('0123456789')}{{row}}"
                beside = f"B{cell.row}"
                here = below if cell.row == 4 and worksheet["A4"].value == "Example" else beside
                found.setdefault((worksheet.title, str(cell.value)), here)
    return found


def cell_of(sheet: str, heading: str, row: int = 5) -> str:
    """Return the name of the cell below a heading, or beside it on a form."""
    return _headings()[sheet, heading].format(row=row)


def changed(path: Path, sheet: str, **cells: Any) -> Path:
    """Write the plan as a workbook with some cells of a sheet changed."""
    book = load_workbook(io.BytesIO(BOOK))
    for name, value in cells.items():
        book[sheet][name] = value
    book.save(path)
    return path


def findings_of(path: Path) -> tuple[Finding, ...]:
    """Return what stops a plan; none where it can be built."""
    try:
        notices.load_plan(path)
    except PlanFault as fault:
        return fault.findings
    return ()


def said_of(path: Path) -> list[str]:
    """Return the places and sentences of what stops a plan."""
    return [str(found).removeprefix(f"{path}:") for found in findings_of(path)]
