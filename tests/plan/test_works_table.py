"""Works from a list of the club's own: any order of columns, usual headings, no date guessed."""

from __future__ import annotations

import datetime as dt
import json
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft7Validator
from openpyxl import Workbook

import notices
from notices.changing import postpone
from notices.errors import EditFault, PlanFault
from notices.plan.schema import plan_schema

PLAN = """\
club: {name: Tansy Down Golf Club}
course: {greens: [{green: 1-18}]}
works:
  - {operation: rolling, dates: 2027-05-01}
  - {ENTRY}
"""
ORDERED = "table: works.csv, dates: day-month-year"


def plan(folder: Path, table: str | bytes, entry: str = ORDERED) -> Path:
    data = table if isinstance(table, bytes) else table.encode()
    (folder / "works.csv").write_bytes(data)
    path = folder / "plan.yaml"
    path.write_text(PLAN.replace("ENTRY", entry), "utf-8")
    return path


def works(path: Path) -> list[dict[str, Any]]:
    return notices.canonical(notices.load_plan(path).plan)["works"][1:]  # type: ignore[no-any-return]


def said_of(path: Path) -> list[str]:
    with pytest.raises(PlanFault) as fault:
        notices.load_plan(path)
    return [str(found).removeprefix(f"{path.parent}/") for found in fault.value.findings]


def test_columns_stand_in_any_order_under_usual_headings(tmp_path: Path) -> None:
    table = """\
Winter programme;;;;;;
Which greens;Task;Start date;End;Depth (mm);Contractor;Remarks
1-9;Hollow tining;03/04/2027;5.4.2027;75,5;Smith;with the big machine
10-18, 1;brushing;6 April 2027;;;;
"""
    assert works(plan(tmp_path, table.replace("10-18, 1", "10-18"))) == [
        {
            "operation": "hollow tining",
            "dates": "2027-04-03 to 2027-04-05",
            "greens": "1-9",
            "settings": {"depth": "75.5 mm"},
            "note": "with the big machine",
        },
        {"operation": "brushing", "dates": "2027-04-06", "greens": "10-18"},
    ]


@pytest.mark.parametrize(
    ("order", "typed", "day"),
    [
        ("day-month-year", "03/04/2027", "2027-04-03"),
        ("month-day-year", "03/04/2027", "2027-03-04"),
        ("year-month-day", "2027/4/3", "2027-04-03"),
        ("day-month-year", "2027-04-03", "2027-04-03"),
        ("day-month-year", "Saturday 3rd April 2027", "2027-04-03"),
        ("day-month-year", "3.4.2027 - 5.4.2027", "2027-04-03 to 2027-04-05"),
    ],
)
def test_dates_are_read_in_the_order_that_the_plan_names(
    order: str, typed: str, day: str, tmp_path: Path
) -> None:
    entry = f"table: works.csv, dates: {order}"
    (work,) = works(plan(tmp_path, f"date,work\n{typed},rolling\n", entry))
    assert work["dates"] == day


ASK = 'Say in the plan how dates stand in the table: "dates: day-month-year" or "month-day-year".'


@pytest.mark.parametrize(
    ("entry", "typed", "said"),
    [
        ("table: works.csv", "03/04/2026", f'"03/04/2026" can be 2026-03-04 or 2026-04-03. {ASK}'),
        ("table: works.csv", "25/04/2026", f'"25/04/2026" is not written year-month-day. {ASK}'),
        (
            "table: works.csv, dates: month-day-year",
            "25/04/2026",
            (
                '"25/04/2026" is no day when read as month-day-year. '
                "Check the date, and the order that the plan names."
            ),
        ),
        (ORDERED, "03/04/26", '"03/04/26" has a year of two figures. Write all four.'),
        (ORDERED, "soon", '"soon" is not a date. Write one such as 2027-08-16.'),
    ],
)
def test_no_date_is_guessed(entry: str, typed: str, said: str, tmp_path: Path) -> None:
    path = plan(tmp_path, f"work,date\nrolling,{typed}\n", entry)
    assert said_of(path) == [f"works.csv:2:9: {said}"]


@pytest.mark.parametrize(
    ("entry", "said"),
    [
        (
            "table: wroks.csv",
            'plan.yaml:5:13: there is no file "wroks.csv" beside the plan. Did you mean "works.csv"?',
        ),
        (
            "table: ../works.csv",
            (
                "plan.yaml:5:13: a table of works must lie beside the plan. "
                "Put the file into the plan's folder and write its name only."
            ),
        ),
        (
            "table: works.csv, date: day-month-year",
            'plan.yaml:5:24: there is no key "date" beside a table. Did you mean "dates"?',
        ),
        (
            "table: works.csv, dates: day-year-month",
            'plan.yaml:5:31: "day-year-month" is no order of dates. Did you mean "year-month-day"?',
        ),
        (
            "table: works.csv, sheet: One",
            'plan.yaml:5:13: "works.csv" has no sheets. Take sheet out.',
        ),
    ],
)
def test_the_entry_in_the_plan_is_checked(entry: str, said: str, tmp_path: Path) -> None:
    path = plan(tmp_path, "work,date\nrolling,2027-08-16\n", entry)
    assert said_of(path) == [said]


