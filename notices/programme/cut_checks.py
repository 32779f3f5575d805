"""Whether the height of cut goes up, and in time for the work that it prepares.

Messages and suggestions end without a full stop; `Finding` sets it.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from notices.agronomy.cut import DAYS_AHEAD
from notices.findings import Finding, Weight
from notices.plan.model import Plan
from notices.programme.model import Programme
from notices.programme.raised_cut import LEAST, MOST, prepared_by, raisings


def cut_not_raised(programme: Programme, _plan: Plan) -> Iterator[Finding]:
    """The height of cut is to be raised, and the usual height is no lower."""
    for work in raisings(programme):
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
    for work in raisings(programme):
        prepared = prepared_by(programme, work)
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


def _from(raised: dt.date, first: dt.date) -> str:
    days = (first - raised).days
    if days == 0:
        return "the day on which"
    return f"{abs(days)} {'day' if abs(days) == 1 else 'days'} {'before' if days > 0 else 'after'}"


CUT_CHECKS = (cut_not_raised, cut_raised_in_time)
