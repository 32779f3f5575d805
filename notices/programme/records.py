"""What the club's own records of earlier seasons say of how fast its greens come back."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from notices.agronomy.growth import Climate
from notices.agronomy.recovery import (
    SIDEWAYS_GROWTH_MM_PER_DAY,
    fitted_range,
    observed_rate_mm_per_day,
)
from notices.plan.model import Observed
from notices.programme.grounds import effective_opening_mm
from notices.programme.model import FittedRate, SeasonOnRecord, Work

Unused = tuple[tuple[int, str], ...]
"""Records that do not help: which, counted from 0, and why."""

FAR_FROM_BOOK = 5
"""So many times slower or faster than the book is a slip of the pen, not a green (judgement)."""


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
        try:
            season = _season(record, first.get(record.operation), filled, climate)
        except ValueError as reason:
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


def _season(
    record: Observed, work: Work | None, filled: frozenset[str], climate: Climate
) -> SeasonOnRecord:
    """Return what one record says.

    Raises
    ------
    ValueError
        With the reason why it says nothing.
    """
    if work is None:
        raise ValueError(f"no work of this plan is {record.operation}")
    opening = effective_opening_mm(work, record.opening)
    if opening is None:
        raise ValueError(f"{record.operation} leaves no opening that has to grow over")
    seen, what = record.healed, "healed"
    if seen is None:
        if work.id in filled:
            raise ValueError("holes that are filled putt smoothly by the sand: add healed")
        seen, what, opening = record.putting_smoothly, "putting smoothly", opening / 2
    if seen is None:
        raise ValueError("it does not say when the greens had come back: add healed")
    try:
        rate = observed_rate_mm_per_day(opening, record.done, seen, climate)
    except ValueError:
        raise ValueError("no grass grew between the two days: check them") from None
    book = SIDEWAYS_GROWTH_MM_PER_DAY
    if not book.low / FAR_FROM_BOOK <= rate <= book.high * FAR_FROM_BOOK:
        raise ValueError(
            f"it would mean that an edge grows {rate:.2g} mm a day in the best weather, "
            f"and the book says {book.low:g} to {book.high:g}: check dates and temperatures"
        )
    return SeasonOnRecord(record.done, seen, what, opening, opening / (2 * rate), rate)


def filled_works(filled: Mapping[tuple[str, str], Work]) -> frozenset[str]:
    """Return the works of which holes are filled on any green."""
    return frozenset(work for work, _ in filled)
