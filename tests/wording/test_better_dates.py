"""Other dates for works that clash, as they are said at a terminal."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

from notices.findings import Finding, Weight
from notices.programme.model import BetterDate, BetterDates
from notices.wording.better_dates import better_dates_in_words

CLASH = Finding("fixture-in-closure", Weight.THINK_AGAIN, "The June Medal is on 10 June.")
FOUND = BetterDates(
    works=("top-dressing-1",),
    kinds=("top dressing",),
    days=(dt.date(2026, 6, 10),),
    clashes=(CLASH, CLASH),
    options=(
        BetterDate(dt.date(2026, 6, 11), 1, 0, 2, ()),
        BetterDate(dt.date(2026, 6, 7), -3, -1, None, (dt.date(2026, 6, 7),)),
    ),
    tried=29,
    good=27,
    failed={"a fixture with greens out of play": 1, "out of season": 1},
)


def test_each_date_is_said_with_what_it_brings() -> None:
    assert better_dates_in_words([FOUND]).splitlines() == [
        "Better dates for top dressing, planned for 2026-06-10 (fixture-in-closure):",
        (
            "  start on 2026-06-11, 1 day later: greens putt well after as many days, all is healed "
            "after 2 days more"
        ),
        (
            "  start on 2026-06-07, 3 days earlier: greens putt well after 1 day fewer, all is healed "
            "at a time that cannot be told; works at a weekend on 2026-06-07"
        ),
        (
            "  29 other starts in the month tried, 27 of them good; why the others fail: a fixture with "
            "greens out of play 1, out of season 1"
        ),
    ]


def test_several_works_and_days_are_told_by_the_first() -> None:
    days = tuple(dt.date(2026, 6, day) for day in (10, 11, 12))
    more = replace(FOUND, kinds=("hollow tining", "top dressing", "brushing"), days=days)
    first, *_ = better_dates_in_words([more]).splitlines()
    assert first.startswith(
        "Better dates for hollow tining and 2 more, planned for 2026-06-10 to 2026-06-12 ("
    )


def test_no_date_and_dates_that_nobody_looked_at() -> None:
    none = replace(FOUND, options=(), tried=4, good=0, failed={}, not_tried=25)
    _, no_start, tried, left = better_dates_in_words([none]).splitlines()
    assert no_start == "  no start in the same month clears the clash"
    assert tried == "  4 other starts in the month tried, 0 of them good"
    assert left.startswith("  25 more were not looked at: too many works of this plan clash.")


def test_each_clash_is_a_paragraph_and_none_is_said() -> None:
    assert better_dates_in_words([FOUND, FOUND]).count("\n\n") == 1
    assert better_dates_in_words([]) == "No dates clash: there is nothing to look for."
