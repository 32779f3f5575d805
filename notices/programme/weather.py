"""Go or no-go: what the weather must be for the works that are planned."""

from __future__ import annotations

from collections.abc import Sequence

from notices.operations import Weather
from notices.programme.model import Work

FROST_BELOW_C = 12.0
"""Mean of a month in which frost may stop work on greens; in a warmer one nobody speaks of it
(judgement)."""

Limits = dict[Weather, tuple[str, ...]]


def go_or_no_go(works: Sequence[Work], monthly_means: Sequence[float]) -> Limits:
    """Return what the weather must be, each with the works that it can stop.

    Parameters
    ----------
    works
        The works, with their days.
    monthly_means
        Twelve mean temperatures of the place, January first [°C].
    """
    found: Limits = {}
    for limit in Weather:
        stopped = tuple(
            work.id
            for work in works
            if limit in work.operation.weather
            and (limit is not Weather.NO_FROST or _in_the_cold(work, monthly_means))
        )
        if stopped:
            found[limit] = stopped
    return found


def _in_the_cold(work: Work, monthly_means: Sequence[float]) -> bool:
    days = (*(visit.date for visit in work.visits), *work.reserve_dates)
    return any(monthly_means[day.month - 1] < FROST_BELOW_C for day in days)
