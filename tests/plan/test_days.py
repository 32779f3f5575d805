from __future__ import annotations

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.plan.days import (
    DayRange,
    all_days,
    format_clock,
    format_days,
    format_working_day,
    parse_clock,
    parse_days,
    parse_working_day,
)


def october(day: int) -> dt.date:
    return dt.date(2026, 10, day)


def span(first: int, last: int | None = None) -> DayRange:
    return DayRange(october(first), october(last or first))


@pytest.mark.parametrize(
    ("typed", "ranges"),
    [
        ("2026-10-12", (span(12),)),
        (" 2026-10-12  to 2026-10-14 ", (span(12, 14),)),
        ("2026-10-12 – 2026-10-14", (span(12, 14),)),
        ("2026-10-12 - 2026-10-14", (span(12, 14),)),
        ("2026-10-12, 2026-10-14 to 2026-10-16", (span(12), span(14, 16))),
        (["2026-10-14", "2026-10-12 to 2026-10-13"], (span(12, 13), span(14))),
        ("2026-10-12 to 2026-10-12", (span(12),)),
        (october(12), (span(12),)),
        (dt.datetime(2026, 10, 12, 8, 0), (span(12),)),  # noqa: DTZ001, as a workbook has it
        (span(12, 14), (span(12, 14),)),
    ],
)
def test_reads_days(typed: object, ranges: tuple[DayRange, ...]) -> None:
    assert parse_days(typed) == ranges


def test_knows_leap_days() -> None:
    assert parse_days("2028-02-29") == (DayRange(dt.date(2028, 2, 29), dt.date(2028, 2, 29)),)


def test_a_range_of_a_leap_year_is_not_too_long() -> None:
    (days,) = parse_days("2028-01-01 to 2028-12-31")
    assert len(days) == 366


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        ("2026-09-31", "2026-09-31 does not exist: September has 30 days"),
        ("2027-02-29", "2027-02-29 does not exist: February 2027 has 28 days"),
        ("2026-02-30", "2026-02-30 does not exist: February 2026 has 28 days"),
        ("2026-13-01", "2026-13-01 does not exist: months go from 01 to 12"),
        ("2026-00-10", "2026-00-10 does not exist"),
        ("2026-10-00", "2026-10-00 does not exist: October has 31 days"),
        ("31 September 2026", "31 September 2026 does not exist: September has 30 days"),
        ("1826-10-12", "the year must lie between 1900 and 2200"),
        ("2201-01-01", "the year must lie between 1900 and 2200"),
        ("12/10/2026", "write the date as 2026-10-12 or 2026-12-10"),
        ("25/12/2026", "write the date as 2026-12-25"),
        ("12/25/2026", "write the date as 2026-12-25"),
        ("10.10.2026", "write the date as 2026-10-10"),
        ("12 October 2026", "write the date as 2026-10-12"),
        ("Monday 12th October 2026", "write the date as 2026-10-12"),
        ("Monday, 12 October 2026", "write the date as 2026-10-12"),
        ("Oct 12, 2026", "write the date as 2026-10-12"),
        ("3 Sept. 2026", "write the date as 2026-09-03"),
        ("12-Oct-2026", "write the date as 2026-10-12"),
        ("2026-9-3", "write the date as 2026-09-03"),
        ("2026/10/12", "write the date as 2026-10-12"),
        (20261012, "write the date as 2026-10-12"),
        ("12 October", '"12 October" has no year: write year-month-day: the year, then -10-12'),
        ("12/10/26", "is not a date: write year-month-day, such as 2026-10-12"),
        ("next Monday", "is not a date: write year-month-day"),
        (
            "2026-10-14 to 2026-10-12",
            '2026-10-14 to 2026-10-12 runs backwards: write "2026-10-12 to 2026-10-14"',
        ),
        ("2026-10-12 to 14", 'write "2026-10-12 to 2026-10-14"'),
        ("2026-10-12 to 2026-10-14 to 2026-10-16", "is not a range"),
        ("2026-10-12 –", "has no last day"),
        ("– 2026-10-12", "has no first day"),
        ("2026-01-01 to 2027-01-02", "is 367 days: the longest range is 366 days"),
        ("2026-10-12, 2026-10-12", "2026-10-12 stands here twice: name each day once"),
        ("2026-10-12 to 2026-10-14, 2026-10-14", "2026-10-14 stands here twice"),
        ("2026-10-12 to 2026-10-16, 2026-10-13", "2026-10-13 stands here twice"),
        ("2026-10-12,", "has a comma with no date beside it"),
        ("", "no date is written here"),
        ([], "no date is written here"),
        (None, '"" is not a date'),
        (True, '"true" is not a date'),
        (2026.5, '"2026.5" is not a date'),
        (["2026-10-12", {}], "is not a date"),
        ("２０２６-10-12", "is not a date"),
    ],
)
def test_refuses_days_in_words(typed: object, message: str) -> None:
    with pytest.raises(ValueError, match=r".") as caught:
        parse_days(typed)
    assert message in str(caught.value)
    assert not str(caught.value).endswith(".")


