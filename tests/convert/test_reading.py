"""What a person types into a workbook, and what is said of it, with its cell."""

from __future__ import annotations

import datetime as dt
import io
import json
from pathlib import Path
from typing import Any

import click
import pytest
from openpyxl import load_workbook

import notices
from notices.convert.as_workbook import plan_as_workbook
from notices.findings import Place, column_letters
from notices.terminal import in_lines, in_one_line
from tests.convert.workbooks import BOOK, PLAN, cell_of, changed, findings_of, said_of
from tests.test_cli import AT_FAULT, FIELDS, run

FAULTS: dict[str, tuple[str, str, Any, str]] = {
    # What: sheet, heading, what is typed; what is said. The first work stands in row 5.
    "a formula": (
        *("Works", "First day", "=TODAY()"),
        (
            "a formula stands here, and Notices works none out. "
            "Copy the cell and paste its value in its place."
        ),
    ),
    "a list that became a date": (
        *("Works", "Greens", dt.date(2027, 9, 1)),
        (
            "the spreadsheet program has taken this for a date. "
            "Format the cell as text, then type it again."
        ),
    ),
    "a text that became a truth value": (
        *("Works", "Note", True),
        (
            "the spreadsheet program has taken this for a truth value. "
            "Format the cell as text, then type it again."
        ),
    ),
    "a percentage that became a number": (
        *("Turf and climate", "Clay", 0.38),
        (
            "0.38 stands here without a sign, and 38 % may have become 0.38. "
            "Format the cell as text, then type it again, such as 38 %."
        ),
    ),
    "a date that can be two days": (
        *("Works", "First day", "03/04/2027"),
        '"03/04/2027" is not written year-month-day. Write the date as 2027-03-04 or 2027-04-03.',
    ),
    "a day with a time": (
        *("Works", "Last day", dt.datetime.fromisoformat("2027-08-17 12:30:00")),
        "2027-08-17 12:30:00 is a day and a time of day. Write the day only.",
    ),
    "a quantity without its unit": (
        *("Works", "Depth", 60),
        '"60" has no unit. Write "60 mm".',
    ),
    "a setting of another work": (
        *("Works", "Blade width", "3 mm"),
        (
            'hollow tining has no setting "Blade width". '
            'Known are "Tine diameter", "Spacing", "Depth", "Passes", "Inside diameter".'
        ),
    ),
    "an operation that is none": (
        *("Works", "Operation", "holow tining"),
        'there is no operation "holow tining". Did you mean "hollow tining"?',
    ),
    "a word for yes": (
        *("Works", "Services checked", "perhaps"),
        '"perhaps" is neither yes nor no. Write one of the two.',
    ),
    "a mark that is none": (
        *("Works", "Example", "exemple"),
        (
            '"exemple" is not understood in this column. '
            'Write "example" before a row that does not count, and nothing before others.'
        ),
    ),
    "a club without a name": (
        *("Club", "Name", None),
        '"Name" is missing. Add it: full name of the club.',
    ),
    "a time on its own": (
        *("Crew", "Working day", dt.time(6, 30)),
        (
            "the spreadsheet program has taken this for a time of day. "
            "Format the cell as text, then type it again."
        ),
    ),
}


@pytest.mark.parametrize("what", FAULTS)
def test_a_fault_is_told_with_its_cell(what: str, tmp_path: Path) -> None:
    sheet, heading, value, said = FAULTS[what]
    cell = cell_of(sheet, heading)
    path = changed(tmp_path / "plan.xlsx", sheet, **{cell: value})
    name = sheet if sheet.isalnum() else f"'{sheet}'"
    assert f"{name}!{cell}: {said}" in said_of(path)


def loaded(path: Path) -> Any:
    return notices.canonical(notices.load_plan(path).plan)


