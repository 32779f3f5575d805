"""Which works belong together, so that they are told as one story."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence

from notices.calendar_days import ONE_DAY
from notices.operations import Noticed, Opening
from notices.programme.model import Period, Recovery, SandOnGreen, Work
from notices.programme.promises import (
    promise_of_healing,
    promise_of_play,
    promise_of_putting,
    rain_delay,
    recover_after_rain,
)
from notices.programme.recovery import RecoveryModel, recover_period

RUN_UP = dt.timedelta(days=14)
"""Mowing is raised 7 to 14 days ahead of a renovation (common practice)."""

FIRST_OPENING_ORDER = 20
"""Works with a lower place in the usual order prepare for those that open the surface."""


def group_works(works: Sequence[Work]) -> list[list[Work]]:
    """Group works whose days meet or overlap; what only prepares or tidies joins the nearest.

    Returns
    -------
    list
        Groups by first day; in each, the works in their usual order.
    """
    groups: list[list[Work]] = []
    for work in sorted(_opening(works), key=lambda w: (w.dates[0], w.dates[-1])):
        if groups and work.dates[0] <= _last(groups[-1]) + ONE_DAY:
            groups[-1].append(work)
        else:
            groups.append([work])
    others = [work for work in works if work.operation.opening is Opening.NONE]
    for work in sorted(others, key=lambda w: (w.dates, w.plan_index)):
        near = [g for g in groups if _gap(work, g) <= _reach(g) and _share_greens(work, g)]
        if near:
            min(near, key=lambda g: (_comes_too_late(work, g), _gap(work, g))).append(work)
        else:
            groups.append([work])
    for group in groups:
        group.sort(key=lambda w: (w.operation.order, w.dates, w.plan_index))
    return sorted(groups, key=lambda g: (min(w.dates[0] for w in g), g[0].plan_index))


def _opening(works: Sequence[Work]) -> list[Work]:
    return [work for work in works if work.operation.opening is not Opening.NONE]


def _last(group: Sequence[Work]) -> dt.date:
    return max(work.dates[-1] for work in group)


def _reach(group: Sequence[Work]) -> dt.timedelta:
    """Days over which a group draws others in; without an opening, only those that meet it."""
    return RUN_UP if _opening(group) else ONE_DAY


def _gap(work: Work, group: Sequence[Work]) -> dt.timedelta:
    """Days from a work to a group; none where they overlap."""
    own = _opening(group) or group
    first, last = min(w.dates[0] for w in own), _last(own)
    return max(first - work.dates[-1], work.dates[0] - last, dt.timedelta(0))


def _comes_too_late(work: Work, group: Sequence[Work]) -> bool:
    """Whether a work that prepares would follow what it should prepare."""
    prepares = work.operation.order < FIRST_OPENING_ORDER
    own = _opening(group) or group
    return prepares and work.dates[0] > min(w.dates[0] for w in own)


def _share_greens(work: Work, group: Sequence[Work]) -> bool:
    return any(set(work.greens) & set(other.greens) for other in group)


def make_period(
    works: Sequence[Work],
    every: Sequence[Work],
    by_work: Mapping[str, Sequence[Recovery]],
    needs: Sequence[SandOnGreen],
    recovery_model: RecoveryModel,
) -> Period:
    """Return one period with its days, its greens and what is promised of them.

    What only prepares or tidies counts for days and greens where nothing else is done.

    Parameters
    ----------
    works
        The works of the period, in their usual order.
    every
        All works of the plan; a later one may fill the holes of this period.
    by_work
        When each green comes back after each work.
    needs
        What each dressing brings.
    recovery_model
        The model, with the club's climate.
    """
    leading = _opening(works) or list(works)
    days = sorted({day for work in leading for day in work.dates})
    reserve = sorted({day for work in leading for day in work.reserve_dates})
    recoveries = recover_period(leading, by_work, recovery_model)
    delay = rain_delay(days, reserve)
    rained = (
        recover_after_rain(leading, delay, needs, recovery_model, every) if delay else recoveries
    )
    return Period(
        works=tuple(works),
        days=tuple(days),
        greens=_greens_in_order(leading, days),
        noticed=any(work.operation.noticed is Noticed.CLEARLY for work in leading),
        reserve_dates=tuple(reserve),
        recoveries=recoveries,
        open_again=promise_of_play(recoveries, rained),
        putting_well=promise_of_putting(recoveries, rained, recovery_model),
        fully_healed=promise_of_healing(recoveries, rained, recovery_model),
    )


def _greens_in_order(works: Sequence[Work], days: Sequence[dt.date]) -> tuple[str, ...]:
    """Return the greens in the order in which they are first done."""
    return tuple(
        dict.fromkeys(
            green
            for day in days
            for work in works
            for visit in work.main_visits
            if visit.date == day
            for green in visit.greens
        )
    )
