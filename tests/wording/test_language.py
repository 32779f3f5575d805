"""Times of day as each of the two Englishes says them."""

from __future__ import annotations

import datetime as dt

import pytest

from notices.wording.language import LANGUAGES


@pytest.mark.parametrize(
    ("hour", "minute", "british", "american"),
    [
        (6, 30, "06:30", "6:30 a.m."),
        (10, 0, "10:00", "10:00 a.m."),
        (12, 0, "12:00", "noon"),
        (12, 30, "12:30", "12:30 p.m."),
        (15, 0, "15:00", "3:00 p.m."),
    ],
)
def test_a_time_of_day(hour: int, minute: int, british: str, american: str) -> None:
    time = dt.time(hour, minute)
    assert LANGUAGES["en-GB"].clock(time) == british
    assert LANGUAGES["en-US"].clock(time) == american


@pytest.mark.parametrize(
    ("begins", "ends", "british", "american"),
    [
        ((6, 30), (7, 0), "06:30 to 07:00", "6:30 to 7:00 a.m."),
        ((10, 30), (12, 30), "10:30 to 12:30", "10:30 a.m. to 12:30 p.m."),
        ((9, 0), (12, 0), "09:00 to 12:00", "9:00 a.m. to noon"),
        ((12, 0), (13, 0), "12:00 to 13:00", "noon to 1:00 p.m."),
        ((13, 0), (15, 30), "13:00 to 15:30", "1:00 to 3:30 p.m."),
    ],
)
def test_from_when_to_when(
    begins: tuple[int, int], ends: tuple[int, int], british: str, american: str
) -> None:
    for tag, said in (("en-GB", british), ("en-US", american)):
        language = LANGUAGES[tag]
        times = (language.clock(dt.time(*time)) for time in (begins, ends))
        assert language.clock_span(*times) == said


@pytest.mark.parametrize(
    ("tag", "one", "two"),
    [("en-GB", "Reserve day", "Reserve days"), ("en-US", "Rain date", "Rain dates")],
)
def test_days_kept_free_are_labelled_as_many_as_they_are(tag: str, one: str, two: str) -> None:
    language = LANGUAGES[tag]
    assert (language.reserve_days(1), language.reserve_days(2)) == (one, two)


@pytest.mark.parametrize("space", [" ", "\N{NO-BREAK SPACE}"])
def test_hundredths_have_a_space_before_them_in_british_text_alone(space: str) -> None:
    assert LANGUAGES["en-US"].with_percent(f"about 7{space}%") == "about 7%"
    assert LANGUAGES["en-GB"].with_percent("about 7 %") == "about 7 %"
