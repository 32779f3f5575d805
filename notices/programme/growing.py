"""Dates of growth, remembered: the same days are asked for by every work and every green.

The answers are those of `notices.agronomy.recovery.span`; a test holds the two together.
"""

from __future__ import annotations

import datetime as dt
from bisect import bisect_left
from functools import cache

from notices.agronomy import recovery as model
from notices.agronomy.growth import Climate
from notices.agronomy.recovery import COLD_TO_WARM_YEAR_C, HORIZON_DAYS, DateRange


class Growing:
    """One club's growth: when enough has grown, when it stops and when it returns."""

    def __init__(self, climate: Climate) -> None:
        self.climate = climate
        self._grown: dict[tuple[dt.date, float], list[float]] = {}
        self.span = cache(self._span)
        self.stop_after = cache(lambda day: model.growth_stop(day, climate))
        self.return_after = cache(lambda day: model.growth_returns(day, climate))

    def _span(self, fast_days: float, slow_days: float, done: dt.date) -> DateRange:
        """Return the range of dates for fast growth to slow, in a cold to a warm year."""
        early = [self._first_day(fast_days, done, year) for year in COLD_TO_WARM_YEAR_C]
        late = [self._first_day(slow_days, done, year) for year in COLD_TO_WARM_YEAR_C]
        reached = [day for day in late if day is not None]
        return DateRange(
            min(
                (day for day in early if day is not None),
                default=done + dt.timedelta(days=HORIZON_DAYS),
            ),
            max(reached) if len(reached) == len(late) else None,
        )

    def _first_day(self, growth_days: float, done: dt.date, offset_c: float) -> dt.date | None:
        if growth_days == 0:
            return done
        grown = self._grown.setdefault((done, offset_c), [])
        while (not grown or grown[-1] < growth_days) and len(grown) < HORIZON_DAYS:
            day = done + dt.timedelta(days=len(grown) + 1)
            before = grown[-1] if grown else 0.0
            grown.append(before + self.climate.growth_on(day, offset_c))
        index = bisect_left(grown, growth_days)
        return None if index == len(grown) else done + dt.timedelta(days=index + 1)
