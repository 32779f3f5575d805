"""What each green is to a golfer on each day."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping, Sequence
from itertools import chain

from notices.operations import WhileWorking
from notices.programme.model import Closure, Green, Period, PlayStatus, Work

_RANK = {status: rank for rank, status in enumerate(PlayStatus)}
"""From best to worst, as the enumeration lists them."""

_OF_WORK = {
    WhileWorking.OPEN: PlayStatus.OPEN,
    WhileWorking.TEMPORARY: PlayStatus.TEMPORARY,
    WhileWorking.CLOSED: PlayStatus.CLOSED,
}

Statuses = dict[dt.date, dict[str, PlayStatus]]
Spell = tuple[dt.date, int, Sequence[str], PlayStatus]
"""From when, for how many days, which greens, what they are."""


def play_status(
    greens: Mapping[str, Green],
    works: Sequence[Work],
    periods: Sequence[Period],
    closures: Sequence[Closure],
) -> Statuses:
    """Return every green's status on every day on which one is not simply open."""
    statuses: Statuses = {}
    for first, days, concerned, status in chain(
        _while_working(works), _closed(closures, greens), _recovering(periods)
    ):
        if status is PlayStatus.OPEN:
            continue
        for later in range(days):
            on_day = statuses.setdefault(first + dt.timedelta(days=later), {})
            for green in concerned:
                if _RANK[status] > _RANK[on_day.get(green, PlayStatus.OPEN)]:
                    on_day[green] = status
    return {
        day: {green: statuses[day].get(green, PlayStatus.OPEN) for green in greens}
        for day in sorted(statuses)
        if statuses[day]
    }


def _while_working(works: Sequence[Work]) -> Iterator[Spell]:
    """A green closed for the work stays so until it reopens; after a later dressing, that day."""
    for work in works:
        for visit in work.visits:
            days = max(1, work.reopen_days) if visit.ordinal == 1 else 1
            yield visit.date, days, visit.greens, _OF_WORK[work.while_working]


def _closed(closures: Sequence[Closure], greens: Mapping[str, Green]) -> Iterator[Spell]:
    for closure in closures:
        temporary = "temporary green" in closure.instead.casefold()
        status = PlayStatus.TEMPORARY if temporary else PlayStatus.CLOSED
        for day in closure.dates:
            yield day, 1, tuple(greens) if closure.whole_course else closure.greens, status


def _recovering(periods: Sequence[Period]) -> Iterator[Spell]:
    """A green recovers from the first work that opens it until it putts smoothly at the latest."""
    for period in periods:
        begun = _first_days(period)
        for recovery in period.recoveries if begun else ():
            smooth = recovery.putting_smoothly
            # Where it may never get there, the earliest day is all that can be said.
            until, first = smooth.late or smooth.early, begun[recovery.green]
            yield first, (until - first).days, (recovery.green,), PlayStatus.RECOVERING


def _first_days(period: Period) -> dict[str, dt.date]:
    """Return the day on which each green is first opened or covered."""
    visits = (visit for work in period.opening_works for visit in work.main_visits)
    first: dict[str, dt.date] = {}
    for visit in sorted(visits, key=lambda visit: visit.date):
        for green in visit.greens:
            first.setdefault(green, visit.date)
    return first
