"""Whether the height of cut goes up, and in time for the work that it prepares.

Messages and suggestions end without a full stop; `Finding` sets it.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from notices.agronomy.cut import DAYS_AHEAD
from notices.findings import Finding, Weight
from notices.operations import Noticed, Opening
from notices.plan.model import Plan
from notices.programme.model import Programme, Work

RAISING = "raising the height of cut"

LEAST, MOST = (dt.timedelta(days=days) for days in DAYS_AHEAD)

NEAR = 2 * MOST
"""A cut that goes up earlier than that is raised for something else (judgement)."""


def cut_not_raised(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """The height of cut is to be raised, and the usual height is no lower."""
    for work in _raising(programme):
        low, high = work.settings.number("from"), work.settings.number("to")
        if high <= low:
            yield Finding(
                "cut-not-raised",
                Weight.THINK_AGAIN,
                f"the height of cut is to be raised from {low:g} mm to {high:g} mm",
                "Write the height before as from, and the higher one as to",
                ("works", work.plan_index, "settings"),
                work=work.id,
                dates=work.dates,
            )


def cut_raised_in_time(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """The cut goes up 7 to 14 days before a work that golfers clearly notice (common practice)."""
    for work in _raising(programme):
        prepared = _prepared(programme, work)
        if prepared is None:
            continue
        first = prepared.dates[0]
        late, early = first - work.dates[-1] < LEAST, first - work.dates[0] > MOST
        if not (late or early):
            continue
        raised = work.dates[-1 if late else 0]
        yield Finding(
            "cut-raised-too-late" if late else "cut-raised-too-early",
            Weight.THINK_AGAIN,
            f"the height of cut goes up on {raised}, {_from(raised, first)} "
            f"{prepared.operation.name} begins; {DAYS_AHEAD[0]} to {DAYS_AHEAD[1]} days ahead are "
            "usual (common practice)",
            f"Raise it between {first - MOST} and {first - LEAST}, or accept the finding with a "
            "reason",
            ("works", work.plan_index, "dates"),
            work=work.id,
            dates=work.dates,
        )


def _raising(programme: Programme) -> list[Work]:
    return [work for work in programme.works if work.operation.name == RAISING]


def _prepared(programme: Programme, work: Work) -> Work | None:
    """Return the next work on these greens that wants a raised cut, else one that has just begun."""
    greens, raised = set(work.greens), work.dates[0]
    wanting = sorted(
        (
            other
            for other in programme.works
            if other.operation.opening is not Opening.NONE
            and other.operation.noticed is Noticed.CLEARLY
            and greens.intersection(other.greens)
        ),
        key=lambda other: (other.dates[0], other.operation.order, other.plan_index),
    )
    coming = [other for other in wanting if raised <= other.dates[0] <= raised + NEAR]
    begun = [other for other in wanting if raised - MOST <= other.dates[0] < raised]
    return next(iter(coming), None) or next(reversed(begun), None)


def _from(raised: dt.date, first: dt.date) -> str:
    days = (first - raised).days
    if days == 0:
        return "the day on which"
    return f"{abs(days)} {'day' if abs(days) == 1 else 'days'} {'before' if days > 0 else 'after'}"


CUT_CHECKS = (cut_not_raised, cut_raised_in_time)
