"""A plan in a workbook, read into the same plain data as a plan in YAML, with the cell of each part.

What a spreadsheet program makes of what is typed is undone here: a date, a time of day or a number
becomes what one would write in YAML. Where it cannot be undone (1-9 that became a day in
September) the cell is refused. Everything else about a value is left to the readers of the plan.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from notices.errors import PlanFault
from notices.findings import Finding, Place
from notices.plan.days import parse_days
from notices.plan.fields import read_day
from notices.plan.followers import names_of_works, work_called
from notices.plan.messages import did_you_mean
from notices.plan.nearest import nearest, quoted
from notices.plan.own_operations import whole_catalogue
from notices.plan.plan_file import file_bytes, finding, refuse
from notices.plan.refusal import Refusal
from notices.plan.source import INVISIBLE, MOST_ENTRIES, MOST_FAULTS, PlanPath, PlanSource, Spot
from notices.plan.workbook_cells import CellValue, SheetCells, read_cells, shown_value
from notices.plan.workbook_file import LARGEST_BOOK
from notices.plan.workbook_layout import (
    DAILY,
    EXAMPLE,
    GREENS_BY_DAY,
    LISTS,
    MARK,
    READ_ME,
    SHEETS,
    WORKS,
    Column,
    Sheet,
    Takes,
    Way,
    groups,
)

MEAN_OF_MONTHS: Way = ("course", "monthly_mean_temperature")
_HEADINGS_WITHIN = 30
"""Rows in which the headings of a list are looked for."""


def read_workbook(path: Path, content: bytes | None = None) -> PlanSource:
    """Read a plan from a workbook, or from what is about to be written into it.

    Raises
    ------
    PlanFault
        With every fault for which nothing can be read at all; others are in the source.
    """
    file = str(path)
    data = file_bytes(path, LARGEST_BOOK) if content is None else content
    try:
        sheets = read_cells(data, file)
    except Refusal as refused:
        refuse("workbook-unreadable", Place(file), *refused.sentences)
    return _Reader(file, sheets).read()


@dataclass(slots=True)
class _Item:
    """A part of the plan that is being read: its data, and where each piece stands."""

    data: dict[str, Any]
    spot: Spot
    path: PlanPath = ()

    def put(self, way: Way, value: object, spot: Spot) -> None:
        """Set a value at the end of a way; nothing but its place where it is None."""
        block, at = self.data, self.spot
        for step in way[:-1]:
            if not isinstance(at.children, dict):
                at.children = {}
            at = at.children.setdefault(step, _spot(spot.place))
            if value is not None:
                block = block.setdefault(step, {})
        if not isinstance(at.children, dict):
            at.children = {}
        at.children[way[-1]] = spot
        if value is not None:
            block[way[-1]] = value


def _spot(place: Place | None) -> Spot:
    return Spot(place.line or 1 if place else 1, place.column or 1 if place else 1, place=place)


@dataclass(slots=True)
class _Head:
    """The headings of a list: their row, and the column below each, from 1."""

    row: int
    at: dict[str, int] = field(default_factory=dict)
    mark: int | None = None
    passed_over: set[int] = field(default_factory=set)
    """Columns that nobody reads: hints, and those whose headings are refused already."""


@dataclass(slots=True)
class _Reader:
    file: str
    sheets: Mapping[str, SheetCells]
    findings: list[Finding] = field(default_factory=list)

    def read(self) -> PlanSource:
        self._look_at_names()
        plan = _Item({"club": {}, "course": {}}, _spot(self._start_of(WORKS)))
        plan.spot.children = {
            "club": _spot(self._start_of(SHEETS[0])),
            "course": _spot(self._start_of(SHEETS[1])),
        }
        for sheet in SHEETS:
            cells = self.sheets.get(sheet.name)
            if cells is None:
                continue
            if sheet.is_list:
                self._read_list(sheet, cells, plan)
            else:
                self._read_form(cells, sheet, plan)
        self._months(plan)
        if len(self.findings) >= MOST_FAULTS:
            raise PlanFault(self.findings[:MOST_FAULTS])
        return PlanSource(
            plan.data,
            self.file,
            plan.spot,
            findings=tuple(self.findings),
            sheets=tuple(self.sheets),
        )

    def _start_of(self, sheet: Sheet) -> Place:
        return Place(self.file, sheet=sheet.name if sheet.name in self.sheets else "")

    def _fault(
        self, place: Place | None, message: str, suggestion: str = "", path: PlanPath = ()
    ) -> None:
        if len(self.findings) < MOST_FAULTS:
            self.findings.append(
                finding("plan-fault", place or Place(self.file), message, suggestion, path)
            )

    def _look_at_names(self) -> None:
        known = [sheet.name for sheet in SHEETS]
        if not any(name in self.sheets for name in known):
            refuse(
                "workbook-unreadable",
                Place(self.file),
                "no sheet of this workbook belongs to a plan",
                'Start one with "notices new FOLDER --workbook", or name a list of works in a plan',
            )
        for name, cells in self.sheets.items():
            if name in (READ_ME, LISTS):
                continue
            if name not in known:
                self._fault(
                    Place(self.file, sheet=name),
                    f"a plan has no sheet {quoted(name)}",
                    did_you_mean(name, known, otherwise="Take it out, or keep it in another file"),
                )
            elif cells.hidden:
                self._fault(
                    Place(self.file, sheet=name),
                    f"the sheet {quoted(name)} is hidden, and what it says would count",
                    "Show it, or delete it",
                )

    # Forms

    def _read_form(self, cells: SheetCells, sheet: Sheet, plan: _Item) -> None:
        columns = {_letters(column.heading): column for column in sheet.columns}
        seen: set[str] = set()
        for row, values in cells.rows:
            label, value = _at(values, 0), _at(values, 1)
            column = columns.get(_letters(label)) if isinstance(label, str) else None
            if column is None:
                if seen or (isinstance(label, str) and nearest(label, columns)):
                    self._unknown_line(cells, row, label, value, sheet)
                continue  # above the first line stands what the sheet is for
            place = cells.place(row, 2)
            if column.heading in seen:
                message = f"the line {quoted(column.heading)} stands here a second time"
                self._fault(cells.place(row, 1), message, "Keep one of the two")
                continue
            seen.add(column.heading)
            self._take(cells, (row, 2), value, column, plan, place)

    def _unknown_line(
        self, cells: SheetCells, row: int, label: CellValue, value: CellValue, sheet: Sheet
    ) -> None:
        if _is_empty(value):
            return  # a title, or a line of help
        known = [column.heading for column in sheet.columns]
        if _is_empty(label):
            message, remedy = (
                "this value has no name before it",
                "Write it beside the line it is of",
            )
        else:
            message = f"there is no line {quoted(label)} on this sheet"
            remedy = did_you_mean(str(label), known, otherwise="Take it out")
        self._fault(cells.place(row, 2 if _is_empty(label) else 1), message, remedy)

    def _months(self, plan: _Item) -> None:
        """Make a list of the twelve lines for the months, or nothing of none."""
        course = plan.data["course"]
        key = MEAN_OF_MONTHS[-1]
        found = course.pop(key, None)
        spots = plan.spot.children
        at = spots["course"].children if isinstance(spots, dict) else None
        if isinstance(at, dict) and key in at and isinstance(at[key].children, dict):
            months: Any = at[key].children
            at[key].children = [months.get(str(number), at[key]) for number in range(12)]
        if found is not None:
            course[key] = [found.get(str(number)) for number in range(12)]

    # Lists

    def _read_list(self, sheet: Sheet, cells: SheetCells, plan: _Item) -> None:
        head = self._head(sheet, cells)
        if head is None:
            return
        below, at = head.row, head.at
        items: list[_Item] = []
        for row, values in cells.rows:
            if row <= below or self._is_example(cells, row, values, head.mark):
                continue
            self._nameless(cells, row, values, head)
            if all(_is_empty(_at(values, column - 1)) for column in at.values()):
                continue
            if len(items) == MOST_ENTRIES:
                message = f"this is entry {MOST_ENTRIES + 1:,} of its sheet"
                self._fault(cells.place(row, 1), message, "Write fewer")
                break
            # Where the item will stand, so that what is said here is not said again by the model.
            first = min(at.values())
            item = _Item({}, _spot(cells.place(row, first)), (*sheet.way, len(items)))
            self._read_row(sheet, cells, (row, values), at, item)
            items.append(item)
        if sheet is GREENS_BY_DAY:
            self._greens_by_day(items, plan)
        elif sheet is DAILY:
            self._days(items, plan)
        else:
            spot = _spot(cells.place(below, min(at.values())))
            plan.put(sheet.way, [item.data for item in items] or None, spot)
            spot.children = [item.spot for item in items]

    def _head(self, sheet: Sheet, cells: SheetCells) -> _Head | None:
        """Return where the headings of a list stand: in the row that has most of them."""
        known = {_letters(column.heading): column for column in (MARK, *sheet.columns)}
        best: tuple[int, Sequence[CellValue]] = (0, ())
        count = 0
        for row, values in cells.rows[:_HEADINGS_WITHIN]:
            found = {_letters(value) for value in values if isinstance(value, str)} & known.keys()
            if len(found) > count:
                best, count = (row, values), len(found)
        if not count:
            if cells.rows:
                headings = ", ".join(column.heading for column in sheet.columns[:3])
                self._fault(
                    Place(self.file, sheet=sheet.name),
                    "no row of this sheet holds its headings",
                    f"Write them above the list: {headings} and so on",
                )
            return None
        row, values = best
        head = _Head(row)
        for number, value in enumerate(values, start=1):
            if _is_empty(value):
                continue
            column = known.get(_letters(value)) if isinstance(value, str) else None
            if column is None or column.heading in head.at or (column is MARK and head.mark):
                head.passed_over.add(number)
                self._odd_heading(cells.place(row, number), value, column, sheet)
            elif column is MARK:
                head.mark = number
            elif column.takes is Takes.HINT:
                head.passed_over.add(number)
            else:
                head.at[column.heading] = number
        return head

    def _odd_heading(
        self, place: Place, value: CellValue, column: Column | None, sheet: Sheet
    ) -> None:
        if column is not None:
            message = f"the heading {quoted(column.heading)} stands here a second time"
            self._fault(place, message, "Keep one of the two columns")
            return
        known = [column.heading for column in sheet.columns]
        message = f"there is no column {quoted(value)} on this sheet"
        self._fault(place, message, did_you_mean(str(value), known, otherwise="Take it out"))

    def _is_example(
        self, cells: SheetCells, row: int, values: Sequence[CellValue], column: int | None
    ) -> bool:
        value = _at(values, column - 1) if column else ""
        if column is None or _is_empty(value):
            return False
        if isinstance(value, str) and value.strip().lower() == EXAMPLE:
            return True
        message = f"{quoted(shown_value(value))} is not understood in this column"
        remedy = 'Write "example" before a row that does not count, and nothing before others'
        self._fault(cells.place(row, column), message, remedy)
        return False

    def _nameless(
        self, cells: SheetCells, row: int, values: Sequence[CellValue], head: _Head
    ) -> None:
        named = {*head.at.values(), *head.passed_over, head.mark}
        for number, value in enumerate(values, start=1):
            if not _is_empty(value) and number not in named:
                message = f"{quoted(shown_value(value))} stands under no heading"
                self._fault(cells.place(row, number), message, "Move it, or take it out")

    def _read_row(
        self,
        sheet: Sheet,
        cells: SheetCells,
        line: tuple[int, Sequence[CellValue]],
        at: Mapping[str, int],
        item: _Item,
    ) -> None:
        row, values = line
        for way, columns in groups(sheet):
            here = [(column, at[column.heading]) for _, column in columns if column.heading in at]
            if columns[0][1].takes is Takes.DAY and len(columns) > 1:
                self._take_days(cells, row, values, here, item, way)
                continue
            for column, number in here:
                place = cells.place(row, number)
                self._take(cells, (row, number), _at(values, number - 1), column, item, place)

    # Cells

    def _take(
        self,
        cells: SheetCells,
        at: tuple[int, int],
        value: CellValue,
        column: Column,
        item: _Item,
        place: Place,
    ) -> None:
        spot = _spot(place)
        try:
            item.put(column.way, self._plain(cells, at, value, column), spot)
        except Refusal as error:
            item.put(column.way, None, spot)
            self._fault(place, *error.sentences, path=(*item.path, *column.way))

    def _plain(
        self, cells: SheetCells, at: tuple[int, int], value: CellValue, column: Column
    ) -> str | float | bool | None:
        """Return what one would have typed into YAML; None for nothing."""
        if at in cells.merged:
            raise Refusal(
                "this cell is merged with others, and only one of them has the value",
                "take the cells apart and fill each",
            )
        if at in cells.formulas:
            raise Refusal(
                "a formula stands here, and Notices works none out",
                "copy the cell and paste its value in its place",
            )
        return plain_value(value, column.takes)

    def _take_days(
        self,
        cells: SheetCells,
        row: int,
        values: Sequence[CellValue],
        here: Sequence[tuple[Column, int]],
        item: _Item,
        way: Way,
    ) -> None:
        """Join a first day, a last day and further days into what a plan says in one text."""
        if not here:
            return
        typed: dict[Takes, str] = {}
        faults = len(self.findings)
        spot = _spot(cells.place(row, here[0][1]))
        for column, number in here:
            try:
                text = self._plain(cells, (row, number), _at(values, number - 1), column)
                if text is None:
                    continue
                read = read_day if column.takes is Takes.LAST_DAY else parse_days
                read(text)
                typed[column.takes] = str(text)
            except Refusal as error:
                place = cells.place(row, number)
                self._fault(place, *error.sentences, path=(*item.path, *way))
        first, last = typed.get(Takes.DAY), typed.get(Takes.LAST_DAY)
        if len(self.findings) == faults and last and not first:
            number = next(number for column, number in here if column.takes is Takes.LAST_DAY)
            message = "a last day stands here, and no first"
            self._fault(
                cells.place(row, number), message, "Write the first day", (*item.path, *way)
            )
        whole = len(self.findings) == faults
        stretch = f"{first} to {last}" if first and last and first != last else first
        parts = [part for part in (stretch, typed.get(Takes.MORE_DAYS)) if part]
        item.put(way, ", ".join(parts) if parts and whole else None, spot)

    # What two sheets say together

    def _greens_by_day(self, items: Sequence[_Item], plan: _Item) -> None:
        works = plan.data.get("works", [])
        names = names_of_works(works, whole_catalogue(plan.data.get("operations")))
        spots = plan.spot.children
        at: Any = spots["works"].children if isinstance(spots, dict) and "works" in spots else []
        for item in items:
            children: Any = item.spot.children
            work, day, greens = (item.data.get(key) for key in ("work", "day", "greens"))
            missing = next((key for key in ("work", "day", "greens") if key not in item.data), "")
            if missing:
                if not any(f.path == (*item.path, missing) for f in self.findings):
                    place = children[missing].place if missing in children else item.spot.place
                    self._fault(place, f"the {missing} is missing in this row", "Add it")
                continue
            try:
                index = _index_of_work(work, names, [spot.place.line for spot in at])
            except Refusal as error:
                self._fault(children["work"].place, *error.sentences)
                continue
            given = works[index].get("greens")
            if given is not None and not isinstance(given, dict):
                self._fault(
                    children["work"].place,
                    "this work has greens on the sheet Works already",
                    "Keep one of the two",
                )
            elif isinstance(given, dict) and day in given:
                self._fault(
                    children["day"].place,
                    f"{day} stands here twice for this work",
                    "Put its greens on one line",
                )
            else:
                works[index].setdefault("greens", {})[str(day)] = greens
                if not isinstance(at[index].children["greens"].children, dict):
                    at[index].children["greens"] = Spot(1, 1, children={}, place=item.spot.place)
                spot = children["greens"]
                spot.key_place = children["day"].place
                at[index].children["greens"].children[str(day)] = spot

    def _days(self, items: Sequence[_Item], plan: _Item) -> None:
        found: dict[str, Any] = {}
        spots: dict[str, Spot] = {}
        for item in items:
            children: Any = item.spot.children
            day, mean = item.data.get("date"), item.data.get("mean")
            if day is None or mean is None:
                if not any(f.path[: len(item.path)] == item.path for f in self.findings):
                    message = (
                        "this row has no day" if day is None else "this day has no temperature"
                    )
                    self._fault(
                        item.spot.place or Place(self.file), message, "Fill it, or delete it"
                    )
                continue
            if str(day) in found:
                self._fault(children["date"].place, f"{day} stands here twice", "Keep one of them")
                continue
            found[str(day)] = mean
            spots[str(day)] = children["mean"]
            spots[str(day)].key_place = children["date"].place
        if found:
            whole = _spot(items[0].spot.place)
            plan.put(DAILY.way, found, whole)
            whole.children = spots


def _index_of_work(name: object, names: Any, rows: Sequence[int]) -> int:  # noqa: ANN401
    if isinstance(name, int):
        if name not in rows:
            raise Refusal(f"row {name} of the sheet Works holds no work", "write a row that does")
        return rows.index(name)
    return work_called(" ".join(str(name).lower().split()), names, "on the sheet Works")


def plain_value(value: CellValue, takes: Takes) -> str | float | bool | None:
    """Return a cell's value as one would have typed it into YAML; None for an empty cell.

    Raises
    ------
    Refusal
        Where the spreadsheet program has made something of it that cannot be undone.
    """
    match value:
        case bool():
            if takes is Takes.YES_NO:
                return value
            raise _taken_for("a truth value")
        case int() | float():
            return _number(value, takes)
        case dt.datetime() | dt.date():
            if takes not in (Takes.DAY, Takes.LAST_DAY, Takes.MORE_DAYS):
                raise _taken_for("a date")
            if isinstance(value, dt.datetime) and value.time() != dt.time():
                raise Refusal(f"{value} is a day and a time of day", "write the day only")
            return f"{value:%Y-%m-%d}"
        case dt.time() | dt.timedelta():
            if takes is not Takes.CLOCK:
                raise _taken_for("a time of day")
            return _clock(value)
        case str():
            return _text(value, takes)


def _taken_for(what: str) -> Refusal:
    return Refusal(
        f"the spreadsheet program has taken this for {what}",
        "format the cell as text, then type it again",
    )


def _number(value: float, takes: Takes) -> float:
    if takes is Takes.PERCENT:
        raise Refusal(
            f"{value:g} stands here without a sign, and 38 % may have become 0.38",
            "format the cell as text, then type it again, such as 38 %",
        )
    whole = float(value).is_integer() and abs(value) < 1e15 and str(value) != "-0.0"
    return int(value) if whole else value


def _clock(value: dt.time | dt.timedelta) -> str:
    if isinstance(value, dt.time):
        return f"{value:%H:%M}"
    minutes = round(value.total_seconds() / 60)
    if not 0 <= minutes < 24 * 60:
        raise Refusal(f"{value} is not a time of day", 'write one such as "06:30"')
    return f"{minutes // 60:02}:{minutes % 60:02}"


def _text(value: str, takes: Takes) -> str | bool | None:
    if not value.strip():
        return None
    if INVISIBLE.search(value):
        raise Refusal("an invisible character stands in this text", "type the text afresh")
    if takes is Takes.YES_NO:
        word = value.strip().lower()
        if word not in ("yes", "no", "true", "false"):
            raise Refusal(f"{quoted(value)} is neither yes nor no", "write one of the two")
        return word in ("yes", "true")
    return value


def _at(values: Sequence[CellValue], index: int) -> CellValue:
    return values[index] if index < len(values) else ""


def _is_empty(value: CellValue) -> bool:
    return isinstance(value, str) and not value.strip()


def _letters(text: object) -> str:
    return "".join(str(text).casefold().split()).replace("_", "").replace("-", "")
