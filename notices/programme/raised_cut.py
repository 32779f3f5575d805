"""The height of cut that goes up before a work: for which one, and on which days putts are slower."""

from __future__ import annotations

import datetime as dt

from notices.agronomy.cut import DAYS_AHEAD
from notices.operations import Noticed, Opening
from notices.programme.model import Programme, Work

RAISING = "raising the height of cut"

LEAST, MOST = (dt.timedelta(days=days) for days in DAYS_AHEAD)

NEAR = 2 * MOST
"""A cut that goes up earlier than that is raised for something else (judgement)."""


def raisings(programme: Programme) -> list[Work]:
    """Return the works that raise the height of cut."""
    return [work for work in programme.works if work.operation.name == RAISING]


def prepared_by(programme: Programme, work: Work) -> Work | None:
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


def mown_higher_on(programme: Programme, day: dt.date) -> tuple[str, ...]:
    """Return the greens that are mown higher on a day for a work that has not begun on them.

    Once it has, the greens recover, and that says more. How long a cut that prepares nothing stays
    up, nobody knows: it is told for as long as it would be raised ahead of a work.
    """
    found: dict[str, None] = {}
    for work in raisings(programme):
        prepared = prepared_by(programme, work)
        for green in work.greens:
            raised = min(work.days_on(green))
            begins = prepared.days_on(green) if prepared else ()
            if raised <= day < min(begins, default=raised + MOST):
                found[green] = None
    return tuple(green for green in programme.greens if green in found)