READ: dict[str, tuple[str, str, Any, tuple[str | int, ...], Any]] = {
    # What: sheet, heading, what is typed; where it is in the plan, and what it is there.
    "a date in letters": (
        *("Works", "First day", "2027-08-16"),
        ("works", 0, "dates"),
        "2027-08-16 to 2027-08-17",
    ),
    "a number with a point": ("Club", "Latitude", 52.1, ("club", "place", "latitude"), 52.1),
    "a time": ("Decisions", "Confirmed", dt.time(6, 30), ("decision", "confirmed"), "06:30"),
    "a truth value": ("Works", "Services checked", True, ("works", 0, "services_checked"), True),
    "no": ("Works", "Services checked", "No", ("works", 0, "services_checked"), False),
    "a number of passes": ("Works", "Passes", 2, ("works", 0, "settings", "passes"), 2),
    "a green by its number": ("Greens", "Green", 9, ("course", "greens", 0, "green"), "9"),
    "days apart": (
        *("Works", "Further days", dt.date(2027, 8, 20)),
        ("works", 0, "dates"),
        "2027-08-16 to 2027-08-17, 2027-08-20",
    ),
}


@pytest.mark.parametrize("what", READ)
def test_typed_values_are_those_of_yaml(what: str, tmp_path: Path) -> None:
    sheet, heading, value, way, expected = READ[what]
    needed: dict[str, Any] = {}
    if sheet == "Club":
        needed = {cell_of(sheet, "Longitude"): 1, cell_of(sheet, "Timezone"): "Europe/London"}
    if sheet == "Decisions":
        needed = {cell_of(sheet, "Decided by"): "me", cell_of(sheet, "Decided when"): "daily"}
    if sheet == "Greens":
        needed = {"B6": "1-8"}
    cell = cell_of(sheet, heading)
    path = changed(tmp_path / "plan.xlsx", sheet, **{cell: value, **needed})
    found = loaded(path)
    for step in way:
        found = found[step]
    assert found == expected


def test_rows_of_the_example_do_not_count(tmp_path: Path) -> None:
    path = tmp_path / "plan.xlsx"
    other = {**PLAN, "closures": [{"what": "course", "dates": "2027-08-20"}]}
    path.write_bytes(plan_as_workbook(PLAN, other))
    assert loaded(path)["works"][0]["dates"] == "2027-08-16 to 2027-08-17"
    assert len(loaded(path)["works"]) == 1
    assert "closures" not in loaded(path)


def edited() -> Any:
    return load_workbook(io.BytesIO(BOOK))


def test_sheets_and_headings_have_nearest_words(tmp_path: Path) -> None:
    path = tmp_path / "plan.xlsx"
    book = edited()
    book["Closures"].title = "Closure"
    book["Fixtures"]["C4"] = "Dat"
    book["Club"]["A5"] = "Nmae"
    book.save(path)
    said = said_of(path)
    assert 'Closure: a plan has no sheet "Closure". Did you mean "Closures"?' in said
    assert 'Fixtures!C4: there is no column "Dat" on this sheet. Did you mean "Date"?' in said
    assert 'Club!A5: there is no line "Nmae" on this sheet. Did you mean "Name"?' in said


def test_what_nobody_sees_does_not_count_silently(tmp_path: Path) -> None:
    path = tmp_path / "plan.xlsx"
    book = edited()
    book["Works"].sheet_state = "hidden"
    book["Greens"].merge_cells("B5:B6")
    book["Works"]["BA5"] = "a remark"
    book.save(path)
    said = said_of(path)
    assert (
        'Works: the sheet "Works" is hidden, and what it says would count. Show it, or delete it.'
        in said
    )
    assert (
        "Greens!B5: this cell is merged with others, and only one of them has the value. "
        "Take the cells apart and fill each." in said
    )
    assert 'Works!BA5: "a remark" stands under no heading. Move it, or take it out.' in said


def test_days_and_months_belong_together(tmp_path: Path) -> None:
    path = tmp_path / "plan.xlsx"
    book = edited()
    book["Works"][cell_of("Works", "First day")] = None
    book["Turf and climate"][cell_of("Turf and climate", "January")] = 4.1
    book.save(path)
    said = said_of(path)
    last, february = cell_of("Works", "Last day"), cell_of("Turf and climate", "February")
    assert f"Works!{last}: a last day stands here, and no first. Write the first day." in said
    nothing = "nothing is written in this place of the list. Fill it, or take it out."
    assert f"'Turf and climate'!{february}: {nothing}" in said


