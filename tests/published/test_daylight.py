"""Section 8 of the collected figures: daylight, to two minutes of what others have printed."""

from __future__ import annotations

import datetime as dt
import itertools

import astral
import astral.sun
import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.agronomy.daylight import LightKind, daylight

TOLERANCE = dt.timedelta(minutes=2)
"""What the collected figures allow: printed to the minute, and another model of the sun."""

GOLDEN = (39.742476, -105.1786, "Etc/GMT+7")  # POSIX has the sign turned: this is UTC−7
ROWS = [  # date, latitude, longitude, zone, sunrise, sunset
    pytest.param("2015-01-01", *GOLDEN, "07:22", "16:47", id="usno-golden-january"),
    pytest.param("2015-08-02", *GOLDEN, "05:00", "19:13", id="usno-golden-august"),
    pytest.param("1996-07-05", -35.0, 0.0, "UTC", "07:08:15", "17:01:04", id="nrel_spa-south"),
    pytest.param(
        "2002-03-20", 38.9, -77.0, "Etc/GMT+5", "06:12", "18:21", id="usno-washington-equinox"
    ),
]


@pytest.mark.parametrize(("day", "latitude", "longitude", "zone", "sunrise", "sunset"), ROWS)
def test_sunrise_and_sunset(
    day: str, latitude: float, longitude: float, zone: str, sunrise: str, sunset: str
) -> None:
    found = daylight(dt.date.fromisoformat(day), latitude, longitude, zone)
    assert found.kind is LightKind.ORDINARY
    for time, printed in ((found.sunrise, sunrise), (found.sunset, sunset)):
        assert time is not None
        shown = dt.datetime.fromisoformat(f"{day}T{printed}")
        assert abs(time.replace(tzinfo=None) - shown) <= TOLERANCE


# Below: what follows from the earth being round, and our own edge cases.

TROMSO = (69.65, 18.96, "Europe/Oslo")


def test_the_midnight_sun() -> None:
    found = daylight(dt.date(2027, 6, 21), *TROMSO)
    assert found.kind is LightKind.POLAR_DAY
    assert (found.dawn, found.sunrise, found.sunset, found.dusk) == (None, None, None, None)
    assert found.reason == "the sun does not set"


def test_the_polar_night_has_twilight_where_the_sun_is_not_far_down() -> None:
    # At 69.65° on the shortest day the sun's noon is 69.65 + 23.44 − 90 = 3.1° down: within 6°.
    found = daylight(dt.date(2027, 12, 21), *TROMSO)
    assert found.kind is LightKind.POLAR_NIGHT
    assert (found.sunrise, found.sunset) == (None, None)
    assert found.dawn is not None
    assert found.dusk is not None
    assert found.dawn.hour < 12 < found.dusk.hour
    assert "twilight" in found.reason
    # At 78° it is 11.4° down, and does not get light.
    dark = daylight(dt.date(2027, 12, 21), 78, 16, "Europe/Oslo")
    assert (dark.kind, dark.dawn, dark.dusk) == (LightKind.POLAR_NIGHT, None, None)
    assert "does not get light" in dark.reason


def test_white_nights_are_ordinary_days_without_dusk() -> None:
    # At 64° at midsummer the sun's midnight is 90 − 64 − 23.44 = 2.6° down: it sets, not to 6°.
    found = daylight(dt.date(2027, 6, 21), 64, -21, "Atlantic/Reykjavik")
    assert found.kind is LightKind.ORDINARY
    assert found.sunrise is not None
    assert found.sunset is not None
    assert (found.dawn, found.dusk) == (None, None)
    assert found.reason == "civil twilight lasts all night"


def test_dusk_after_midnight_belongs_to_the_day_before() -> None:
    found = daylight(dt.date(2027, 6, 21), 60.15, -1.15, "Europe/London")
    assert found.sunset is not None
    assert found.dusk is not None
    assert found.sunset.date() == dt.date(2027, 6, 21)
    assert found.dusk.date() == dt.date(2027, 6, 22)


def test_in_the_south_june_has_the_short_day() -> None:
    # Near the solstices a place has the day that its mirror image has half a year away.
    june, december = dt.date(2027, 6, 21), dt.date(2027, 12, 21)
    lengths = {}
    for latitude, day in itertools.product((-37, 37), (june, december)):
        found = daylight(day, latitude, 175, "Pacific/Auckland")
        assert found.sunrise is not None
        assert found.sunset is not None
        assert found.sunrise.date() == found.sunset.date() == day
        lengths[latitude, day] = found.sunset - found.sunrise
    assert lengths[-37, june] < dt.timedelta(hours=10)
    assert lengths[-37, december] > dt.timedelta(hours=14)
    assert abs(lengths[-37, june] - lengths[37, december]) < dt.timedelta(minutes=2)


