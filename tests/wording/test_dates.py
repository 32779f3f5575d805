"""Dates as they are said. The weekdays are those of the calendar: 1 March 2027 is a Monday."""

from __future__ import annotations

import datetime as dt
import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.wording.dates import DateWords, in_brief, runs_of_days, unbroken

WORDS = DateWords("en-GB", issued=dt.date(2027, 3, 1))


def day(text: str) -> dt.date:
    return dt.date.fromisoformat(text)


def days(first: str, count: int) -> list[dt.date]:
    return [day(first) + dt.timedelta(days=later) for later in range(count)]


@pytest.mark.parametrize(
    ("date", "said", "short"),
    [
        ("2027-08-23", "Monday 23 August", "Mon 23 Aug"),
        ("2027-09-05", "Sunday 5 September", "Sun 5 Sept"),
        ("2027-05-01", "Saturday 1 May", "Sat 1 May"),
        # Not the year of issue, so the year is named.
        ("2028-02-29", "Tuesday 29 February 2028", "Tue 29 Feb 2028"),
        ("2026-12-31", "Thursday 31 December 2026", "Thu 31 Dec 2026"),
    ],
)
def test_a_day(date: str, said: str, short: str) -> None:
    assert WORDS.day(day(date)) == said
    assert WORDS.short_day(day(date)) == short


def test_a_date_always_has_its_year() -> None:
    assert WORDS.date(day("2027-06-14")) == "14 June 2027"


@pytest.mark.parametrize(
    ("run", "said", "placed", "short"),
    [
        (
            days("2027-08-23", 1),
            "Monday 23 August",
            "on Monday 23 August",
            "Mon 23 Aug",
        ),
        (
            days("2027-08-03", 2),
            "Tuesday 3 and Wednesday 4 August",
            "on Tuesday 3 and Wednesday 4 August",
            "Tue 3 and Wed 4 Aug",
        ),
        (
            days("2027-08-23", 7),
            "Monday 23 to Sunday 29 August",
            "from Monday 23 to Sunday 29 August",
            "Mon 23 to Sun 29 Aug",
        ),
        (
            days("2027-08-30", 7),
            "Monday 30 August to Sunday 5 September",
            "from Monday 30 August to Sunday 5 September",
            "Mon 30 Aug to Sun 5 Sept",
        ),
        (
            days("2027-12-31", 2),
            "Friday 31 December and Saturday 1 January 2028",
            "on Friday 31 December and Saturday 1 January 2028",
            "Fri 31 Dec and Sat 1 Jan 2028",
        ),
        (
            days("2028-12-30", 3),
            "Saturday 30 December 2028 to Monday 1 January 2029",
            "from Saturday 30 December 2028 to Monday 1 January 2029",
            "Sat 30 Dec 2028 to Mon 1 Jan 2029",
        ),
        (
            days("2028-08-21", 3),
            "Monday 21 to Wednesday 23 August 2028",
            "from Monday 21 to Wednesday 23 August 2028",
            "Mon 21 to Wed 23 Aug 2028",
        ),
        (
            [*days("2027-08-23", 3), *days("2027-08-30", 1)],
            "Monday 23 to Wednesday 25 August and Monday 30 August",
            "from Monday 23 to Wednesday 25 August and on Monday 30 August",
            "Mon 23 to Wed 25 Aug and Mon 30 Aug",
        ),
    ],
)
def test_several_days(run: list[dt.date], said: str, placed: str, short: str) -> None:
    assert WORDS.days(run) == said
    assert WORDS.on_days(run) == placed
    assert WORDS.short_days(run) == short


@pytest.mark.parametrize(
    ("run", "said"),
    [
        (days("2027-08-23", 7), "Monday 23 to Sunday 29 August 2027"),
        # Already there, since it is not the year of issue.
        (days("2028-08-21", 1), "Monday 21 August 2028"),
        (days("2026-12-31", 2), "Thursday 31 December 2026 and Friday 1 January 2027"),
    ],
)
def test_a_heading_names_the_year_once(run: list[dt.date], said: str) -> None:
    assert WORDS.days_with_year(run) == said


