"""Help inside a workbook: a line for each heading, and a first sheet with instructions."""

from __future__ import annotations

from openpyxl.worksheet.worksheet import Worksheet

from notices.convert import workbook_look as look
from notices.plan.descriptions import description
from notices.plan.messages import model_at
from notices.plan.workbook_layout import MARK, SHEETS, Column, Sheet

_LINES = """\
This workbook is the plan of your work on the greens, from which Notices writes everything.
Fill in the sheets below in any order. A club’s name, its greens and some work or a closure must be here.
What you leave empty has a usual value, and a figure that rests on one says so.
Rows marked “example” belong to a club that is invented, and do not count. Overwrite them with the mark, or leave them.
Write dates as your spreadsheet program takes them, or as 2027-08-16. It then shows the weekday.
Write lengths and areas with their units, such as 13 mm, 1/2 in, 50 x 50 mm or 480 m2.
Write values, no formulas. Merge no cells, and keep the headings as they are.
You may sort rows, add rows, and change the order of columns.
Save it as .xlsx or .ods, then run: notices check, with the name of this file.""".splitlines()


def help_of(sheet: Sheet, column: Column) -> str:
    """Return the line of help for a heading."""
    says = column.says
    if not says and column is not MARK:
        way = (*sheet.way, *column.way)
        model = model_at(way[:-1])
        attribute = "exception" if way[-1] == "except" else way[-1]
        says = description(model, attribute) if model else ""
    such_as = (
        f"Such as {column.such_as}" if column.such_as and "such as" not in says.lower() else ""
    )
    return " ".join(f"{part.rstrip('.')}." for part in (says, such_as) if part)


def read_me(worksheet: Worksheet) -> None:
    """Write the first sheet, with instructions."""
    look.read_me(worksheet, "A plan for Notices", _LINES, [(one.name, one.line) for one in SHEETS])
