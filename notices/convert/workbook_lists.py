"""A hidden sheet in a workbook: operations to choose from, and the settings of each."""

from __future__ import annotations

from openpyxl import Workbook
from openpyxl.utils import get_column_letter
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.worksheet.worksheet import Worksheet

from notices.convert import workbook_look as look
from notices.operations import CATALOGUE, Operation, Setting
from notices.plan.settings import write_value
from notices.plan.workbook_layout import (
    LISTS,
    MARK,
    WORKS,
    Takes,
    all_settings,
    heading_of_setting,
)


def add_lists(book: Workbook, works: Worksheet, first_row: int, last_row: int) -> None:
    """Add the hidden sheet, and let the sheet of works react to the operation chosen in a row."""
    lists = book.create_sheet(LISTS)
    lists.sheet_state = "hidden"
    settings = all_settings()
    for column, text in enumerate(("Operation", "Settings", *(s.name for s in settings)), start=1):
        look.write(lists, 1, column, text)
    for row, operation in enumerate(CATALOGUE.values(), start=2):
        look.write(lists, row, 1, operation.name)
        look.write(lists, row, 2, _hint(operation))
        for column, setting in enumerate(settings, start=3):
            if operation.setting(setting.name):
                look.write(lists, row, column, "yes")
    last, widest = len(CATALOGUE) + 1, get_column_letter(len(settings) + 2)
    for name, cells in (
        ("Operations", f"$A$2:$A${last}"),
        ("OperationHints", f"$A$2:$B${last}"),
        ("OperationSettings", f"$C$2:${widest}${last}"),
    ):
        book.defined_names[name] = DefinedName(name, attr_text=f"{LISTS}!{cells}")
    _react(works, first_row, last_row, settings)


def _hint(operation: Operation) -> str:
    """Return the names of an operation's settings, each with its default."""
    named = [
        f"{heading_of_setting(setting.name)}"
        + (f" {write_value(setting.kind, setting.default)}" if setting.default is not None else "")
        for setting in operation.settings
    ]
    return " · ".join(named) or "No settings"


def _react(works: Worksheet, first_row: int, last_row: int, settings: tuple[Setting, ...]) -> None:
    columns = (MARK, *WORKS.columns)
    chosen = get_column_letter(1 + [column.way for column in columns].index(("operation",)))
    row = f"MATCH(${chosen}{first_row},Operations,0)"
    numbers = {setting.name: number for number, setting in enumerate(settings, start=1)}
    for number, column in enumerate(columns, start=1):
        letter = get_column_letter(number)
        if column.takes is Takes.HINT:
            look.hints(
                works,
                number,
                first_row,
                last_row,
                lambda line: f'=IFERROR(VLOOKUP(${chosen}{line},OperationHints,2,FALSE),"")',
            )
        elif column.way[:1] == ("settings",):
            out = f'IFERROR(INDEX(OperationSettings,{row},{numbers[column.way[1]]})="",FALSE)'
            look.grey_where(works, f"{letter}{first_row}:{letter}{look.LAST_ROW}", out)
