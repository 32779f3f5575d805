"""Until when what was announced is still news."""

from __future__ import annotations

import datetime as dt

from notices.programme.model import Programme


def last_day_of_news(programme: Programme) -> dt.date:
    """Return the day after which nothing that was announced is still to come."""
    days = [
        day
        for period in programme.periods
        for day in (*period.days, *period.reserve_dates, period.open_again.at_worst)
        if day is not None
    ]
    days += [visit.date for work in programme.works for visit in work.visits]
    for promise in (period.putting_well for period in programme.periods if period.noticed):
        if promise.growth_stops is None:
            days.append(promise.at_worst or promise.expect_by)
        elif promise.through_winter:  # the day in autumn is named, that in spring only roughly
            days.append(promise.expect_by)
    days += [day for closed in programme.closures for day in closed.dates]
    days += [day for restriction in programme.restrictions for day in restriction.dates]
    return max(days, default=programme.issued)
