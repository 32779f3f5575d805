"""When it is light: sunrise, sunset and civil twilight of a place on a date.

The sun's place is worked out by the library astral, which follows the equations that NOAA
publishes [noaa_solar]_. Sunrise and sunset are those of the upper edge of the sun over a flat
horizon, refraction included; civil twilight is the sun's centre 6° below it. Hills, cloud and
trees are not known. Good to about two minutes below 72° of latitude [noaa_solar]_; near the
poles, where the sun grazes the horizon, a small error in height is a large one in time.
"""

from __future__ import annotations

import datetime as dt
import enum
import math
import zoneinfo
from dataclasses import dataclass
from functools import lru_cache

import astral
import astral.sun
from astral import SunDirection
from astral.julian import julianday, julianday_to_juliancentury

from notices.agronomy.limits import between

CIVIL_TWILIGHT_DEG = 6.0
"""How far the sun's centre lies below the horizon when civil twilight begins or ends
[usno]_."""

NEXT_TO_A_POLE_DEG = 89.8
"""Nearer to a pole east and west mean nothing [judgement]_."""

_ROUNDS = 3
"""The sun moves on while it is looked for: the second round is good to seconds, bar the poles."""

_NEIGHBOURS = (dt.timedelta(0), dt.timedelta(days=-1), dt.timedelta(days=1))


class LightKind(enum.Enum):
    """What the sun does on a date."""

    ORDINARY = "ordinary"
    POLAR_DAY = "polar day"
    POLAR_NIGHT = "polar night"


@dataclass(frozen=True, slots=True)
class Daylight:
    """The light of one date, in the place's own time, around the noon of that date.

    What does not happen is None, and ``reason`` says why. Dusk in a northern June may fall
    after midnight, and then bears the next day's date.
    """

    dawn: dt.datetime | None
    """Begin of civil twilight."""
    sunrise: dt.datetime | None
    sunset: dt.datetime | None
    dusk: dt.datetime | None
    """End of civil twilight."""
    kind: LightKind
    reason: str = ""
    """Why a time is missing; empty where none is."""


@lru_cache(maxsize=1024)  # other dates for the works ask for the same days again and again
def daylight(day: dt.date, latitude: float, longitude: float, zone: str) -> Daylight:
    """Return when it gets light and dark at a place.

    Each time is that at which the sun's zenith distance passes 90° plus its half-width
    (sunrise, sunset) or 96° (civil twilight), refraction included, on the way up before the
    sun's noon of the date or on the way down after it.

    Parameters
    ----------
    day : datetime.date
        Date at the place. [local]
    latitude : float
        Degrees north, −90 to 90; south is negative. [°]
    longitude : float
        Degrees east, −180 to 180; west is negative. [°]
    zone : str
        Name in the IANA time zone database; summer time is its business.

    Returns
    -------
    Daylight
        With times that know their zone.

    Raises
    ------
    ValueError
        If a coordinate is outside its range.
    zoneinfo.ZoneInfoNotFoundError
        If there is no such zone.

    References
    ----------
    [noaa_solar]_, checked against [usno]_ and [nrel_spa]_.
    """
    between("latitude", latitude, -90, 90)
    between("longitude", longitude, -180, 180)
    local = zoneinfo.ZoneInfo(zone)
    noon = _mean_noon(day, longitude, local)
    dawn, sunrise, sunset, dusk = (
        time and time.astimezone(local)
        for time in (
            _passage(latitude, noon, CIVIL_TWILIGHT_DEG, SunDirection.RISING),
            _passage(latitude, noon, astral.sun.SUN_APPARENT_RADIUS, SunDirection.RISING),
            _passage(latitude, noon, astral.sun.SUN_APPARENT_RADIUS, SunDirection.SETTING),
            _passage(latitude, noon, CIVIL_TWILIGHT_DEG, SunDirection.SETTING),
        )
    )
    if dawn and sunrise and sunset and dusk:
        return Daylight(dawn, sunrise, sunset, dusk, LightKind.ORDINARY)
    true_noon = noon - dt.timedelta(minutes=_sun(noon)[1])
    highest = astral.sun.elevation(astral.Observer(latitude, longitude), true_noon)
    kind, reason = _kind(highest, sunrise, sunset, dawn, dusk)
    return Daylight(dawn, sunrise, sunset, dusk, kind, reason)


def _mean_noon(day: dt.date, longitude: float, local: dt.tzinfo) -> dt.datetime:
    """Return, in UTC, when a sun of even pace is highest on a local date.

    Half a turn of the earth from midnight in Greenwich, and four minutes for a degree.
    """
    at_greenwich = dt.datetime.combine(day, dt.time(12), dt.UTC)
    here = at_greenwich - dt.timedelta(minutes=4 * longitude)
    # Some zones are a day ahead of their sun, or behind it.
    near = [here + days for days in _NEIGHBOURS]
    return next((noon for noon in near if noon.astimezone(local).date() == day), here)


def _passage(
    latitude: float, mean_noon: dt.datetime, depression_deg: float, direction: SunDirection
) -> dt.datetime | None:
    """Return, in UTC, when the sun passes a depression below the horizon, before noon or after.

    The library's own search counts from midnight in Greenwich, and loses a day where what it
    looks for falls there; hence from noon, with the library's equations.
    """
    zenith = 90 + depression_deg
    zenith += astral.refraction_at_zenith(zenith)
    latitude = max(-NEXT_TO_A_POLE_DEG, min(NEXT_TO_A_POLE_DEG, latitude))
    time = mean_noon
    for _ in range(_ROUNDS):
        declination, equation_min = _sun(time)
        try:
            hour_angle = astral.sun.hour_angle(latitude, declination, zenith, direction)
        except ValueError:  # the sun does not reach that height
            return None
        true_noon = mean_noon - dt.timedelta(minutes=equation_min)
        # Forenoon angles are positive.
        time = true_noon - dt.timedelta(minutes=4 * math.degrees(hour_angle))
    return time


@lru_cache(maxsize=64)  # every search of a day begins at its noon
def _sun(time: dt.datetime) -> tuple[float, float]:
    """Return the sun's declination [°] and the equation of time [min] at a time in UTC."""
    century = julianday_to_juliancentury(julianday(time))
    return astral.sun.sun_declination(century), astral.sun.eq_of_time(century)


def _kind(
    noon_deg: float,
    sunrise: dt.datetime | None,
    sunset: dt.datetime | None,
    dawn: dt.datetime | None,
    dusk: dt.datetime | None,
) -> tuple[LightKind, str]:
    """Say what the sun does on a day on which it does not do all four."""
    if sunrise and sunset:
        return LightKind.ORDINARY, "civil twilight lasts all night"
    kind = LightKind.POLAR_NIGHT
    if noon_deg > -astral.sun.SUN_APPARENT_RADIUS:
        kind = LightKind.POLAR_DAY
    if sunrise or sunset:
        return kind, "the sun grazes the horizon: it rises or sets, but not both"
    if kind is LightKind.POLAR_DAY:
        return kind, "the sun does not set"
    if dawn and dusk:
        return kind, "the sun does not rise; there is twilight about noon"
    return kind, "the sun does not rise, and it does not get light"
