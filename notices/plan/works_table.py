"""Works from a list of the club's own: a CSV file or a sheet that lies beside the plan.

In the plan stands `{table: works.csv, dates: day-month-year}` in place of a work. Columns may
stand in any order and have the headings that people give them; what is not known is left alone.
Dates are read in the order that the plan names. None is guessed: 03/04/2026 is two different days.
"""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from notices.findings import Finding, Place
from notices.operations import Kind
from notices.plan.beside import read_beside
from notices.plan.csv_table import TableFault, csv_rows
from notices.plan.days import named_day, parse_days
from notices.plan.messages import did_you_mean
from notices.plan.nearest import nearest, quoted
from notices.plan.plan_file import finding
from notices.plan.refusal import Refusal
from notices.plan.source import MOST_ENTRIES, PlanPath, PlanSource, Spot
from notices.plan.workbook_layout import Takes, all_settings, heading_of_setting

KEYS = ("table", "sheet", "dates")
ORDERS: Mapping[str, tuple[int, int, int]] = {
    # Where year, month and day stand.
    "year-month-day": (0, 1, 2),
    "day-month-year": (2, 1, 0),
    "month-day-year": (2, 0, 1),
}
LARGEST = 1_000_000
WORKBOOKS = (".xlsx", ".ods", ".xls")
HEADINGS_WITHIN = 20
"""Rows in which the headings are looked for."""

NAMES: Mapping[str, tuple[str, ...]] = {
    "operation": (
        *("operation", "work", "works", "task", "job", "treatment", "activity"),
        *("type of work", "kind of work", "work type", "procedure"),
    ),
    "first": (
        *("first day", "date", "dates", "day", "days", "start", "start date", "from", "begin"),
        *("begins", "starts", "date from", "planned date", "when"),
    ),
    "last": (
        "last day",
        "end",
        "end date",
        "finish",
        "finish date",
        "ends",
        "to",
        "until",
        "date to",
    ),
    "reserve_dates": (
        *("reserve dates", "reserve date", "reserve day", "reserve days", "reserve"),
        *("rain date", "rain dates", "rain day", "backup date"),
    ),
    "greens": ("greens", "green", "which greens", "greens worked"),
    "while_working": ("while working",),
    "services_checked": ("services checked", "services marked", "services located"),
    "reopen": ("reopen", "reopens", "back in play", "reopening"),
    "after": ("after", "follows"),
    "hire": ("hire", "hire cost", "hire price"),
    "id": ("id",),
    "why": ("why",),
    "note": ("note", "notes", "comment", "comments", "remark", "remarks"),
}
"""What a column may be called, in small letters."""

_NAMED = 'write "operation,first day,last day,greens" above the columns'
_ASK = 'say in the plan how dates stand in the table: "dates: day-month-year" or "month-day-year"'
_TAKES: Mapping[str, Takes] = {
    "first": Takes.DAY,
    "last": Takes.DAY,
    "reserve_dates": Takes.DAY,
    "services_checked": Takes.YES_NO,
    "hire": Takes.NUMBER,
}


@dataclass(frozen=True, slots=True)
class _Row:
    """A row of a table, whatever file it stands in."""

    cells: Sequence[object]
    places: Sequence[Place]
    formulas: frozenset[int] = frozenset()
    """Columns, from 0, in which a formula stands."""


@dataclass(frozen=True, slots=True)
class _Column:
    """What a column holds: a key of a work, or a setting, and the unit in its heading."""

    key: str
    setting: bool = False
    unit: str = ""
    takes: Takes = Takes.WORDS


@dataclass(slots=True)
class _Tables:
    folder: Path
    source: PlanSource
    works: list[Any] = field(default_factory=list)
    spots: list[Spot] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)


