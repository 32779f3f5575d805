"""Days of the calendar, for whatever counts in them."""

from __future__ import annotations

import datetime as dt

ONE_DAY = dt.timedelta(days=1)


def each_day(first: dt.date, last: dt.date) -> tuple[dt.date, ...]:
    """Return every day from the first to the last, both among them; none where that comes before."""
    return tuple(first + number * ONE_DAY for number in range((last - first).days + 1))
