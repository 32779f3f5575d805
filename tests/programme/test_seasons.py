"""Seasons follow the climate of the place and not the names of the months."""

from __future__ import annotations

import datetime as dt
import math
from typing import Any

import pytest

from tests.wording.small_plans import plan, programme, work
from tests.wording.small_plans import words as words_of

SOUTHERN = [19.6, 19.8, 17.9, 15.0, 12.2, 9.9, 9.3, 10.2, 12.0, 14.1, 16.2, 18.2]
"""Twelve monthly means as a plan at 37° south might give them: July is the coldest."""

ARCTIC = [-7.0, -7.0, -4.5, -0.5, 4.5, 9.5, 13.0, 12.0, 7.5, 2.0, -3.0, -5.5]
"""The same at 70° north: five months without growth."""

SOUTH = {"latitude": -37.0, "longitude": 145.0, "timezone": "Australia/Melbourne"}
NORTH = {"latitude": 37.0, "longitude": 145.0, "timezone": "Asia/Tokyo"}
FAR_NORTH = {"latitude": 70.0, "longitude": 25.0, "timezone": "Europe/Oslo"}


def at(place: dict[str, Any], means: list[float], *works: Any, issued: str, **more: Any) -> Any:
    club = {"sender": {"email": "course@meadow.example"}, "place": place}
    data = plan(*works, temperatures=means, club=club, **more)
    return programme(data, dt.date.fromisoformat(issued))


def half_a_year_turned(means: list[float]) -> list[float]:
    return means[6:] + means[:6]


def test_growth_in_march_is_that_of_the_plans_own_march() -> None:
    southern = at(
        SOUTH, SOUTHERN, work("hollow tining", "2027-03-16"), issued="2027-02-01", greens="1-9"
    )
    growth = southern.figure("growth potential", "hollow-tining-1")
    assert growth is not None
    assert growth.value is not None
    # In the middle of March its mean holds. By Gelernter and Stowell (2005) with an optimum of
    # 18 °C and a spread of 5.5 °C: exp(-0.5 × ((17.9 - 18) / 5.5)²) = 0.9998.
    by_hand = math.exp(-0.5 * ((17.9 - 18) / 5.5) ** 2)
    assert growth.value == pytest.approx(by_hand, abs=0.01)
    assert growth.value > 0.98


def test_march_in_the_south_heals_as_september_does_in_the_north() -> None:
    """The same twelve means, half a year turned, with the seasons that belong to them."""
    southern = at(SOUTH, SOUTHERN, work("hollow tining", "2027-03-16"), issued="2027-02-01")
    northern = at(
        NORTH,
        half_a_year_turned(SOUTHERN),
        work("hollow tining", "2027-09-16"),
        issued="2027-08-01",
    )
    (south,), (north,) = southern.periods, northern.periods
    for name in ("open_again", "putting_well", "fully_healed"):
        one, other = getattr(south, name), getattr(north, name)
        # Half a year is 184 days from 16 March to 16 September, and months differ by a day or two.
        apart = other.expect_by - one.expect_by
        assert abs(apart - dt.timedelta(days=184)) <= dt.timedelta(days=3), name


def test_without_own_means_the_british_ones_are_turned() -> None:
    def healed(place: dict[str, Any], day: str) -> dt.timedelta:
        data = plan(work("hollow tining", day), club={"place": place})
        del data["course"]["monthly_mean_temperature"]
        (period,) = programme(data, dt.date(2027, 1, 4)).periods
        return period.fully_healed.expect_by - dt.date.fromisoformat(day)

    south = healed({**SOUTH, "latitude": -52.0}, "2027-02-16")
    north = healed({**NORTH, "latitude": 52.0}, "2027-08-16")
    assert abs(south - north) <= dt.timedelta(days=3)


def test_turf_laid_in_the_southern_july_is_told_that_it_is_cold() -> None:
    def said(place: dict[str, Any], means: list[float], day: str) -> str:
        data = plan(work("turfing", day, greens="4"), temperatures=means, club={"place": place})
        told = words_of(data, dt.date(2027, 1, 4))
        return str(told.operation(told.programme.works[0]))

    cold = "Roots grow slowly in the cold months"
    northern = half_a_year_turned(SOUTHERN)
    assert cold in said(SOUTH, SOUTHERN, "2027-07-05")
    assert cold not in said(SOUTH, SOUTHERN, "2027-01-11")
    assert cold in said(NORTH, northern, "2027-01-11")
    assert cold not in said(NORTH, northern, "2027-07-05")
    # Near the equator January is as good as July.
    assert cold not in said({**NORTH, "latitude": 5.0}, [18.0] * 12, "2027-01-11")


def test_in_the_polar_day_no_hour_is_dark() -> None:
    crew = {"people": 12, "working_day": "02:00 to 22:00"}
    june = at(
        FAR_NORTH,
        ARCTIC,
        work("hollow tining", "2027-06-21", services_checked=True),
        issued="2027-05-03",
        greens="1-9",
        crew=crew,
    )
    assert "work-before-light" not in {finding.code for finding in june.findings}


def test_in_the_far_north_what_is_opened_late_waits_for_june() -> None:
    june, september = (
        at(FAR_NORTH, ARCTIC, work("hollow tining", day), issued="2027-05-03", greens="1-9")
        for day in ("2027-06-21", "2027-09-20")
    )
    (summer,), (autumn,) = june.periods, september.periods
    assert summer.putting_well.expect_by < dt.date(2027, 9, 1)
    assert summer.putting_well.growth_stops is None
    # The mean is under 0 °C from the middle of October to the middle of April.
    stops = {recovery.growth_stops for recovery in autumn.recoveries}
    assert None not in stops
    assert all(dt.date(2027, 9, 20) < day < dt.date(2027, 11, 1) for day in stops if day)
    assert autumn.fully_healed.expect_by > dt.date(2028, 5, 1)
