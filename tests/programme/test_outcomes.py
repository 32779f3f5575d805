"""Forecasts beside what happened."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from notices.agronomy.recovery import DateRange
from notices.programme.as_json import programme_as_json
from notices.programme.model import Programme
from notices.programme.outcomes import Outcome, outcomes
from notices.wording.outcomes import outcome_in_words
from notices.wording.words import Words

ProgrammeOf = Callable[..., Programme]

COURSE = """
course:
  greens: [{green: 1-4, area: 500 m2}]
  monthly_mean_temperature: [4.1, 4.6, 6.2, 8.3, 11.0, 13.6, 15.8, 15.6, 13.3, 10.0, 6.6, 4.3]
works:
  - {operation: hollow tining, dates: 2026-09-14 to 2026-09-15, settings: {tine_diameter: 13 mm}}
"""
EARLY, LATE = dt.date(2026, 10, 1), dt.date(2026, 10, 10)


@pytest.mark.parametrize(
    ("actual", "late", "days"),
    [
        (dt.date(2026, 9, 29), LATE, -2),
        (EARLY, LATE, 0),
        (LATE, LATE, 0),
        (dt.date(2026, 10, 13), LATE, 3),
        (dt.date(2027, 10, 13), None, 0),  # nobody said how late it might become
    ],
)
def test_a_forecast_is_missed_by_the_days_outside_its_range(
    actual: dt.date, late: dt.date | None, days: int
) -> None:
    outcome = Outcome("hollow tining", "", EARLY, "healed", DateRange(EARLY, EARLY, late), actual)
    assert outcome.days_off == days


def test_a_work_of_this_plan_is_held_to_what_was_promised_of_its_greens(
    programme_of: ProgrammeOf,
) -> None:
    record = "{operation: hollow tining, done: 2026-09-15, greens: 3-4, healed: 2026-12-24}"
    programme = programme_of(f"{COURSE}observed: [{record}]\n")
    (outcome,) = outcomes(programme)
    # Greens 3 and 4 are done on the second day, so both have the same forecast.
    (forecast,) = {
        recovery.fully_healed
        for recovery in programme.recoveries["hollow-tining-1"]
        if recovery.green in ("3", "4")
    }
    assert outcome.forecast == forecast
    assert forecast.late is not None
    assert outcome.days_off == (dt.date(2026, 12, 24) - forecast.late).days > 0
    assert programme_as_json(programme)["outcomes"][0]["days_off"] == outcome.days_off


def test_an_earlier_season_is_held_to_the_book(programme_of: ProgrammeOf) -> None:
    record = "{operation: hollow tining, done: 2025-09-14, healed: 2025-10-20}"
    programme = programme_of(f"{COURSE}observed: [{record}]\n")
    (outcome,) = outcomes(programme)
    (season,) = programme.records["hollow tining"].records
    assert (outcome.work, outcome.forecast) == ("", season.forecast)
    assert outcome.actual == dt.date(2025, 10, 20)


def test_in_words(programme_of: ProgrammeOf) -> None:
    words = Words(programme_of(COURSE))
    forecast = DateRange(EARLY, EARLY, LATE)
    for actual, said in (
        (dt.date(2026, 10, 13), "three days later than forecast"),
        (dt.date(2026, 9, 30), "one day earlier than forecast"),
        (EARLY, "as forecast"),
    ):
        done = dt.date(2026, 9, 14)
        outcome = Outcome("hollow tining", "hollow-tining-1", done, "healed", forecast, actual)
        assert f", {said} (1 October 2026 to 10 October 2026)." in outcome_in_words(words, outcome)
