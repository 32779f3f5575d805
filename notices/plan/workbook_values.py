"""The values of a workbook, read in a process of its own.

The reader believes what a file says of its own sizes. One that is damaged, or made to, has it ask
for more memory than there is, and that ends the process. So it is not ours that reads.
"""

from __future__ import annotations

import datetime as dt
import json
import subprocess
import sys
from typing import Any

from notices.plan.refusal import Refusal

MEMORY, SECONDS = 1_000_000_000, 30

_PROGRAM = f"""
import contextlib, io, json, sys
with contextlib.suppress(ImportError, ValueError, OSError):  # not on every system
    import resource
    resource.setrlimit(resource.RLIMIT_AS, ({MEMORY}, {MEMORY}))
    resource.setrlimit(resource.RLIMIT_CPU, ({SECONDS}, {SECONDS}))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
from python_calamine import CalamineWorkbook, SheetTypeEnum, SheetVisibleEnum
book = CalamineWorkbook.from_filelike(io.BytesIO(sys.stdin.buffer.read()))
def plain(cell):
    if isinstance(cell, (str, bool, int, float)):
        return cell
    kind = type(cell).__name__
    return [kind, cell.total_seconds() if kind == "timedelta" else cell.isoformat()]
for sheet in book.sheets_metadata:
    if sheet.typ is SheetTypeEnum.WorkSheet:
        rows = book.get_sheet_by_name(sheet.name).to_python(skip_empty_area=False)
        shown = sheet.visible is SheetVisibleEnum.Visible
        print(json.dumps([sheet.name, shown, [[plain(cell) for cell in row] for row in rows]]))
"""


def read_values(data: bytes, broken: Refusal) -> list[tuple[str, bool, list[list[Any]]]]:
    """Return name, whether it is shown, and the cells of each sheet.

    Raises
    ------
    Refusal
        The one given, where the file cannot be read.
    """
    try:
        done = subprocess.run(  # noqa: S603, this Python and the program above, no shell
            [sys.executable, "-P", "-c", _PROGRAM],
            input=data,
            capture_output=True,
            check=False,
            timeout=2 * SECONDS,
        )
        sheets = [json.loads(line) for line in done.stdout.splitlines()]
    except (OSError, subprocess.SubprocessError, ValueError):
        raise broken from None
    if done.returncode != 0:
        raise broken
    return [
        (name, shown, [[_value(cell) for cell in row] for row in rows])
        for name, shown, rows in sheets
    ]


def _value(cell: Any) -> Any:  # noqa: ANN401, whatever a cell holds
    match cell:
        case ["date", text]:
            return dt.date.fromisoformat(text)
        case ["datetime", text]:
            return dt.datetime.fromisoformat(text)
        case ["time", text]:
            return dt.time.fromisoformat(text)
        case ["timedelta", seconds]:
            return dt.timedelta(seconds=seconds)
    return cell
