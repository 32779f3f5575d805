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
import zoneinfo
from dataclasses import dataclass

import astral
import astral.sun
from astral import SunDirection

from notices.agronomy.limits import between

CIVIL_TWILIGHT_DEG = 6.0
"""How far the sun's centre lies below the horizon when civil twilight begins or ends
[usno]_."""

_HALF_A_DAY = dt.timedelta(hours=12)
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
    here = astral.Observer(
        between("latitude", latitude, -90, 90), between("longitude", longitude, -180, 180)
    )
    local = zoneinfo.ZoneInfo(zone)
    noon = _noon(here, day, local)
    edge, twilight = -astral.sun.SUN_APPARENT_RADIUS, -CIVIL_TWILIGHT_DEG
    sunrise = _passage(here, noon, edge, SunDirection.RISING)
    sunset = _passage(here, noon, edge, SunDirection.SETTING)
    dawn = _passage(here, noon, twilight, SunDirection.RISING)
    dusk = _passage(here, noon, twilight, SunDirection.SETTING)
    kind, reason = _kind(astral.sun.elevation(here, noon), sunrise, sunset, dawn, dusk)
    return Daylight(dawn, sunrise, sunset, dusk, kind, reason)


def _noon(here: astral.Observer, day: dt.date, local: dt.tzinfo) -> dt.datetime:
    """Return the sun's noon on a local date; the library counts in dates of Greenwich."""
    for days in _NEIGHBOURS:
        noon = astral.sun.noon(here, day + days, tzinfo=local)
        if noon.date() == day:
            return noon
    # No zone is so far from its own sun, but a plan may pair any place with any zone.
    return dt.datetime.combine(day, dt.time(12), local)


def _passage(
    here: astral.Observer, noon: dt.datetime, height_deg: float, direction: SunDirection
) -> dt.datetime | None:
    """Return when the sun passes a height within half a day of noon, on its way up or down."""
    for days in _NEIGHBOURS:
        try:
            time = astral.sun.time_at_elevation(
                here, height_deg, noon.date() + days, direction, noon.tzinfo or dt.UTC
            )
        except ValueError:  # the sun does not reach that height
            continue
        # Times of one zone are subtracted as clocks show them; what passes is counted in UTC.
        after = time.astimezone(dt.UTC) - noon.astimezone(dt.UTC)
        if direction is SunDirection.RISING:
            after = -after
        if dt.timedelta(0) <= after <= _HALF_A_DAY:
            return time
    return None


def _kind(
    noon_deg: float,
    sunrise: dt.datetime | None,
    sunset: dt.datetime | None,
    dawn: dt.datetime | None,
    dusk: dt.datetime | None,
) -> tuple[LightKind, str]:
    if sunrise and sunset:
        if dawn and dusk:
            return LightKind.ORDINARY, ""
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
