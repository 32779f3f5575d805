"""Which other works lie on the greens of a period while these are to come back.

A member who reads "all putt well by Friday" asks about the greens, not about one of the works on
them. So a date takes in what else is done to most of them before it, and names what is done to a
few of them, or soon after it.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from notices.operations import Noticed
from notices.programme.model import Meeting, OtherWork, Period, Promise

SOON = dt.timedelta(days=14)
"""Work that begins so soon after greens putt well is told beside the date (judgement)."""


def with_others(periods: Sequence[Period]) -> tuple[Period, ...]:
    """Return periods that know what else lies on their greens until they putt well."""
    return tuple(replace(period, others=_others(period, periods)) for period in periods)


def should_putt_well(periods: Sequence[Period], day: dt.date, greens: Iterable[str]) -> bool:
    """Whether members were told to expect that all work on some greens is forgotten by a day.

    The greens may recover for a while after it: that is what "at worst" is for.
    """
    asked = set(greens)
    begun = [
        one
        for one in periods
        if one.opening_works and one.days[0] <= day and not asked.isdisjoint(one.greens)
    ]
    return bool(begun) and all(one.putts_well_after_all.expect_by <= day for one in begun)


def _others(period: Period, periods: Sequence[Period]) -> tuple[OtherWork, ...]:
    """Return what is taken in, in the order of its days, then what is only named."""
    if not period.opening_works:
        return ()  # nothing has to come back
    beside = [one for one in periods if one is not period and one.opening_works]
    taken, promise = _taken_in(period, beside)
    return (
        *sorted(taken, key=lambda other: other.period.days[0]),
        *_longer(period, promise, beside),
        *_next(period, promise, beside),
    )


def _taken_in(period: Period, beside: Sequence[Period]) -> tuple[list[OtherWork], Promise]:
    """Gather what puts off the day on which most greens putt well, and what is felt until then.

    Returns
    -------
    tuple
        What is taken in, and when the greens putt well after all of it.
    """
    taken: list[OtherWork] = []
    promise = period.putting_well
    left = [one for one in beside if _on_most(period, one)]
    # Each that puts the day off may bring another within reach.
    while one := next((one for one in left if _puts_off(period, promise, one)), None):
        left.remove(one)
        how = Meeting.FOLLOWS if one.days[0] > period.days[0] else Meeting.CAME_BEFORE
        taken.append(OtherWork(one, _shared(period, one), how))
        promise = promise.together_with(one.putting_well)
    # Who is told of one work before the day must not think that nothing else comes.
    comes = [one for one in left if one.days[0] > period.days[0] and _is_felt(one)]
    taken += (
        OtherWork(one, _shared(period, one), Meeting.FOLLOWS)
        for one in comes
        if _at_once(period, promise, one)
    )
    return taken, promise


def _puts_off(period: Period, promise: Promise, other: Period) -> bool:
    put_off = promise.together_with(other.putting_well)
    days = (put_off.expect_by, put_off.at_worst) != (promise.expect_by, promise.at_worst)
    return days and _at_once(period, promise, other)


def _longer(period: Period, promise: Promise, beside: Sequence[Period]) -> Iterator[OtherWork]:
    """Yield what keeps a few of the greens for longer than the rest."""
    for one in beside:
        greens = _shared(period, one)
        longer = one.putting_well.expect_by > promise.expect_by
        if greens and longer and _at_once(period, promise, one):
            yield OtherWork(one, greens, Meeting.KEEPS_SOME)


def _next(period: Period, promise: Promise, beside: Sequence[Period]) -> Iterator[OtherWork]:
    """Yield what begins first after the greens should putt well, where that is soon."""
    until = max(promise.at_worst or promise.expect_by, promise.expect_by + SOON)
    later = [
        one
        for one in beside
        if promise.expect_by < one.days[0] <= until and _on_most(period, one) and _is_felt(one)
    ]
    if later:
        first = min(later, key=lambda one: one.days[0])
        yield OtherWork(first, _shared(period, first), Meeting.COMES_NEXT)


def _at_once(period: Period, promise: Promise, other: Period) -> bool:
    """Whether greens recover from both on one day."""
    return other.days[0] <= promise.expect_by and other.putting_well.expect_by >= period.days[0]


def _on_most(period: Period, other: Period) -> bool:
    return 2 * len(_shared(period, other)) >= len(period.greens)


def _shared(period: Period, other: Period) -> tuple[str, ...]:
    theirs = set(other.greens)
    return tuple(green for green in period.greens if green in theirs)


def _is_felt(period: Period) -> bool:
    return any(work.operation.noticed is not Noticed.HARDLY for work in period.opening_works)
