"""What of a programme is news: until when, and what was over before a notice went out."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import TypeVar

from notices.programme.model import Period, Programme

_ByDay = TypeVar("_ByDay")


def what_is_ahead(programme: Programme) -> Programme:
    """Leave out what was over before the day of issue.

    A period of work stays until its greens putt well, even at worst: until then golfers meet it.
    Where all was over, all is kept, since somebody wants to see how it was.
    """
    day = programme.issued
    periods = tuple(one for one in programme.periods if max(_days_of(one)) >= day)
    closures = tuple(shut for shut in programme.closures if max(shut.dates) >= day)
    restrictions = tuple(one for one in programme.restrictions if max(one.dates) >= day)
    if not (periods or closures or restrictions):
        return programme
    works = {work.id for period in periods for work in period.works}
    return replace(
        programme,
        periods=periods,
        works=tuple(work for work in programme.works if work.id in works),
        closures=closures,
        restrictions=restrictions,
        fixtures=tuple(fixture for fixture in programme.fixtures if fixture.date >= day),
        stretches=_from(day, programme.stretches),
        play=_from(day, programme.play),
    )


def days_ahead(days: Iterable[dt.date], issued: dt.date) -> tuple[dt.date, ...]:
    """Return the days from the day of issue on; all of them where all were over."""
    listed = tuple(days)
    return tuple(day for day in listed if day >= issued) or listed


def has_begun(programme: Programme, period: Period) -> bool:
    """Whether the work began before the day of issue; not so told where all was over."""
    return period.days[0] < programme.issued <= last_day_of_news(programme)


def last_day_of_news(programme: Programme) -> dt.date:
    """Return the day after which nothing that was announced is still to come."""
    days = [day for period in programme.periods for day in _days_of(period)]
    days += [visit.date for work in programme.works for visit in work.visits]
    days += [day for closed in programme.closures for day in closed.dates]
    days += [day for restriction in programme.restrictions for day in restriction.dates]
    return max(days, default=programme.issued)


def _days_of(period: Period) -> list[dt.date]:
    """List the days of work, those kept free, those of later dressings, and when all is well."""
    days = [*period.days, *period.reserve_dates]
    days += [visit.date for work in period.works for visit in work.follow_ups]
    if period.open_again.at_worst is not None:
        days.append(period.open_again.at_worst)
    promise = period.putting_well
    if not period.noticed:
        return days
    if promise.growth_stops is None:
        days.append(promise.at_worst or promise.expect_by)
    elif promise.through_winter:  # the day in autumn is named, that in spring only roughly
        days.append(promise.expect_by)
    return days


def _from(first: dt.date, by_day: Mapping[dt.date, _ByDay]) -> dict[dt.date, _ByDay]:
    return {day: found for day, found in by_day.items() if day >= first}