@pytest.mark.parametrize(
    ("title", "lines"),
    [
        ("Monday 30 August to Wednesday 1 September 2027", 3),
        ("Monday, July 12 to Wednesday, July 14, 2027", 3),
        ("Hollow tining, Monday 16 and Tuesday 17 August 2027", 5),
        ("Greens 1 to 18, about mid-April 2028", 7),
        ("Holes 10 to 18 may march on", 7),
    ],
)
def test_a_date_in_a_heading_moves_to_the_next_line_whole(title: str, lines: int) -> None:
    """As many pieces as there are dates and other words."""
    assert len(unbroken(title).split(" ")) == lines
    assert unbroken(title).replace("\N{NO-BREAK SPACE}", " ") == title


def test_a_title_names_two_runs_of_days_and_of_more_the_first_and_the_last() -> None:
    two = [*days("2027-08-23", 2), *days("2027-08-26", 4)]
    assert (
        WORDS.days(in_brief(two))
        == "Monday 23 and Tuesday 24 August and Thursday 26 to Sunday 29 August"
    )
    three = [*two, *days("2027-08-31", 1)]
    assert WORDS.days(in_brief(three)) == "Monday 23 to Tuesday 31 August"


@pytest.mark.parametrize(
    ("run", "said"),
    [
        (days("2027-08-23", 1), "Mon 23"),
        (days("2027-08-23", 2), "Mon 23 and Tue 24"),
        (days("2027-08-23", 7), "Mon 23 to Sun 29"),
    ],
)
def test_days_under_the_name_of_their_month(run: list[dt.date], said: str) -> None:
    assert WORDS.month(run[0]) == "August"
    assert WORDS.days_of_month(run) == said


@pytest.mark.parametrize(
    ("run", "said"),
    [
        (days("2027-11-09", 4), "9 to 12 Nov"),
        (days("2027-08-30", 7), "30 Aug on"),
    ],
)
def test_a_label_in_a_small_box(run: list[dt.date], said: str) -> None:
    assert WORDS.span_of_month(run) == said


@pytest.mark.parametrize(
    ("date", "said"),
    [
        ("2027-09-01", "early September"),
        ("2027-09-10", "early September"),
        ("2027-09-11", "mid-September"),
        ("2027-09-20", "mid-September"),
        ("2027-09-21", "late September"),
        ("2027-10-31", "late October"),
        ("2028-06-15", "mid-June 2028"),
    ],
)
def test_thirds_of_a_month(date: str, said: str) -> None:
    assert WORDS.about(day(date)) == said


@pytest.mark.parametrize(
    ("date", "said"),
    [
        ("2027-11-26", "Friday 26 November"),
        ("2027-11-27", "late November"),
        ("2028-04-20", "mid-April 2028"),
    ],
)
def test_a_promise_that_rests_on_when_growth_returns_is_named_roughly(date: str, said: str) -> None:
    assert WORDS.promised(day(date), day("2027-11-27")) == said


@given(st.lists(st.dates(dt.date(2026, 1, 1), dt.date(2029, 12, 31)), max_size=20))
def test_runs_keep_every_day_once_and_leave_gaps_between(listed: list[dt.date]) -> None:
    runs = runs_of_days(listed)
    flat = [day for run in runs for day in run]
    assert flat == sorted(set(listed))
    for run in runs:
        assert (run[-1] - run[0]).days == len(run) - 1
    for before, after in itertools.pairwise(runs):
        assert (after[0] - before[-1]).days > 1


@given(st.dates(dt.date(2026, 1, 1), dt.date(2029, 12, 31)))
def test_the_year_is_said_where_it_is_not_that_of_issue(date: dt.date) -> None:
    for said in (WORDS.day(date), WORDS.short_day(date), WORDS.about(date)):
        assert said.endswith(f" {date.year}") is (date.year != 2027)
