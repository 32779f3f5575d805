"""A day that rain moves onto one of a second dressing: each is named, and keeps its identity."""

from __future__ import annotations

import datetime as dt

from notices.documents.calendar import calendar
from notices.documents.committee_briefing import committee_briefing
from notices.documents.model import CalendarDocument
from notices.documents.team_calendar import team_calendar
from notices.documents.team_sheet import team_sheet
from notices.programme.model import Programme
from notices.programme.rounds import rounds_on
from notices.wording.blocks import Table
from notices.wording.period import PeriodWords
from notices.wording.words import Words
from tests.wording.small_plans import plan, programme, work

MOVED = dt.date(2027, 8, 16)
"""Greens 4 to 6 are worked on a week late, while greens 1 to 3 get their second sand."""


def made(*days: str) -> Programme:
    """Three greens a day, sand in their holes and again seven days later, brushed in each time."""
    greens = dict(zip(days, ("1-3", "4-6", "7-9"), strict=True))
    dates = ", ".join(sorted(days))
    return programme(
        plan(
            work("hollow tining", dates, greens=greens),
            work("slitting", dates),
            work("verticutting", dates),
            work("top dressing", dates, settings={"dressings": 2, "days_between": 7}),
            work("brushing", dates),
            {"operation": "brushing", "after": "top dressing, +7 days"},
            greens="1-9",
            crew={"people": 4},
        )
    )


BEFORE = made("2027-08-09", "2027-08-10", "2027-08-11")
AFTER = made("2027-08-09", "2027-08-16", "2027-08-11")


def test_holes_shut_for_a_second_dressing_are_not_counted_as_shut_all_day() -> None:
    """Of nine holes 4 to 6 are shut all day; 1 to 3 only for as long as they are sanded again."""
    words = Words(AFTER)
    main = words.main_period()
    assert main is not None
    said = PeriodWords(words, main).status_while_working()
    assert "That leaves six of the nine holes to play." in said
    assert said.endswith("For part of Monday 16 August it is fewer.")


def work_of(entries: CalendarDocument) -> dict[str, tuple[dt.date, str]]:
    return {e.uid: (e.first, e.summary) for e in entries.entries if e.category == "Work"}


def test_a_day_is_parted_into_the_work_and_the_dressing_with_its_brushing() -> None:
    done = rounds_on(AFTER, MOVED)
    assert {
        ordinal: [(one.operation.name, greens) for one, greens in works]
        for ordinal, works in done.items()
    } == {
        1: [
            ("hollow tining", ("4", "5", "6")),
            ("slitting", ("4", "5", "6")),
            ("verticutting", ("4", "5", "6")),
            ("top dressing", ("4", "5", "6")),
            ("brushing", ("4", "5", "6")),
        ],
        2: [("top dressing", ("1", "2", "3")), ("brushing", ("1", "2", "3"))],
    }


def test_members_read_no_brushing_that_goes_along_with_sand() -> None:
    for one in (BEFORE, AFTER):
        assert not [e for e in calendar(one).entries if e.summary.startswith("Brushing")]


def test_the_team_reads_each_day_by_its_own_work_and_nothing_is_called_off() -> None:
    before, after = work_of(team_calendar(BEFORE)), work_of(team_calendar(AFTER))
    assert before.keys() == after.keys()
    # Three days of work and three of sand, one for each three greens.
    assert len(after) == 6
    assert sorted(said for day, said in after.values() if day == MOVED) == [
        "Greens renovation: greens 4 to 6",
        "Top dressing: greens 1 to 3",
    ]
    # Only what is done on greens 4 to 6 has moved.
    assert {after[uid][1] for uid in after if after[uid] != before[uid]} == {
        "Greens renovation: greens 4 to 6",
        "Top dressing: greens 4 to 6",
    }


def day_by_day(of: Programme) -> dict[str, tuple[str, ...]]:
    section = committee_briefing(of).section("days")
    assert section is not None
    table = next(block for block in section.blocks if isinstance(block, Table))
    return {row[0]: row[1:3] for row in table.rows}


def test_a_committee_reads_what_is_new_that_day_and_what_is_done_again() -> None:
    rows = day_by_day(AFTER)
    assert rows["Mon 16 Aug"] == (
        "Greens renovation; top dressing, brushing again",
        "greens 4 to 6; greens 1 to 3",
    )
    assert rows["Mon 23 Aug"] == ("Top dressing, brushing again", "greens 4 to 6")


def test_the_team_marks_pipes_where_the_ground_is_opened_that_day() -> None:
    pages = {page.name: str(page.blocks) for page in team_sheet(AFTER).sections}
    assert "found and marked: greens 4 to 6." in pages[f"day {MOVED.isoformat()}"]


def test_two_later_dressings_of_a_day_are_no_work_of_their_own() -> None:
    """Three dressings: on the 16th greens 4 to 6 get their second and greens 1 to 3 their third."""
    dates = "2027-08-02, 2027-08-09"
    twice = programme(
        plan(
            work("hollow tining", dates, greens={"2027-08-02": "1-3", "2027-08-09": "4-6"}),
            work("top dressing", dates, settings={"dressings": 3, "days_between": 7}),
            {"operation": "brushing", "after": "top dressing, +7 days"},
            {"operation": "brushing", "after": "top dressing, +14 days"},
            greens="1-6",
            crew={"people": 4},
        )
    )
    said = work_of(team_calendar(twice)).values()
    assert sorted(name for day, name in said if day == MOVED) == [
        "Top dressing: greens 1 to 3",
        "Top dressing: greens 4 to 6",
    ]
    assert day_by_day(twice)["Mon 16 Aug"] == ("Top dressing, brushing again", "all greens")