@pytest.mark.parametrize(
    ("place", "before", "change", "hour"),
    [
        # Clocks go forward on the last Sunday of March and back on the last of October in Britain,
        # on the second of March and the first of November in New York.
        ((51.5, -0.1, "Europe/London"), 0, dt.date(2027, 3, 28), 1),
        ((51.5, -0.1, "Europe/London"), 1, dt.date(2027, 10, 31), -1),
        ((40.7, -74.0, "America/New_York"), -5, dt.date(2027, 3, 14), 1),
        ((40.7, -74.0, "America/New_York"), -4, dt.date(2027, 11, 7), -1),
    ],
)
def test_clocks_change_and_the_sun_does_not(
    place: tuple[float, float, str], before: int, change: dt.date, hour: int
) -> None:
    eve, day = daylight(change - dt.timedelta(days=1), *place), daylight(change, *place)
    for name in ("dawn", "sunrise", "sunset", "dusk"):
        old, new = getattr(eve, name), getattr(day, name)
        assert old.utcoffset() == dt.timedelta(hours=before)
        assert new.utcoffset() == dt.timedelta(hours=before + hour)
        assert new.date() == change
        # The sun itself moves by less than three minutes from one day to the next here.
        passed = new.astimezone(dt.UTC) - old.astimezone(dt.UTC)
        assert abs(passed - dt.timedelta(days=1)) < dt.timedelta(minutes=3)


@pytest.mark.parametrize(
    ("latitude", "longitude", "zone"),
    [
        (51.5, -0.1, "Europe/London"),
        (23.8, 90.4, "Asia/Dhaka"),  # sunrise about midnight in Greenwich
        (39.7, -105.2, "America/Denver"),  # sunset about midnight in Greenwich
        (-36.8, 174.8, "Pacific/Auckland"),  # noon about midnight in Greenwich
        (1.9, -157.4, "Pacific/Kiritimati"),  # a day ahead of its sun
    ],
)
def test_every_day_of_a_year_has_its_sunrise_next_to_that_of_the_day_before(
    latitude: float, longitude: float, zone: str
) -> None:
    days = [
        daylight(dt.date(2027, 1, 1) + dt.timedelta(days=n), latitude, longitude, zone)
        for n in range(366)
    ]
    for name in ("dawn", "sunrise", "sunset", "dusk"):
        times = [getattr(day, name) for day in days]
        for old, new in itertools.pairwise(times):
            passed = new.astimezone(dt.UTC) - old.astimezone(dt.UTC)
            # Below 52° the sun moves by less than three minutes a day.
            assert abs(passed - dt.timedelta(days=1)) < dt.timedelta(minutes=3)


@given(st.dates(dt.date(1990, 1, 1), dt.date(2090, 12, 31)), st.floats(-58, 58), st.floats(-38, 38))
def test_it_agrees_with_the_librarys_own_search_far_from_midnight_in_greenwich(
    day: dt.date, latitude: float, longitude: float
) -> None:
    here = astral.Observer(latitude, longitude)
    found = daylight(day, latitude, longitude, "UTC")
    for time, searched in (
        (found.sunrise, astral.sun.sunrise(here, day)),
        (found.sunset, astral.sun.sunset(here, day)),
    ):
        assert time is not None
        assert abs(time - searched) < dt.timedelta(seconds=10)


def test_spring_in_tromso_goes_from_night_to_midnight_sun_once() -> None:
    days = [daylight(dt.date(2027, 4, 1) + dt.timedelta(days=n), *TROMSO) for n in range(90)]
    kinds = [day.kind for day in days]
    first = kinds.index(LightKind.POLAR_DAY)
    assert set(kinds[:first]) == {LightKind.ORDINARY}
    assert set(kinds[first:]) == {LightKind.POLAR_DAY}
    # The midnight sun begins after the middle of May (from memory: about the 18th to 20th).
    assert 45 <= first <= 51


@given(
    st.dates(dt.date(1990, 1, 1), dt.date(2090, 12, 31)),
    st.floats(-90, 90),
    st.floats(-180, 180),
    st.sampled_from(["UTC", "Europe/London", "Pacific/Kiritimati", "Pacific/Pago_Pago"]),
)
def test_no_place_and_no_day_is_an_error(
    day: dt.date, latitude: float, longitude: float, zone: str
) -> None:
    found = daylight(day, latitude, longitude, zone)
    times = [t for t in (found.dawn, found.sunrise, found.sunset, found.dusk) if t is not None]
    assert [t.astimezone(dt.UTC) for t in times] == sorted(t.astimezone(dt.UTC) for t in times)
    assert bool(found.reason) is (len(times) < 4)
    if abs(latitude) < 60:
        assert len(times) == 4


@pytest.mark.parametrize(("latitude", "longitude"), [(91, 0), (0, -181), (float("nan"), 0)])
def test_what_is_no_place_is_refused(latitude: float, longitude: float) -> None:
    with pytest.raises(ValueError, match="must lie between"):
        daylight(dt.date(2027, 1, 1), latitude, longitude, "UTC")
