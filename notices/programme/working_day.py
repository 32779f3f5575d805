"""What one day gives for work: people, hours, rest, light, and when the dew is off."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from notices.agronomy.daylight import daylight
from notices.plan.model import Club, Crew, Position, Sand
from notices.programme.climate import is_southern

KEPT_BACK_OF = 5
"""One of so many of the club's own people does the routine work meanwhile (common practice)."""

DEW_OFF_IN_AUTUMN, DEW_OFF = 10 * 60.0, 9 * 60.0
"""When the dew is off a green and sand may be spread [min from midnight] (common practice)."""

DRYING = 60.0
"""How long sand dries on a green before it is brushed or rolled [min]: on a dry day an hour or so
(common practice)."""

_AUTUMN = (9, 10, 11)
_AUTUMN_IN_THE_SOUTH = (3, 4, 5)

NO_PLACE = "the plan does not say where the club is, so the working day is not cut to the light"


@dataclass(frozen=True, slots=True)
class WorkingDay:
    """What one day gives; times are minutes from midnight, local time."""

    date: dt.date
    people: int
    """Who is there for the works."""
    kept_back: int
    """Who does the routine work meanwhile."""
    begins: float
    ends: float
    rest: tuple[float, float]
    dew_off: float
    light_from: float | None
    light_until: float | None
    light: str
    """Why the hours are not cut to the light, or that it is not as usual; else empty."""
    default_used: bool
    """Whether something of it is not the club's own."""


def working_day(crew: Crew, club: Club, day: dt.date) -> WorkingDay:
    """Return what a day gives for work.

    The rest lies in the middle of the working day, which is as long as the plan says; light
    takes from its ends.
    """
    begins, ends = (float(time.hour * 60 + time.minute) for time in crew.working_day)
    middle, half = (begins + ends) / 2, min(crew.breaks, ends - begins) / 2
    light_from, light_until, light = _light(club.place, day)
    return WorkingDay(
        date=day,
        people=people_for_works(crew, day),
        kept_back=_kept_back(crew),
        begins=begins,
        ends=ends,
        rest=(middle - half, middle + half),
        dew_off=_dew_off(crew, club, day),
        light_from=light_from,
        light_until=light_until,
        light=light,
        default_used=not crew.model_fields_set >= {"working_day", "breaks", "kept_back"}
        or club.place is None,
    )


def people_for_works(crew: Crew, day: dt.date) -> int:
    """Say how many are there for the works on a day: own and hired, less those kept back."""
    there = crew.hired_dates is None or any(day in span for span in crew.hired_dates)
    return max(0, crew.people + (crew.hired_people if there else 0) - _kept_back(crew))


def _kept_back(crew: Crew) -> int:
    return crew.people // KEPT_BACK_OF if crew.kept_back is None else crew.kept_back


def drying(crew: Crew, sand: Sand) -> float:
    """Return how long sand dries on a green: the club's own time, else none where it comes dry."""
    if crew.drying is not None:
        return crew.drying
    return 0.0 if sand.kiln_dried else DRYING


def _dew_off(crew: Crew, club: Club, day: dt.date) -> float:
    if crew.dew_off is not None:
        return float(crew.dew_off.hour * 60 + crew.dew_off.minute)
    autumn = _AUTUMN_IN_THE_SOUTH if is_southern(club) else _AUTUMN
    return DEW_OFF_IN_AUTUMN if day.month in autumn else DEW_OFF


def _light(place: Position | None, day: dt.date) -> tuple[float | None, float | None, str]:
    """Return civil dawn and dusk, and what is to be said of them."""
    if place is None:
        return None, None, NO_PLACE
    found = daylight(day, place.latitude, place.longitude, place.timezone)
    midnight = dt.datetime.combine(day, dt.time())
    # Far from the place of its clock, a day may begin or end before midnight.
    dawn, dusk = (
        None
        if time is None
        else max(0.0, (time.replace(tzinfo=None) - midnight).total_seconds() / 60)
        for time in (found.dawn, found.dusk)
    )
    return dawn, dusk, found.reason
