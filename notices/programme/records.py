"""What the club's own records of earlier seasons say of how fast its greens come back."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence

from notices.agronomy.growth import Climate
from notices.agronomy.recovery import (
    SIDEWAYS_GROWTH_MM_PER_DAY,
    fitted_range,
    growth_days_for_opening,
    observed_rate_mm_per_day,
    span,
)
from notices.plan.club_greens import ClubGreens
from notices.plan.model import Observed
from notices.programme.grounds import effective_opening_mm
from notices.programme.lay_out import green_keys
from notices.programme.model import FittedRate, SeasonOnRecord, Seen, Work

Unused = tuple[tuple[int, str], ...]
"""Records that do not help: which, counted from 0, and why."""

LATEST_AFTER_PLAN = dt.timedelta(days=14)
"""A record of work done so long after its last planned day is still of that work (judgement)."""

FAR_FROM_BOOK = 5
"""So many times slower or faster than the book is a slip of the pen, not a green (judgement)."""


class _DoesNotHelp(Exception):
    """Why a record says nothing of how fast greens come back, for the club to read."""


def fit_records(
    observed: Sequence[Observed], works: Sequence[Work], filled: frozenset[str], climate: Climate
) -> tuple[Mapping[str, FittedRate], Unused]:
    """Return, by kind of work, the rate that the records give, and the records that give none.

    Parameters
    ----------
    observed
        The records of the plan.
    works
        Works of this plan: a record is taken to be of openings as wide as those of the first work
        of its kind, unless it says otherwise.
    filled
        Works whose holes sand fills. They putt smoothly by the sand and not by the grass, so
        that a record of it says nothing of the rate.
    climate
        Temperatures and grass of the place.
    """
    first = {work.operation.name: work for work in reversed(works)}
    found: dict[str, list[SeasonOnRecord]] = {}
    unused: list[tuple[int, str]] = []
    for index, record in enumerate(observed):
        if work_on_record(record, works) is not None:
            continue  # what becomes of a work must not change what was promised of it
        try:
            season = _season(record, first.get(record.operation), filled, climate)
        except _DoesNotHelp as reason:
            unused.append((index, str(reason)))
        else:
            found.setdefault(record.operation, []).append(season)
    fitted = {
        operation: FittedRate(
            operation,
            fitted_range([season.rate_mm_per_day for season in seasons]),
            SIDEWAYS_GROWTH_MM_PER_DAY,
            tuple(seasons),
        )
        for operation, seasons in found.items()
    }
    return fitted, tuple(unused)


def work_on_record(record: Observed, works: Sequence[Work]) -> Work | None:
    """Return the work of this plan that a record is of; None for one of an earlier season."""
    same = [
        work
        for work in works
        if work.operation.name == record.operation
        and work.dates
        and work.dates[0]
        <= record.done
        <= max((*work.dates, *work.reserve_dates)) + LATEST_AFTER_PLAN
    ]
    return max(same, key=lambda work: work.dates[0], default=None)


def seen_by_work(
    observed: Sequence[Observed], works: Sequence[Work], club: ClubGreens
) -> Mapping[str, tuple[Seen, ...]]:
    """Return what the records say of the works of this plan."""
    found: dict[str, list[Seen]] = {}
    for record in observed:
        if (work := work_on_record(record, works)) is None:
            continue
        greens = work.greens if record.greens is None else green_keys(record.greens, club)
        found.setdefault(work.id, []).append(
            Seen(work.id, greens, record.done, record.putting_smoothly, record.healed)
        )
    return {work: tuple(seen) for work, seen in found.items()}


def _season(
    record: Observed, work: Work | None, filled: frozenset[str], climate: Climate
) -> SeasonOnRecord:
    """Return what one record says.

    Raises
    ------
    _DoesNotHelp
        With the reason why it says nothing.
    """
    if work is None:
        raise _DoesNotHelp(f"no work of this plan is {record.operation}")
    opening = effective_opening_mm(work, record.opening)
    if opening is None:
        raise _DoesNotHelp(f"{record.operation} leaves no opening that has to grow over")
    seen, what, smooth = record.healed, "healed", record.putting_smoothly
    if seen is None:
        if work.id in filled:
            raise _DoesNotHelp("holes that are filled putt smoothly by the sand: add healed")
        seen, what, opening, smooth = smooth, "putting smoothly", opening / 2, None
    if seen is None:
        raise _DoesNotHelp("it does not say when the greens had come back: add healed")
    try:
        rate = observed_rate_mm_per_day(opening, record.done, seen, climate)
    except ValueError:
        raise _DoesNotHelp("no grass grew between the two days: check them") from None
    book = SIDEWAYS_GROWTH_MM_PER_DAY
    if not book.low / FAR_FROM_BOOK <= rate <= book.high * FAR_FROM_BOOK:
        raise _DoesNotHelp(
            f"it would mean that an edge grows {rate:.2g} mm a day in the best weather, "
            f"and the book says {book.low:g} to {book.high:g}: check dates and temperatures"
        )
    growth_days = opening / (2 * rate)
    needed = book.reversed(lambda rate: growth_days_for_opening(opening, rate))
    forecast = span(needed, record.done, climate)
    return SeasonOnRecord(record.done, seen, what, opening, growth_days, rate, forecast, smooth)


def filled_works(filled: Mapping[tuple[str, str], Work]) -> frozenset[str]:
    """Return the works of which holes are filled on any green."""
    return frozenset(work for work, _ in filled)
