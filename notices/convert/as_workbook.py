"""A plan as a workbook, with a sheet for each part of the plan."""

from __future__ import annotations

import datetime as dt
import io
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from openpyxl import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from notices.convert import workbook_look as look
from notices.convert.fixed_zip import with_fixed_times
from notices.convert.workbook_help import help_of, read_me
from notices.convert.workbook_lists import add_lists
from notices.plan.days import format_days, parse_days
from notices.plan.fields import read_day
from notices.plan.followers import Named, names_of_works, work_called
from notices.plan.green_list import format_greens, parse_greens
from notices.plan.own_operations import whole_catalogue
from notices.plan.refusal import Refusal
from notices.plan.workbook_layout import (
    DAILY,
    EXAMPLE,
    GREENS_BY_DAY,
    MARK,
    READ_ME,
    SHEETS,
    WORKS,
    Column,
    Sheet,
    Takes,
    Way,
)

TITLE_ROW, LINE_ROW, HELP_ROW, HEADING_ROW = 1, 2, 3, 4
FIRST_ROW = HEADING_ROW + 1
EMPTY_ROWS = 100
"""Empty rows on the sheet of works that react to the operation chosen in them."""
ROWS_ON_PAPER = 10
"""Empty rows that are printed, for people who fill them in by hand first."""

_GREEN_KEYS = {"green", "greens", "also"}

Plan = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class _Row:
    """A row of a list: its item, and whether it is only an example."""

    item: Mapping[str, Any]
    example: bool = False


def plan_as_workbook(plan: Plan, examples: Plan | None = None) -> bytes:
    """Return a plan in canonical form as a workbook (.xlsx) that reads as the same plan.

    Parameters
    ----------
    plan
        Plan in canonical form; empty for a workbook to be filled in.
    examples
        Plan whose rows are shown as marked examples, which the reader skips.
    """
    book = Workbook()
    book.remove(book.active) if book.active else None
    look.name(book)
    read_me(book.create_sheet(READ_ME))
    for sheet in SHEETS:
        worksheet = book.create_sheet(sheet.name)
        if sheet.is_list:
            _write_list(worksheet, sheet, list(_rows(sheet, plan, examples or {})))
        else:
            _write_form(worksheet, sheet, plan, examples or {})
    works = book[WORKS.name]
    add_lists(book, works, FIRST_ROW, works.max_row + EMPTY_ROWS)
    stream = io.BytesIO()
    book.save(stream)
    return with_fixed_times(stream.getvalue())


def _rows(sheet: Sheet, plan: Plan, examples: Plan) -> Iterator[_Row]:
    shown = list(_items(sheet, examples, FIRST_ROW))
    yield from (_Row(item, example=True) for item in shown)
    yield from (
        _Row(item) for item in _items(sheet, plan, FIRST_ROW + len(_at(examples, WORKS.way) or ()))
    )


def _items(sheet: Sheet, plan: Plan, first_work: int) -> Iterator[Mapping[str, Any]]:
    if sheet is GREENS_BY_DAY:
        yield from _greens_by_day(plan, first_work)
    elif sheet is DAILY:
        for day, mean in (_at(plan, DAILY.way) or {}).items():
            yield {"date": day, "mean": mean}
    else:
        yield from _at(plan, sheet.way) or ()


def _greens_by_day(plan: Plan, first_work: int) -> Iterator[Mapping[str, Any]]:
    works = plan.get("works", ())
    names = names_of_works(works, whole_catalogue(plan.get("operations")))
    for index, work in enumerate(works):
        greens = work.get("greens")
        for day, done in greens.items() if isinstance(greens, Mapping) else ():
            called = _called(index, names, first_work + index)
            yield {"work": called, "day": day, "greens": done}


def _called(index: int, names: Sequence[Named], row: int) -> str | int:
    """Return the plainest name that identifies a work, or else its row."""
    for name in (names[index].operation, names[index].id):
        try:
            if name and work_called(name, names, "") == index:
                return name
        except Refusal:
            continue
    return row


def _at(plan: Any, way: Way) -> Any:  # noqa: ANN401, whatever stands in a plan
    for step in way:
        if isinstance(plan, str):  # approval: pending
            return True if (plan, step) == ("pending", "pending") else None
        if isinstance(plan, Mapping):
            plan = plan.get(step)
        elif isinstance(plan, Sequence) and step.isdecimal():
            plan = plan[int(step)]
        else:
            return None
    return plan


def _write_form(worksheet: Worksheet, sheet: Sheet, plan: Plan, examples: Plan) -> None:
    look.title(worksheet, sheet)
    look.form(worksheet, HELP_ROW)
    row = HELP_ROW
    for column in sheet.columns:
        row += 1
        if sheet.sections and column.heading in sheet.sections:
            row += 1
            look.section(worksheet, row, sheet.sections[column.heading])
            row += 1
        value, shown = _at(plan, column.way), _at(examples, column.way)
        longest = max(len(str(value or "")), len(str(shown or "")))
        look.line(worksheet, row, column, help_of(sheet, column), longest)
        _fill(worksheet, row, 2, column, value)
        if shown is not None:
            _fill(worksheet, row, 4, column, shown)
            look.example(worksheet, row, 4)


def _write_list(worksheet: Worksheet, sheet: Sheet, rows: Sequence[_Row]) -> None:
    columns = (MARK, *sheet.columns)
    look.title(worksheet, sheet)
    for number, column in enumerate(columns, start=1):
        look.heading(worksheet, (HELP_ROW, HEADING_ROW), number, column, help_of(sheet, column))
        look.column_of(worksheet, number, column, FIRST_ROW)
    for row, line in enumerate(rows, start=FIRST_ROW):
        if line.example:
            look.write(worksheet, row, 1, EXAMPLE)
        for number, column in enumerate(columns, start=1):
            if column.way:
                _fill(worksheet, row, number, column, _value(line.item, column))
            if line.example:
                look.example(worksheet, row, number)
    last = FIRST_ROW + len(rows) + ROWS_ON_PAPER
    look.list_of(worksheet, HELP_ROW, HEADING_ROW, last, len(columns))


def _value(item: Mapping[str, Any], column: Column) -> object:
    """Return the value of an item for a cell of this column."""
    value = _at(item, column.way)
    if value is None or isinstance(value, Mapping):
        return None  # greens by day have a sheet of their own
    if column.way[-1] in _GREEN_KEYS:
        return format_greens(parse_greens(value)) if not isinstance(value, str) else value
    if (
        column.heading.endswith((" day", " days"))
        and len(column.way) == 1
        and column.way != ("day",)
    ):
        return _part_of_days(value, column.takes)
    return value


def _part_of_days(value: object, takes: Takes) -> object:
    first, *others = parse_days(value)
    match takes:
        case Takes.DAY:
            return first.first
        case Takes.LAST_DAY:
            return first.last if first.last != first.first else None
        case _:
            return format_days(others) or None


def _fill(worksheet: Worksheet, row: int, column: int, described: Column, value: object) -> None:
    look.ready(worksheet, row, column, described)
    if value is None:
        return
    if isinstance(value, bool):
        value = "yes" if value else "no"
    elif isinstance(value, str) and described.takes is Takes.DAY:
        value = read_day(value)
    elif isinstance(value, str) and described.takes is Takes.CLOCK:
        value = dt.time.fromisoformat(value)
    elif isinstance(value, float) and float(f"{value:.15g}") != value:
        value = repr(value)  # a spreadsheet keeps fifteen digits
    look.write(worksheet, row, column, value)
