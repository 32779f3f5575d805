"""What is done again for each dressing is explained once, and keeps no day of its own."""

from __future__ import annotations

import datetime as dt

from notices.documents.calendar import calendar
from notices.documents.member_email import member_email
from notices.wording.blocks import Heading
from tests.wording.small_plans import plan, programme, work

DRESSED = programme(
    plan(
        work("hollow tining", "2027-08-09"),
        work(
            "top dressing",
            "2027-08-09",
            reserve_dates="2027-08-10",
            settings={"dressings": 2, "days_between": 7},
        ),
        work("brushing", "2027-08-09"),
        {"operation": "brushing", "after": "top dressing, +7 days"},
    )
)


def test_the_email_explains_brushing_once() -> None:
    heads = [
        block.text
        for section in member_email(DRESSED).document.sections
        for block in section.blocks
        if isinstance(block, Heading)
    ]
    assert heads.count("Brushing") == 1
    assert heads.count("Hollow tining") == 1


def test_the_calendar_tells_brushing_with_the_sand() -> None:
    entries = calendar(DRESSED).entries
    assert not [entry.summary for entry in entries if entry.summary.startswith("Brushing")]
    assert dt.date(2027, 8, 16) in {entry.first for entry in entries if "again" in entry.summary}


def test_the_reserve_day_is_that_of_the_work_and_not_of_a_brushing_that_follows() -> None:
    kept = [entry.first for entry in calendar(DRESSED).entries if entry.tentative]
    assert kept == [dt.date(2027, 8, 10)]
