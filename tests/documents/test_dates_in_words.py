"""The reader of dates reads what one says, and sees what is wrong. Weekdays as in a calendar."""

from __future__ import annotations

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.wording.dates import DateWords, runs_of_days
from tests.documents.dates_in_words import UnreadableError, days_in, read_dates, read_greens

ISSUED = dt.date(2027, 3, 1)


def span(first: str, last: str) -> tuple[dt.date, ...]:
    start, end = dt.date.fromisoformat(first), dt.date.fromisoformat(last)
    return tuple(start + dt.timedelta(days=n) for n in range((end - start).days + 1))


@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("on Monday 23 August,", "2027-08-23", "2027-08-23"),
        ("Monday 23 to Sunday 29 August 2027", "2027-08-23", "2027-08-29"),
        ("Monday 23\n  to Sunday 29 August", "2027-08-23", "2027-08-29"),
        ("Tue 3 and Wed 4 Aug", "2027-08-03", "2027-08-04"),
        ("Mon 30 Aug to Sun 5 Sept", "2027-08-30", "2027-09-05"),
        ("Friday 31 December and Saturday 1 January 2028", "2027-12-31", "2028-01-01"),
        ("Thursday 30 December to Saturday 1 January 2028", "2027-12-30", "2028-01-01"),
        ("Wednesday 30 August to Friday 1 September 2028", "2028-08-30", "2028-09-01"),
        ("14 June 2027 (minute 9)", "2027-06-14", "2027-06-14"),
        ("Issued June 1, 2027", "2027-06-01", "2027-06-01"),
        ("on Monday, August 23, all greens", "2027-08-23", "2027-08-23"),
        ("Monday, August 23 to Sunday, August 29, 2027", "2027-08-23", "2027-08-29"),
        ("Fri, Dec 31 and Sat, Jan 1, 2028 1 to 3", "2027-12-31", "2028-01-01"),
    ],
)
def test_dates(text: str, first: str, last: str) -> None:
    assert days_in(read_dates(text, ISSUED)) == span(first, last)


def test_days_under_the_name_of_their_month() -> None:
    text = "Mon 23 1 to 3 Tue 24 4 to 6 Sat 28 and Sun 29 18, putting green"
    head = dt.date(2027, 8, 1)
    said = read_dates(text, ISSUED, head)
    assert [day.day for day in days_in(said)] == [23, 24, 28, 29]


@pytest.mark.parametrize(
    "text",
    [
        "greens 1 to 9",
        "50 mm apart",
        "at 16:00 the day before",
        "minute 14",
        "about 10 to 12 weeks",
        "When will they be fast again? 1 May I lift and place my ball?",
    ],
)
def test_other_numbers_are_no_dates(text: str) -> None:
    assert read_dates(text, ISSUED) == []


@pytest.mark.parametrize(
    "text",
    [
        "Tuesday 23 August",
        "30 February 2027",
        "Mon 23",
        "Monday 23 to Sunday 15 August",
        "2027-08-23",
    ],
)
def test_what_is_wrong_is_seen(text: str) -> None:
    with pytest.raises(UnreadableError):
        read_dates(text, ISSUED)


@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("by mid-June 2028.", "2028-06-11", "2028-06-20"),
        ("late February", "2027-02-21", "2027-02-28"),
    ],
)
def test_rough_dates(text: str, first: str, last: str) -> None:
    (said,) = read_dates(text, ISSUED)
    assert said.rough
    assert said.days == span(first, last)


@pytest.mark.parametrize("language", ["en-GB", "en-US"])
@given(days=st.sets(st.dates(dt.date(2026, 1, 1), dt.date(2029, 12, 31)), min_size=1, max_size=6))
def test_what_is_written_is_read_again(language: str, days: set[dt.date]) -> None:
    words = DateWords(language, ISSUED)
    for run in runs_of_days(days):
        for text in (words.days(run), words.on_days(run), words.short_days(run)):
            assert days_in(read_dates(text, ISSUED)) == tuple(run)
    said = [words.date(day) for day in days]
    assert days_in(one for text in said for one in read_dates(text, ISSUED)) == tuple(sorted(days))


@pytest.mark.parametrize(
    ("text", "keys"),
    [
        ("1 to 3", {"1", "2", "3"}),
        ("1, 2 and 5 to 7", {"1", "2", "5", "6", "7"}),
        ("18, putting green", {"18", "Putting green"}),
        ("Green 12.", {"12"}),
        ("all 18 greens and the putting green", {*map(str, range(1, 19)), "Putting green"}),
    ],
)
def test_greens(text: str, keys: set[str]) -> None:
    assert read_greens(text, [*map(str, range(1, 19)), "Putting green"]) == keys


TWO_COURSES = [f"{name} {n}" for name in ("Oak", "Red nine") for n in range(1, 10)]


@pytest.mark.parametrize(
    ("text", "keys"),
    [
        ("Oak 1 to 3; Red 4 and 6; putting green", "Oak 1|Oak 2|Oak 3|Red nine 4|Red nine 6|Green"),
        ("green 7 of the Red nine", "Red nine 7"),
        ("greens 1 and 2 of the Oak course and the putting green", "Oak 1|Oak 2|Green"),
        ("greens 1 and 9 of the Oak course and green 2 of the Red nine", "Oak 1|Oak 9|Red nine 2"),
        ("all 18 greens", "|".join(TWO_COURSES)),
        ("all nine greens of the Oak course", "|".join(TWO_COURSES[:9])),
        ("all 18 greens of the Oak course and the Red nine", "|".join(TWO_COURSES)),
        ("all greens except green 9 of the Red nine", "|".join(TWO_COURSES[:17])),
        (
            "the putting green and all greens except green 9 of the Oak course",
            "|".join([*TWO_COURSES[:8], *TWO_COURSES[9:], "Green"]),
        ),
    ],
)
def test_greens_of_several_courses(text: str, keys: str) -> None:
    expected = {"Putting green" if key == "Green" else key for key in keys.split("|")}
    assert read_greens(text, [*TWO_COURSES, "Putting green"]) == expected


@pytest.mark.parametrize(
    ("text", "keys"),
    [
        ("1, 2/4 and 3", {"1", "2/4", "3"}),
        ("greens 1 and 3, and the double green 2/4", {"1", "2/4", "3"}),
        ("the double green 2/4", {"2/4"}),
        ("all three greens", {"1", "2/4", "3"}),
    ],
)
def test_double_greens(text: str, keys: set[str]) -> None:
    assert read_greens(text, ["1", "2/4", "3", "Putting green"]) == keys