def test_all_days_are_in_the_order_of_the_calendar() -> None:
    assert all_days((span(14, 15), span(12))) == (october(12), october(14), october(15))


def test_a_range_iterates_counts_and_contains() -> None:
    days = span(12, 14)
    assert list(days) == [october(12), october(13), october(14)]
    assert len(days) == 3
    assert october(14) in days
    assert october(15) not in days
    assert "2026-10-12" not in days


def test_writes_days() -> None:
    assert format_days((span(12), span(14, 16))) == "2026-10-12, 2026-10-14 to 2026-10-16"


known_dates = st.dates(dt.date(1900, 1, 1), dt.date(2200, 12, 31))


@given(st.sets(known_dates, min_size=1, max_size=8))
def test_reads_back_the_days_it_writes(dates: set[dt.date]) -> None:
    ranges = tuple(DayRange(day, day) for day in sorted(dates))
    assert parse_days(format_days(ranges)) == ranges


@given(known_dates, st.integers(0, 365))
def test_reads_back_a_range(first: dt.date, more: int) -> None:
    last = min(first + dt.timedelta(days=more), dt.date(2200, 12, 31))
    assert parse_days(format_days([DayRange(first, last)])) == (DayRange(first, last),)


likely = st.text(st.sampled_from("0123456789-–/,. tooctMay:"), max_size=30)


@given(st.text() | likely | st.integers() | st.floats() | st.lists(likely))
def test_any_text_is_read_or_refused(typed: object) -> None:
    for parse in (parse_days, parse_clock, parse_working_day):
        try:
            parse(typed)
        except ValueError as error:
            assert str(error)  # noqa: PT017, any other error fails the test


def test_reads_the_clock() -> None:
    assert parse_clock("06:30") == dt.time(6, 30)
    assert parse_clock("00:00") == dt.time(0, 0)
    assert parse_clock("23:59") == dt.time(23, 59)
    assert parse_clock(dt.time(6, 30, 12)) == dt.time(6, 30)


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        ("6:30", 'write "06:30" or "18:30"'),
        ("6.30", 'write "06:30" or "18:30"'),
        ("6:30 am", 'write "06:30"'),
        ("3:30 pm", 'write "15:30"'),
        ("12 am", 'write "00:00"'),
        ("12 p.m.", 'write "12:00"'),
        ("15.30", 'write "15:30"'),
        (6, 'write "06:00" or "18:00"'),
        ("24:00", '"24:00" does not exist: the day runs from 00:00 to 23:59'),
        ("10:60", '"10:60" does not exist'),
        ("noon", '"noon" is not a time of day: write one such as "06:30"'),
        ("", "is not a time of day"),
        (None, "is not a time of day"),
        (390.5, "is not a time of day"),
    ],
)
def test_refuses_the_clock_in_words(typed: object, message: str) -> None:
    with pytest.raises(ValueError, match=r".") as caught:
        parse_clock(typed)
    assert message in str(caught.value)


@pytest.mark.parametrize("typed", ["06:30 to 15:30", "06:30-15:30", "06:30 – 15:30"])
def test_reads_the_working_day(typed: str) -> None:
    assert parse_working_day(typed) == (dt.time(6, 30), dt.time(15, 30))


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        ("15:30 to 06:30", "ends before it starts"),
        ("06:30 to 06:30", "ends before it starts"),
        ("06:30", "is not a working day"),
        ("06:30 to", "is not a working day"),
        ("6:30 to 15:30", 'write "06:30"'),
        (8, "is not a working day"),
    ],
)
def test_refuses_the_working_day_in_words(typed: object, message: str) -> None:
    with pytest.raises(ValueError, match=message):
        parse_working_day(typed)


@given(st.times(), st.times())
def test_reads_back_the_times_it_writes(one: dt.time, other: dt.time) -> None:
    one, other = (t.replace(second=0, microsecond=0) for t in (one, other))
    assert parse_clock(format_clock(one)) == one
    if one < other:
        assert parse_working_day(format_working_day((one, other))) == (one, other)
