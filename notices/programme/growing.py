"""Dates of growth, remembered: the same days are asked for by every work and every green.

The answers are those of `notices.agronomy.recovery.span`; a test holds the two together.
"""

from __future__ import annotations

import datetime as dt
from bisect import bisect_left
from functools import cache
from itertools import accumulate, islice

from notices.agronomy import recovery as model
from notices.agronomy.growth import Climate, growth_returns, growth_stop
from notices.agronomy.recovery import COLD_TO_WARM_YEAR_C, HORIZON_DAYS, DateRange, Range

A_QUARTER = 90
"""Days summed at a time: most openings close within one or two quarters of a year."""


class Growing:
    """One club's growth: when enough has grown, when it stops and when it returns."""

    def __init__(self, climate: Climate) -> None:
        self.climate = climate
        self._grown = cache(lambda done, offset_c: _Grown(climate, done, offset_c))
        self.span = cache(self._span)
        self.stop_after = cache(lambda day: growth_stop(day, climate))
        self.return_after = cache(lambda day: growth_returns(day, climate))

    def _span(self, growth_days: Range, done: dt.date) -> DateRange:
        """Return the range of dates for fast growth to slow, in a warm to a cold year."""
        horizon = done + dt.timedelta(days=HORIZON_DAYS)
        fast, slow = (
            [self._first_day(needed, done, year) for year in COLD_TO_WARM_YEAR_C]
            for needed in (growth_days.low, growth_days.high)
        )
        return DateRange(
            min(day or horizon for day in fast),
            self._first_day(growth_days.middle, done) or horizon,
            model.latest(slow),
        )

    def _first_day(
        self, growth_days: float, done: dt.date, offset_c: float = 0.0
    ) -> dt.date | None:
        if growth_days == 0:
            return done
        days = self._grown(done, offset_c).days_until(growth_days)
        return None if days is None else done + dt.timedelta(days=days)


class _Grown:
    """What has grown since a day by the end of each day after it, summed as far as was asked."""

    def __init__(self, climate: Climate, done: dt.date, offset_c: float) -> None:
        self._sums: list[float] = []
        growth = islice(climate.growth_after(done, offset_c), HORIZON_DAYS)
        self._coming = accumulate(growth)

    def days_until(self, growth_days: float) -> int | None:
        """Return after how many days so much has grown; None where it is not in the time looked at."""
        while not self._sums or self._sums[-1] < growth_days:
            more = list(islice(self._coming, A_QUARTER))
            if not more:
                return None
            self._sums += more
        return bisect_left(self._sums, growth_days) + 1
