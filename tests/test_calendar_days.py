"""Days of the calendar."""

from __future__ import annotations

import datetime as dt

from notices.calendar_days import each_day

LEAP_DAY = dt.date(2028, 2, 29)


def test_every_day_from_the_first_to_the_last() -> None:
    assert each_day(dt.date(2028, 2, 28), dt.date(2028, 3, 1)) == (
        dt.date(2028, 2, 28),
        LEAP_DAY,
        dt.date(2028, 3, 1),
    )
    assert each_day(LEAP_DAY, LEAP_DAY) == (LEAP_DAY,)


def test_no_day_where_the_last_comes_first() -> None:
    assert each_day(LEAP_DAY, dt.date(2028, 2, 28)) == ()
