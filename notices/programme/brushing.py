"""Whether the sand of each dressing is brushed in, and soon enough."""

from __future__ import annotations

import datetime as dt

from notices.calendar_days import ONE_DAY
from notices.operations import Opening
from notices.programme.model import Programme, Work

BRUSHED_WITHIN = dt.timedelta(days=7)
"""A dressing is brushed in when the sand is dry: in a wet week some days later (judgement)."""


def not_brushed(programme: Programme, sand: Work) -> dict[int, dict[str, dt.date]]:
    """Return the dressings of a work after which no brushing comes in time.

    Returns
    -------
    dict
        By the number of the dressing, each green that is left with loose sand and the day of it.
    """
    brushings = [work for work in programme.works if work.operation.name == "brushing"]
    loose: dict[int, dict[str, dt.date]] = {}
    for green, ordinal in dict.fromkeys((g, v.ordinal) for v in sand.visits for g in v.greens):
        last = max(sand.days_on(green, ordinal))
        until = min([last + BRUSHED_WITHIN + ONE_DAY, *sand.days_on(green, ordinal + 1)])
        brushed = (day for one in brushings for day in one.days_on(green))
        if not any(last <= day < until for day in brushed):
            loose.setdefault(ordinal, {})[green] = last
    return loose


def goes_along(programme: Programme, work: Work) -> bool:
    """Whether a work that opens nothing is done on the days and greens of later dressings alone."""
    again = {
        (green, visit.date)
        for sand in programme.works
        if sand.operation.opening is Opening.SAND
        for visit in sand.follow_ups
        for green in visit.greens
    }
    done = {(green, visit.date) for visit in work.visits for green in visit.greens}
    return work.operation.opening is Opening.NONE and done <= again


def all_brushed(programme: Programme) -> bool:
    """Whether there is sand, and each dressing of it is brushed in."""
    sands = [work for work in programme.works if work.operation.opening is Opening.SAND]
    return bool(sands) and not any(not_brushed(programme, sand) for sand in sands)