def test_greens_by_day_name_a_work(tmp_path: Path) -> None:
    path = tmp_path / "plan.xlsx"
    book = edited()
    sheet = book["Greens by day"]
    for row, line in enumerate(
        [
            ("hollow tinning", dt.date(2027, 8, 16), "1-4"),
            (5, dt.date(2027, 8, 16), "1-4"),
            (7, dt.date(2027, 8, 16), "1-4"),
            ("hollow tining", None, "1-4"),
        ],
        start=5,
    ):
        for column, value in enumerate(line, start=2):
            sheet.cell(row, column).value = value
    book.save(path)
    assert said_of(path)[:4] == [
        (
            "'Greens by day'!B5: there is no work \"hollow tinning\" on the sheet Works. "
            'Did you mean "hollow tining"?'
        ),
        "'Greens by day'!B6: this work has greens on the sheet Works already. Keep one of the two.",
        "'Greens by day'!B7: row 7 of the sheet Works holds no work. Write a row that does.",
        "'Greens by day'!C8: the day is missing in this row. Add it.",
    ]


def test_columns_may_stand_in_any_order_and_rows_above_may_go(tmp_path: Path) -> None:
    path = tmp_path / "plan.xlsx"
    book = edited()
    sheet = book["Greens"]
    sheet.move_range("B4:B5", cols=10)
    sheet.delete_rows(1, 3)
    book.save(path)
    assert loaded(path)["course"]["greens"] == [{"green": "1-9", "area": "400 m2"}]


def test_a_workbook_of_something_else_is_told(tmp_path: Path) -> None:
    path = tmp_path / "plan.xlsx"
    book = edited()
    for sheet in book.sheetnames:
        if sheet != "Lists":
            del book[sheet]
    book["Lists"].sheet_state = "visible"
    book["Lists"].title = "Budget"
    book.save(path)
    (said,) = findings_of(path)
    assert said.message == "no sheet of this workbook belongs to a plan"


# What is shown


@pytest.mark.parametrize(
    ("number", "letters"), [(1, "A"), (26, "Z"), (27, "AA"), (52, "AZ"), (53, "BA"), (702, "ZZ")]
)
def test_columns_have_the_names_of_spreadsheets(number: int, letters: str) -> None:
    assert column_letters(number) == letters


def test_a_place_in_a_sheet_is_written_as_formulas_write_it() -> None:
    assert str(Place("p.xlsx", 7, 3, sheet="Works")) == "p.xlsx:Works!C7"
    assert str(Place("p.xlsx", 7, 3, sheet="Past recovery")) == "p.xlsx:'Past recovery'!C7"
    assert str(Place("p.xlsx", sheet="Works")) == "p.xlsx:Works"


def test_the_row_is_shown_with_the_spot_below(tmp_path: Path) -> None:
    cell = cell_of("Works", "First day")
    path = changed(tmp_path / "plan.xlsx", "Works", **{cell: "03/04/2027"})
    (found,) = findings_of(path)
    assert click.unstyle(in_lines(found)).splitlines()[1:] == [
        f"   {cell} | hollow tining | 03/04/2027 | 2027-08-17 | 1-9 | 60 mm",
        "      |                 ^",
        "  Write the date as 2027-03-04 or 2027-04-03.",
    ]
    assert in_one_line(found).startswith(f"{path}:Works!{cell}: ")


def test_other_programs_get_the_cell_too(tmp_path: Path) -> None:
    cell = cell_of("Works", "First day")
    path = changed(tmp_path / "plan.xlsx", "Works", **{cell: "03/04/2027"})
    result = run("check", "--json", path)
    assert result.exit_code == AT_FAULT
    (found,) = json.loads(result.stdout)
    assert set(FIELDS) < set(found)
    assert (found["sheet"], found["cell"], found["line"], found["column"]) == ("Works", "C5", 5, 3)
