"""On which days the greens are at their best: clear of everything that is planned."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass

from notices.operations import Noticed, Opening, WhileWorking
from notices.programme.model import Period, Programme, Work

SHORTEST = dt.timedelta(days=7)
"""Fewer days between two works are nothing to plan a visit by (judgement)."""


@dataclass(frozen=True, slots=True)
class BestDays:
    """The days before anything is done to the greens, and those after a period of work."""

    before: dt.date | None
    """The first day on which the greens are not at their best; None where there is no time before it."""
    after: dt.date | None
    """The last day, at worst, before they are again; None where nobody can name it."""
    next: dt.date | None = None
    """The first day of what is done after these; None where nothing further is planned."""


def best_days(programme: Programme, period: Period) -> BestDays:
    """Return the days to be told to somebody who may choose one."""
    spells = sorted(_spells(programme), key=lambda spell: spell[0])
    first = min((begun for begun, _ in spells), default=period.days[0])
    before = first if first - programme.issued >= SHORTEST else None
    after = _end(period)
    for begun, ends in spells:
        if after is None or begun - after > SHORTEST:
            break  # the spells come by their first days: what follows begins later still
        after = None if ends is None else max(after, ends)
    if after is not None and after < programme.issued:
        after = None  # they are at their best already
    later = [begun for begun, _ in spells if after is not None and begun > after]
    return BestDays(before, after, min(later, default=None))


def _spells(programme: Programme) -> Iterator[tuple[dt.date, dt.date | None]]:
    """Yield the first and the last day of all that greens suffer; None where the last is unknown."""
    for period in programme.periods:
        if felt := [work for work in period.works if _felt(work)]:
            yield min(work.dates[0] for work in felt), _end(period)
    for closed in programme.closures:
        if closed.part in ("greens", "holes", "course"):
            yield from ((day, day) for day in closed.dates)


def _felt(work: Work) -> bool:
    return (
        work.operation.opening is not Opening.NONE
        or work.operation.noticed is not Noticed.HARDLY
        or work.while_working is not WhileWorking.OPEN
    )


def _end(period: Period) -> dt.date | None:
    """Return the last day on which greens are not at their best, at worst.

    None where marks or slow putts stay until the grass grows, or until it is mown lower again.
    """
    promise = period.putting_well
    marked = period.noticed and period.fully_healed.growth_stops is not None
    if promise.growth_stops is not None or promise.at_worst is None or marked:
        return None
    if not period.opening_works and any(
        w.operation.noticed is not Noticed.HARDLY for w in period.works
    ):
        return None
    days = [promise.at_worst, period.open_again.at_worst or period.open_again.expect_by]
    days += [visit.date for work in period.works for visit in work.visits]
    return max(*days, *period.reserve_dates)
