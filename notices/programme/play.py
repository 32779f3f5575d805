"""What each green is to a golfer on each day."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence

from notices.operations import WhileWorking
from notices.programme.model import Closure, Green, Period, PlayStatus, Work

_RANK = list(PlayStatus)
"""From best to worst, as the enumeration lists them."""

_OF_WORK = {
    WhileWorking.OPEN: PlayStatus.OPEN,
    WhileWorking.TEMPORARY: PlayStatus.TEMPORARY,
    WhileWorking.CLOSED: PlayStatus.CLOSED,
}

Statuses = dict[dt.date, dict[str, PlayStatus]]


def play_status(
    greens: Mapping[str, Green],
    works: Sequence[Work],
    periods: Sequence[Period],
    closures: Sequence[Closure],
) -> Statuses:
    """Return every green's status on every day on which one is not simply open."""
    statuses: Statuses = {}

    def note(day: dt.date, green: str, status: PlayStatus) -> None:
        if status is PlayStatus.OPEN:
            return
        on_day = statuses.setdefault(day, {})
        if _RANK.index(status) > _RANK.index(on_day.get(green, PlayStatus.OPEN)):
            on_day[green] = status

    for work in works:
        for visit in work.visits:
            # A green closed for the work stays so until it reopens.
            for later in range(max(1, work.reopen_days if visit.ordinal == 1 else 1)):
                for green in visit.greens:
                    note(visit.date + dt.timedelta(days=later), green, _OF_WORK[work.while_working])
    for closure in closures:
        temporary = "temporary green" in closure.instead.lower()
        status = PlayStatus.TEMPORARY if temporary else PlayStatus.CLOSED
        for day in closure.dates:
            for green in greens if closure.whole_course else closure.greens:
                note(day, green, status)
    for period in periods:
        for recovery in period.recoveries:
            late = recovery.putting_smoothly.late or recovery.putting_smoothly.early
            day = recovery.done
            while day < late:
                note(day, recovery.green, PlayStatus.RECOVERING)
                day += dt.timedelta(days=1)
    return {day: statuses[day] for day in sorted(statuses)}
