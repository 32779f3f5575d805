"""Turf that a work lays or puts back, and whether it has rooted when the next work opens the green.

Messages and suggestions end without a full stop; `Finding` sets it.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Collection, Iterator

from notices.findings import Finding, Weight
from notices.operations import Opening
from notices.plan.model import Plan
from notices.programme.green_names import plan_greens
from notices.programme.model import Programme, Work

LAID = frozenset({Opening.TRENCHES, Opening.BARE})
"""What lays turf, or lifts it and puts it back."""

TEARS = frozenset({Opening.HOLES, Opening.SLITS, Opening.CHANNELS})
"""What lifts turf that has not rooted: tines, blades, the leg of a plough (judgement)."""

_ROUND = "; where only a part is new, work round it and accept the finding with a reason"


def turf_not_rooted(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """Tines and blades lift turf that has not rooted.

    Nobody has published when it has. The turf is taken to hold from the day on which the programme
    expects it to putt well at the earliest (judgement).
    """
    for work in programme.works:
        if work.operation.opening not in TEARS:
            continue
        for laid in programme.works:
            if not (loose := _loose_under(programme, laid, work)):
                continue
            first = min(day for days in loose.values() for day in days)
            until = max(_holds_from(programme, laid, green) for green in loose)
            finished = max(laid.last_day_on(green) for green in loose)
            one = len(loose) == 1
            yield Finding(
                "turf-not-rooted",
                Weight.THINK_AGAIN,
                f"the turf of {plan_greens(programme.greens, loose)} will not have rooted when "
                f"{work.operation.name} comes on {first}: {laid.operation.name} ends there on "
                f"{finished}, and turf is taken to have rooted once it putts well, here on {until} "
                "at the earliest (judgement)",
                f"Leave {'that green' if one else 'those greens'} out of this work, or move it to "
                f"{until} or later{_ROUND if laid.operation.opening is Opening.BARE else ''}",
                ("works", work.plan_index, "greens"),
                work=work.id,
                greens=tuple(green for green in work.greens if green in loose),
                dates=tuple(sorted({day for days in loose.values() for day in days})),
            )


def is_loose(programme: Programme, green: str, days: Collection[dt.date]) -> bool:
    """Whether the turf of a green has been laid and will not have rooted on any of some days."""
    return any(
        _loose_on(programme, laid, green, day)
        for laid in programme.works
        if green in laid.greens
        for day in days
    )


def _loose_under(programme: Programme, laid: Work, work: Work) -> dict[str, tuple[dt.date, ...]]:
    """Return the greens that one work lays and another then opens too soon, with those days."""
    found = {
        green: tuple(d for d in work.days_on(green) if _loose_on(programme, laid, green, d))
        for green in laid.greens
    }
    return {green: days for green, days in found.items() if days}


def _loose_on(programme: Programme, laid: Work, green: str, day: dt.date) -> bool:
    """Whether a work has begun to lay the turf of a green before a day, and it does not hold yet."""
    if laid.operation.opening not in LAID:
        return False
    return laid.days_on(green)[0] < day < _holds_from(programme, laid, green)


def _holds_from(programme: Programme, laid: Work, green: str) -> dt.date:
    return next(
        recovery.putting_smoothly.early
        for recovery in programme.recoveries[laid.id]
        if recovery.green == green
    )