def with_tables(source: PlanSource, folder: Path) -> tuple[PlanSource, list[Finding]]:
    """Return the source with the works of tables in the place where the tables are named."""
    works = source.data.get("works")
    if not isinstance(works, list) or not any(is_table(work) for work in works):
        return source, []
    at = source.root.children
    listed = at["works"] if isinstance(at, dict) else Spot(1, 1)
    tables = _Tables(folder, source)
    for index, work in enumerate(works):
        if is_table(work):
            _take_table(tables, index, work)
        else:
            tables.works.append(work)
            tables.spots.append(listed.children[index])  # type: ignore[index]
    if len(tables.works) > MOST_ENTRIES:
        message = f"the plan and its tables hold more than {MOST_ENTRIES:,} works"
        place = source.place(("works",))
        tables.findings.append(
            finding("plan-fault", place, message, f"Write at most {MOST_ENTRIES:,}")
        )
        del tables.works[MOST_ENTRIES:]
    listed.children = tables.spots
    data = {key: value for key, value in source.data.items() if key != "works"}
    return replace(
        source, data=data | ({"works": tables.works} if tables.works else {}), tables=True
    ), tables.findings


def is_table(work: object) -> bool:
    """Tell whether an entry among the works names a table of them."""
    return isinstance(work, Mapping) and "table" in work


def _take_table(tables: _Tables, index: int, entry: Mapping[str, Any]) -> None:
    path: PlanPath = ("works", index)
    found = len(tables.findings)
    for key in entry:
        if key not in KEYS:
            remedy = did_you_mean(key, KEYS, otherwise="Beside a table stand only sheet and dates")
            _say(
                tables,
                (*path, key),
                f"there is no key {quoted(key)} beside a table",
                remedy,
                key=True,
            )
    order = entry.get("dates")
    if order is not None and order not in ORDERS:
        known = list(ORDERS)
        remedy = did_you_mean(str(order), known, otherwise=f"Write one of {', '.join(known)}")
        _say(tables, (*path, "dates"), f"{quoted(order)} is no order of dates", remedy)
    if len(tables.findings) > found:
        return
    try:
        rows = _rows(tables.folder, entry["table"], entry.get("sheet"))
        _take_rows(tables, rows, str(order) if order else "")
    except TableFault as fault:
        for line, refused in fault.faults:
            place = Place(str(tables.folder / str(entry["table"])), line)
            tables.findings.append(finding("plan-fault", place, *refused.sentences))
    except Refusal as error:
        _say(tables, (*path, "table"), *error.sentences)


def _say(
    tables: _Tables, path: PlanPath, message: str, suggestion: str, *, key: bool = False
) -> None:
    place = tables.source.place(path, key=key)
    tables.findings.append(finding("plan-fault", place, message, suggestion))


def _rows(folder: Path, name: object, sheet: object) -> list[_Row]:
    if not isinstance(name, str) or not name.strip():
        raise Refusal(f"{quoted(name)} is not a file", "write the name of one beside the plan")
    if Path(name).suffix.lower() in WORKBOOKS:
        return _rows_of_sheet(folder, name, sheet)
    if sheet is not None:
        raise Refusal(f"{quoted(name)} has no sheets", "take sheet out")
    data = read_beside(
        folder, name, what="a table of works", largest=LARGEST, otherwise="keep one season in it"
    )
    file = str(folder / name)
    lines = data.decode("utf-8-sig", "replace").splitlines()
    rows = []
    for number, cells in csv_rows(data):
        text = lines[number - 1] if number <= len(lines) else ""
        places = [Place(file, number, max(0, text.find(cell)) + 1, text) for cell in cells]
        rows.append(_Row(cells, places))
    return rows


