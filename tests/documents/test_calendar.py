"""The members' calendar: each day with its greens, once for what goes together; nothing moves in vain."""

from __future__ import annotations

import datetime as dt

from notices.documents.calendar import calendar
from notices.documents.model import CalendarEntry
from tests.wording.small_plans import plan, programme, work

DATES = "2027-08-09 to 2027-08-11"
DAYS = {"2027-08-09": "1-6", "2027-08-10": "7-12", "2027-08-11": "13-18"}


def told(*works: dict[str, object]) -> dict[str, CalendarEntry]:
    entries = calendar(programme(plan(*works))).entries
    return {
        entry.uid.partition("@")[0].removeprefix("fallow-mead-golf-club-"): entry
        for entry in entries
    }


def test_what_goes_together_is_one_entry_a_day() -> None:
    cores = work("hollow tining", DATES, greens=DAYS)
    sand, brush = work("top dressing", DATES), work("brushing", DATES)
    entries = told(cores, sand, brush)
    assert {uid: (e.first.day, e.last.day, e.summary) for uid, e in entries.items()} == {
        "hollow-tining-1": (9, 9, "Hollow tining and top dressing: greens 1 to 6"),
        "hollow-tining-1-2": (10, 10, "Hollow tining and top dressing: greens 7 to 12"),
        "hollow-tining-1-3": (11, 11, "Hollow tining and top dressing: greens 13 to 18"),
    }
    assert entries["hollow-tining-1"].description == (
        "Holes and sand, to let water and air down to the roots.\n"
        "Monday 9 August: greens 1 to 6. Closed all day."
    )


def test_what_is_done_on_a_day_of_its_own_has_its_entry() -> None:
    entries = told(
        work("hollow tining", DATES, greens=DAYS),
        work("raising the height of cut", "2027-08-02"),
    )
    raised = entries["raising-the-height-of-cut-1"]
    assert (raised.first, raised.last) == (dt.date(2027, 8, 2), dt.date(2027, 8, 2))


def test_a_day_that_rain_moves_takes_no_other_along() -> None:
    """Greens 7 to 12 are done on the 16th instead of the 10th."""
    later = {"2027-08-09": "1-6", "2027-08-11": "13-18", "2027-08-16": "7-12"}
    before = told(work("hollow tining", DATES, greens=DAYS))
    after = told(work("hollow tining", "2027-08-09, 2027-08-11, 2027-08-16", greens=later))
    assert before.keys() == after.keys()
    moved = {uid for uid in before if before[uid] != after[uid]}
    assert {(before[uid].first.day, after[uid].first.day) for uid in moved} == {(10, 16)}


def test_a_work_that_is_added_below_leaves_the_entries_where_they_are() -> None:
    cores = work("hollow tining", DATES, greens=DAYS)
    # Scarifying comes first on the day, and here last in the plan.
    assert told(cores).keys() == told(cores, work("scarifying", DATES)).keys()


def test_later_dressings_are_told_by_the_day() -> None:
    """Seven days after the 9th, 10th and 11th."""
    twice = work("top dressing", DATES, greens=DAYS, settings={"dressings": 2, "days_between": 7})
    again = {uid: entry for uid, entry in told(twice).items() if "again" in uid}
    assert {uid: (e.first.day, e.summary) for uid, e in again.items()} == {
        "top-dressing-1-again-2": (16, "Top dressing again: greens 1 to 6"),
        "top-dressing-1-again-2-2": (17, "Top dressing again: greens 7 to 12"),
        "top-dressing-1-again-2-3": (18, "Top dressing again: greens 13 to 18"),
    }


def test_brushing_after_a_later_dressing_goes_with_it() -> None:
    """Sand on the 9th to 11th and seven days later; it is brushed in each time."""
    sand = work("top dressing", DATES, greens=DAYS, settings={"dressings": 2, "days_between": 7})
    brushed = work("brushing", DATES), work("brushing", "2027-08-16 to 2027-08-18")
    assert told(sand, *brushed).keys() == told(sand).keys()


def test_an_entry_lasts_as_long_as_a_green_is_away() -> None:
    """Dug from 9 to 12 November, open 14 days after the last: away until the 25th."""
    trench = work(
        "drain trenching",
        "2027-11-09 to 2027-11-12",
        greens="12",
        while_working="temporary green",
        reopen="14 days later",
    )
    (entry,) = told(trench).values()
    assert entry.summary == "Green 12: temporary green (drain trenching)"
    assert (entry.first, entry.last) == (dt.date(2027, 11, 9), dt.date(2027, 11, 25))
