"""Look of a workbook: calm, readable in black and white, and ready to be typed into."""

from __future__ import annotations

import datetime as dt
import math
import re
from collections.abc import Callable, Sequence

from openpyxl import Workbook
from openpyxl.formatting.rule import Rule
from openpyxl.styles import Alignment, Border, Font, PatternFill, Side
from openpyxl.styles.differential import DifferentialStyle
from openpyxl.utils import get_column_letter, quote_sheetname
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.properties import PageSetupProperties
from openpyxl.worksheet.worksheet import Worksheet

from notices.operations import CATALOGUE
from notices.plan.workbook_layout import Column, Sheet, Takes

_FAMILY = "Arial"
_INK, _QUIET, _GREEN, _LINE = "1F2A24", "5A645E", "E3EADF", "B9C2BB"
_PLAIN = Font(name=_FAMILY, size=10, color=_INK)
_BOLD = Font(name=_FAMILY, size=10, bold=True, color=_INK)
_TITLE = Font(name=_FAMILY, size=16, bold=True, color=_INK)
_SMALL = Font(name=_FAMILY, size=9, color=_QUIET)
_SHOWN = Font(name=_FAMILY, size=10, italic=True, color=_QUIET)
_LINK = Font(name=_FAMILY, size=10, underline="single", color=_INK)
_EDGE = Side(style="thin", color=_LINE)
_BOX = Border(_EDGE, _EDGE, _EDGE, _EDGE)
_HEADING = PatternFill("solid", fgColor=_GREEN)
_NOT_HERE = PatternFill("solid", bgColor="D5D8D6")
_TYPED = Alignment(wrap_text=True, vertical="top", horizontal="left")
_BESIDE = Alignment(vertical="top")

_DATE, _TIME, _AS_TYPED, _NUMBER = "ddd d mmm yyyy", "hh:mm", "@", "General"
_FORMATS = {
    Takes.DAY: _DATE,
    Takes.LAST_DAY: _DATE,
    Takes.CLOCK: _TIME,
    Takes.NUMBER: _NUMBER,
    Takes.HINT: _NUMBER,
}
"""Number formats; all other cells keep what is typed, or 1-9 would become a day in September."""

_USUAL_WIDTH = 16
_COLUMNS_ON_PAPER = 14
_LINE_HEIGHT = 12.5
LAST_ROW = 1000
"""Last row in which lists are offered; a plan has no more rows than this in one list."""
_ESCAPED = re.compile("_(?=x[0-9A-Fa-f]{4}_)")


def name(book: Workbook) -> None:
    """Set author and title of the file; `with_fixed_times` takes out the times later."""
    book.properties.creator = "Notices"
    book.properties.title = "Plan of work on golf greens"


def write(worksheet: Worksheet, row: int, column: int, value: object) -> None:
    """Write a value into a cell; a text stays text, whatever it begins with."""
    cell = worksheet.cell(row, column)
    if isinstance(value, str):
        # ECMA-376 part 1, 22.9.2.19: _x0041_ would be read as A.
        cell.value = _ESCAPED.sub("_x005F_", value)
        cell.data_type = "s"
    elif isinstance(value, int | float | dt.date | dt.time):
        shape = cell.number_format
        cell.value = value
        cell.number_format = shape  # assigning a date sets a format
    cell.font = _PLAIN
    cell.alignment = _TYPED


def title(worksheet: Worksheet, sheet: Sheet) -> None:
    """Write the name of a sheet and its purpose, and set up the page."""
    for row, text, font in ((1, sheet.name, _TITLE), (2, sheet.line, _PLAIN)):
        write(worksheet, row, 1, text)
        cell = worksheet.cell(row, 1)
        cell.font, cell.alignment = font, _BESIDE
    worksheet.row_dimensions[1].height = 24
    worksheet.sheet_view.showGridLines = sheet.is_list
    worksheet.page_setup.orientation = "landscape"
    worksheet.page_setup.paperSize = 9
    worksheet.page_setup.fitToHeight = 0
    worksheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)


def form(worksheet: Worksheet, row: int) -> None:
    """Set the column widths of a form, and write its column headings."""
    for letter, width in zip("ABCD", (34, 40, 62, 40), strict=True):
        worksheet.column_dimensions[letter].width = width
    for column, text in ((2, "Yours"), (3, "What it is"), (4, "Example")):
        write(worksheet, row, column, text)
        worksheet.cell(row, column).font = _BOLD
    worksheet.freeze_panes = f"C{row + 1}"


def section(worksheet: Worksheet, row: int, text: str) -> None:
    """Write the title of a section of a form."""
    write(worksheet, row, 1, text)
    worksheet.cell(row, 1).font = _BOLD
    worksheet.cell(row, 1).alignment = _BESIDE


def line(worksheet: Worksheet, row: int, column: Column, says: str, longest: int) -> None:
    """Write a line of a form without its value, high enough for ``longest`` letters."""
    for number, text, font in ((1, column.heading, _PLAIN), (3, says, _SMALL)):
        write(worksheet, row, number, text)
        worksheet.cell(row, number).font = font
    worksheet.cell(row, 1).fill = _HEADING
    worksheet.row_dimensions[row].height = 4 + _LINE_HEIGHT * max(
        1, math.ceil(len(says) / 72), math.ceil(longest / 38)
    )
    ready(worksheet, row, 2, column)
    worksheet.cell(row, 2).border = _BOX
    _offer(worksheet, column, f"B{row}")