def _rows_of_sheet(folder: Path, name: str, sheet: object) -> list[_Row]:
    from notices.plan.workbook_cells import read_cells  # noqa: PLC0415, start-up time
    from notices.plan.workbook_file import LARGEST_BOOK  # noqa: PLC0415

    data = read_beside(
        folder,
        name,
        what="a table of works",
        largest=LARGEST_BOOK,
        otherwise="keep one season in it",
    )
    sheets = read_cells(data, str(folder / name))
    if sheet is None and len(sheets) > 1:
        raise Refusal(f"{quoted(name)} has several sheets", f"add sheet: {next(iter(sheets))}")
    title = str(sheet) if sheet is not None else next(iter(sheets), "")
    if title not in sheets:
        guess = nearest(title, sheets)
        hint = f'did you mean "{guess}"?' if guess else f"there are {', '.join(sheets)}"
        raise Refusal(f"{quoted(name)} has no sheet {quoted(title)}", hint)
    cells = sheets[title]
    return [
        _Row(
            values,
            [cells.place(number, column) for column in range(1, len(values) + 1)],
            frozenset(column - 1 for row, column in cells.formulas if row == number),
        )
        for number, values in cells.rows[: 2 * MOST_ENTRIES]
    ]


def _take_rows(tables: _Tables, rows: Sequence[_Row], order: str) -> None:
    if not rows:
        raise TableFault([(None, Refusal("this table is empty", _NAMED))])
    best = max(
        range(min(len(rows), HEADINGS_WITHIN)), key=lambda n: (len(set(_known(rows[n]))), -n)
    )
    columns = _columns(rows[best])
    for row in rows[best + 1 :]:
        if len(tables.works) > MOST_ENTRIES:
            break  # said where the tables are counted
        filled = [number for number in columns if not _is_empty(row, number)]
        # A row with neither work nor day is a sum or a remark.
        if any(columns[number].key in ("operation", "first") for number in filled):
            _take_row(tables, row, columns, order)


def _known(row: _Row) -> Iterator[str]:
    for cell in row.cells:
        column = _column(cell)
        if column is not None:
            yield column.key


def _columns(head: _Row) -> dict[int, _Column]:
    found: dict[int, _Column] = {}
    for number, cell in enumerate(head.cells):
        column = _column(cell)
        if column is None:
            continue
        if any(
            (other.key, other.setting) == (column.key, column.setting) for other in found.values()
        ):
            twice = Refusal(f"a second column is called {quoted(cell)}", "keep one of them")
            raise TableFault([(head.places[number].line, twice)])
        found[number] = column
    keys = {column.key for column in found.values() if not column.setting}
    if not {"operation", "first"} <= keys:
        missing = "the kind of work" if "operation" not in keys else "the first day"
        line = head.places[0].line if head.places else None
        raise TableFault([(line, Refusal(f"no column is named for {missing}", _NAMED))])
    return found


def _column(cell: object) -> _Column | None:
    """Return what a heading names, with the unit that it has in brackets."""
    if not isinstance(cell, str) or not cell.strip():
        return None
    unit = re.search(r"[(\[]([^)\]]{1,20})[)\]]\s*$", cell)
    bare = re.sub(r"[(\[].*", "", cell) if unit else cell
    words = re.sub(r"[\W_]+", " ", bare.casefold()).strip()
    key = next((key for key, names in NAMES.items() if words in names), None)
    if key:
        return _Column(key, takes=_TAKES.get(key, Takes.WORDS))
    for setting in all_settings():
        if words in (setting.name.replace("_", " "), heading_of_setting(setting.name).casefold()):
            takes = Takes.NUMBER if setting.kind is Kind.COUNT else Takes.WORDS
            measured_in = unit[1].strip() if unit else ""
            return _Column(setting.name, setting=True, unit=measured_in, takes=takes)
    return None


def _is_empty(row: _Row, number: int) -> bool:
    return number >= len(row.cells) or not str(row.cells[number]).strip()


