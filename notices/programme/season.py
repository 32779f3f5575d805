"""The season that the works fall into: how grass grows day by day, and when each work is over."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping, Sequence

from notices.agronomy.growth import GROWTH_EXTREMELY_LIMITED
from notices.calendar_days import ONE_DAY, each_day
from notices.programme.climate import ClubClimate
from notices.programme.model import GreensBack, Period, Recovery, RestOfGrowth, Season
from notices.programme.recovery import RecoveryModel, latest_of

RUN_UP = dt.timedelta(days=14)
"""What came before the first work, to see whether growth rises or falls."""

WITHOUT_END = dt.timedelta(days=365)
"""How far the season is looked at where something may never come back."""


def season(
    periods: Sequence[Period], climate: ClubClimate, recovery_model: RecoveryModel
) -> Season | None:
    """Return growth by day from shortly before the first work until all has healed at worst.

    Parameters
    ----------
    periods
        With their promises.
    climate
        The club's; a cold or a warm year is not in it.
    recovery_model
        Knows when growth stops and returns.
    """
    if not periods:
        return None
    first = min(min(period.days) for period in periods) - RUN_UP
    last = max(day for period in periods for day in _ends(period))
    return Season(
        {day: climate.climate.growth_on(day) for day in each_day(first, last)},
        tuple(_rests(first, last, climate, recovery_model)),
        GROWTH_EXTREMELY_LIMITED,
        climate.default_used,
    )


def greens_back(recoveries: Mapping[str, Sequence[Recovery]]) -> dict[str, GreensBack]:
    """Return, for each work, when all of its greens have come back: the last of them counts."""
    return {
        work: GreensBack(
            work,
            latest_of([recovery.back_in_play for recovery in own]),
            latest_of([recovery.putting_smoothly for recovery in own]),
            latest_of([recovery.fully_healed for recovery in own]),
        )
        for work, own in recoveries.items()
        if own
    }


def _ends(period: Period) -> Iterator[dt.date]:
    for promise in (period.open_again, period.putting_well, period.fully_healed):
        yield promise.at_worst or promise.expect_by + WITHOUT_END


def _rests(
    first: dt.date, last: dt.date, climate: ClubClimate, recovery_model: RecoveryModel
) -> Iterator[RestOfGrowth]:
    """Yield the stretches in which growth rests, as the recovery model sees them."""
    at_rest = climate.climate.growth_on(first) < GROWTH_EXTREMELY_LIMITED
    stop = recovery_model.growth_stop(first)
    while stop is not None and stop <= last:
        returns = recovery_model.growth_return(stop)
        began_before = at_rest and stop == first + ONE_DAY
        yield RestOfGrowth(None if began_before else stop, returns)
        stop = None if returns is None else recovery_model.growth_stop(returns)