def ready(worksheet: Worksheet, row: int, column: int, described: Column) -> None:
    """Set number format, font and alignment of a cell by the kind of value that it takes."""
    cell = worksheet.cell(row, column)
    cell.number_format = _FORMATS.get(described.takes, _AS_TYPED)
    cell.font, cell.alignment = _PLAIN, _TYPED


def heading(
    worksheet: Worksheet, rows: tuple[int, int], number: int, column: Column, says: str
) -> None:
    """Write the heading of a column and the help above it."""
    width = column.width or _USUAL_WIDTH
    worksheet.column_dimensions[get_column_letter(number)].width = width
    write(worksheet, rows[0], number, says)
    write(worksheet, rows[1], number, column.heading)
    worksheet.cell(rows[0], number).font = _SMALL
    worksheet.cell(rows[0], number).alignment = Alignment(wrap_text=True, vertical="bottom")
    below = worksheet.cell(rows[1], number)
    below.font, below.fill, below.border = _BOLD, _HEADING, _BOX
    lines = math.ceil(len(says) / (width * 1.05)) + 1
    tallest = worksheet.row_dimensions[rows[0]].height or 0
    worksheet.row_dimensions[rows[0]].height = max(tallest, min(400, lines * _LINE_HEIGHT))
    worksheet.row_dimensions[rows[1]].height = 30


def column_of(worksheet: Worksheet, number: int, column: Column, first: int) -> None:
    """Format a whole column by the kind of value that it takes."""
    letter = get_column_letter(number)
    whole = worksheet.column_dimensions[letter]
    whole.number_format = _FORMATS.get(column.takes, _AS_TYPED)
    whole.font, whole.alignment = _PLAIN, _TYPED
    _offer(worksheet, column, f"{letter}{first}:{letter}{LAST_ROW}")


def list_of(worksheet: Worksheet, help_row: int, heading_row: int, last: int, columns: int) -> None:
    """Keep the headings of a list in sight, on the screen and on paper."""
    worksheet.freeze_panes = f"C{heading_row + 1}"
    worksheet.page_setup.fitToWidth = math.ceil(columns / _COLUMNS_ON_PAPER)
    worksheet.print_title_cols = "A:B"
    worksheet.print_title_rows = f"{help_row}:{heading_row}"
    worksheet.print_area = f"A1:{get_column_letter(columns)}{last}"


def example(worksheet: Worksheet, row: int, column: int) -> None:
    """Mark a cell as part of an example."""
    worksheet.cell(row, column).font = _SHOWN


def hints(
    worksheet: Worksheet, column: int, first: int, last: int, formula: Callable[[int], str]
) -> None:
    """Write a formula that shows a hint into each row."""
    for row in range(first, last + 1):
        cell = worksheet.cell(row, column)
        cell.value = formula(row)
        cell.font, cell.alignment = _SMALL, _TYPED


def grey_where(worksheet: Worksheet, cells_of: str, formula: str) -> None:
    """Grey out the cells for which the formula holds."""
    rule = Rule("expression", formula=[formula], dxf=DifferentialStyle(fill=_NOT_HERE))
    worksheet.conditional_formatting.add(cells_of, rule)


def read_me(
    worksheet: Worksheet,
    heading_text: str,
    lines: Sequence[str],
    sheets: Sequence[tuple[str, str]],
) -> None:
    """Write a sheet of sentences, and below them links to the other sheets."""
    worksheet.sheet_view.showGridLines = False
    worksheet.column_dimensions["A"].width = 24
    worksheet.column_dimensions["B"].width = 96
    worksheet.page_setup.orientation = "landscape"
    worksheet.page_setup.fitToHeight = 0
    worksheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    write(worksheet, 1, 1, heading_text)
    worksheet.cell(1, 1).font, worksheet.cell(1, 1).alignment = _TITLE, _BESIDE
    worksheet.row_dimensions[1].height = 24
    for row, text in enumerate(lines, start=3):
        write(worksheet, row, 1, text)
        worksheet.cell(row, 1).alignment = _BESIDE
    for row, (sheet, text) in enumerate(sheets, start=len(lines) + 4):
        write(worksheet, row, 1, sheet)
        cell = worksheet.cell(row, 1)
        cell.hyperlink = f"#{quote_sheetname(sheet)}!A1"
        cell.font = _LINK
        write(worksheet, row, 2, text)
        worksheet.row_dimensions[row].height = 4 + _LINE_HEIGHT * math.ceil(len(text) / 100)


def _offer(worksheet: Worksheet, column: Column, cells_of: str) -> None:
    """Offer the choices of a column if it has any, and warn of an entry that should be a date."""
    rule: DataValidation | None = None
    if column.choices:
        typed = ",".join(column.choices)
        formula = "=Operations" if column.choices == tuple(CATALOGUE) else f'"{typed}"'
        rule = DataValidation(type="list", formula1=formula, allow_blank=True, showDropDown=False)
        rule.error = "Choose one from the list."
        rule.showErrorMessage = column.only_choices
    elif column.takes in (Takes.DAY, Takes.LAST_DAY):
        rule = DataValidation(
            type="date", operator="greaterThan", formula1="DATE(2000,1,1)", allow_blank=True
        )
        rule.error, rule.errorStyle = "This is no date, such as 16 August 2027.", "warning"
        rule.showErrorMessage = True
    if rule is not None:
        rule.errorTitle = column.heading
        worksheet.add_data_validation(rule)
        rule.add(cells_of)