def _take_row(tables: _Tables, row: _Row, columns: Mapping[int, _Column], order: str) -> None:
    path: PlanPath = ("works", len(tables.works))
    work: dict[str, Any] = {}
    spot = _spot(row.places[0])
    children: dict[str, Spot] = {}
    days: dict[str, str] = {}
    for number, column in columns.items():
        name = "dates" if column.key in ("first", "last") else column.key
        place = row.places[min(number, len(row.places) - 1)]
        if not column.setting:
            children.setdefault(name, _spot(place))
        if _is_empty(row, number) and number not in row.formulas:
            continue
        try:
            value = _value(row, number, column, order)
        except Refusal as error:
            way = ("settings", name) if column.setting else (name,)
            found = finding("plan-fault", place, *error.sentences, path=(*path, *way))
            tables.findings.append(found)
            continue
        if column.setting:
            work.setdefault("settings", {})[column.key] = value
            block = children.setdefault("settings", _spot(place, {}))
            block.children[column.key] = _spot(place)  # type: ignore[index,call-overload]
        elif name == "dates":
            days[column.key] = str(value)
        else:
            work[name] = value
    first, last = days.get("first"), days.get("last")
    if first:
        work["dates"] = f"{first} to {last}" if last and last != first else first
    spot.children = children
    tables.works.append(work)
    tables.spots.append(spot)


def _spot(place: Place, children: dict[str, Spot] | None = None) -> Spot:
    return Spot(place.line or 1, place.column or 1, children=children, place=place)


def _value(row: _Row, number: int, column: _Column, order: str) -> object:
    from notices.plan.workbook import plain_value  # noqa: PLC0415, start-up time

    if number in row.formulas:
        raise Refusal(
            "a formula stands here, and Notices works none out",
            "copy the cell and paste its value in its place",
        )
    cell: Any = row.cells[number]
    if column.takes is Takes.DAY:
        return _days(cell, order) if isinstance(cell, str) else plain_value(cell, Takes.DAY)
    value = plain_value(cell, column.takes)
    if column.unit and re.fullmatch(
        r"[0-9]+(?:\.[0-9]+)?(?: ?[x×] ?[0-9]+(?:\.[0-9]+)?)?", str(value)
    ):
        return f"{value} {column.unit}"
    if (
        column.takes is Takes.NUMBER
        and isinstance(value, str)
        and re.fullmatch("[0-9]{1,9}", value)
    ):
        return int(value)
    return value


def _days(cell: str, order: str) -> str:
    """Read a day, or two with a word between them, in the order that the plan names."""
    parts = re.split(r"\s+(?:to|until|-|–|—)\s+|\s*[–—]\s*", cell.strip())
    if len(parts) > 2:
        raise Refusal(f"{quoted(cell)} is not understood", "write a first day and a last day")
    return " to ".join(_day(part, order) for part in parts)


def _day(text: str, order: str) -> str:
    if re.fullmatch("[0-9]{4}-[0-9]{2}-[0-9]{2}", text):
        parse_days(text)
        return text
    if named := named_day(text):
        return _existing(named, text)
    numbers = re.fullmatch("([0-9]{1,4})[-/. ]([0-9]{1,2})[-/. ]([0-9]{1,4})", text)
    if not numbers:
        raise Refusal(f"{quoted(text)} is not a date", "write one such as 2027-08-16")
    if max(len(numbers[1]), len(numbers[3])) < 4:
        raise Refusal(f"{quoted(text)} has a year of two figures", "write all four")
    if not order:
        meant = sorted({day for name in ORDERS if (day := _in_order(numbers.groups(), name))})
        if len(meant) > 1:
            raise Refusal(f"{quoted(text)} can be {' or '.join(meant)}", _ASK)
        raise Refusal(f"{quoted(text)} is not written year-month-day", _ASK)
    if day := _in_order(numbers.groups(), order):
        return day
    raise Refusal(
        f"{quoted(text)} is no day when read as {order}",
        "check the date, and the order that the plan names",
    )


def _in_order(numbers: Sequence[str], order: str) -> str:
    year, month, day = (numbers[at] for at in ORDERS[order])
    if len(year) != 4 or len(month) > 2 or len(day) > 2:
        return ""
    try:
        return dt.date(int(year), int(month), int(day)).isoformat()
    except ValueError:
        return ""


def _existing(day: tuple[int, int, int], text: str) -> str:
    try:
        return dt.date(*day).isoformat()
    except ValueError:
        raise Refusal(f"{quoted(text)} does not exist", "check the day") from None