@pytest.mark.parametrize(
    ("table", "said"),
    [
        ("", "works.csv: this table is empty. "),
        ("date,greens\n2027-08-16,1\n", "works.csv:1: no column is named for the kind of work. "),
        ("work,greens\nrolling,1\n", "works.csv:1: no column is named for the first day. "),
        ("work,task,date\n", 'works.csv:1: a second column is called "task". '),
        (b"work,date\n\xff\xfe,1\n", "works.csv: this is not plain text. "),
    ],
)
def test_a_table_that_is_none_is_told(table: str | bytes, said: str, tmp_path: Path) -> None:
    (only,) = said_of(plan(tmp_path, table))
    assert only.startswith(said)


def test_what_a_row_says_is_checked_like_any_work(tmp_path: Path) -> None:
    table = "task,start,depth,greens\nhollow tinning,2027-08-16,,1\nhollow tining,,75,1-40\n"
    assert said_of(plan(tmp_path, table)) == [
        'works.csv:2:1: there is no operation "hollow tinning". Did you mean "hollow tining"?',
        'works.csv:3:1: "dates" is missing. Add it: day or days.',
        'works.csv:3:16: "75" has no unit. Write "75 mm".',
        (
            "works.csv:3:19: the course has no greens 19-40. "
            "Add them under course: greens, or take them out."
        ),
    ]


def sheet_of_works(path: Path, *rows: tuple[Any, ...], title: str = "Programme") -> None:
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    sheet.title = title
    for row in rows:
        sheet.append(row)
    book.save(path)


def test_a_sheet_serves_as_well(tmp_path: Path) -> None:
    rows = [
        ("Our plans for the winter",),
        ("Job", "From", "To", "Greens", "Passes"),
        ("Rolling", dt.date(2027, 4, 3), dt.date(2027, 4, 5), "1-9", 2),
    ]
    sheet_of_works(tmp_path / "works.xlsx", *rows)
    path = plan(tmp_path, "", "table: works.xlsx")
    assert works(path) == [
        {
            "operation": "rolling",
            "dates": "2027-04-03 to 2027-04-05",
            "greens": "1-9",
            "settings": {"passes": 2},
        }
    ]
    sheet_of_works(tmp_path / "works.xlsx", rows[1], ("Rolling", "=TODAY()", None, "1-9", 2))
    assert said_of(path)[0] == (
        "works.xlsx:Programme!B2: a formula stands here, and Notices works none out. "
        "Copy the cell and paste its value in its place."
    )
    assert said_of(plan(tmp_path, "", "table: works.xlsx, sheet: Programe")) == [
        'plan.yaml:5:13: "works.xlsx" has no sheet "Programe". Did you mean "Programme"?'
    ]


def test_the_canonical_form_carries_the_works(tmp_path: Path) -> None:
    path = plan(tmp_path, "work,date\nrolling,2027-08-16\n")
    alone = tmp_path / "alone" / "plan.yaml"
    alone.parent.mkdir()
    alone.write_text(json.dumps(notices.canonical(notices.load_plan(path).plan)), "utf-8")
    assert notices.load_plan(alone).plan == notices.load_plan(path).plan


def test_editors_take_a_table_among_the_works() -> None:
    schema = Draft7Validator(plan_schema())
    base = {"club": {"name": "x"}, "course": {"greens": [{"green": 1}]}}
    assert schema.is_valid({**base, "works": [{"table": "works.csv", "dates": "day-month-year"}]})
    assert not schema.is_valid({**base, "works": [{"table": "works.csv", "dates": "any"}]})
    assert not schema.is_valid({**base, "works": [{"table": "works.csv", "operation": "rolling"}]})


def test_a_plan_with_a_table_is_not_changed_at_the_wrong_spot(tmp_path: Path) -> None:
    path = plan(tmp_path, "work,date\nbrushing,2027-08-16\n")
    with pytest.raises(EditFault, match="takes works from a table"):
        postpone(path, "rolling", dt.date(2027, 5, 8), None, today=dt.date(2027, 3, 1))


@pytest.mark.parametrize(
    "data", [b"work,date\n" + b"rolling,2027-08-16\n" * 40_000, b'"' * 900_000, b"," * 900_000]
)
def test_a_mass_of_rows_is_refused_in_time(data: bytes, tmp_path: Path) -> None:
    assert said_of(plan(tmp_path, data))
