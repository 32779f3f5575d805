"""What each green is on each day, told as one word for the day: what a calendar of it shows."""

from __future__ import annotations

import datetime as dt
import enum
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from notices.calendar_days import each_day
from notices.programme.hours import to_half_hours
from notices.programme.model import (
    Closure,
    Fixture,
    PlayStatus,
    Programme,
    Restriction,
    Stretch,
)

FOLDED_FROM = 3
"""So many days on which nothing changes may be drawn as one."""

BEFORE = dt.timedelta(days=7)
"""A fixture so shortly before the first day with anything to tell is still told."""


class GreenDay(enum.Enum):
    """What a green is on a whole day, from best to worst."""

    OPEN = "open"
    RECOVERING = "open and recovering"
    WAITS = "open, with short waits"
    """A machine passes over it, and golfers wait until it has left."""
    PART_TEMPORARY = "temporary green part of the day"
    TEMPORARY = "temporary green"
    PART_CLOSED = "closed part of the day"
    CLOSED = "closed"


_IN_PLAY = frozenset({GreenDay.OPEN, GreenDay.RECOVERING})

_WHOLE = {PlayStatus.TEMPORARY: GreenDay.TEMPORARY, PlayStatus.CLOSED: GreenDay.CLOSED}
_PART = {PlayStatus.TEMPORARY: GreenDay.PART_TEMPORARY, PlayStatus.CLOSED: GreenDay.PART_CLOSED}
_WITHOUT_HOURS = {
    PlayStatus.OPEN: GreenDay.OPEN,
    PlayStatus.RECOVERING: GreenDay.RECOVERING,
    **_WHOLE,
}


@dataclass(frozen=True, slots=True)
class CourseDay:
    """One day of the whole course."""

    date: dt.date
    greens: tuple[GreenDay, ...]
    """In the order of the programme's greens."""
    fixtures: tuple[Fixture, ...]
    reserve: bool
    """Whether it is kept free for rain."""
    closures: tuple[Closure, ...]
    """Of other things than greens."""
    restrictions: tuple[Restriction, ...]
    """What golfers go without, such as buggies."""

    @property
    def plain(self) -> bool:
        """Whether golfers find nothing but greens in play, and nothing is on."""
        events = self.fixtures or self.closures or self.reserve
        return not events and _IN_PLAY.issuperset(self.greens)

    def like(self, other: CourseDay) -> bool:
        """Whether nothing is different but how far greens have recovered."""
        return self._events == other._events and all(
            one is another or {one, another} == _IN_PLAY
            for one, another in zip(self.greens, other.greens, strict=True)
        )

    @property
    def _events(self) -> tuple[object, ...]:
        return (self.fixtures, self.closures, self.reserve, self.restrictions)


Stack = tuple[CourseDay, ...]
"""One day, or several on which nothing changes and which may be drawn as one."""


def course_days(programme: Programme) -> tuple[Stack, ...]:
    """Return the days from the first with anything to tell to the last, like ones together.

    The last is that on which the last green has recovered, or the last of anything else. What
    golfers go without for longer makes it no longer: a winter without buggies is no change.
    """
    told = set(programme.status) | {day for shut in programme.closures for day in shut.dates}
    told |= {day for work in programme.works for day in work.dates}
    told |= {day for period in programme.periods for day in period.reserve_dates}
    if not told:
        return ()
    first, last = min(told), max(told)
    early = [f.date for f in programme.fixtures if f.is_on and first - BEFORE <= f.date < first]
    first = min((first, *early))
    days = [_course_day(programme, day) for day in each_day(first, last)]
    return tuple(_stacked(days))


def green_on(programme: Programme, day: dt.date, green: str) -> GreenDay:
    """Return what a green is on a day; holes that are closed with all they have close it too."""
    holes = programme.greens[green].holes
    shut = programme.holes_shut_on(day) if holes else ()
    if shut and all((programme.greens[green].course, hole) in shut for hole in holes):
        return GreenDay.CLOSED
    if day not in programme.stretches:
        return _WITHOUT_HOURS[programme.status_on(day, green)]
    return _told(programme.stretches_on(day, green), programme.work_from(day))


@lru_cache(maxsize=1024)  # greens of one day, and days of one job, have the same hours
def _told(stretches: tuple[Stretch, ...], earliest: float) -> GreenDay:
    """Return the one word for a day's stretches, to the half hour in which people are told them."""
    waits = any(stretch.passing for stretch in stretches)
    told = to_half_hours(
        (
            replace(stretch, status=PlayStatus.OPEN) if stretch.passing else stretch
            for stretch in stretches
        ),
        earliest,
    )
    statuses = {stretch.status for stretch in told}
    for status in (PlayStatus.CLOSED, PlayStatus.TEMPORARY):
        if status in statuses:
            whole = len(statuses) == 1 and all(stretch.hours_known for stretch in told)
            return (_WHOLE if whole else _PART)[status]
    if waits:
        return GreenDay.WAITS
    return GreenDay.RECOVERING if PlayStatus.RECOVERING in statuses else GreenDay.OPEN


def _course_day(programme: Programme, day: dt.date) -> CourseDay:
    return CourseDay(
        day,
        tuple(green_on(programme, day, green) for green in programme.greens),
        programme.fixtures_on(day),
        any(day in period.reserve_dates for period in programme.periods),
        tuple(
            shut
            for shut in programme.closures
            if day in shut.dates and not (shut.greens or shut.whole_course)
        ),
        tuple(limit for limit in programme.restrictions if day in limit.dates),
    )


def _stacked(days: Sequence[CourseDay]) -> list[Stack]:
    """Put like days together; of days with something on, the first and last stand alone."""
    runs: list[list[CourseDay]] = []
    for day in days:
        if runs and runs[-1][-1].like(day):
            runs[-1].append(day)
        else:
            runs.append([day])
    stacks: list[Stack] = []
    for run in runs:
        inner = run if run[0].plain else run[1:-1]
        if len(inner) < FOLDED_FROM:
            stacks += [(day,) for day in run]
        elif run[0].plain:
            stacks.append(tuple(run))
        else:
            stacks += [(run[0],), tuple(inner), (run[-1],)]
    return stacks
