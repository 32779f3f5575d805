"""Which works belong together, so that they are told as one story."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence

from notices.operations import Noticed, Opening
from notices.programme.model import Period, Promise, Recovery, Work
from notices.programme.recovery import RecoveryModel, promise, recover_period

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
    opening = [w for w in works if w.operation.opening is not Opening.NONE]
    groups: list[list[Work]] = []
    for work in sorted(opening, key=lambda w: (w.dates[0], w.dates[-1])):
        if groups and work.dates[0] <= _last(groups[-1]) + dt.timedelta(days=1):
            groups[-1].append(work)
        else:
            groups.append([work])
    for work in sorted(
        (w for w in works if w.operation.opening is Opening.NONE), key=lambda w: w.dates
    ):
        near = [g for g in groups if _gap(work, g) <= RUN_UP and _share_greens(work, g)]
        if near:
            min(near, key=lambda g: (_comes_too_late(work, g), _gap(work, g))).append(work)
        else:
            groups.append([work])
    for group in groups:
        group.sort(key=lambda w: (w.operation.order, w.dates, w.plan_index))
    return sorted(groups, key=lambda g: (min(w.dates[0] for w in g), g[0].plan_index))


def _last(group: Sequence[Work]) -> dt.date:
    return max(work.dates[-1] for work in group)


def _gap(work: Work, group: Sequence[Work]) -> dt.timedelta:
    """Days without work between a work and a group; none where they overlap."""
    own = [w for w in group if w.operation.opening is not Opening.NONE] or list(group)
    first, last = min(w.dates[0] for w in own), _last(own)
    return max(first - work.dates[-1], work.dates[0] - last, dt.timedelta(0))


def _comes_too_late(work: Work, group: Sequence[Work]) -> bool:
    """Whether a work that prepares would follow what it should prepare."""
    prepares = work.operation.order < FIRST_OPENING_ORDER
    return prepares and work.dates[0] > min(w.dates[0] for w in group)


def _share_greens(work: Work, group: Sequence[Work]) -> bool:
    return any(set(work.greens) & set(other.greens) for other in group)


def make_period(
    works: Sequence[Work],
    by_work: Mapping[str, Sequence[Recovery]],
    recovery_model: RecoveryModel,
) -> Period:
    """Return one period with its days, its greens and what is promised of them."""
    opening = [w for w in works if w.operation.opening is not Opening.NONE]
    leading = opening or list(works)
    days = sorted({day for work in leading for day in work.dates})
    greens = dict.fromkeys(
        green
        for day in days
        for work in leading
        for visit in work.main_visits
        if visit.date == day
        for green in visit.greens
    )
    recoveries = recover_period(leading, by_work, recovery_model)
    reserve = sorted({day for work in leading for day in work.reserve_dates})
    back = [r.back_in_play for r in recoveries]
    reopen = max(work.reopen_days for work in leading)
    worst = reserve[-1] + dt.timedelta(days=reopen) if reserve else None
    expect = max(span.early for span in back)
    return Period(
        works=tuple(works),
        days=tuple(days),
        greens=tuple(greens),
        noticed=any(work.operation.noticed is Noticed.CLEARLY for work in leading),
        reserve_dates=tuple(reserve),
        recoveries=recoveries,
        open_again=Promise(expect, max(worst, expect) if worst else expect),
        putting_well=promise([r.putting_smoothly for r in recoveries], recoveries),
        fully_healed=promise([r.fully_healed for r in recoveries], recoveries),
    )
